#include "holdback/physics/wear.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace holdback::physics {

// k · 2^((Θ − Θ_knee)⁺/ΔΘ_double)
double wear_rate_at(const Grade& grade, double temperature) {
  if (!grade.wear_knee) return grade.wear_rate;
  if (temperature <= *grade.wear_knee) return grade.wear_rate;
  return grade.wear_rate * wear_growth(*grade.wear_knee, grade.wear_doubling, temperature);
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
