// The unwind shaft: bending, torsion, fatigue, whirl, the life of its bearings and the grip on the core.
// Left out: the brake's own weight and the side force of its pads (their place is not asked for), and the stiffness
// that a tight roll and its core add to the shaft (the safe side). Symbols: d diameter, d_i bore, E modulus, S_ut
// tensile strength, T tension, R radius of the roll.
#pragma once

#include <cstddef>
#include <vector>

#include "holdback/model/shaft.hpp"

namespace holdback::physics {

// ---- sections -------------------------------------------------------------------------------------------------------

/// Rigidity in bending [N·m²]: E I, I = π(d⁴ − d_i⁴)/64. Zero where the bore leaves no wall. Definition.
double bending_rigidity(double modulus, double diameter, double bore);

/// Bending stress at the surface [Pa]: σ = 32 M d/(π(d⁴ − d_i⁴)), M ≥ 0 [N·m]. Linear elastic; zero without a moment,
/// infinite where the bore leaves no wall. [shigley], ch. 7.
double bending_stress(double moment, double diameter, double bore);

/// Shear stress at the surface [Pa] of a twisted shaft: τ = 16 T d/(π(d⁴ − d_i⁴)), of the torque's size. Round, linear
/// elastic; zero without a torque, infinite where the bore leaves no wall. [gere], ex. 3.1 and 3.2.
double torsion_stress(double torque, double diameter, double bore);

/// Twist [rad] over a length [m]: φ = 32 T L/(π G(d⁴ − d_i⁴)), G [Pa] the shear modulus (for steel near E/2.6). Zero
/// without torque or length, infinite where there is no wall or modulus. [gere], ex. 3.1 and 3.2.
double torsion_twist(double torque, double length, double shear_modulus, double diameter, double bore);

// ---- fatigue --------------------------------------------------------------------------------------------------------

/// Bending and shear as one stress [Pa]: σ' = √(σ² + 3τ²), von Mises. [shigley], ch. 7.
double von_mises_stress(double bending, double torsion);

/// Endurance limit [Pa] of a machined, rotating steel shaft: S_e = k_a k_b · 0.5 S_ut, the last not above 700 MPa;
/// surface k_a = 4.51 (S_ut/MPa)^−0.265 ≤ 1, size k_b = (d/7.62 mm)^−0.107 up to 51 mm, 1.51 (d/mm)^−0.157 above.
/// Steel only. Median strength: half of all shafts bear less; 99 % bear 0.814 of it. Size data reach from 2.79 to
/// 254 mm; thinner counts as 2.79 mm, thicker follows the same law. Zero without strength. [shigley], eqs. 6-8, 6-18
/// to 6-20.
double endurance_limit(double tensile_strength, double diameter);

/// Safety against fatigue [1]: n = 1/(σ_a/S_e + σ_m/S_ut), σ_a and σ_m the alternating and the steady von Mises stress
/// [Pa] with their notch factors in them (DE-Goodman). Infinite without stress, zero where there is stress but no
/// strength. [shigley], eq. 7-7.
double fatigue_safety(double alternating, double steady, double endurance_limit, double tensile_strength);

// ---- bearings -------------------------------------------------------------------------------------------------------

/// Basic rating life [revolutions], reached by 90 % of bearings: L_10 = 10⁶ (C/P)^p, p = 3 for balls, 10/3 for rollers.
/// C rating [N], P equivalent load [N]: here the radial load, since a web pulls across. Infinite without load, zero
/// without rating. [iso281].
double bearing_life(double rating, double load, BearingKind kind);

/// Running time [s] of a life [revolutions] at a speed [rad/s]: t = 2π L/ω. Infinite at standstill.
double bearing_running_time(double revolutions, double rotational_speed);

/// One load on a bearing for a while.
struct BearingDuty {
  double load{};      // [N] ≥ 0
  double speed{};     // [rad/s] ≥ 0
  double duration{};  // [s] ≥ 0
};

/// The steady load [N] that uses a bearing up as fast as these duties together: P_m = (Σ P^p n Δt/Σ n Δt)^(1/p). Over a
/// roll the load falls while the speed rises. Zero where nothing turns. [iso281] with the rule of linear damage.
double equivalent_bearing_load(const std::vector<BearingDuty>& duties, BearingKind kind);

// ---- the core -------------------------------------------------------------------------------------------------------

/// Torque [N·m] that the grip of the shaft or chucks on the core must pass: M_g = T R + J_o α, J_o the inertia of what
/// lies outside of the grip (web and core) and α [rad/s²] the roll's deceleration. The balance of that part alone:
/// J_o dω/dt = T R − M_g with dω/dt = −α. Negative in a ramp that needs more torque than the web gives.
double grip_torque(double tension, double radius, double outside_inertia, double roll_deceleration);

// ---- the whole shaft ------------------------------------------------------------------------------------------------

/// What a shaft does under its roll. Places count from the first bearing.
struct ShaftState {
  double deflection{};           // [m] largest
  double deflection_place{};     // [m]
  double first_slope{};          // [rad] at the first bearing
  double second_slope{};         // [rad]
  double bending_stress{};       // [Pa] at the place of least safety, without its notch
  double torsion_stress{};       // [Pa] there, without its notch
  double worst_place{};          // [m]
  double bending_moment{};       // [N·m] there
  std::size_t worst_section{};   // number of the section there
  double safety{};               // [1] against fatigue, notch factor included
  double first_bearing_load{};   // [N] radial
  double second_bearing_load{};  // [N]
};

/// A shaft under its own weight, the roll's weight (web and core) and the web's pull [N], both even over the web's
/// width, while it passes a torque [N·m]. The torque is taken to go through the whole shaft, since the brake may sit at
/// either end, and the notch factor to hold at every place: both the safe side. It counts for bending and for torsion
/// alike, which is safe at a shoulder; a keyseat notches torsion more, so give the higher one. Bending turns with the
/// shaft (fully reversed), torsion is steady. Deflection as in bend_beam(), safety as in fatigue_safety(); steel. A
/// shaft that bend_beam() cannot bear has infinite deflection, loads and stress, and no safety.
ShaftState shaft_state(const Shaft& shaft, double roll_mass, double web_width, double web_pull, double torque);

/// First whirl speed [rad/s] of a shaft with its roll (web and core) as mass over the web's width: beam_whirl(). The
/// roll's stiffness is left out (the safe side), that of bearings and frame is taken as infinite (the other side).
double first_whirl(const Shaft& shaft, double roll_mass, double web_width);

}  // namespace holdback::physics
