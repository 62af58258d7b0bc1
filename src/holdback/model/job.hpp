// A job: a web on a roll, run at a speed and a tension.
#pragma once

#include <optional>
#include <string>

#include "holdback/model/problem.hpp"
#include "holdback/model/roll.hpp"
#include "holdback/model/web.hpp"

namespace holdback {

struct Job {
  std::string name{};
  Web web{};                                    // resolved by name when the file is read
  Roll roll{};                                  // resolved by name when the file is read
  double speed{};                               // [m/s] > 0, running speed
  std::optional<double> tension{};              // [N] > 0 over the whole width; recommended when absent
  std::optional<double> tension_tolerance{};    // [1] 0..1, accepted ± around the setpoint; else the stand's limit
  std::optional<double> ramp_time{};            // [s] > 0, standstill to this job's speed
  std::optional<double> stop_time{};            // [s] > 0, this job's speed to standstill
  std::optional<double> emergency_stop_time{};  // [s] > 0, this job's speed to standstill
  double share{1};                              // [1] ≥ 0, weight of this job in the mix by running time
  bool operator==(const Job&) const = default;
};

Problems problems_of(const Job& job, const std::string& path);

}  // namespace holdback
