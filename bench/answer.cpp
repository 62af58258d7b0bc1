// Question: how long does a user wait for an answer after one input was edited? The whole way: request text, stand
// file, every limit of every fit, answer text. Wanted: under 50 ms in the page, so well under that here.
#include <benchmark/benchmark.h>

#include <cstdlib>
#include <nlohmann/json.hpp>
#include <string>

#include "holdback/api/answer.hpp"
#include "stand_text.hpp"

namespace {

void answer(benchmark::State& state, const char* command, const char* example) {
  const nlohmann::json stand{{"name", example}, {"text", bench::text_of(example)}};
  const std::string request = nlohmann::json{{"version", 1}, {"command", command}, {"stand", stand}}.dump();
  for (auto _ : state) {
    const std::string text = holdback::api::answer(request);
    if (text.size() < 200) std::abort();
    benchmark::DoNotOptimize(text.data());
  }
}
BENCHMARK_CAPTURE(answer, check_small_mix, "check", "01-label-slitter.toml")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(answer, size_small_mix, "size", "01-label-slitter.toml")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(answer, size_hard_mix, "size", "02-film-laminator.toml")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();
BENCHMARK_CAPTURE(answer, plan_small_mix, "plan", "01-label-slitter.toml")->Unit(benchmark::kMillisecond);

}  // namespace
