#include "holdback/physics/heat.hpp"

#include <limits>

namespace holdback::physics {

// ΔΘ = E/(m c)
double adiabatic_rise(double energy, double mass, double specific_heat) {
  const double capacity = mass * specific_heat;
  if (energy == 0) return 0;
  if (capacity <= 0) return std::numeric_limits<double>::infinity();
  return energy / capacity;
}

}  // namespace holdback::physics
