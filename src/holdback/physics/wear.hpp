// Wear of the pads: worn volume is friction energy times a specific rate (Archard's law in terms of energy).
#pragma once

#include "holdback/model/brake.hpp"
#include "holdback/numerics/wide.hpp"

namespace holdback::physics {

/// Specific wear rate [m³/J] at a pad temperature [K]: k · 2^((Θ − Θ_knee)⁺/ΔΘ_double). The doubling law above a knee
/// is common practice, no source: knee and step come from the grade's data.
double wear_rate_at(const Grade& grade, double temperature);

/// Share by which wear grows with heat [1]: 2^((Θ − Θ_knee)⁺/ΔΘ_double), the law of wear_rate_at() in numbers; to 1e-9,
/// held from 2^60 on.
inline double wear_growth(double wear_knee, double wear_doubling, double temperature) {
  return numerics::power_of_two((temperature - wear_knee) / wear_doubling);
}

/// Worn volume [m³]: V = k E. Source: [archard1953] with k = K/(μ H).
double worn_volume(double wear_rate, double energy);

/// Running time [s] until a pad's usable volume [m³] is worn, at a friction power [W] of that pad: V/(k Q). Infinite at
/// zero power.
double pad_life(double usable_volume, double wear_rate, double power_of_pad);

}  // namespace holdback::physics
