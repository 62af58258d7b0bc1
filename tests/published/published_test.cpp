// Published values: one test a case of cases/*.txt, named by its id.

#include <gtest/gtest.h>

#include <cctype>
#include <cmath>
#include <ostream>

#include "published/cases.hpp"
#include "published/evaluators.hpp"

namespace holdback::published {

/// How a failed case shows itself in the test's log.
void PrintTo(const Case& shown, std::ostream* out) { *out << shown.id; }

namespace {

const std::string folder = std::string(HOLDBACK_SOURCE_DIR) + "/tests/published/cases";

double relative_tolerance(const std::string& text) { return read_quantity(text, Quantity::number); }

/// What the expectation says of the value, as a sentence when it is not kept.
std::string broken(const Expectation& expectation, double value, const Dimension& dimension) {
  const std::string told = "got " + ::testing::PrintToString(value) + " [SI], stated " + expectation.value;
  if (expectation.kind == Expectation::Kind::range) {
    const double low = read_quantity(expectation.value, dimension);
    const double high = read_quantity(expectation.tolerance, dimension);
    return value >= low && value <= high ? "" : told + " .. " + expectation.tolerance;
  }
  bool agrees = false;
  if (expectation.tolerance == "print") {
    const auto [low, high] = read_printed(expectation.value, dimension);
    agrees = value >= low && value <= high;
  } else {
    const double stated = read_quantity(expectation.value, dimension);
    agrees = std::abs(value - stated) <= relative_tolerance(expectation.tolerance) * std::abs(stated);
  }
  return agrees == (expectation.kind == Expectation::Kind::agree) ? "" : told + " within " + expectation.tolerance;
}

/// Everything that is wrong with a case; empty when it holds.
std::string verdict(const Case& checked) {
  if (!checked.fault.empty()) return checked.fault;
  std::string wrong;
  for (const Evaluation& evaluation : checked.evaluations) {
    int line = evaluation.line;
    const auto tell = [&](const std::string& what) {
      if (!what.empty())
        wrong += checked.file + ":" + std::to_string(line) + ": " + evaluation.function + ": " + what + "\n";
    };
    const auto found = evaluators().find(evaluation.function);
    if (found == evaluators().end()) {
      tell("no such function");
      continue;
    }
    try {
      Arguments arguments(evaluation.arguments);
      const double value = found->second.call(arguments);
      arguments.expect_all_used();
      for (const Expectation& expectation : evaluation.expectations) {
        line = expectation.line;
        tell(broken(expectation, value, found->second.result));
      }
    } catch (const CaseFault& fault) {
      tell(fault.what());
    }
  }
  return wrong;
}

class Published : public ::testing::TestWithParam<Case> {};

TEST_P(Published, agrees) {
  const Case& checked = GetParam();
  EXPECT_EQ(verdict(checked), "") << checked.id << ": " << checked.title << "\n[" << checked.mark << "] "
                                  << checked.source;
}

std::string test_name(const ::testing::TestParamInfo<Case>& info) {
  std::string name = info.param.id;
  for (char& c : name) {
    if (std::isalnum(static_cast<unsigned char>(c)) == 0) c = '_';
  }
  return name;
}

INSTANTIATE_TEST_SUITE_P(cases, Published, ::testing::ValuesIn(read_folder(folder)), test_name);

// ---- the checker itself must be able to fail ------------------------------------------------------------------------

std::string verdict_on(const std::string& lines) {
  const auto cases = read_cases("case T-1 | a case\nsource here\nmark computed\n" + lines, "t.txt");
  return cases.size() == 1 ? verdict(cases[0]) : "not one case";
}

const std::string length = "evaluate roll_length core_radius = 20 mm, radius = 55 mm, caliper = 0.1754612918 mm\n";

TEST(PublishedChecker, tells_values_that_agree_from_values_that_do_not) {
  EXPECT_EQ(verdict_on(length + "expect 47 m within 1e-9"), "");
  EXPECT_NE(verdict_on(length + "expect 47.001 m within 1e-6"), "");
  EXPECT_EQ(verdict_on(length + "expect 47.0 m within print"), "");
  EXPECT_NE(verdict_on(length + "expect 47.1 m within print"), "");
  EXPECT_EQ(verdict_on(length + "reject 48 m within 1e-3"), "");
  EXPECT_NE(verdict_on(length + "reject 47 m within 1e-3"), "");
  EXPECT_EQ(verdict_on(length + "range 40 m .. 50 m"), "");
  EXPECT_NE(verdict_on(length + "range 48 m .. 50 m"), "");
}

TEST(PublishedChecker, refuses_what_it_cannot_read_and_says_where) {
  EXPECT_NE(verdict_on("evaluate nothing_of_ours a = 1\nexpect 1 within 1e-9"), "");
  EXPECT_NE(verdict_on(length), "");
  EXPECT_NE(verdict_on(length + "expect 47 within 1e-9"), "");
  EXPECT_NE(verdict_on(length + "expect 47 kg within 1e-9"), "");
  EXPECT_NE(verdict_on(length + "expect 47 m"), "");
  EXPECT_NE(verdict_on(length + "hope 47 m"), "");
  EXPECT_NE(verdict_on("evaluate roll_length core_radius = 20 mm\nexpect 47 m within 1"), "");
  EXPECT_NE(verdict_on("evaluate core_inertia mass = 1 kg, radius = 1 m, colour = 3\nexpect 1 kg m2 within 1"), "");
  const std::string message = verdict_on(length + "expect 47 kg within 1e-9");
  EXPECT_NE(message.find("t.txt:5"), std::string::npos) << message;
}

TEST(PublishedChecker, wants_a_source_and_a_mark_and_no_exact_rule_of_thumb) {
  const std::string rest = length + "expect 47 m within 1e-9\n";
  const auto fault_of = [&](const std::string& head) { return read_cases(head + rest, "t.txt").at(0).fault; };
  EXPECT_NE(fault_of("case T-1 | a case\nmark computed\n"), "");
  EXPECT_NE(fault_of("case T-1 | a case\nsource here\n"), "");
  EXPECT_NE(fault_of("case T-1 | a case\nsource here\nmark seen\n"), "");
  EXPECT_NE(fault_of("case T-1\nsource here\nmark computed\n"), "");
  EXPECT_NE(fault_of("case T-1 | a case\nsource none\nmark common practice\n"), "");
  EXPECT_EQ(fault_of("case T-1 | a case\nsource here\nmark computed\n"), "");
}

}  // namespace
}  // namespace holdback::published
