// The judge of logs against stands with a fault that their file does not know. bench/diagnose_faults.cpp asks more
// cases of other seeds; docs/performance.md has its figures. Seeds are fixed, so that a run tells a change and not a
// chance.
#include <gtest/gtest.h>

#include "support/faulty_log.hpp"

namespace holdback::test {
namespace {

constexpr int cases = 34;  // of each kind: 204 together

class FaultNamed : public ::testing::TestWithParam<Fault> {};

TEST_P(FaultNamed, by_the_first_cause) {
  const Fault fault = GetParam();
  int named = 0, judged_cases = 0;
  std::string missed;
  for (std::uint64_t seed = 100'000 * static_cast<std::uint64_t>(fault); judged_cases < cases; ++seed) {
    ASSERT_LT(seed % 100'000, 3000U) << "too few cases can be drawn";
    const auto log = draw_faulty_log(fault, seed);
    if (!log) continue;
    ++judged_cases;
    const Diagnosis diagnosis = judged(*log);
    if (diagnosis.causes.front().kind == expected_cause(fault))
      ++named;
    else
      missed +=
          "\n  seed " + std::to_string(seed) + log->told + ": " + std::string(key_of(diagnosis.causes.front().kind));
  }
  // None of the healthy ones may be accused; stick-slip under a load cell often looks like hunting.
  EXPECT_GE(named, fault == Fault::none ? 34 : fault == Fault::stick_slip ? 29 : 32) << missed;
}

INSTANTIATE_TEST_SUITE_P(each, FaultNamed,
                         ::testing::Values(Fault::none, Fault::runout, Fault::dead_pair, Fault::glazing, Fault::hunting,
                                           Fault::stick_slip),
                         [](const auto& kind) {
                           std::string name(key_of(expected_cause(kind.param)));
                           for (char& c : name)
                             if (c == ' ' || c == '-') c = '_';
                           return name;
                         });

}  // namespace
}  // namespace holdback::test
