// Question: how long does it take to judge a large mix, 1,000 jobs on 200 fits, every limit over the whole roll?
// Wanted: under a second on two cores. The jobs and brakes are those of example 02, varied so that no two are alike.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <vector>

#include "holdback/files/stand_file.hpp"
#include "holdback/sizing/cover.hpp"
#include "stand_text.hpp"

namespace {

constexpr std::size_t job_count = 1000;
constexpr std::size_t fit_count = 200;

/// A value that runs evenly through 0 … 1 as i grows, without repeating.
double spread(std::size_t i) {
  const double turns = 0.6180339887498949 * static_cast<double>(i);
  return turns - std::floor(turns);
}

holdback::Stand large_stand() {
  holdback::Stand stand = bench::stand_of("02-film-laminator.toml");
  const std::vector<holdback::Job> jobs = stand.jobs;
  const std::vector<holdback::Brake> brakes = stand.brakes;
  stand.jobs.clear();
  for (std::size_t i = 0; i < job_count; ++i) {
    holdback::Job job = jobs[i % jobs.size()];
    job.name += " " + std::to_string(i);
    job.speed *= 0.7 + 0.3 * spread(i);
    if (job.tension) *job.tension *= 0.8 + 0.4 * spread(i + 7);
    stand.jobs.push_back(job);
  }
  stand.brakes.clear();
  while (holdback::sizing::candidates(stand).size() < fit_count) {
    holdback::Brake brake = brakes[stand.brakes.size() % brakes.size()];
    brake.name += " " + std::to_string(stand.brakes.size());
    brake.piston_area *= 0.6 + 0.8 * spread(stand.brakes.size());
    stand.brakes.push_back(brake);
  }
  return stand;
}

void cover_mix(benchmark::State& state) {
  const holdback::Stand stand = large_stand();
  const holdback::sizing::Site site = holdback::sizing::site_of(stand);
  std::vector<holdback::sizing::Candidate> fits = holdback::sizing::candidates(stand);
  fits.resize(fit_count);
  for (auto _ : state) {
    const auto coverage = holdback::sizing::cover(stand, site, fits, static_cast<int>(state.range(0)));
    if (coverage.verdicts.size() != fit_count || coverage.verdicts.front().size() != job_count) std::abort();
    benchmark::DoNotOptimize(coverage.verdicts.back().back().margin);
  }
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(job_count * fit_count));
  state.SetLabel("items: one job on one fit");
}
BENCHMARK(cover_mix)->ArgName("threads")->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace
