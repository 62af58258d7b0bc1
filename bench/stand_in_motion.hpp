// The stand that motion is measured on: a roll of half a ton on a span of three metres, half an hour at 100 m/min, with
// a normal stop at the end (invented).
#pragma once

#include <numbers>

#include "holdback/dynamics/run.hpp"

namespace holdback::bench {

inline constexpr double line_speed = 5.0 / 3;  // [m/s]

inline dynamics::RunRequest half_an_hour(double runout) {
  using namespace dynamics;
  RunRequest request;
  Plant& plant = request.rig.plant;
  plant.roll = {0.09, 1e-4, 0.6, std::numbers::pi / 2 * 900, runout, 1, 0};
  plant.brake = {1e-3, 1e4, 1.1, 0, 1.5};
  plant.air = {0.08, 0.04, 0};
  plant.path = single_span(3, 2e5);
  plant.path.following_drag = 2;
  plant.path.following_mass = 4;
  request.rig.heat.nodes.capacity = {6000, 400, 1500, 1500};
  request.rig.heat.nodes.pads_disc = 4;
  request.rig.heat.convection = {2, 3, 4, 5};
  request.rig.heat.ambient = 298.15;
  request.rig.setpoint = 150;
  request.rig.line_speed = line_speed;
  request.rig.radius = 0.45;
  request.rig.cell = {"", 0.02, 0, 0};
  request.kind = ControlKind::load_cell;
  request.controller = [] {
    LoopSettings settings;
    settings.gain = 0.05;
    settings.integral_time = 0.5;
    settings.sample_time = 0.01;
    settings.full_radius = 0.45;
    settings.scheduled = true;
    Believed believed;
    believed.torque_per_pressure = 1e-3;
    believed.threshold = 1e4;
    believed.drag = 1.5;
    return std::make_unique<LoopController>(Held::tension, settings, believed, PressureRange{0, 6e5, 500});
  };
  Event hold;
  hold.kind = EventKind::hold;
  hold.duration = 1790;
  Event stop;
  stop.kind = EventKind::stop;
  request.scenario.events = {hold, stop};
  request.habits = {line_speed, 20, 10, 5, 0.45};
  request.bounds.low = 0.9;
  request.bounds.high = 1.1;
  return request;
}

}  // namespace holdback::bench
