// Question: how long does it take to judge a large mix, 1,000 jobs on 200 fits, every limit over the whole roll? And
// how does that grow with jobs and fits? Wanted: under a second on two cores.
#include <benchmark/benchmark.h>

#include <cstdint>
#include <cstdlib>
#include <vector>

#include "holdback/sizing/cover.hpp"
#include "mix.hpp"

namespace {

void cover_mix(benchmark::State& state) {
  const auto jobs = static_cast<std::size_t>(state.range(0));
  const auto count = static_cast<std::size_t>(state.range(1));
  const holdback::Stand stand = bench::large_stand(jobs, count);
  const holdback::sizing::Site site = holdback::sizing::site_of(stand);
  std::vector<holdback::sizing::Candidate> fits = holdback::sizing::candidates(stand, site);
  fits.resize(count);
  for (auto _ : state) {
    const auto coverage = holdback::sizing::cover(stand, site, fits, static_cast<int>(state.range(2)));
    if (coverage.verdicts.size() != count || coverage.verdicts.front().size() != jobs) std::abort();
    benchmark::DoNotOptimize(coverage.verdicts.back().back().margin);
  }
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(jobs * count));
  state.SetLabel("items: one job on one fit");
}
BENCHMARK(cover_mix)
    ->ArgNames({"jobs", "fits", "threads"})
    ->Args({1000, 200, 1})
    ->Args({1000, 200, 2})
    ->Args({250, 200, 2})
    ->Args({1000, 50, 2})
    ->Args({4000, 200, 2})
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();

}  // namespace
