// Question: how much faster than the line does a roll run through, controller at 100 Hz, from full to nearly core?
// Wanted: twenty thousand times.
#include <benchmark/benchmark.h>

#include <cstdlib>
#include <numbers>

#include "holdback/dynamics/run.hpp"

namespace {

using namespace holdback::dynamics;

/// A roll of half a ton on a span of three metres (invented), half an hour at 100 m/min, with a normal stop at the end.
void run_roll(benchmark::State& state) {
  Plant plant;
  plant.roll = {0.09, 1e-4, 0.6, std::numbers::pi / 2 * 900, static_cast<double>(state.range(0)) / 1e4};
  plant.brake = {1e-3, 1e4, 1.1, 0, 1.5};
  plant.air = {0.08, 0.04};
  plant.span = {3, 2e5, 0, 2, 4};
  const MotionState start = steady_state(plant, 5.0 / 3, 150, 0.45);
  const BelievedBrake believed{1e-3, 1e4, 1.5};
  const PressureRange range{0, 6e5, 500};
  double ran = 0;
  for (auto _ : state) {
    LoadCellPi controller({20, 0.5, 0.01, 0.9, true}, believed, range);
    const Course course =
        run(plant, start, 5.0 / 3, {{"hold", 1790, 5.0 / 3}, {"stop", 10, 0}}, controller, 150, {140, 160}, Sampling{});
    if (course.failed) std::abort();
    ran += 1800;
    benchmark::DoNotOptimize(course.slip_work);
  }
  state.counters["times real time"] = benchmark::Counter(ran, benchmark::Counter::kIsRate);
}
BENCHMARK(run_roll)->ArgName("runout_tenth_mm")->Arg(0)->Arg(5)->Unit(benchmark::kMillisecond);

}  // namespace
