#include "holdback/sizing/facts.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "support/stands.hpp"

namespace holdback::sizing {
namespace {

JobFit fit(const Stand& stand, int pairs) {
  const Site site = site_of(stand);
  const Demand demand = demand_of(stand.jobs[0], site);
  const Candidate candidate = candidate_of(stand.brakes[0], stand.brakes[0].grades[0], 1, site);
  const Survey found = survey(demand, candidate, site);
  return job_fit(demand, found, assess(demand, found, candidate, site, pairs), candidate, site);
}

TEST(job_fit, reports_no_slack_when_the_brake_holds_the_roll_back) {
  const JobFit job = fit(test::small_stand(), 4);
  ASSERT_NE(job.state, State::fails);
  EXPECT_EQ(job.emergency_stop.slack, 0);
  EXPECT_LE(job.emergency_stop.shortest_taut_stop, job.emergency_stop.time);
}

TEST(job_fit, reports_slack_and_the_shortest_taut_stop_when_it_cannot) {
  Stand stand = test::small_stand();
  stand.line.emergency_stop_time = 0.4;
  const JobFit job = fit(stand, 1);
  EXPECT_GT(job.emergency_stop.slack, 0);
  EXPECT_GT(job.emergency_stop.shortest_taut_stop, job.emergency_stop.time);
}

TEST(job_fit, a_stop_in_the_shortest_taut_time_throws_no_slack) {
  Stand stand = test::small_stand();
  stand.line.emergency_stop_time = 0.4;
  stand.jobs[0].emergency_stop_time = fit(stand, 1).emergency_stop.shortest_taut_stop * 1.0001;
  EXPECT_EQ(fit(stand, 1).emergency_stop.slack, 0);
}

TEST(job_fit, says_when_a_tension_cannot_be_kept_in_any_stop) {
  Stand stand = test::small_stand();
  stand.jobs[0].tension = 3000;
  stand.jobs[0].web.yield_strength.reset();
  const JobFit job = fit(stand, 1);
  EXPECT_TRUE(job.stop.never);
  EXPECT_EQ(job.stop.shortest_stop, 0);
}

TEST(job_fit, never_calls_a_roll_that_nothing_stops_free_of_slack) {
  Stand stand = test::small_stand();
  stand.drag = stand.brakes[0].drag = 0;
  stand.brakes[0].threshold_pressure = 7e5;  // above what the air gives
  const JobFit job = fit(stand, 4);
  EXPECT_EQ(job.state, State::fails);
  EXPECT_TRUE(job.stop.runs_away);
  EXPECT_TRUE(job.emergency_stop.runs_away);
  EXPECT_TRUE(job.web_break.runs_away);
}

TEST(job_fit, tells_at_which_diameter_slack_is_thrown) {
  Stand stand = test::small_stand();
  stand.line.emergency_stop_time = 0.4;
  EXPECT_DOUBLE_EQ(fit(stand, 1).emergency_stop.slack_diameter, 1.0);
  EXPECT_EQ(fit(test::small_stand(), 4).emergency_stop.slack_diameter, 0);
}

TEST(job_fit, tells_life_the_same_in_hours_metres_and_rolls) {
  const JobFit job = fit(test::small_stand(), 2);
  EXPECT_NEAR(job.wear.web_length, job.wear.life * 5, 1e-6 * job.wear.web_length);
  EXPECT_NEAR(job.wear.rolls * job.roll.running_time, job.wear.life, 1e-9 * job.wear.life);
}

TEST(job_fit, wears_as_many_pads_a_year_as_are_engaged_times_the_lives_in_a_year) {
  const JobFit job = fit(test::small_stand(), 2);
  const double year = 16 * 5 * 50 * 0.7 * 3600;
  EXPECT_NEAR(job.wear.pads_per_year, 4 * year / job.wear.life, 1e-9 * job.wear.pads_per_year);
}

TEST(job_fit, warns_of_a_tension_above_what_is_usual) {
  Stand stand = test::small_stand();
  stand.jobs[0].tension = 600;
  const JobFit job = fit(stand, 4);
  ASSERT_FALSE(job.notes.empty());
  EXPECT_NE(job.notes[0].text.find("above"), std::string::npos);
}

TEST(envelope, needs_the_torque_at_each_diameter_that_the_binding_stop_was_judged_by) {
  const Stand stand = test::small_stand();
  const Site site = site_of(stand);
  const Envelope e = envelope(demand_of(stand.jobs[0], site),
                              candidate_of(stand.brakes[0], stand.brakes[0].grades[0], 1, site), site, 4);
  const JobFit job = fit(stand, 4);
  EXPECT_DOUBLE_EQ(e.stop.back(), job.stop.torque_needed);
  EXPECT_NEAR(e.capacity_low.back(), job.stop.torque_available, 1e-9 * job.stop.torque_available);
  EXPECT_DOUBLE_EQ(e.pressure.back(), job.pressure_full);
  EXPECT_DOUBLE_EQ(e.pressure.front(), job.pressure_core);
}

TEST(envelope, never_asks_a_brake_to_push_in_a_ramp) {
  Stand stand = test::small_stand();
  stand.line.ramp_time = 0.5;
  const Site site = site_of(stand);
  const Envelope e = envelope(demand_of(stand.jobs[0], site),
                              candidate_of(stand.brakes[0], stand.brakes[0].grades[0], 1, site), site, 1);
  EXPECT_GE(*std::min_element(e.ramp.begin(), e.ramp.end()), 0);
}

}  // namespace
}  // namespace holdback::sizing
