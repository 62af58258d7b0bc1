// Hand-made answers for the tests of the writers: plausible to look at, computed by nobody.
#pragma once

#include "holdback/results/answer.hpp"
#include "unit/draw/motion_samples.hpp"

namespace holdback::sample {

inline Limit limit(LimitId id, double value, double bound, double margin, State state) {
  return {id, value, bound, margin, 0.1, 0.6, LoadCase::stop, Known::rating, state};
}

inline StopFacts stop(double slack) { return {12, 200, 180, 1.0, 25000, 350, 362, slack, slack > 0 ? 1.0 : 0, 3, 14}; }

inline TensionTarget tension() { return {400, 360, 440, true, 350, 200, 500, "strength", 2100}; }

inline RollFacts roll() { return {12300, 512, 42.1, 0.9, 2460}; }

inline JobFit job(const std::string& name, double margin, State state) {
  JobFit job;
  job.job = name;
  job.pairs = 2;
  job.state = state;
  job.limits = {limit(LimitId::stop_torque, 200, 200 * margin, margin, state),
                limit(LimitId::disc_temperature, 400, 480, 1.6, State::holds)};
  job.binding = LimitId::stop_torque;
  job.margin = margin;
  job.pressure_full = 320000;
  job.pressure_core = 85000;
  job.lowest_tension = 120;
  job.slip_power = 1480;
  job.hottest = 416.15;
  job.hottest_diameter = 0.33;
  job.tension = tension();
  job.roll = roll();
  job.stop = stop(state == State::fails ? 1.25 : 0);
  job.emergency_stop = stop(0);
  job.web_break = {150, 22, 1.0};
  job.wear = {4.4e6, 2.2e7, 1800, 1.2e7, 8, 240.5};
  job.notes = {{"steady heat from {0} on", {{3600, Quantity::running_time}}}};
  return job;
}

inline Envelope envelope() {
  Envelope envelope;
  envelope.job = "narrow label";
  for (int i = 0; i <= 8; ++i) {
    const double diameter = 0.1 + 0.1 * i;
    envelope.diameter.push_back(diameter);
    envelope.run.push_back(200 * diameter);
    envelope.ramp.push_back(150 * diameter);
    envelope.stop.push_back(300 * diameter);
    envelope.emergency_stop.push_back(380 * diameter);
    envelope.hold.push_back(100 * diameter);
    envelope.capacity_low.push_back(400);
    envelope.capacity_nominal.push_back(500);
    envelope.floor.push_back(5);
    envelope.pressure.push_back(300000 * diameter);
    envelope.temperature.push_back(400);
    envelope.rotational_speed.push_back(10 / diameter);
  }
  return envelope;
}

inline Choice choice() {
  Choice choice;
  choice.title = "Invented stand";
  choice.fits_tried = 12;
  FitResult best;
  best.fit = {"D300", "medium", 2, 4};
  best.covered = 1;
  best.tight = 1;
  best.worst_margin = 1.04;
  best.worst_limit = LimitId::stop_torque;
  best.worst_job = "narrow label";
  best.pads_per_year = 14;
  best.price = 2400;
  best.jobs = {job("narrow label", 1.04, State::tight), job("wide board", 0.9, State::fails)};
  choice.recommended = best;
  choice.why = {"it covers more jobs", {}};
  Uncovered out;
  out.job = "wide board";
  out.why = {"the stop asks for {0}", {{210, Quantity::torque}}};
  out.failing = {limit(LimitId::stop_torque, 200, 180, 0.9, State::fails)};
  out.remedies = {{RemedyKind::slower_stop,
                   {"stop in {0} instead of {1}", {{16, Quantity::duration}, {12, Quantity::duration}}},
                   State::tight,
                   LimitId::stop_torque,
                   1.02,
                   {"narrow label"},
                   {}}};
  choice.uncovered = {out};
  choice.assumptions = {{"air at {0}", {{301.15, Quantity::temperature}}}};
  choice.cautions = {{"Keep clear of the in-running nip.", {}}};
  return choice;
}

inline Check check() {
  JobFacts facts{"narrow label", "paper", "1 m roll", 0.33, 4.0, tension(), roll(), 61, 12, 1480};
  return {"Invented stand", 1, 1, 2, 12, {facts}, {{"Keep clear of the in-running nip.", {}}}};
}

inline Plan plan() {
  JobPlan job;
  job.job = "narrow label";
  job.fit = {"D300", "medium", 2, 4};
  job.pairs = 2;
  job.state = State::tight;
  job.binding = LimitId::stop_torque;
  job.tension = tension();
  for (int i = 0; i <= 20; ++i) job.automatic.push_back({1.0 - 0.04 * i, 320000 - 12000.0 * i, 200 - 8.0 * i, 400});
  job.tolerance = 0.08;
  job.by_hand = {{1.0, 0.7, 300000, 370, 430}, {0.7, 0.2, 200000, 372, 428}};
  job.notes = {{"the regulator steps by {0}", {{1000, Quantity::pressure}}}};
  return {"Invented stand", job.fit, {job}, {}, {{"Keep clear of the in-running nip.", {}}}};
}

inline Problem problem() {
  Problem problem;
  problem.what = {"the core is not smaller than the full roll: {0} against {1}",
                  {{0.5, Quantity::short_length}, {0.4, Quantity::short_length}}};
  problem.field = "roll[0].core_diameter";
  problem.value = "\"500 mm\"";
  problem.accepted = {"below {0}", {{0.4, Quantity::short_length}}};
  problem.file = "stand.toml";
  problem.where = {42, 17};
  problem.source_line = "core_diameter = \"500 mm\"";
  return problem;
}

/// A table of jobs whose headers are not all keys.
inline std::vector<ColumnRead> columns() {
  return {{"mix.xlsx", "A", "Job", "name", "", false},
          {"mix.xlsx", "B", "speed [m/min]", "speed", "m/min", true},
          {"mix.xlsx", "D", "Operator", "", "", false}};
}

/// The whole mix.
inline Answer size() {
  Answer answer;
  answer.command = "size";
  answer.outcome = Outcome::fails;
  answer.defaults = {{"air.supply_pressure", "", "6 bar"},
                     {"brake[0].grade[0].friction_band", "grade \"soft\"", "20 %"},
                     {"brake[0].grade[1].friction_band", "grade \"medium\"", "20 %"}};
  answer.choice = choice();
  return answer;
}

/// Everything that an answer can hold, each optional filled.
inline Answer everything() {
  Answer answer = size();
  answer.problems = {problem()};
  answer.problems.front().severity = Severity::warning;
  answer.columns = columns();
  answer.choice->next = answer.choice->recommended;
  answer.choice->next->pad_cost_per_year = 310;
  answer.choice->all = {*answer.choice->recommended};
  answer.choice->job = answer.choice->recommended->jobs.front();
  answer.choice->envelope = envelope();
  answer.check = check();
  answer.plan = plan();
  answer.simulation = samples::simulation(true);
  answer.tuning = samples::tuning();
  return answer;
}

}  // namespace holdback::sample
