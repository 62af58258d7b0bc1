#include "holdback/sizing/demand.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include <numeric>

#include "holdback/physics/torque.hpp"
#include "support/stands.hpp"

namespace holdback::sizing {
namespace {

const Stand stand = test::small_stand();

TEST(demand_of, lays_the_roll_out_from_core_to_full) {
  const Demand demand = demand_of(stand.jobs[0], site_of(stand));
  ASSERT_EQ(demand.radius.size(), static_cast<std::size_t>(radius_count));
  EXPECT_DOUBLE_EQ(demand.radius.front(), 0.086);
  EXPECT_DOUBLE_EQ(demand.radius.back(), 0.5);
  EXPECT_TRUE(std::is_sorted(demand.radius.begin(), demand.radius.end()));
}

TEST(demand_of, shares_the_length_out_completely) {
  const Demand demand = demand_of(stand.jobs[0], site_of(stand));
  EXPECT_NEAR(std::accumulate(demand.share_of_length.begin(), demand.share_of_length.end(), 0.0), 1, 1e-12);
}

TEST(demand_of, scales_the_lines_times_with_speed_since_a_drive_has_one_rate) {
  Job job = stand.jobs[0];
  job.speed = stand.line.top_speed / 2;
  EXPECT_DOUBLE_EQ(demand_of(job, site_of(stand)).stop_time, stand.line.stop_time / 2);
  EXPECT_DOUBLE_EQ(demand_of(job, site_of(stand)).emergency_stop_time, stand.line.emergency_stop_time / 2);
}

TEST(demand_of, takes_a_jobs_own_stop_time_as_it_is) {
  Job job = stand.jobs[0];
  job.stop_time = 7;
  EXPECT_DOUBLE_EQ(demand_of(job, site_of(stand)).stop_time, 7);
}

TEST(case_torques, a_stop_asks_for_more_than_running_and_a_ramp_for_less) {
  const Demand demand = demand_of(stand.jobs[0], site_of(stand));
  const auto full = demand.radius.size() - 1;
  const CaseTorques torques = case_torques(demand, stand.limits, full, demand.inertia[full], stand.drag);
  EXPECT_GT(torques.stop, torques.run);
  EXPECT_LT(torques.ramp, torques.run);
}

TEST(case_torques, holding_does_not_count_on_drag) {
  const Demand demand = demand_of(stand.jobs[0], site_of(stand));
  const CaseTorques torques = case_torques(demand, stand.limits, 0, demand.inertia[0], 50);
  EXPECT_DOUBLE_EQ(torques.hold, 220 * 0.086);
}

// Published check R-5 without its thinning term, which a stop leaves out: 263.865230742 N·m (computed with NumPy).
TEST(case_torques, repeats_the_stop_without_thinning_of_check_R5) {
  Demand demand;
  demand.speed = 5;
  demand.stop_time = 2;
  demand.emergency_stop_time = 2;
  demand.tension.setpoint = 150;
  demand.radius = {0.40};
  demand.run_acceleration = demand.ramp_acceleration = {0};
  Limits limits = stand.limits;
  limits.stop_tension = 1;
  EXPECT_NEAR(case_torques(demand, limits, 0, 32.6184369187, 0).stop, 263.865230742, 1e-8);
}

}  // namespace
}  // namespace holdback::sizing
