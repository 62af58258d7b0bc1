// Stands for tests, built in plain SI values: small, sane, and easy to vary. All invented.
#pragma once

#include "holdback/model/stand.hpp"
#include "support/disc.hpp"

namespace holdback::test {

inline Grade middle_grade() {
  Grade grade;
  grade.name = "middle";
  grade.friction = 0.35;
  grade.friction_band = 0.2;
  grade.static_ratio = 1.1;
  grade.fade_start = 480;
  grade.fade_rate = 0.001;
  grade.temperature_limit = 540;
  grade.wear_rate = 3e-14;
  grade.wear_doubling = 40;
  return grade;
}

/// A finned disc with four pairs of round pads, one grade.
inline Brake disc_brake() {
  Brake brake;
  brake.name = "disc";
  brake.pad = RoundPad{0.06, 0.325};
  brake.pairs = 4;
  brake.most_brakes = 2;
  brake.piston_area = 1e-3;
  brake.actuator_efficiency = 0.95;
  brake.threshold_pressure = 1e4;
  brake.pad_area = 2.8e-3;
  brake.usable_pad_depth = 8e-3;
  brake.drag = 0.2;
  brake.disc_mass = 19;
  brake.disc_inertia = 0.42;
  brake.specific_heat = 500;
  make_cast_iron(brake);
  brake.cooling = {{5, 1000}, {15, 1900}, {40, 3400}, {150, 5800}};
  brake.cooling_rise = 170;
  brake.rated_pressure = 6e5;
  brake.rated_torque = 340;
  brake.rated_speed = 190;
  brake.rated_temperature = 560;
  brake.grades = {middle_grade()};
  return brake;
}

inline Web film() {
  Web web;
  web.name = "film";
  web.material = Material::polyester;
  web.width = 1.2;
  web.caliper = 36e-6;
  web.basis_weight = 0.05;
  web.modulus = 4.2e9;
  web.yield_strength = 90e6;
  return web;
}

inline Roll metre_roll() {
  Roll roll;
  roll.name = "metre";
  roll.core_diameter = 0.172;
  roll.full_diameter = 1.0;
  roll.core_mass = 5;
  return roll;
}

inline Job film_job() {
  Job job;
  job.name = "film job";
  job.web = film();
  job.roll = metre_roll();
  job.speed = 5;
  job.tension = 220;
  return job;
}

/// One job, one brake of one grade, and everything else as a plant would have it.
inline Stand small_stand() {
  Stand stand;
  stand.title = "test stand (invented)";
  stand.drag = 0.8;
  stand.shaft_inertia = 0.25;
  stand.ambient = 300;
  stand.air = {5.8e5, 8e3, 6e5, 1e3, 1e3};
  stand.line = {6.5, 0.3, 40, 40, 15, 300, 16, 5, 50, 0.7};
  stand.limits = {0.1, 0.1, 1, 0.25, 1, 500 * 3600.0, 0.25, 0.003, 328.15, 1.5, 0.7, 20000 * 3600.0};
  stand.path.most_sag = 0.005;
  stand.uncertainty = {0.02, 0.3, 0.03, 0.05, 5, 0.15};
  stand.webs = {film()};
  stand.rolls = {metre_roll()};
  stand.jobs = {film_job()};
  stand.brakes = {disc_brake()};
  return stand;
}

}  // namespace holdback::test
