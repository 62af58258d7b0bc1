// Does the judge of logs name the fault? Random stands, each with one fault that its stand file does not know, run by
// the rig, logged and judged: the share named right by the first cause, and the false alarms of healthy ones. No time
// is measured; the counters are the answer.
//
// And how long is a long log judged? Rows of a quiet run, five channels, one thread.
#include <benchmark/benchmark.h>

#include "support/faulty_log.hpp"

namespace holdback::bench {

namespace {

constexpr std::uint64_t first_seed = 17'000'000;
constexpr int cases_of(test::Fault fault) { return fault == test::Fault::none ? 200 : 50; }

void diagnose_faults(benchmark::State& state) {
  const auto fault = static_cast<test::Fault>(state.range(0));
  int named = 0, second = 0, drawn = 0, judged = 0;
  for (auto _ : state) {
    named = second = drawn = judged = 0;
    for (std::uint64_t seed = first_seed + 100'000 * static_cast<std::uint64_t>(fault); judged < cases_of(fault);
         ++seed) {
      ++drawn;
      const auto log = test::draw_faulty_log(fault, seed);
      if (!log) continue;
      ++judged;
      const Diagnosis diagnosis = test::judged(*log);
      const CauseKind expected = test::expected_cause(fault);
      if (diagnosis.causes.front().kind == expected)
        ++named;
      else if (diagnosis.causes.size() > 1 && diagnosis.causes[1].kind == expected)
        ++second;
    }
  }
  state.SetLabel(std::string(key_of(test::expected_cause(fault))));
  state.counters["named"] = named;
  state.counters["second"] = second;
  state.counters["of"] = judged;
  state.counters["drawn"] = drawn;
}
BENCHMARK(diagnose_faults)->DenseRange(0, static_cast<int>(test::last_fault))->Iterations(1)->Unit(benchmark::kSecond);

void diagnose_rows(benchmark::State& state) {
  const double rate = static_cast<double>(state.range(0));
  Stand stand = test::small_stand();
  stand.control.kind = ControlKind::diameter;
  stand.diameter_sensor = DiameterSensor{};
  api::Request request;
  request.job = stand.jobs.front().name;
  request.threads = 1;
  const api::StandJob job(stand, request);
  const field::LogStand known = api::log_stand_of(stand, job);
  test::Chance chance(3);
  std::vector<double> noise(65'600);
  for (double& value : noise) value = chance.bell();
  LogBlock block;
  block.rows = 65'536;
  for (const LogChannel channel :
       {LogChannel::time, LogChannel::speed, LogChannel::tension, LogChannel::pressure, LogChannel::diameter})
    block.of(channel).resize(block.rows);
  std::size_t rows = 0;
  for (auto _ : state) {
    field::LogJudge judge(known);
    for (int k = 0; k < 40; ++k) {
      for (std::size_t i = 0; i < block.rows; ++i) {
        block.of(LogChannel::time)[i] = static_cast<double>(rows % (40 * block.rows)) / rate;
        block.of(LogChannel::speed)[i] = 5 + 0.005 * noise[i];
        block.of(LogChannel::tension)[i] = 220 + noise[i + 7];
        block.of(LogChannel::pressure)[i] = 2e5 + 300 * noise[i + 13];
        block.of(LogChannel::diameter)[i] = 1 + 0.0005 * noise[i + 3];
        ++rows;
      }
      judge.put(block);
    }
    benchmark::DoNotOptimize(judge.finish());
  }
  state.counters["rows"] = benchmark::Counter(static_cast<double>(rows), benchmark::Counter::kIsRate);
}
BENCHMARK(diagnose_rows)->Arg(100)->Arg(1000)->Unit(benchmark::kSecond);

}  // namespace

}  // namespace holdback::bench
