// The unwind shaft under the heaviest roll of a job.
#pragma once

#include <optional>

namespace holdback {

struct ShaftFacts {
  double deflection{};                   // [m] largest, full roll
  double slope_first{};                  // [rad] at the first bearing
  double slope_second{};                 // [rad]
  double bending_stress{};               // [Pa] at the worst place
  double torsion_stress{};               // [Pa] there
  double safety{};                       // [1] against fatigue, in an emergency stop
  double whirl_speed{};                  // [rad/s] first, with the roll at the core
  double whirl_speed_full{};             // [rad/s] first, with the full roll
  double top_speed{};                    // [rad/s] at the core
  double bearing_load{};                 // [N] of the harder loaded bearing, full roll
  std::optional<double> bearing_life{};  // [s] running time; none without a rating
  double grip_torque{};    // [N·m] through the grip on the core in an emergency stop, highest over the roll
  double grip_diameter{};  // [m] of the roll there
};

}  // namespace holdback
