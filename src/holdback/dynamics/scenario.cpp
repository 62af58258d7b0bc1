// The scenario that every job has.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "holdback/dynamics/run.hpp"

namespace holdback::dynamics {

namespace {

Event event(EventKind kind, std::optional<double> duration = {}, std::optional<double> at_diameter = {}) {
  Event made;
  made.kind = kind;
  made.duration = duration;
  made.at_diameter = at_diameter;
  return made;
}

/// Seconds for which the line stands after a stop.
constexpr double pause = 5;
/// Seconds of steady running before the first stop.
constexpr double steady = 20;

}  // namespace

Scenario usual_scenario(const HardestDiameters& hardest, const LineHabits& habits, double core_radius, double caliper) {
  Scenario scenario;
  scenario.name = "usual";
  // Web that the last stop needs, with as much again.
  const double left = 2 * habits.speed * habits.stop_time;
  const double last = 2 * std::sqrt(core_radius * core_radius + left * caliper / std::numbers::pi);
  const double full = 2 * habits.full_radius;
  std::vector<Event>& events = scenario.events;
  events.push_back(event(EventKind::ramp));
  events.push_back(event(EventKind::hold, steady));
  const auto add = [&](EventKind kind, double diameter) {
    // At the full roll the stop comes as soon as the line runs.
    const double at = std::min(diameter, full);
    if (at > last) {
      events.push_back(event(kind, {}, at));
      events.push_back(event(EventKind::hold, pause));
      events.push_back(event(EventKind::ramp));
      events.push_back(event(EventKind::hold, steady));
    }
  };
  const bool stop_first = hardest.stop >= hardest.emergency_stop;
  add(stop_first ? EventKind::stop : EventKind::emergency_stop, std::max(hardest.stop, hardest.emergency_stop));
  add(stop_first ? EventKind::emergency_stop : EventKind::stop, std::min(hardest.stop, hardest.emergency_stop));
  events.push_back(event(EventKind::stop, {}, std::min(last, full)));
  return scenario;
}

}  // namespace holdback::dynamics
