#include "holdback/physics/convection.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "holdback/physics/air.hpp"
#include "holdback/physics/cooling.hpp"
#include "holdback/physics/gravity.hpp"

namespace holdback::physics {

namespace {

using std::numbers::pi;

constexpr double transition = 2.4e5;       // [1] Re_r at which the face turns turbulent
constexpr double turbulent_face = 0.0188;  // [1] Nu_r/Re_r^0.8
constexpr double entry_loss = 1;           // [1] sharp entry with a turn from axial to radial
constexpr double exit_loss = 1;            // [1] the whole head of speed
constexpr double friction_factor = 0.03;   // [1] rough cast walls
constexpr double laminar_tube = 3.66;      // [1] Nu

/// No quantity of a brake is below zero or near either end; between them no sum, product or quotient is undefined.
double bounded(double value) { return value < 1e-12 ? 0 : std::min(value, 1e12); }

Air bounded(const Air& air) {
  Air kept;
  kept.density = bounded(air.density);
  kept.viscosity = std::max(1e-12, bounded(air.viscosity));
  kept.conductivity = std::max(1e-12, bounded(air.conductivity));
  kept.specific_heat = bounded(air.specific_heat);
  kept.prandtl = std::clamp(air.prandtl, 1e-3, 1e5);
  kept.temperature = std::clamp(air.temperature, 1.0, 1e5);
  return kept;
}

/// The ways of the air through a vented disc.
struct Channel {
  double inner{}, outer{}, length{};  // [m] radii and their distance
  double flow_area{};                 // [m²] all passages, at the mean radius
  double wall_area{};                 // [m²] all passages, plates and vanes
  double hydraulic_diameter{};        // [m] at the mean radius
  bool open{};
};

Channel channel_of(const Passages& passages) {
  Channel made;
  made.inner = bounded(passages.inner_radius);
  made.outer = bounded(passages.outer_radius);
  made.length = made.outer - made.inner;
  const double gap = bounded(passages.gap);
  made.open = passages.count > 0 && gap > 0 && made.inner > 0 && made.length > 0;
  if (!made.open) return made;
  const double width = pi * (made.inner + made.outer) / passages.count;  // of one passage, at the mean radius
  made.flow_area = passages.count * width * gap;
  made.wall_area = 2 * passages.count * (width + gap) * made.length;
  made.hydraulic_diameter = 2 * width * gap / (width + gap);
  return made;
}

double square(double x) { return x * x; }

/// Area of one face [m²].
double face_area(const DiscShape& shape) {
  const double inner = bounded(shape.inner_radius);
  const double outer = bounded(shape.outer_radius);
  return std::max(0.0, pi * (outer * outer - inner * inner));
}

}  // namespace

Air air_at(double pressure, double temperature) {
  const double kept = std::clamp(temperature, 100.0, 1900.0);
  Air air;
  air.density = air_density(bounded(pressure), kept);
  air.viscosity = air_viscosity(kept);
  air.conductivity = air_conductivity(kept);
  air.specific_heat = 1002.5 + 275e-6 * square(std::max(0.0, kept - 200));
  air.prandtl = air.viscosity * air.specific_heat / air.conductivity;
  air.temperature = kept;
  return air;
}

// ln c by Newton's divided differences through (Pr, c) = (0.65, 0.309049985), (0.7, 0.323123320), (0.8, 0.349448685),
// (1, 0.396247523): 1/c = ∫ exp(Pr ∫ H) over von Kármán's flow. computed: RK4 and Simpson's rule in NumPy, to η = 20,
// the rest as an exponential.
double laminar_disc_constant(double prandtl) {
  const double x = std::log(std::clamp(prandtl, 0.6, 1.1));
  return std::exp(-0.92571621 + x * (0.54933780 + x * (-0.06035263 + x * 0.00864169)));
}

// [c k √(ω/ν) (r_c² − r_i²) + 2/2.6 · 0.0188 k (ω/ν)^0.8 (r_o^2.6 − r_c^2.6)]/(r_o² − r_i²), ω r_c²/ν = 2.4e5
double rotating_face_coefficient(double inner_radius, double outer_radius, double rotational_speed, const Air& air) {
  const double inner = bounded(inner_radius);
  const double outer = bounded(outer_radius);
  const Air sound = bounded(air);
  const double spin = bounded(std::abs(rotational_speed)) * sound.density / sound.viscosity;  // ω/ν [1/m²]
  if (outer <= inner || spin <= 0) return 0;
  const double change = std::clamp(std::sqrt(transition / spin), inner, outer);
  const double laminar = laminar_disc_constant(sound.prandtl) * std::sqrt(spin) * (square(change) - square(inner));
  const double turbulent =
      2 / 2.6 * turbulent_face * std::pow(spin, 0.8) * (std::pow(outer, 2.6) - std::pow(change, 2.6));
  return sound.conductivity * (laminar + turbulent) / (square(outer) - square(inner));
}

// Nu = (0.825 + 0.387 Ra^⅙/(1 + (0.492/Pr)^(9/16))^(8/27))², Ra = g β ΔΘ L³/(ν a)
double natural_convection_coefficient(double height, double rise, const Air& air) {
  const double length = bounded(height);
  if (length <= 0) return 0;
  const Air sound = bounded(air);
  const double diffusion = sound.viscosity * sound.conductivity;  // ν a · ρ² c
  const double rayleigh = gravity / sound.temperature * bounded(std::abs(rise)) * length * length * length *
                          square(sound.density) * sound.specific_heat / diffusion;
  const double shape = std::pow(1 + std::pow(0.492 / sound.prandtl, 9.0 / 16), 8.0 / 27);
  return sound.conductivity / length * square(0.825 + 0.387 * std::pow(rayleigh, 1.0 / 6) / shape);
}

// (h_f³ + h_n³)^⅓
double combined_coefficient(double forced, double natural) {
  const auto cube = [](double x) { return x * x * x; };
  return std::cbrt(cube(bounded(forced)) + cube(bounded(natural)));
}

// ε σ A (Θ⁴ − Θ_s⁴)
double radiated_power(double emissivity, double area, double temperature, double surroundings) {
  const auto fourth = [](double x) { return square(square(bounded(x))); };
  return std::clamp(emissivity, 0.0, 1.0) * stefan_boltzmann * bounded(area) *
         (fourth(temperature) - fourth(surroundings));
}

// u = ω √((r_o² − r_i²)/ζ), ζ = (r_m/r_i)² ζ_entry + (r_m/r_o)² ζ_exit + f L/D_h
double passage_speed(const Passages& passages, double rotational_speed) {
  const Channel channel = channel_of(passages);
  if (!channel.open) return 0;
  const double middle = (channel.inner + channel.outer) / 2;
  const double loss = entry_loss * square(middle / channel.inner) + exit_loss * square(middle / channel.outer) +
                      friction_factor * channel.length / channel.hydraulic_diameter;
  return bounded(std::abs(rotational_speed)) * std::sqrt((square(channel.outer) - square(channel.inner)) / loss);
}

// Nu = max(3.66, 0.023 Re^0.8 Pr^0.4) (1 + (D_h/L)^⅔)
double passage_coefficient(const Passages& passages, double air_speed, const Air& air) {
  const Channel channel = channel_of(passages);
  if (!channel.open) return 0;
  const Air sound = bounded(air);
  const double diameter = channel.hydraulic_diameter;
  const double reynolds = sound.density * bounded(air_speed) * diameter / sound.viscosity;
  const double turbulent = 0.023 * std::pow(reynolds, 0.8) * std::pow(sound.prandtl, 0.4);
  const double entrance = 1 + std::cbrt(square(diameter / channel.length));
  return std::max(laminar_tube, turbulent) * entrance * sound.conductivity / diameter;
}

// C (1 − e^(−hA/C)), C = ρ u A_flow c
double passage_conductance(const Passages& passages, double rotational_speed, const Air& air) {
  const Channel channel = channel_of(passages);
  if (!channel.open) return 0;
  const Air sound = bounded(air);
  const double speed = passage_speed(passages, rotational_speed);
  const double carried = sound.density * speed * channel.flow_area * sound.specific_heat;
  if (carried <= 0) return 0;
  const double walls = passage_coefficient(passages, speed, sound) * channel.wall_area;
  return carried * -std::expm1(-walls / carried);
}

double disc_conductance(const DiscShape& shape, double rotational_speed, const Air& air, double rise_over_air) {
  const double forced = rotating_face_coefficient(shape.inner_radius, shape.outer_radius, rotational_speed, air);
  const double natural = natural_convection_coefficient(2 * bounded(shape.outer_radius), rise_over_air, air);
  const double faces = 2 * face_area(shape) * combined_coefficient(forced, natural);
  return faces + (shape.passages ? passage_conductance(*shape.passages, rotational_speed, air) : 0);
}

// 2 π (r_o² − r_i²) + 2 π r_o t
double radiating_area(const DiscShape& shape) {
  return 2 * face_area(shape) + 2 * pi * bounded(shape.outer_radius) * bounded(shape.thickness);
}

}  // namespace holdback::physics
