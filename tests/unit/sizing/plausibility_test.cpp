#include "holdback/sizing/plausibility.hpp"

#include <gtest/gtest.h>

#include <numbers>

#include "support/stands.hpp"

namespace holdback::sizing {
namespace {

// Length and mass of the test roll worked by hand: π(1.0² − 0.172²)/(4 · 36 µm) = 21 171 m, × 1.2 m × 50 g/m² = 1270
// kg.
constexpr double length = 21171;
constexpr double mass = 1270;

TEST(implausible, is_content_with_labels_that_fit) {
  Stand stand = test::small_stand();
  stand.jobs[0].roll.length = stand.rolls[0].length = length;
  stand.jobs[0].roll.mass = stand.rolls[0].mass = mass;
  EXPECT_TRUE(implausible(stand).empty());
}

TEST(implausible, refuses_a_length_that_does_not_fit_and_says_which_caliper_would) {
  Stand stand = test::small_stand();
  stand.jobs[0].roll.length = stand.rolls[0].length = length / 2;
  const Problems problems = implausible(stand);
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].severity, Severity::error);
  EXPECT_EQ(problems[0].field, "roll[0].length");
  EXPECT_NEAR(problems[0].accepted.amounts[1].value, 72e-6, 1e-8);
}

TEST(implausible, only_warns_of_a_few_per_cent) {
  Stand stand = test::small_stand();
  stand.jobs[0].roll.length = stand.rolls[0].length = length * 1.05;
  const Problems problems = implausible(stand);
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].severity, Severity::warning);
}

TEST(implausible, refuses_a_mass_that_does_not_fit_the_basis_weight) {
  Stand stand = test::small_stand();
  stand.jobs[0].roll.mass = stand.rolls[0].mass = mass * 2;
  const Problems problems = implausible(stand);
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].field, "roll[0].mass");
  EXPECT_NEAR(problems[0].accepted.amounts[1].value, 0.1, 1e-3);
}

TEST(implausible, refuses_a_job_without_any_tension_to_run_at) {
  Stand stand = test::small_stand();
  stand.jobs[0].tension.reset();
  stand.jobs[0].web.material = Material::other;
  stand.jobs[0].web.modulus.reset();
  stand.jobs[0].web.yield_strength.reset();
  const Problems problems = implausible(stand);
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].field, "job[0].tension");
}

TEST(implausible, warns_of_unwinding_harder_than_the_roll_was_wound) {
  Stand stand = test::small_stand();
  stand.jobs[0].web.wound_tension = 150;  // N/m; the job runs 220 N over 1.2 m
  const Problems problems = implausible(stand);
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].severity, Severity::warning);
}

}  // namespace
}  // namespace holdback::sizing
