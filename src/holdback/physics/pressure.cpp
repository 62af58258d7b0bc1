#include "holdback/physics/pressure.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "holdback/physics/brake.hpp"
#include "holdback/physics/torque.hpp"

namespace holdback::physics {

// p = p_0 + (T R − M_d)⁺/K
double pressure_for_tension(double tension, double radius, double drag, double torque_per_pressure, double threshold) {
  return pad_pressure_for(torque_per_pressure, brake_torque(tension, radius, drag, 0, 0), threshold);
}

// T = (K (p − p_0)⁺ + M_d)/R
double tension_at_pressure(double pressure, double radius, double drag, double torque_per_pressure, double threshold) {
  return lowest_tension(pad_torque(torque_per_pressure, pressure, threshold), drag, radius);
}

// ⌈ln(R/r)/ln((1 + ε)/(1 − ε))⌉; a hair is taken off first, so that a whole number stays what it is.
int hand_settings(double full_radius, double core_radius, double tolerance) {
  if (full_radius <= core_radius || tolerance >= 1) return 1;
  const double settings = std::log(full_radius / core_radius) / std::log((1 + tolerance) / (1 - tolerance));
  constexpr int most = std::numeric_limits<int>::max();
  if (tolerance <= 0 || settings >= most) return most;
  return std::max(1, static_cast<int>(std::ceil(settings * (1 - 1e-12))));
}

}  // namespace holdback::physics
