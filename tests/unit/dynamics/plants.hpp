// Stands that the tests of dynamics share.
#pragma once

#include <cmath>
#include <memory>
#include <numbers>
#include <vector>

#include "holdback/dynamics/mover.hpp"
#include "holdback/dynamics/rig.hpp"

namespace holdback::dynamics::testing {

using std::numbers::pi;

/// The roll of the published checks R-5, S-3 and S-4, J(R) = 0.5 + ½π·800·1.0·(R⁴ − 0.08⁴), caliper 0.2 mm, on 3 m of
/// web of 2e5 N; a brake of 1e-3 N·m/Pa, invented.
inline Plant published_plant() {
  Plant plant;
  plant.roll = {0.08, 2e-4, 0.5, pi / 2 * 800, 0, 1, 0};
  plant.brake = {1e-3, 0, 1, 0, 0};
  plant.path = single_span(3, 2e5);
  return plant;
}

/// The same with a roll that keeps its size.
inline Plant plant_of_constant_size() {
  Plant plant = published_plant();
  plant.roll.caliper = 0;
  return plant;
}

/// A path of four idlers with short spans (invented).
inline PathPlant chain_path() {
  PathPlant path;
  path.stiffness = 2e5;
  path.spans = {0.8, 0.5, 0.6, 0.5, 0.6};
  path.idlers.assign(4, IdlerPlant{0.05, 0.01, 0.1});
  path.cell_span = 3;
  return path;
}

inline std::unique_ptr<Mover> mover(const Plant& plant, const Start& start, double relative = 1e-10,
                                    Steps steps = Steps::explicit_steps) {
  return make_mover(plant, start, {relative, steps});
}

/// A line at one speed and a brake at one pressure.
inline Drive steady_drive(double line_speed, double pressure) {
  Drive drive;
  drive.line_speed = line_speed;
  drive.set_pressure = pressure;
  return drive;
}

/// Angular frequency [rad/s] of a swing from the times at which the samples rise through `middle`, every `period` s.
inline double swing_frequency(const std::vector<double>& samples, double middle, double period) {
  double first = -1, last = -1;
  int count = -1;
  for (std::size_t i = 1; i < samples.size(); ++i) {
    if (!(samples[i - 1] < middle && samples[i] >= middle)) continue;
    const double at = period * (static_cast<double>(i - 1) + (middle - samples[i - 1]) / (samples[i] - samples[i - 1]));
    if (first < 0) first = at;
    last = at;
    ++count;
  }
  return count < 1 ? 0 : 2 * pi * count / (last - first);
}

/// The published plant with threshold, drag and air, and a load cell without faults.
inline RigSetup rig_setup() {
  RigSetup setup;
  setup.plant = published_plant();
  setup.plant.brake = {1e-3, 1e4, 1, 0, 1.5};
  setup.plant.air = {0.05, 0, 0};
  setup.heat.nodes.capacity = {6000, 400, 1500, 1500};
  setup.heat.nodes.pads_disc = 4;
  setup.heat.convection = {2, 3, 4, 5};
  setup.heat.ambient = 298.15;
  setup.setpoint = 150;
  setup.line_speed = 5;
  setup.radius = 0.40;
  return setup;
}

/// What a controller knows of that plant when it knows it well.
inline Believed known(const Plant& plant) {
  Believed believed;
  believed.torque_per_pressure = plant.brake.torque_per_pressure;
  believed.threshold = plant.brake.threshold;
  believed.drag = plant.brake.drag;
  believed.fixed_inertia = plant.roll.fixed_inertia;
  believed.inertia_per_fourth = plant.roll.inertia_per_fourth;
  believed.core_radius = plant.roll.core_radius;
  return believed;
}

inline constexpr PressureRange any_pressure{0, 6e5, 0};

}  // namespace holdback::dynamics::testing
