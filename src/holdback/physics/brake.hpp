// What a pad pair gives. One pair is two faces; all engaged pairs share one pressure, so torque doubles with the pairs.
// Symbols: p gauge pressure, p_0 threshold, A_p piston area, η actuator efficiency, μ friction, r_e friction radius.
#pragma once

#include <algorithm>

#include "holdback/model/brake.hpp"

namespace holdback::physics {

/// Friction radius of a sector pad under uniform wear [m]: r_e = (r_i + r_o)/2. The lower of the two estimates, thus
/// the one for capacity. Source: [ugural], ex. 13.6.
double sector_radius_uniform_wear(double inner_radius, double outer_radius);

/// Friction radius of a sector pad under uniform pressure [m]: r_e = ⅔(r_o³ − r_i³)/(r_o² − r_i²).
/// Source: [bhandari], ex. 12.12.
double sector_radius_uniform_pressure(double inner_radius, double outer_radius);

/// Factor δ = r_e/e of a round pad, from its radius over that of its centre circle, x = R/e in 0 … 0.5 (clamped above):
/// the published table, interpolated linearly (clamped, so beyond 0.5 it is too high). Source: [fazekas1972] as
/// reprinted in [bhandari], table 12.1.
/// Up to 3.3 % below the uniform-wear integral: on the safe side for capacity.
double round_pad_factor(double ratio);

/// The same factor under uniform pressure, the higher estimate: mean of r/e over the disc. It decides where too much
/// torque is the danger (lowest reachable tension). Exact series of the disc integral in x = R/e, 0 … 1 (clamped): δ =
/// Σ_k C(½, k)² x^(2k)/(k + 1) = 1 + x²/8 + x⁴/192 + x⁶/1024 + …; to 1e-12 for x ≤ 0.5, 1e-5 at 1 (check B-2).
double round_pad_factor_uniform_pressure(double ratio);

/// Friction radius of a pad [m]: the lower estimate for capacity and the higher where too much torque is the danger.
struct FrictionRadius {
  double capacity{};
  double highest{};
};
FrictionRadius friction_radius(const Pad& pad);

/// Torque per pressure of one engaged pair at nominal friction [N·m/Pa]: K = 2 μ A_p η r_e by geometry, or
/// K = M_sheet/(p_sheet − p_0) by data sheet. `highest` ≥ `capacity`, see friction_radius(). Zero where the grade lacks
/// the number that its route needs or p_sheet ≤ p_0.
struct TorquePerPressure {
  double capacity{};
  double highest{};
};
TorquePerPressure pair_torque_per_pressure(const Brake& brake, const Grade& grade);

/// Torque [N·m] at a pressure [Pa]: M = K (p − p_0)⁺.
double pad_torque(double torque_per_pressure, double pressure, double threshold);

/// Pressure [Pa] for a torque [N·m]: p = p_0 + M/K. For M ≤ 0 the brake is released: p_0. Infinite for K = 0.
double pad_pressure_for(double torque_per_pressure, double torque, double threshold);

/// Share of friction left at a pad temperature [K]: 1 − c (Θ − Θ_fade)⁺, not below 0.1. Linear fade, common practice,
/// no source: the grade's own data sheet gives start and rate.
inline double friction_left(double fade_start, double fade_rate, double temperature) {
  return std::max(0.1, 1 - fade_rate * std::max(0.0, temperature - fade_start));
}

/// friction_left() of a grade; 1 for one that does not fade.
double fade_factor(const Grade& grade, double temperature);

/// Contact pressure of a pad [Pa]: force of the actuator over the pad's face, A_p η (p − p_0)⁺/A_pad.
/// Zero for a data-sheet brake whose piston area is not known (piston_area = 0).
double contact_pressure(const Brake& brake, double pressure);

/// Sliding speed at the friction radius [m/s]: r_e ω.
double sliding_speed(double friction_radius, double rotational_speed);

}  // namespace holdback::physics
