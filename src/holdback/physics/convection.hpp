// Air around a turning disc: what its faces, its inner passages and still air carry away, and what it radiates. These
// are the deeper relations beneath a cooling map, for a disc that has none or that is used outside it.
//
// The disc is plain or has radial passages between two plates. Its faces turn freely in still air of one temperature;
// the pads' cover of the faces, the convection of the rim and that of the passages at standstill are left out, all on
// the safe side. Lengths, speeds and properties below 1e-12 count as zero, and nothing above 1e12 is believed.
#pragma once

#include <optional>

namespace holdback::physics {

/// Air of one pressure and temperature.
struct Air {
  double density{};        // [kg/m³]
  double viscosity{};      // [Pa·s] dynamic
  double conductivity{};   // [W/(m·K)]
  double specific_heat{};  // [J/(kg·K)] at constant pressure
  double prandtl{};        // [1] η c/k
  double temperature{};    // [K]; 1/Θ is the expansion of the ideal gas
};

/// Radial passages between the two plates of a vented disc, their walls thin against the passages.
struct Passages {
  int count{};            // ≥ 1
  double gap{};           // [m] > 0, clear distance between the plates
  double inner_radius{};  // [m] > 0
  double outer_radius{};  // [m] > inner_radius
};

/// What a disc shows to the air.
struct DiscShape {
  double outer_radius{};               // [m] > 0
  double inner_radius{};               // [m] ≥ 0, from which the faces are bare
  double thickness{};                  // [m] ≥ 0, over all
  std::optional<Passages> passages{};  // none: a plain disc
  double emissivity{};                 // [1] 0..1
};

/// Air at an absolute pressure [Pa] and a temperature [K]; take the mean of disc and surroundings for a boundary layer.
/// Properties of air.hpp; c = 1002.5 + 275e-6 (Θ − 200)² J/(kg·K), a fit within 0.5 % of the table of [incropera], 250
/// … 600 K. Temperature is kept within 100 … 1900 K, the validity of [ussa1976].
Air air_at(double pressure, double temperature);

/// Nu/√Re_r of a free disc of one temperature in laminar flow [1], Re_r = ω r²/ν, from the exact similarity solution.
/// ln c = cubic in ln Pr through four exact values, within 4e-6 for Pr 0.65 … 1; Pr is kept within 0.6 … 1.1 (3e-5).
/// Source: [dorfman1963]; recomputed.
double laminar_disc_constant(double prandtl);

/// Mean coefficient [W/(m²·K)] of a free turning face between two radii [m]: local h = c k √(ω/ν) up to Re_r = 2.4e5
/// and 0.0188 k (ω/ν)^0.8 r^0.6 beyond, averaged over the area. Continuous and rising with speed [rad/s], of either
/// sign. For air. Zero at standstill and without a face. Sources: [dorfman1963], [popiel1975]; the lowest of the
/// published constants 0.0188 … 0.0196 ([cobb1956]) is taken.
double rotating_face_coefficient(double inner_radius, double outer_radius, double rotational_speed, const Air& air);

/// Coefficient of a vertical plate in still air [W/(m²·K)], mean over its height [m], for a rise over the air [K] of
/// either sign: Nu = (0.825 + 0.387 Ra^⅙/(1 + (0.492/Pr)^(9/16))^(8/27))². Ra up to 1e12. Zero without height; k/L ·
/// 0.68 without rise. Source: [churchill1975] in [incropera], ex. 9.2.
double natural_convection_coefficient(double height, double rise, const Air& air);

/// Forced and natural convection together [W/(m²·K)]: (h_f³ + h_n³)^⅓. Source: [churchill1977].
double combined_coefficient(double forced, double natural);

/// Net power radiated [W] by a grey body to wide surroundings: ε σ A (Θ⁴ − Θ_s⁴), temperatures in K, area in m²;
/// negative when the surroundings are hotter. ε is kept within 0 … 1. Sources: [incropera]; σ of [codata2018].
double radiated_power(double emissivity, double area, double temperature, double surroundings);

/// Mean radial speed of the air in the passages, at their mean radius [m/s]: ½ρω²(r_o² − r_i²) = ζ ½ρu². ζ: entry with
/// its turn 1 and exit 1, each at its own speed, and friction 0.03 L/D_h; so u goes with the speed [rad/s]. The loss of
/// bringing still air to the disc's speed is in the left side. Zero without passages. Loss coefficients: common
/// practice.
double passage_speed(const Passages& passages, double rotational_speed);

/// Coefficient of the passages' walls [W/(m²·K)] at an air speed [m/s]: Nu = max(3.66, 0.023 Re^0.8 Pr^0.4) ·
/// (1 + (D_h/L)^⅔). 3.66 is laminar flow in a round tube of one temperature, the lowest of the usual shapes. Below
/// Re 1e4 the turbulent law is stretched: vanes and entry keep the flow disturbed. Zero without passages. Sources:
/// [dittus1930], entry [gnielinski1976], laminar [incropera].
double passage_coefficient(const Passages& passages, double air_speed, const Air& air);

/// Conductance of all passages at a speed [rad/s], disc to ambient [W/K]: C (1 − e^(−hA/C)), C = ρ u A_flow c: what the
/// walls give, limited by what the air that flows through can take. The walls are taken as hot as the disc.
double passage_conductance(const Passages& passages, double rotational_speed, const Air& air);

/// Convective conductance of a disc in free air [W/K]: both faces, forced and natural (height: the diameter), and the
/// passages. Speed in rad/s; `air` at the mean temperature; `rise_over_air` [K] of the disc, for still air.
double disc_conductance(const DiscShape& shape, double rotational_speed, const Air& air, double rise_over_air);

/// Area that radiates [m²]: both faces and the rim. Passages see only themselves.
double radiating_area(const DiscShape& shape);

}  // namespace holdback::physics
