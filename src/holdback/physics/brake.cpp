#include "holdback/physics/brake.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace holdback::physics {

namespace {

/// Pressure that presses the pads: what stands above the threshold [Pa].
double pressing(double pressure, double threshold) { return std::max(0.0, pressure - threshold); }

FrictionRadius radius_of(const SectorPad& pad) {
  const double inner = pad.inner_diameter / 2;
  const double outer = pad.outer_diameter / 2;
  return {sector_radius_uniform_wear(inner, outer), sector_radius_uniform_pressure(inner, outer)};
}

FrictionRadius radius_of(const RoundPad& pad) {
  const double ratio = pad.pad_diameter / pad.centre_diameter;
  const double centre = pad.centre_diameter / 2;
  return {centre * round_pad_factor(ratio), centre * round_pad_factor_uniform_pressure(ratio)};
}

FrictionRadius radius_of(const DataSheetPad& pad) { return {pad.effective_diameter / 2, pad.effective_diameter / 2}; }

/// K = M_sheet/(p_sheet − p_0)
TorquePerPressure by_data_sheet(const DataSheetPad& pad, double threshold, const Grade& grade) {
  const double span = pad.torque_pressure - threshold;
  if (!grade.torque_per_pair || span <= 0) return {};
  const double slope = *grade.torque_per_pair / span;
  return {slope, slope};
}

/// K = 2 μ A_p η r_e
TorquePerPressure by_geometry(const Brake& brake, const Grade& grade) {
  const double friction_per_pressure =
      2 * grade.friction.value_or(0) * brake.piston_area * brake.actuator_efficiency;  // [N/Pa]
  const FrictionRadius radius = friction_radius(brake.pad);
  return {friction_per_pressure * radius.capacity, friction_per_pressure * radius.highest};
}

}  // namespace

double sector_radius_uniform_wear(double inner_radius, double outer_radius) {
  return (inner_radius + outer_radius) / 2;
}

// ⅔(r_o³ − r_i³)/(r_o² − r_i²) with (r_o − r_i) divided out, so that a narrow ring keeps its digits.
double sector_radius_uniform_pressure(double inner_radius, double outer_radius) {
  const double a = inner_radius;
  const double b = outer_radius;
  if (a + b <= 0) return 0;
  return 2.0 / 3.0 * (a * a + a * b + b * b) / (a + b);
}

// δ at R/e = 0, 0.1, … 0.5 as printed.
double round_pad_factor(double ratio) {
  constexpr std::array<double, 6> table{1.000, 0.9833, 0.9693, 0.9572, 0.9467, 0.9375};
  const double place = std::clamp(ratio, 0.0, 0.5) * 10;
  const std::size_t left = std::min<std::size_t>(static_cast<std::size_t>(place), table.size() - 2);
  const double share = place - static_cast<double>(left);
  return table[left] + share * (table[left + 1] - table[left]);
}

// δ = Σ_k C(½, k)² x^(2k)/(k + 1) = 1 + x²/8 + x⁴/192 + x⁶/1024 + …
double round_pad_factor_uniform_pressure(double ratio) {
  const double x = std::clamp(ratio, 0.0, 1.0);
  double sum = 1;
  double term = 1;  // C(½, k)² x^(2k)
  for (int k = 1; k <= 20; ++k) {
    const double step = (1.5 - k) / k * x;
    term *= step * step;
    sum += term / (k + 1);
  }
  return sum;
}

FrictionRadius friction_radius(const Pad& pad) {
  return std::visit([](const auto& kind) { return radius_of(kind); }, pad);
}

TorquePerPressure pair_torque_per_pressure(const Brake& brake, const Grade& grade) {
  if (const auto* sheet = std::get_if<DataSheetPad>(&brake.pad)) {
    return by_data_sheet(*sheet, brake.threshold_pressure, grade);
  }
  return by_geometry(brake, grade);
}

// M = K (p − p_0)⁺
double pad_torque(double torque_per_pressure, double pressure, double threshold) {
  return torque_per_pressure * pressing(pressure, threshold);
}

// p = p_0 + M⁺/K
double pad_pressure_for(double torque_per_pressure, double torque, double threshold) {
  if (torque <= 0) return threshold;
  if (torque_per_pressure <= 0) return std::numeric_limits<double>::infinity();
  return threshold + torque / torque_per_pressure;
}

double fade_factor(const Grade& grade, double temperature) {
  return grade.fade_start ? friction_left(*grade.fade_start, grade.fade_rate, temperature) : 1;
}

// A_p η (p − p_0)⁺/A_pad
double contact_pressure(const Brake& brake, double pressure) {
  const double force = brake.piston_area * brake.actuator_efficiency * pressing(pressure, brake.threshold_pressure);
  if (force <= 0) return 0;
  return force / brake.pad_area;
}

double sliding_speed(double friction_radius, double rotational_speed) { return friction_radius * rotational_speed; }

}  // namespace holdback::physics
