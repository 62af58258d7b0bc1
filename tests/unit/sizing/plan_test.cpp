#include "holdback/sizing/plan.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "support/stands.hpp"

namespace holdback::sizing {
namespace {

TEST(plan, keeps_the_setpoint_at_every_diameter_under_automatic_control) {
  const Plan answer = plan(test::small_stand(), {});
  ASSERT_EQ(answer.jobs.size(), 1U);
  for (const PlanPoint& point : answer.jobs[0].automatic) EXPECT_NEAR(point.tension, 220, 1e-9);
  EXPECT_GT(answer.jobs[0].automatic.front().diameter, answer.jobs[0].automatic.back().diameter);
}

TEST(plan, asks_for_less_pressure_as_the_roll_gets_smaller) {
  const Plan answer = plan(test::small_stand(), {});
  const auto& points = answer.jobs[0].automatic;
  for (std::size_t i = 1; i < points.size(); ++i) EXPECT_LT(points[i].pressure, points[i - 1].pressure);
}

// The same balance as in the check of the limits: what brake, drag and the thinning roll hold is the tension.
TEST(plan, sets_the_pressures_that_the_choice_states_at_full_roll_and_at_the_core) {
  Stand stand = test::small_stand();
  stand.jobs[0].speed = stand.line.top_speed;
  const JobFit checked = choose(stand, {}).recommended->jobs[0];
  const auto points = plan(stand, {}).jobs[0].automatic;
  EXPECT_NEAR(points.front().pressure, checked.pressure_full, 1e-6 * checked.pressure_full);
  EXPECT_NEAR(points.back().pressure, checked.pressure_core, 1e-6 * checked.pressure_core);
}

TEST(plan, keeps_every_hand_setting_within_the_tolerance) {
  for (const double tolerance : {0.05, 0.1, 0.2}) {
    const Plan answer = plan(test::small_stand(), {{}, tolerance});
    for (const HandSetting& setting : answer.jobs[0].by_hand) {
      EXPECT_NEAR(setting.tension_from, 220, 220 * tolerance * (1 + 1e-9));
      EXPECT_NEAR(setting.tension_to, 220, 220 * tolerance * (1 + 1e-9));
    }
  }
}

// ⌈ln(1.0/0.172)/ln(1.1/0.9)⌉ = ⌈8.77⌉: the formula of the trade, worked by hand. Whole regulator steps may cost a few
// more.
TEST(plan, needs_about_as_many_settings_as_the_formula_says) {
  const Plan answer = plan(test::small_stand(), {{}, 0.1});
  EXPECT_GE(answer.jobs[0].by_hand.size(), 9U);
  EXPECT_LE(answer.jobs[0].by_hand.size(), 11U);
}

TEST(plan, leaves_no_diameter_without_a_setting) {
  const Plan answer = plan(test::small_stand(), {});
  const auto& card = answer.jobs[0].by_hand;
  EXPECT_DOUBLE_EQ(card.front().from, 1.0);
  EXPECT_DOUBLE_EQ(card.back().to, 0.172);
  for (std::size_t i = 1; i < card.size(); ++i) EXPECT_NEAR(card[i].from, card[i - 1].to, 1e-12);
}

TEST(plan, sets_only_whole_steps_of_the_regulator) {
  const Plan answer = plan(test::small_stand(), {});
  for (const HandSetting& setting : answer.jobs[0].by_hand) EXPECT_NEAR(std::remainder(setting.pressure, 1e3), 0, 1e-6);
}

TEST(plan, says_so_when_the_regulator_is_too_coarse_for_the_card) {
  Stand stand = test::small_stand();
  stand.air.resolution = 4e4;
  const Plan answer = plan(stand, {{}, 0.02});
  ASSERT_FALSE(answer.jobs[0].notes.empty());
  EXPECT_NE(answer.jobs[0].notes[0].text.find("too coarse"), std::string::npos);
}

TEST(plan, forbids_running_from_the_plan_of_a_job_that_is_not_covered) {
  Stand stand = test::small_stand();
  stand.line.emergency_stop_time = 0.3;
  const Plan answer = plan(stand, {});
  EXPECT_EQ(answer.jobs[0].state, State::fails);
  EXPECT_NE(answer.jobs[0].notes.back().text.find("do not run"), std::string::npos);
}

}  // namespace
}  // namespace holdback::sizing
