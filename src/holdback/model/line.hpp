// The line that pulls the web: its speeds, how fast it changes them, and how long it runs.
#pragma once

#include "holdback/model/problem.hpp"

namespace holdback {

struct Line {
  double top_speed{};            // [m/s] > 0
  double lowest_speed{};         // [m/s] ≥ 0, slowest speed at which tension must be held
  double ramp_time{};            // [s] > 0, standstill to top speed
  double stop_time{};            // [s] > 0, top speed to standstill
  double emergency_stop_time{};  // [s] > 0, top speed to standstill
  double changeover_time{};      // [s] > 0, standstill between two rolls
  double hours_per_day{};        // [1] 0..24
  double days_per_week{};        // [1] 0..7
  double weeks_per_year{};       // [1] 0..53
  double uptime{};               // [1] 0..1, share of the shift in which web runs
  bool operator==(const Line&) const = default;
};

Problems problems_of(const Line& line);

}  // namespace holdback
