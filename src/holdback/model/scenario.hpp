// A scenario: what happens to the running stand, in order.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/model/problem.hpp"

namespace holdback {

enum class EventKind {
  ramp,            // the line goes to a speed, evenly
  hold,            // the line keeps its speed for a duration
  stop,            // normal stop
  emergency_stop,  // emergency stop
  splice,          // the web goes over to a new full roll, at the line's speed
  setpoint,        // another tension is asked for
  pairs,           // so many pad pairs are engaged on each brake from here on
  air_failure,     // the air leaves the brake line
  web_break        // the web parts between roll and nip
};

struct Event {
  EventKind kind{EventKind::hold};
  std::optional<double> at{};           // [s] ≥ 0 from the start; none: as soon as the event before is over
  std::optional<double> at_diameter{};  // [m] > 0: not before the roll is down to it; the line runs on until then
  std::optional<double> speed{};        // [m/s] ≥ 0, ramp: at its end; else the job's speed
  std::optional<double> duration{};     // [s] ≥ 0, ramp, hold, stops; else what job and line say of ramps and stops
  std::optional<double> tension{};      // [N] > 0, setpoint
  std::optional<int> pairs{};           // ≥ 0, pairs
  double mismatch{};                    // [1] −0.5..0.5, splice: speed of the new roll's surface against the line
  bool operator==(const Event&) const = default;
};

struct Scenario {
  std::string name{};
  std::optional<double> start_diameter{};  // [m] > 0; else the full roll
  std::optional<double> start_speed{};     // [m/s] ≥ 0; else standstill
  std::optional<double> end{};             // [s] > 0 from the start; else when the events are over
  std::vector<Event> events{};             // in their order
  bool operator==(const Scenario&) const = default;
};

/// Faults of the events among themselves. `path` is the scenario's place in the stand file, "scenario[1]". What the
/// line cannot do is in problems_of(const Stand&).
Problems problems_of(const Scenario& scenario, const std::string& path);

}  // namespace holdback
