#include "holdback/physics/heat.hpp"

#include <limits>

namespace holdback::physics {

double slip_power(double torque, double rotational_speed) { return torque * rotational_speed; }

// E = M_b ω_0 t/2
double stop_energy(double torque, double rotational_speed, double stop_time) {
  return torque * rotational_speed * stop_time / 2;
}

// ΔΘ = E/(m c)
double adiabatic_rise(double energy, double mass, double specific_heat) {
  const double capacity = mass * specific_heat;
  if (energy == 0) return 0;
  if (capacity <= 0) return std::numeric_limits<double>::infinity();
  return energy / capacity;
}

}  // namespace holdback::physics
