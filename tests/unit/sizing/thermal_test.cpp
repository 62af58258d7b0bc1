#include "holdback/sizing/thermal.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "holdback/sizing/survey.hpp"
#include "support/stands.hpp"

namespace holdback::sizing {
namespace {

struct Case {
  Stand stand = test::small_stand();
  ThermalFacts facts() const {
    const Site site = site_of(stand);
    const Candidate candidate = candidate_of(stand.brakes[0], stand.brakes[0].grades[0], 1, site);
    return thermal_facts(demand_of(stand.jobs[0], site), candidate, site, 4);
  }
  Survey surveyed() const {
    const Site site = site_of(stand);
    return survey(demand_of(stand.jobs[0], site), candidate_of(stand.brakes[0], stand.brakes[0].grades[0], 1, site),
                  site);
  }
};

TEST(thermal_facts, never_gets_hotter_than_the_steady_state_of_its_hottest_moment) {
  const Case c;
  const ThermalFacts facts = c.facts();
  EXPECT_LT(facts.disc_highest, c.surveyed().temperature.value + 0.1);
  EXPECT_GT(facts.disc_highest, c.stand.ambient);
  EXPECT_LT(facts.disc_lowest, facts.disc_highest);
}

TEST(thermal_facts, comes_back_to_where_it_began) {
  const ThermalFacts facts = Case().facts();
  EXPECT_NEAR(facts.disc.front(), facts.disc.back(), 1e-3);
  EXPECT_NEAR(facts.hub.front(), facts.hub.back(), 1e-3);
}

// A roll without end and no time between rolls: the disc must come to the steady temperature of the limits but for the
// heat that pads, calipers and hub take away.
TEST(thermal_facts, comes_close_to_the_steady_state_without_change_over) {
  Case c;
  c.stand.line.changeover_time = 1;
  c.stand.brakes[0].hub_conductance = 0;
  const double steady = c.surveyed().temperature.value;
  const double found = c.facts().disc_highest;
  EXPECT_LT(found, steady + 0.1);
  EXPECT_GT(found - c.stand.ambient, 0.75 * (steady - c.stand.ambient));
}

TEST(thermal_facts, stays_cooler_with_longer_change_overs) {
  Case c;
  double before = 1e9;
  for (const double time : {10.0, 300.0, 3600.0}) {
    c.stand.line.changeover_time = time;
    const double hottest = c.facts().disc_highest;
    EXPECT_LT(hottest, before);
    before = hottest;
  }
}

TEST(thermal_facts, orders_the_parts_from_disc_to_caliper) {
  const ThermalFacts facts = Case().facts();
  EXPECT_GE(facts.disc_highest, facts.pads_highest);
  EXPECT_GE(facts.pads_highest, facts.calipers_highest);
  EXPECT_GE(facts.disc_highest, facts.hub_highest);
  EXPECT_GE(facts.surface_highest, facts.disc_highest);
}

TEST(thermal_facts, tells_when_the_guard_may_be_opened) {
  Case c;
  EXPECT_GT(c.facts().time_to_open, 0);
  c.stand.limits.touch_temperature = 600;
  EXPECT_EQ(c.facts().time_to_open, 0);
  c.stand.limits.touch_temperature = c.stand.ambient - 1;
  EXPECT_TRUE(c.facts().never_cool);
  EXPECT_EQ(c.facts().time_to_open, 0);
}

TEST(thermal_facts, gives_pads_more_life_than_the_limit_does_since_rolls_change) {
  Case c;
  c.stand.brakes[0].grades[0].wear_knee = 320;  // low, so that heat matters
  const ThermalFacts facts = c.facts();
  const double steady =
      c.stand.brakes[0].pad_area * c.stand.brakes[0].usable_pad_depth / (c.surveyed().wear_volume_rate / 8);
  EXPECT_GT(facts.pad_life, steady);
}

}  // namespace
}  // namespace holdback::sizing
