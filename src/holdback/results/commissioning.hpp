// What to read at a brake that was just fitted: settings that hurt neither brake nor web, and what each should show.
#pragma once

#include <string>
#include <vector>

#include "holdback/results/brake_fit.hpp"

namespace holdback {

/// One setting. Torques are at the shaft, drag included, with a cold disc; pulls are those torques over the radius of
/// the roll at `Commissioning::diameter`.
struct CommissioningPoint {
  int pairs{};        // engaged on each brake
  double pressure{};  // [Pa] gauge; 0: released
  PressureCourse course{PressureCourse::unknown};
  double torque{};       // [N·m] nominal friction
  double torque_low{};   // [N·m] lowest friction, pressure and drag that count as expected
  double torque_high{};  // [N·m] highest
  double pull{};         // [N]
  double pull_low{};     // [N]
  double pull_high{};    // [N]
  bool slack{};          // the pull lies below the web's window: read at standstill alone, not with the web running
};

/// The settings in the order in which they are read, least torque first, and what they rest on.
struct Commissioning {
  Fit fit{};
  std::string job{};             // whose roll and web bear the most torque
  double diameter{};             // [m] its full roll
  double least_diameter{};       // [m] of the roll on which every setting still keeps the web's highest tension
  double highest_pull{};         // [N] most that the web may see
  double lowest_pull{};          // [N] low end of its window
  double highest_pressure{};     // [Pa] that may be set: supply, regulator and rating of the brake
  double rated_torque{};         // [N·m] of all brakes
  double torque_per_pressure{};  // [N·m/Pa] of one pair at nominal friction
  double band_low{};             // [1] of it that still counts as this grade
  double band_high{};            // [1]
  double threshold{};            // [Pa]
  double pressure_error{};       // [Pa] by which a setting may be off
  double drag{};                 // [N·m] of shaft and released brakes
  double drag_low{};             // [N·m]
  double drag_high{};            // [N·m]
  double highest_temperature{};  // [K] of the disc up to which the table holds; 0: no fade known
  std::vector<int> left_out{};   // numbers of pairs with which nothing can be read within web and ratings
  std::vector<CommissioningPoint> points{};
};

}  // namespace holdback
