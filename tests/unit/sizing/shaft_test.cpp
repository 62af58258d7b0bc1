#include "holdback/sizing/shaft.hpp"

#include <gtest/gtest.h>

#include "holdback/sizing/assess.hpp"
#include "support/stands.hpp"

namespace holdback::sizing {
namespace {

Shaft steel_shaft() {
  Shaft shaft;
  shaft.bearing_span = 1.6;
  shaft.roll_centre = 0.8;
  shaft.sections = {{1.6, 0.09, 0}};
  shaft.modulus = 206e9;
  shaft.density = 7850;
  shaft.tensile_strength = 500e6;
  shaft.notch_factor = 2;
  shaft.bearing_rating = 60e3;
  shaft.core_grip = 400;
  return shaft;
}

struct Case {
  Stand stand = test::small_stand();
  Case() { stand.shaft = steel_shaft(); }
  Demand demand() const { return demand_of(stand.jobs[0], site_of(stand)); }
  Assessment judged() const {
    const Site site = site_of(stand);
    return assess_job(demand(), candidate_of(stand.brakes[0], stand.brakes[0].grades[0], 1, site), site);
  }
  Limit limit(LimitId id) const { return judged().limits[static_cast<std::size_t>(id)]; }
  bool has(LimitId id) const { return judged().present.test(static_cast<std::size_t>(id)); }
};

TEST(shaft_facts, are_there_only_for_a_stand_that_describes_its_shaft) {
  Case c;
  EXPECT_TRUE(c.demand().shaft.has_value());
  c.stand.shaft.reset();
  EXPECT_FALSE(c.demand().shaft.has_value());
  EXPECT_FALSE(c.has(LimitId::shaft_fatigue));
}

// By hand: the kept quarter of 220 N on 0.5 m, and web and core stopped from 5 m/s in 15 s · 5/6.5.
TEST(shaft_facts, pass_tension_and_inertia_through_the_grip) {
  const Case c;
  const Demand demand = c.demand();
  const double core = 5 * 0.086 * 0.086;
  const double by_hand = 0.25 * 220 * 0.5 + (demand.web_inertia.back() + core) * 5 / (15 * 5 / 6.5) / 0.5;
  EXPECT_NEAR(demand.shaft->grip_torque, std::max(by_hand, 220 * 0.5), 1e-9);
}

TEST(shaft_facts, bend_more_under_a_heavier_roll) {
  Case c;
  const double light = c.demand().shaft->deflection;
  c.stand.jobs[0].web.basis_weight *= 2;
  EXPECT_GT(c.demand().shaft->deflection, light);
}

TEST(judged_shaft, fails_a_shaft_that_is_too_thin) {
  Case c;
  c.stand.shaft->sections[0].diameter = 0.03;
  EXPECT_EQ(c.limit(LimitId::shaft_fatigue).state, State::fails);
  EXPECT_EQ(c.judged().state, State::fails);
}

TEST(judged_shaft, fails_a_grip_that_slips) {
  Case c;
  c.stand.shaft->core_grip = 50;
  EXPECT_EQ(c.limit(LimitId::core_grip).state, State::fails);
  EXPECT_EQ(c.limit(LimitId::core_grip).known, Known::rating);
  c.stand.shaft->core_grip.reset();
  EXPECT_FALSE(c.has(LimitId::core_grip));
}

TEST(judged_shaft, keeps_away_from_the_first_whirl_speed) {
  Case c;
  EXPECT_NE(c.limit(LimitId::whirl_speed).state, State::fails);
  c.stand.limits.whirl_share = 0.01;
  EXPECT_EQ(c.limit(LimitId::whirl_speed).state, State::fails);
}

TEST(judged_shaft, judges_bearings_only_with_a_rating) {
  Case c;
  EXPECT_TRUE(c.has(LimitId::bearing_life));
  c.stand.shaft->bearing_rating = 1e3;
  EXPECT_EQ(c.limit(LimitId::bearing_life).state, State::fails);
  c.stand.shaft->bearing_rating.reset();
  EXPECT_FALSE(c.has(LimitId::bearing_life));
}

}  // namespace
}  // namespace holdback::sizing
