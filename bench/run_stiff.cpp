// Question: from how fast a swing on are stiff steps cheaper than explicit ones? Twenty seconds of a chain of four
// idlers under a load cell's loop, the idlers lighter and lighter; `turn` is what the bound of their fastest swing
// turns within a sample [rad], the measure of choose_method() in mover.hpp.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdlib>
#include <ctime>

#include "stand_in_motion.hpp"

namespace {

using namespace holdback;

dynamics::RunRequest chain(double inertia, dynamics::Steps steps) {
  dynamics::RunRequest request = bench::half_an_hour(0);
  request.scenario.events[0].duration = 10;
  dynamics::PathPlant path;
  path.stiffness = 1e6;
  path.spans = {0.6, 0.4, 0.5, 0.4, 0.6};
  path.idlers.assign(4, dynamics::IdlerPlant{0.04, inertia, 0.04});
  path.cell_span = 4;
  request.rig.plant.path = path;
  request.rig.mover.steps = steps;
  return request;
}

/// Processor time of a run [s], the best of five.
double time_of(const dynamics::RunRequest& request) {
  double best = 1e9;
  for (int k = 0; k < 5; ++k) {
    const std::clock_t before = std::clock();
    if (dynamics::run(request).end == RunEnd::failed) std::abort();
    best = std::min(best, static_cast<double>(std::clock() - before) / CLOCKS_PER_SEC);
  }
  return best;
}

void run_stiff(benchmark::State& state) {
  const double inertia = 1e-2 / std::pow(2, static_cast<double>(state.range(0)));
  const auto request = chain(inertia, dynamics::Steps::explicit_steps);
  for (auto _ : state) {
    const double by_explicit = time_of(request);
    const double by_stiff = time_of(chain(inertia, dynamics::Steps::stiff_steps));
    state.counters["turn"] = dynamics::fastest_idler_mode(request.rig.plant.path) * request.rig.sample_time;
    state.counters["explicit_ms"] = 1e3 * by_explicit;
    state.counters["stiff_ms"] = 1e3 * by_stiff;
    state.counters["stiff_over_explicit"] = by_stiff / by_explicit;
  }
}
BENCHMARK(run_stiff)->ArgName("halvings")->DenseRange(0, 8, 1)->Iterations(1)->Unit(benchmark::kMillisecond);

}  // namespace
