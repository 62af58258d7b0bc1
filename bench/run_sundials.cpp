// Question: how long does a general solver take for the same run at the same error? SUNDIALS steps the same equations
// under the same controller, samples and events; its tolerance is loosened until the error of the tension is as large
// as ours at the usual one. Wanted: five times as long as ours.
//
// Errors are root mean squares over the run against our own steps at 1e-10 of the steps' tolerance; `references_differ`
// is how far ARKODE (run) and CVODE BDF (chain) at 1e-10 lie from that. Times are processor time, the best of three.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdlib>
#include <ctime>

#include "stand_in_motion.hpp"
#include "sundials_mover.hpp"

namespace {

using namespace holdback;
using bench::Solver;
using bench::SundialsMover;

/// Five minutes of the stand, its regulator without steps, so that errors do not decide on which side one rounds.
dynamics::RunRequest five_minutes(double runout) {
  dynamics::RunRequest request = bench::half_an_hour(runout);
  request.scenario.events[0].duration = 290;
  request.controller = [] {
    dynamics::LoopSettings settings;
    settings.gain = 0.05;
    settings.integral_time = 0.5;
    settings.sample_time = 0.01;
    settings.full_radius = 0.45;
    settings.scheduled = true;
    dynamics::Believed believed;
    believed.torque_per_pressure = 1e-3;
    believed.threshold = 1e4;
    believed.drag = 1.5;
    return std::make_unique<dynamics::LoopController>(dynamics::Held::tension, settings, believed,
                                                      dynamics::PressureRange{0, 6e5, 0});
  };
  return request;
}

/// The same stand for twenty seconds on a chain of four light idlers with short spans of a stiff web.
dynamics::RunRequest stiff_chain() {
  dynamics::RunRequest request = five_minutes(0);
  request.scenario.events[0].duration = 10;
  dynamics::PathPlant path;
  path.stiffness = 1e6;
  path.spans = {0.6, 0.4, 0.5, 0.4, 0.6};
  path.idlers.assign(4, dynamics::IdlerPlant{0.04, 4e-4, 0.04});
  path.cell_span = 4;
  request.rig.plant.path = path;
  return request;
}

MotionRun ours(dynamics::RunRequest request, double relative, dynamics::Steps steps) {
  request.rig.mover = {relative, steps};
  return dynamics::run(request);
}

template <class L>
MotionRun theirs(dynamics::RunRequest request, double relative, Solver solver, bool keeps_history) {
  request.rig.maker = [=](const dynamics::Plant& plant, const dynamics::Start& start, const dynamics::MoverOptions&) {
    return std::make_unique<SundialsMover<L>>(plant, start, relative, solver, keeps_history);
  };
  return dynamics::run(request);
}

/// Root mean square of the difference in tension over the setpoint, and the largest in radius over the radius.
struct Errors {
  double tension{}, radius{};
};

Errors errors_of(const MotionRun& run, const MotionRun& reference) {
  Errors errors;
  if (run.end == RunEnd::failed || run.trace.time.size() != reference.trace.time.size()) return {1e9, 1e9};
  double sum = 0;
  for (std::size_t i = 0; i < run.trace.time.size(); ++i) {
    const double off = (run.trace.tension[i] - reference.trace.tension[i]) / 150;
    sum += off * off;
    errors.radius = std::max(errors.radius, std::abs(run.trace.diameter[i] / reference.trace.diameter[i] - 1));
  }
  errors.tension = std::sqrt(sum / static_cast<double>(run.trace.time.size()));
  return errors;
}

/// Best of three, processor time [s].
template <class Run>
double time_of(const Run& run) {
  double best = 1e9;
  for (int k = 0; k < 3; ++k) {
    const std::clock_t before = std::clock();
    benchmark::DoNotOptimize(run().steps);
    best = std::min(best, static_cast<double>(std::clock() - before) / CLOCKS_PER_SEC);
  }
  return best;
}

template <class L>
void compare(benchmark::State& state, const dynamics::RunRequest& request, dynamics::Steps steps, Solver solver,
             bool keeps_history, Solver second) {
  for (auto _ : state) {
    const MotionRun reference = ours(request, 1e-10, steps);
    const MotionRun other = theirs<L>(request, 1e-10, second, false);
    const auto our_run = [&] { return ours(request, 1e-5, steps); };
    const MotionRun mine = our_run();
    const Errors wanted = errors_of(mine, reference);
    Errors got;
    double relative = 0;
    MotionRun found;
    for (int k = 8; k < 40; ++k) {  // a quarter of a decade each, from 1e-2 on
      relative = std::pow(10.0, -0.25 * k);
      found = theirs<L>(request, relative, solver, keeps_history);
      got = errors_of(found, reference);
      if (got.tension <= wanted.tension && got.radius <= std::max(wanted.radius, 1e-8)) break;
    }
    const double our_time = time_of(our_run);
    const double their_time = time_of([&] { return theirs<L>(request, relative, solver, keeps_history); });
    state.counters["references_differ"] = errors_of(other, reference).tension;
    state.counters["our_error"] = wanted.tension;
    state.counters["their_error"] = got.tension;
    state.counters["our_radius_error"] = wanted.radius;
    state.counters["their_radius_error"] = got.radius;
    state.counters["their_relative"] = relative;
    state.counters["our_ms"] = 1e3 * our_time;
    state.counters["their_ms"] = 1e3 * their_time;
    state.counters["our_steps"] = mine.steps;
    state.counters["their_steps"] = found.steps;
    state.counters["ratio"] = their_time / our_time;
  }
}

using Small = dynamics::Layout<1, false>;
using Chain = dynamics::Layout<dynamics::most_spans, false>;
constexpr auto explicit_steps = dynamics::Steps::explicit_steps;

void smooth(benchmark::State& state, Solver solver, bool keeps_history, double runout) {
  compare<Small>(state, five_minutes(runout), explicit_steps, solver, keeps_history, Solver::erk);
}
BENCHMARK_CAPTURE(smooth, erk_round, Solver::erk, false, 0)->Iterations(1);
BENCHMARK_CAPTURE(smooth, erk_runout, Solver::erk, false, 5e-4)->Iterations(1);
BENCHMARK_CAPTURE(smooth, adams_round, Solver::adams, false, 0)->Iterations(1);
BENCHMARK_CAPTURE(smooth, adams_going_on_round, Solver::adams, true, 0)->Iterations(1);
BENCHMARK_CAPTURE(smooth, adams_runout, Solver::adams, false, 5e-4)->Iterations(1);
BENCHMARK_CAPTURE(smooth, bdf_runout, Solver::bdf, false, 5e-4)->Iterations(1);

void chain(benchmark::State& state, Solver solver) {
  compare<Chain>(state, stiff_chain(), dynamics::Steps::stiff_steps, solver, false, Solver::bdf);
}
BENCHMARK_CAPTURE(chain, bdf, Solver::bdf)->Iterations(1);
BENCHMARK_CAPTURE(chain, dirk, Solver::dirk)->Iterations(1);

}  // namespace
