// How fast a long log is read: rows of five channels as a recorder writes them, from memory, on one thread and on two.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <cstring>

#include "holdback/files/read_log.hpp"
#include "log_text.hpp"

namespace {

using holdback::LogBlock;
using holdback::files::LogReader;

double read_through(const std::string& text, std::size_t threads) {
  std::size_t at = 0;
  LogReader reader("log.csv",
                   [&](char* to, std::size_t most) {
                     const std::size_t some = std::min(most, text.size() - at);
                     std::memcpy(to, text.data() + at, some);
                     at += some;
                     return some;
                   },
                   {{}, {}, {}, {}, {}, threads});
  double rows = 0;
  for (LogBlock block; reader.next(block);) rows += static_cast<double>(block.rows);
  return rows;
}

void read_log(benchmark::State& state) {
  constexpr std::size_t rows = 2'000'000;
  static const std::string text = log_bench::text(rows);
  for (auto _ : state)
    if (read_through(text, static_cast<std::size_t>(state.range(0))) != static_cast<double>(rows)) std::abort();
  state.SetBytesProcessed(static_cast<std::int64_t>(text.size()) * state.iterations());
}
BENCHMARK(read_log)->ArgName("threads")->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace
