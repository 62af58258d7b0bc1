// Question: how long does a whole set of papers for a mix of a hundred jobs take, from the stand file to the bytes of
// the PDFs? Wanted: under 3 s.
#include <benchmark/benchmark.h>

#include <cstdlib>
#include <string>

#include "holdback/api/papers.hpp"
#include "pdf.hpp"
#include "stand_text.hpp"

namespace {

using holdback::papers::Kind;

/// A hundred jobs with those of the example, over its webs and rolls.
std::string jobs_beside(int count) {
  static const char* const webs[]{"paper label stock", "wide paper label stock", "clear film label stock",
                                  "overlaminate", "thermal ticket paper"};
  std::string csv = "name,web,roll,speed [m/min],tension [N],share\n";
  for (int i = 0; i < count; ++i)
    csv += "job " + std::to_string(i) + "," + webs[i % 5] + "," + (i % 3 == 0 ? "450 on 76" : "600 on 76") + "," +
           std::to_string(80 + 7 * i % 160) + "," + std::to_string(30 + 11 * i % 110) + ",1\n";
  return csv;
}

void papers(benchmark::State& state, Kind kind) {
  holdback::api::PapersRequest request;
  request.base.stand = {"stand.toml", bench::text_of("01-label-slitter.toml")};
  request.base.jobs = holdback::api::Source{"mix.csv", jobs_beside(94)};
  request.kinds = {kind};
  int pages = 0;
  for (auto _ : state) {
    const auto set = holdback::api::make_papers(request);
    if (set.papers.empty()) std::abort();
    const auto written = holdback::pdf::pdf(set.papers, {});
    pages = written.pages;
    benchmark::DoNotOptimize(written.bytes.data());
  }
  state.counters["pages"] = pages;
}
BENCHMARK_CAPTURE(papers, report_of_100_jobs, Kind::selection_report)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK_CAPTURE(papers, cards_of_100_jobs, Kind::setup_card)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace
