// An invented brake of a common size, for rules of the trade that need one: a finned disc of 16 in with room for four
// pairs of round pads, offered with three friction grades. Every number is made up; none is any maker's.
#pragma once

#include <numbers>
#include <string>

#include "holdback/model/brake.hpp"
#include "support/disc.hpp"

namespace holdback::published {

inline Grade example_grade(const std::string& name, double friction) {
  Grade grade;
  grade.name = name;
  grade.friction = friction;
  grade.friction_band = 0.2;
  grade.static_ratio = 1.1;
  grade.fade_start = 453.15;         // 180 °C
  grade.fade_rate = 0.002;           // 0.2 % per kelvin
  grade.temperature_limit = 503.15;  // 230 °C
  grade.wear_rate = 3e-14;           // 30 mm³/MJ
  grade.wear_knee = 423.15;          // 150 °C
  grade.wear_doubling = 40;
  grade.pressure_speed_limit = 2.5e6;
  return grade;
}

inline Brake example_brake() {
  Brake brake;
  brake.name = "finned 16 in, round pads (invented)";
  brake.pad = RoundPad{0.060, 0.340};
  brake.pairs = 4;
  brake.most_brakes = 2;
  brake.piston_area = 11e-4;
  brake.actuator_efficiency = 1;
  brake.threshold_pressure = 0.35e5;
  brake.pad_area = std::numbers::pi / 4 * 0.060 * 0.060;
  brake.usable_pad_depth = 0.008;
  brake.drag = 0.3;
  brake.disc_mass = 18;
  brake.disc_inertia = 0.38;
  brake.specific_heat = 460;
  test::make_cast_iron(brake);
  constexpr double rev_per_minute = std::numbers::pi / 30;
  brake.cooling = {{30 * rev_per_minute, 750},
                   {100 * rev_per_minute, 1300},
                   {300 * rev_per_minute, 2600},
                   {600 * rev_per_minute, 3700},
                   {1000 * rev_per_minute, 4500}};
  brake.cooling_rise = 150;
  brake.rated_pressure = 6e5;
  brake.rated_torque = 380;
  brake.rated_speed = 1500 * rev_per_minute;
  brake.rated_temperature = 523.15;  // 250 °C
  brake.grades = {example_grade("low", 0.15), example_grade("medium", 0.30), example_grade("high", 0.45)};
  return brake;
}

}  // namespace holdback::published
