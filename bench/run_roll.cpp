// Question: how much faster than the line does a roll run through, controller at 100 Hz, from full to nearly core?
// Wanted: twenty thousand times.
#include <benchmark/benchmark.h>

#include <cstdlib>

#include "stand_in_motion.hpp"

namespace {

using namespace holdback;

void run_roll(benchmark::State& state) {
  const dynamics::RunRequest request = bench::half_an_hour(static_cast<double>(state.range(0)) / 1e4);
  double ran = 0;
  for (auto _ : state) {
    const MotionRun run = dynamics::run(request);
    if (run.end == RunEnd::failed) std::abort();
    ran += run.line_time;
    benchmark::DoNotOptimize(run.energy.slipped);
  }
  state.counters["times real time"] = benchmark::Counter(ran, benchmark::Counter::kIsRate);
}
BENCHMARK(run_roll)->ArgName("runout_tenth_mm")->Arg(0)->Arg(5)->Unit(benchmark::kMillisecond);

}  // namespace
