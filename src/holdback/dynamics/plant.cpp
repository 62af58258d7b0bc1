#include "holdback/dynamics/plant.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/physics/brake.hpp"

namespace holdback::dynamics {

// J = J_0 + π b w/(2 t) (R⁴ − r⁴)
double inertia_at(const RollPlant& roll, double radius) {
  const double square = radius * radius;
  const double core = roll.core_radius * roll.core_radius;
  return roll.fixed_inertia + roll.inertia_per_fourth * (square * square - core * core);
}

double static_torque(const BrakePlant& brake, double pressure) {
  return brake.static_ratio * physics::pad_torque(brake.torque_per_pressure, pressure, brake.threshold) + brake.drag;
}

// Falling friction never turns into a push.
double sliding_torque(const BrakePlant& brake, double pressure, double rotational_speed) {
  const double share = std::max(0.0, 1 + brake.friction_slope * std::abs(rotational_speed));
  return share * physics::pad_torque(brake.torque_per_pressure, pressure, brake.threshold) + brake.drag;
}

}  // namespace holdback::dynamics
