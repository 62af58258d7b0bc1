#include "holdback/sizing/assess.hpp"

#include <gtest/gtest.h>

#include <limits>

#include "support/stands.hpp"

namespace holdback::sizing {
namespace {

struct Case {
  Stand stand = test::small_stand();
  Assessment with_pairs(int pairs) const {
    const Site site = site_of(stand);
    const Demand demand = demand_of(stand.jobs[0], site);
    const Candidate candidate = candidate_of(stand.brakes[0], stand.brakes[0].grades[0], 1, site);
    return assess(demand, survey(demand, candidate, site), candidate, site, pairs);
  }
  Assessment best() const {
    const Site site = site_of(stand);
    return assess_job(demand_of(stand.jobs[0], site), candidate_of(stand.brakes[0], stand.brakes[0].grades[0], 1, site),
                      site);
  }
  Limit limit(LimitId id, int pairs = 4) const { return with_pairs(pairs).limits[static_cast<std::size_t>(id)]; }
};

TEST(assess, gives_twice_the_torque_with_twice_the_pairs) {
  const Case c;
  EXPECT_NEAR(c.limit(LimitId::stop_torque, 4).bound, 2 * c.limit(LimitId::stop_torque, 2).bound, 1e-9);
}

TEST(assess, calls_a_limit_tight_inside_the_reserve_and_failing_beyond_the_bound) {
  EXPECT_EQ(state_of(1.11, 0.1), State::holds);
  EXPECT_EQ(state_of(1.05, 0.1), State::tight);
  EXPECT_EQ(state_of(1.0, 0.1), State::tight);
  EXPECT_EQ(state_of(0.999, 0.1), State::fails);
}

TEST(assess, never_calls_a_margin_that_is_not_a_number_good) {
  EXPECT_EQ(state_of(std::numeric_limits<double>::quiet_NaN(), 0.1), State::fails);
}

TEST(assess, fails_a_fit_beyond_the_makers_torque_rating_however_strong_it_is) {
  Case c;
  c.stand.brakes[0].rated_torque = 50;
  EXPECT_EQ(c.limit(LimitId::torque_rating).state, State::fails);
  EXPECT_EQ(c.limit(LimitId::torque_rating).known, Known::rating);
  EXPECT_EQ(c.best().state, State::fails);
}

TEST(assess, fails_a_disc_that_turns_faster_at_the_core_than_it_is_rated) {
  Case c;
  c.stand.brakes[0].rated_speed = 5 / 0.086 * 0.99;
  const Limit limit = c.limit(LimitId::disc_speed);
  EXPECT_EQ(limit.state, State::fails);
  EXPECT_DOUBLE_EQ(limit.diameter, 0.172);
}

TEST(assess, finds_the_hardest_stop_at_the_full_roll) {
  EXPECT_DOUBLE_EQ(Case().limit(LimitId::stop_torque).diameter, 1.0);
  EXPECT_DOUBLE_EQ(Case().limit(LimitId::emergency_stop_torque).diameter, 1.0);
}

TEST(assess, finds_the_coarsest_control_at_the_core) {
  EXPECT_DOUBLE_EQ(Case().limit(LimitId::tension_resolution).diameter, 0.172);
  EXPECT_DOUBLE_EQ(Case().limit(LimitId::lowest_tension).diameter, 0.172);
}

TEST(assess, does_not_check_strength_that_nobody_knows) {
  Case c;
  c.stand.jobs[0].web.yield_strength.reset();
  EXPECT_FALSE(c.with_pairs(1).present.test(static_cast<std::size_t>(LimitId::tension_window)));
}

TEST(assess, takes_the_brakes_pressure_rating_as_the_ceiling_when_it_is_the_lowest) {
  Case c;
  c.stand.brakes[0].rated_pressure = 3e5;
  const Limit limit = c.limit(LimitId::highest_pressure);
  EXPECT_DOUBLE_EQ(limit.bound, 3e5);
  EXPECT_EQ(limit.known, Known::rating);
}

TEST(assess, calls_what_the_disc_sheds_a_rating_only_where_a_map_says_so) {
  Case c;
  EXPECT_EQ(c.limit(LimitId::slip_power).known, Known::rating);
  c.stand.brakes[0].cooling.clear();
  c.stand.brakes[0].cooling_rise = 0;
  c.stand.brakes[0].disc_diameter = 0.4;
  EXPECT_EQ(c.limit(LimitId::slip_power).known, Known::formula);
}

TEST(assess, names_the_limit_with_least_in_hand) {
  const Assessment a = Case().with_pairs(2);
  for (std::size_t i = 0; i < a.limits.size(); ++i) {
    if (!a.present.test(i)) continue;
    EXPECT_GE(a.limits[i].margin, a.margin) << info(static_cast<LimitId>(i)).key;
  }
  EXPECT_DOUBLE_EQ(a.limits[static_cast<std::size_t>(a.binding)].margin, a.margin);
}

TEST(assess, has_everything_in_hand_when_drag_alone_holds_more_than_is_asked_but_cannot_go_that_low) {
  Case c;
  c.stand.drag = 200;  // more torque than the tension makes
  EXPECT_EQ(c.limit(LimitId::highest_pressure).state, State::holds);
  EXPECT_EQ(c.limit(LimitId::lowest_tension).state, State::fails);
}

TEST(assess_best, engages_the_fewest_pairs_that_hold) {
  const Case c;
  const Assessment best = c.best();
  ASSERT_EQ(best.state, State::holds);
  for (int pairs = 1; pairs < best.pairs; ++pairs) EXPECT_NE(c.with_pairs(pairs).state, State::holds);
}

TEST(assess_best, tells_of_the_pairs_that_miss_least_when_none_will_do) {
  Case c;
  c.stand.line.emergency_stop_time = 0.3;
  const Assessment best = c.best();
  EXPECT_EQ(best.state, State::fails);
  for (int pairs = 1; pairs <= 4; ++pairs) EXPECT_LE(c.with_pairs(pairs).margin, best.margin);
}

}  // namespace
}  // namespace holdback::sizing
