#include "holdback/physics/wear.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace holdback::physics {

// k · 2^((Θ − Θ_knee)⁺/ΔΘ_double)
double wear_rate_at(const Grade& grade, double temperature) {
  if (!grade.wear_knee) return grade.wear_rate;
  const double above = std::max(0.0, temperature - *grade.wear_knee);
  if (above == 0) return grade.wear_rate;
  return grade.wear_rate * std::exp2(above / grade.wear_doubling);
}

// V = k E
double worn_volume(double wear_rate, double energy) { return wear_rate * energy; }

// t = V/(k Q)
double pad_life(double usable_volume, double wear_rate, double power_of_pad) {
  const double worn_per_second = wear_rate * power_of_pad;
  if (worn_per_second <= 0) return std::numeric_limits<double>::infinity();
  return usable_volume / worn_per_second;
}

}  // namespace holdback::physics
