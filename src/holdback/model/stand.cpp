#include "holdback/model/stand.hpp"

#include <algorithm>
#include <set>

#include "holdback/model/faults.hpp"

namespace holdback {

namespace {

std::string place(const std::string& kind, std::size_t index) { return kind + "[" + std::to_string(index) + "]"; }

/// Jobs name webs and rolls, fits name brakes: a name must lead to one thing.
template <class Things>
void check_names(const Things& things, const std::string& kind, Faults& faults) {
  std::set<std::string> names;
  for (std::size_t i = 0; i < things.size(); ++i) {
    if (names.insert(things[i].name).second) continue;
    faults.error(place(kind, i) + ".name", {"More than one " + kind + " has this name."},
                 {"a name of its own for each " + kind});
  }
}

template <class Things>
void check_each(const Things& things, const std::string& kind, Faults& faults) {
  for (std::size_t i = 0; i < things.size(); ++i) faults.append(problems_of(things[i], place(kind, i)));
}

void check_presence(const Stand& stand, Faults& faults) {
  if (stand.brakes.empty())
    faults.error("brake", {"The stand has no brake to choose from."}, {"at least one [[brake]]"});
  if (stand.jobs.empty()) {
    faults.error("job", {"The stand has no job to run."}, {"at least one [[job]], or a table of jobs"});
    return;
  }
  if (std::all_of(stand.jobs.begin(), stand.jobs.end(), [](const Job& job) { return job.share <= 0; })) {
    faults.error("job[0].share", {"The shares of all jobs are zero, so there is no mix."},
                 {"a share above zero for one job"});
  }
}

void check_job_speeds(const Stand& stand, Faults& faults) {
  for (std::size_t i = 0; i < stand.jobs.size(); ++i) {
    const double speed = stand.jobs[i].speed;
    if (speed > stand.line.top_speed) {
      faults.error(place("job", i) + ".speed",
                   {"The job runs at {0}, but the line's top speed is {1}.",
                    {{speed, Quantity::speed}, {stand.line.top_speed, Quantity::speed}}},
                   {"at most {0}", {{stand.line.top_speed, Quantity::speed}}});
    } else if (speed < stand.line.lowest_speed) {
      faults.warning(place("job", i) + ".speed",
                     {"The job runs at {0}, below the lowest speed at which the line must hold tension, {1}.",
                      {{speed, Quantity::speed}, {stand.line.lowest_speed, Quantity::speed}}},
                     {"at least {0}, or a lower line.lowest_speed", {{stand.line.lowest_speed, Quantity::speed}}});
    }
  }
}

/// A part that may not be warmer than the air around it can take no heat at all.
void check_above_ambient(double limit, double ambient, const std::string& field, Faults& faults) {
  if (limit > ambient) return;
  faults.error(field,
               {"The temperature limit, {0}, is not above the air around the disc, {1}.",
                {{limit, Quantity::temperature}, {ambient, Quantity::temperature}}},
               {"a temperature above {0}", {{ambient, Quantity::temperature}}});
}

void check_brake_in_stand(const Stand& stand, std::size_t index, Faults& faults) {
  const Brake& brake = stand.brakes[index];
  const std::string path = place("brake", index);
  check_above_ambient(brake.rated_temperature, stand.ambient, path + ".rated_temperature", faults);
  for (std::size_t i = 0; i < brake.grades.size(); ++i) {
    check_above_ambient(brake.grades[i].temperature_limit, stand.ambient,
                        path + "." + place("grade", i) + ".temperature_limit", faults);
  }
  const double ceiling = std::min(stand.air.supply_pressure, stand.air.highest_pressure);
  if (brake.threshold_pressure >= ceiling) {
    faults.warning(path + ".threshold_pressure",
                   {"The pads grip from {0}, but the air gives {1} at most: this brake never grips.",
                    {{brake.threshold_pressure, Quantity::pressure}, {ceiling, Quantity::pressure}}},
                   {"a pressure below {0}", {{ceiling, Quantity::pressure}}});
  }
}

void check_sensor(const Stand& stand, Faults& faults) {
  const auto want = [&](ControlKind kind, bool there, const std::string& word, const std::string& table) {
    if (stand.control.kind != kind || there) return;
    faults.error("control.kind", {"The control goes by the " + word + ", but the stand has no [" + table + "]."},
                 {"add a [" + table + "] table; an empty one takes the usual values"});
  };
  want(ControlKind::load_cell, stand.load_cell.has_value(), "load cell", "load_cell");
  want(ControlKind::dancer, stand.dancer.has_value(), "dancer", "dancer");
  want(ControlKind::diameter, stand.diameter_sensor.has_value(), "measured diameter", "diameter_sensor");
}

/// The names of the idlers for a message; not all of a very long path.
Note idlers_to_choose_from(const std::vector<Idler>& idlers) {
  constexpr std::size_t most = 12;
  if (idlers.empty()) return {"no idler here, or an [[idler]] of that name; the stand has none"};
  std::string text = "an idler of the stand: ";
  for (std::size_t i = 0; i < std::min(most, idlers.size()); ++i)
    text += (i == 0 ? "\"" : ", \"") + idlers[i].name + "\"";
  if (idlers.size() > most) text += " and " + std::to_string(idlers.size() - most) + " more";
  return {text};
}

void check_idler_name(const Stand& stand, const std::string& name, const std::string& field, Faults& faults) {
  const auto is_known = [&](const Idler& idler) { return idler.name.empty() || idler.name == name; };
  // A nameless idler is one whose name could not be read; it may be this one.
  if (name.empty() || std::any_of(stand.idlers.begin(), stand.idlers.end(), is_known)) return;
  faults.error(field, {"No idler of the stand has this name."}, idlers_to_choose_from(stand.idlers));
}

void check_scenario_speeds(const Stand& stand, std::size_t index, Faults& faults) {
  const auto check = [&](const std::optional<double>& speed, const std::string& field) {
    if (!speed || !(*speed > stand.line.top_speed)) return;
    faults.error(place("scenario", index) + "." + field,
                 {"The scenario asks for {0}, but the line's top speed is {1}.",
                  {{*speed, Quantity::speed}, {stand.line.top_speed, Quantity::speed}}},
                 {"at most {0}", {{stand.line.top_speed, Quantity::speed}}});
  };
  const Scenario& scenario = stand.scenarios[index];
  check(scenario.start_speed, "start_speed");
  for (std::size_t i = 0; i < scenario.events.size(); ++i)
    if (scenario.events[i].kind == EventKind::ramp) check(scenario.events[i].speed, place("event", i) + ".speed");
}

}  // namespace

Problems problems_of(const AirSupply& air) {
  Faults faults("air");
  const double range = air.highest_pressure - air.lowest_pressure;
  if (range <= 0) {
    faults.error("lowest_pressure",
                 {"The regulator's lowest pressure, {0}, is not below its highest, {1}.",
                  {{air.lowest_pressure, Quantity::pressure}, {air.highest_pressure, Quantity::pressure}}},
                 {"a pressure below {0}", {{air.highest_pressure, Quantity::pressure}}});
    return faults.take();
  }
  if (air.supply_pressure < air.lowest_pressure) {
    faults.error("supply_pressure",
                 {"The supply, {0}, does not reach the regulator's lowest pressure, {1}.",
                  {{air.supply_pressure, Quantity::pressure}, {air.lowest_pressure, Quantity::pressure}}},
                 {"at least {0}", {{air.lowest_pressure, Quantity::pressure}}});
  }
  const auto check_step = [&](double step, const std::string& field, const std::string& name) {
    if (step < range) return;
    faults.error(field,
                 {"The regulator's " + name + ", {0}, is not below its whole range, {1}.",
                  {{step, Quantity::pressure}, {range, Quantity::pressure}}},
                 {"a small part of {0}", {{range, Quantity::pressure}}});
  };
  check_step(air.resolution, "resolution", "resolution");
  check_step(air.hysteresis, "hysteresis", "hysteresis");
  return faults.take();
}

Problems problems_of(const Stand& stand) {
  Faults faults("");
  check_presence(stand, faults);
  faults.append(problems_of(stand.air));
  faults.append(problems_of(stand.line));
  check_names(stand.idlers, "idler", faults);
  check_names(stand.webs, "web", faults);
  check_names(stand.rolls, "roll", faults);
  check_names(stand.jobs, "job", faults);
  check_names(stand.brakes, "brake", faults);
  check_each(stand.webs, "web", faults);
  check_each(stand.rolls, "roll", faults);
  check_each(stand.jobs, "job", faults);
  check_each(stand.brakes, "brake", faults);
  check_job_speeds(stand, faults);
  if (stand.shaft) faults.append(problems_of(*stand.shaft));
  for (std::size_t i = 0; i < stand.brakes.size(); ++i) check_brake_in_stand(stand, i, faults);
  faults.append(problems_of(stand.control));
  check_sensor(stand, faults);
  if (stand.load_cell) check_idler_name(stand, stand.load_cell->idler, "load_cell.idler", faults);
  if (stand.dancer) check_idler_name(stand, stand.dancer->idler, "dancer.idler", faults);
  check_names(stand.scenarios, "scenario", faults);
  check_each(stand.scenarios, "scenario", faults);
  for (std::size_t i = 0; i < stand.scenarios.size(); ++i) check_scenario_speeds(stand, i, faults);
  return faults.take();
}

}  // namespace holdback
