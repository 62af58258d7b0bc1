#include "holdback/model/scenario.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/model/event_words.hpp"
#include "holdback/model/faults.hpp"

namespace holdback {

std::string word_of(EventKind kind) {
  switch (kind) {
    case EventKind::ramp:
      return "ramp";
    case EventKind::hold:
      return "hold";
    case EventKind::stop:
      return "stop";
    case EventKind::emergency_stop:
      return "emergency stop";
    case EventKind::splice:
      return "splice";
    case EventKind::setpoint:
      return "setpoint";
    case EventKind::pairs:
      return "pairs";
    case EventKind::air_failure:
      return "air failure";
    case EventKind::web_break:
      break;
  }
  return "web break";
}

namespace {

std::string place(std::size_t index) { return "event[" + std::to_string(index) + "]"; }

bool takes_time(EventKind kind) {
  return kind == EventKind::ramp || kind == EventKind::hold || kind == EventKind::stop ||
         kind == EventKind::emergency_stop;
}

void check_times(const Scenario& scenario, Faults& faults) {
  std::optional<double> latest;
  for (std::size_t i = 0; i < scenario.events.size(); ++i) {
    const std::optional<double>& at = scenario.events[i].at;
    if (!at || !std::isfinite(*at)) continue;  // a time that could not be read
    if (latest && *at < *latest) {
      faults.error(place(i) + ".at",
                   {"The events are out of order: this one is at {0}, one above it at {1}.",
                    {{*at, Quantity::duration}, {*latest, Quantity::duration}}},
                   {"at least {0}, or events in their order", {{*latest, Quantity::duration}}});
    }
    latest = std::max(latest.value_or(*at), *at);
  }
  if (!scenario.end || !latest || !(*scenario.end < *latest)) return;
  faults.error("end",
               {"The scenario ends at {0}, before its last event at {1}.",
                {{*scenario.end, Quantity::duration}, {*latest, Quantity::duration}}},
               {"at least {0}", {{*latest, Quantity::duration}}});
}

/// The roll only gets smaller, until a splice brings a new one.
void check_diameters(const Scenario& scenario, Faults& faults) {
  std::optional<double> smallest;
  for (std::size_t i = 0; i < scenario.events.size(); ++i) {
    const Event& event = scenario.events[i];
    if (event.at_diameter && std::isfinite(*event.at_diameter)) {
      if (smallest && *event.at_diameter > *smallest) {
        faults.error(
            place(i) + ".at_diameter",
            {"This event waits for a diameter of {0}, but one above it for {1}, and the roll only gets smaller.",
             {{*event.at_diameter, Quantity::short_length}, {*smallest, Quantity::short_length}}},
            {"at most {0}, or a splice between them", {{*smallest, Quantity::short_length}}});
      }
      smallest = std::min(smallest.value_or(*event.at_diameter), *event.at_diameter);
    }
    if (event.kind == EventKind::splice) smallest.reset();
  }
}

void check_start(const Event& event, const std::string& path, Faults& faults) {
  if (!event.at || !event.at_diameter) return;
  faults.error(path + ".at_diameter",
               {"The event has both a time, {0}, and a diameter, {1}, at which it begins.",
                {{*event.at, Quantity::duration}, {*event.at_diameter, Quantity::short_length}}},
               {"at or at_diameter, one of the two"});
}

/// A field without meaning is passed over, so that it is a doubt and no error.
void check_idle_fields(const Event& event, const std::string& path, Faults& faults) {
  const auto doubt = [&](bool given, bool has_meaning, const std::string& field, const std::string& where) {
    if (!given || has_meaning) return;
    faults.warning(path + "." + field,
                   {field + " has no meaning with do = \"" + word_of(event.kind) + "\" and is passed over."},
                   {"no " + field + " here; it belongs to " + where});
  };
  const auto is = [&](EventKind kind) { return event.kind == kind; };
  doubt(event.speed.has_value(), is(EventKind::ramp), "speed", "a ramp");
  doubt(event.tension.has_value(), is(EventKind::setpoint), "tension", "a setpoint");
  doubt(event.pairs.has_value(), is(EventKind::pairs), "pairs", "do = \"pairs\"");
  doubt(event.mismatch != 0, is(EventKind::splice), "mismatch", "a splice");
  doubt(event.duration.has_value(), takes_time(event.kind), "duration", "a ramp, a hold or a stop");
}

void check_needed_fields(const Scenario& scenario, std::size_t index, Faults& faults) {
  const Event& event = scenario.events[index];
  const std::string path = place(index);
  if (event.kind == EventKind::setpoint && !event.tension)
    faults.error(path + ".tension", {"The setpoint needs a tension."}, {"tension = \"150 N\", for example"});
  if (event.kind == EventKind::pairs && !event.pairs)
    faults.error(path + ".pairs", {"The event needs the number of pairs that are engaged from here on."},
                 {"pairs = 2, for example"});
  const bool is_last = index + 1 == scenario.events.size();
  const bool next_ends_it =
      is_last ? scenario.end.has_value() : scenario.events[index + 1].at_diameter || scenario.events[index + 1].at;
  if (event.kind == EventKind::hold && !event.duration && !next_ends_it)
    faults.error(path + ".duration", {"The hold needs a duration: nothing says when it is over."},
                 {"duration = \"30 s\", for example, or an at or at_diameter of the next event"});
}

void check_after_web_break(const Scenario& scenario, Faults& faults) {
  const std::vector<Event>& events = scenario.events;
  const auto broken =
      std::find_if(events.begin(), events.end(), [](const Event& event) { return event.kind == EventKind::web_break; });
  if (broken == events.end()) return;
  auto next = broken + 1;
  if (next != events.end() && next->kind == EventKind::hold) ++next;
  if (next == events.end()) return;
  faults.error(place(static_cast<std::size_t>(next - events.begin())) + ".do",
               {"Nothing but a last hold can follow a web break, and here stands \"" + word_of(next->kind) + "\"."},
               {"at most one hold, as the last event"});
}

}  // namespace

Problems problems_of(const Scenario& scenario, const std::string& path) {
  Faults faults(path);
  if (scenario.events.empty())
    faults.error("event", {"The scenario has no event."}, {"at least one [[scenario.event]] under its [[scenario]]"});
  check_times(scenario, faults);
  check_diameters(scenario, faults);
  for (std::size_t i = 0; i < scenario.events.size(); ++i) {
    check_start(scenario.events[i], place(i), faults);
    check_idle_fields(scenario.events[i], place(i), faults);
    check_needed_fields(scenario, i, faults);
  }
  check_after_web_break(scenario, faults);
  return faults.take();
}

}  // namespace holdback
