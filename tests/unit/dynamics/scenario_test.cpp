// The scenario that every job has.
#include <gtest/gtest.h>

#include <cmath>

#include "holdback/dynamics/run.hpp"

namespace holdback::dynamics {
namespace {

const LineHabits habits{5, 20, 10, 4, 0.40};

std::vector<EventKind> kinds(const Scenario& scenario) {
  std::vector<EventKind> all;
  for (const Event& event : scenario.events) all.push_back(event.kind);
  return all;
}

TEST(usual_scenario, starts_stops_where_it_is_hardest_and_stops_at_last) {
  const Scenario scenario = usual_scenario({0.5, 0.7}, habits, 0.08, 2e-4);
  using K = EventKind;
  EXPECT_EQ(kinds(scenario), (std::vector<K>{K::ramp, K::hold, K::emergency_stop, K::hold, K::ramp, K::hold, K::stop,
                                             K::hold, K::ramp, K::hold, K::stop}));
  EXPECT_EQ(scenario.events[2].at_diameter, 0.7);
  EXPECT_EQ(scenario.events[6].at_diameter, 0.5);
  EXPECT_TRUE(problems_of(scenario, "scenario").empty());
}

// By hand: a stop from 5 m/s in 10 s draws 25 m; the last stop begins with more than that left, and not with a roll.
TEST(usual_scenario, leaves_web_for_its_last_stop) {
  const Scenario scenario = usual_scenario({0.5, 0.5}, habits, 0.08, 2e-4);
  const double at = scenario.events.back().at_diameter.value_or(0);
  const double left = 3.14159265 * (at * at / 4 - 0.08 * 0.08) / 2e-4;
  EXPECT_GE(left, 25);
  EXPECT_LE(left, 150);
}

TEST(usual_scenario, stops_a_full_roll_as_soon_as_the_line_runs) {
  const Scenario scenario = usual_scenario({2, 2}, habits, 0.08, 2e-4);
  EXPECT_EQ(scenario.events[2].at_diameter, 0.80);
}

TEST(usual_scenario, leaves_out_stops_for_which_there_is_no_web) {
  const Scenario scenario = usual_scenario({0.17, 0.165}, habits, 0.08, 2e-4);
  using K = EventKind;
  EXPECT_EQ(kinds(scenario), (std::vector<K>{K::ramp, K::hold, K::stop}));
}

}  // namespace
}  // namespace holdback::dynamics
