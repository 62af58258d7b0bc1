// Heat over rolls and change-overs: the state that repeats, how long it takes to get there, and how long to cool.
#pragma once

#include <vector>

namespace holdback {

/// The hottest of one part of the brake in the repeating state.
struct ThermalFacts {
  double disc_highest{};           // [K]
  double disc_lowest{};            // [K]
  double highest_diameter{};       // [m] of the roll when the disc is hottest
  double pads_highest{};           // [K] mean of a pad
  double calipers_highest{};       // [K]
  double hub_highest{};            // [K]
  double surface_highest{};        // [K] face of the disc in an emergency stop from the hottest moment
  double friction_left{};          // [1] at the hottest moment
  double pad_life{};               // [s] running time, wear followed through the repeating state
  double time_constant{};          // [s] slowest way in which the brake warms and cools while it runs
  double time_to_hot{};            // [s] from cold to 95 % of the highest rise, running roll after roll
  bool hot_at_once{};              // the first roll already gets there
  double time_to_open{};           // [s] standing, from the hottest moment to the touch temperature
  bool never_cool{};               // the air is too warm for that
  double changeover{};             // [s] standstill between rolls that was reckoned with
  std::vector<double> time{};      // [s] from the start of a roll
  std::vector<double> diameter{};  // [m] of the roll; the core's while standing
  std::vector<double> disc{};      // [K] in the repeating state
  std::vector<double> pads{};      // [K]
  std::vector<double> calipers{};  // [K]
  std::vector<double> hub{};       // [K]
  std::vector<double> steady{};    // [K] where the disc would come to rest at that moment's power and speed
};

}  // namespace holdback
