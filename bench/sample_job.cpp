// Questions: how many whole checks of one job a second, as uncertainty makes them: every limit over the whole roll, on
// one thread and on two? Wanted: a million on two cores. And what do the other parts of a job in depth cost?
#include <benchmark/benchmark.h>

#include <cstdint>
#include <cstdlib>
#include <vector>

#include "holdback/numerics/parallel_for.hpp"
#include "holdback/sizing/choose.hpp"
#include "holdback/sizing/likelihood.hpp"
#include "holdback/sizing/thermal.hpp"
#include "holdback/sizing/window.hpp"
#include "stand_text.hpp"

namespace {

namespace sizing = holdback::sizing;

/// Example 02 with its first fit.
struct Case {
  holdback::Stand stand = bench::stand_of("02-film-laminator.toml");
  sizing::Site site = sizing::site_of(stand);
  sizing::Candidate candidate = sizing::candidates(stand, site).front();
  std::vector<sizing::Demand> demands{};
  Case() {
    for (const holdback::Job& job : stand.jobs) demands.push_back(sizing::demand_of(job, site));
  }
};

void sample_job(benchmark::State& state) {
  const Case c;
  const auto threads = static_cast<std::size_t>(state.range(0));
  constexpr std::size_t chunks = 16;
  const sizing::Sampling sampling{256, 20};
  std::int64_t samples = 0;
  for (auto _ : state) {
    std::vector<sizing::SampledJob> done(chunks);
    holdback::numerics::parallel_for(chunks, threads, [&](std::size_t i) {
      done[i] = sizing::sample_job(c.demands[i % c.demands.size()], c.candidate, c.site, 2, sampling);
    });
    for (const auto& job : done) samples += job.likelihood.samples;
  }
  state.SetItemsProcessed(samples);
  state.SetLabel("items: one whole check");
}
BENCHMARK(sample_job)->ArgName("threads")->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();

void survey_one(benchmark::State& state) {
  const Case c;
  const auto disc = c.candidate.cooling->over(c.demands.front(), c.site.ambient);
  sizing::Pass pass;
  for (auto _ : state) {
    sizing::pass_over(c.demands.front(), disc, c.candidate, c.site, {}, pass);
    benchmark::DoNotOptimize(sizing::survey(c.demands.front(), disc, pass, c.candidate, sizing::Where::left_out).drag);
  }
}
BENCHMARK(survey_one)->Unit(benchmark::kMicrosecond);

void assess_one(benchmark::State& state) {
  const Case c;
  const auto survey = sizing::survey(c.demands.front(), c.candidate, c.site);
  for (auto _ : state)
    benchmark::DoNotOptimize(sizing::summarize(c.demands.front(), survey, c.candidate, c.site, 2).margin);
}
BENCHMARK(assess_one)->Unit(benchmark::kMicrosecond);

void demand_one(benchmark::State& state) {
  const Case c;
  for (auto _ : state) benchmark::DoNotOptimize(sizing::demand_of(c.stand.jobs.front(), c.site).speed);
}
BENCHMARK(demand_one)->Unit(benchmark::kMicrosecond);

void cooling_over_roll(benchmark::State& state) {
  const Case c;
  for (auto _ : state) benchmark::DoNotOptimize(c.candidate.cooling->over(c.demands.front(), c.site.ambient));
}
BENCHMARK(cooling_over_roll)->Unit(benchmark::kMicrosecond);

void cooling_curve(benchmark::State& state) {
  const Case c;
  for (auto _ : state) benchmark::DoNotOptimize(sizing::CoolingCurve(*c.candidate.brake, c.site).rated_rise());
}
BENCHMARK(cooling_curve)->Unit(benchmark::kMicrosecond);

void thermal_facts(benchmark::State& state) {
  const Case c;
  for (auto _ : state)
    benchmark::DoNotOptimize(sizing::thermal_facts(c.demands.front(), c.candidate, c.site, 2).disc_highest);
}
BENCHMARK(thermal_facts)->Unit(benchmark::kMicrosecond);

void tension_window(benchmark::State& state) {
  const Case c;
  for (auto _ : state)
    benchmark::DoNotOptimize(sizing::tension_window(c.stand.jobs.front(), c.demands.front(), c.site).bounds.size());
}
BENCHMARK(tension_window)->Unit(benchmark::kMicrosecond);

}  // namespace
