#include "holdback/dynamics/plant.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "holdback/physics/brake.hpp"

namespace holdback::dynamics {

PathPlant single_span(double length, double stiffness, double wound_in) {
  PathPlant path;
  path.spans = {length};
  path.stiffness = stiffness;
  path.wound_in = wound_in;
  return path;
}

Plant lumped(const Plant& plant) {
  Plant simple = plant;
  PathPlant& path = simple.path;
  path.spans = {std::accumulate(plant.path.spans.begin(), plant.path.spans.end(), 0.0)};
  path.idlers.clear();
  for (std::size_t k = 0; k < plant.path.idlers.size(); ++k) {
    const IdlerPlant& idler = plant.path.idlers[k];
    const double drag = idler.drag / idler.radius;
    const double mass = idler.inertia / (idler.radius * idler.radius);
    path.following_drag += drag;
    path.following_mass += mass;
    // The cell sits on the idler before its span and feels half of what that one takes.
    const double share = k + 1 < plant.path.cell_span ? 1 : k + 1 == plant.path.cell_span ? 0.5 : 0;
    path.cell_drag += share * drag;
    path.cell_mass += share * mass;
  }
  path.cell_span = 0;
  if (path.dancer) path.dancer->span = 0;
  return simple;
}

// An idler of mass J/r² between two springs EA/L: ω² = EA (1/L₁ + 1/L₂) r²/J, twice that when its neighbour swings
// against it (Gershgorin).
double fastest_idler_mode(const PathPlant& path) {
  double fastest = 0;
  for (std::size_t k = 0; k < path.idlers.size(); ++k) {
    const double mass = path.idlers[k].inertia / (path.idlers[k].radius * path.idlers[k].radius);
    const double spring = path.stiffness * (1 / path.spans[k] + 1 / path.spans[k + 1]);
    fastest = std::max(fastest, std::sqrt(2 * spring / mass));
  }
  return fastest;
}

// J = J_0 + π b w/(2 t) (R⁴ − r⁴)
double inertia_at(const RollPlant& roll, double radius) {
  const double square = radius * radius;
  const double core = roll.core_radius * roll.core_radius;
  return roll.fixed_inertia + roll.inertia_per_fourth * (square * square - core * core);
}

// m = π b w/t (R² − r²)
double web_mass_at(const RollPlant& roll, double radius) {
  return 2 * roll.inertia_per_fourth * (radius * radius - roll.core_radius * roll.core_radius);
}

// What slides cannot hold less at rest: with less static friction the brake would drive the roll backward.
double static_torque(const BrakePlant& brake, double pressure, double share) {
  return std::max(1.0, brake.static_ratio) * share *
             physics::pad_torque(brake.torque_per_pressure, pressure, brake.threshold) +
         brake.drag;
}

// Falling friction never turns into a push.
double sliding_torque(const BrakePlant& brake, double pressure, double share, double rotational_speed) {
  const double of_speed = std::max(0.0, 1 + brake.friction_slope * std::abs(rotational_speed));
  return share * of_speed * physics::pad_torque(brake.torque_per_pressure, pressure, brake.threshold) + brake.drag;
}

}  // namespace holdback::dynamics
