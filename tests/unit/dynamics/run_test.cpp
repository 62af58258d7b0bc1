#include "holdback/dynamics/run.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace holdback::dynamics {
namespace {

using std::numbers::pi;

constexpr double setpoint = 150;  // [N]
constexpr double full = 0.40;     // [m]
constexpr PressureRange any{0, 6e5, 0};

/// The roll of the published checks R-5 and S-3 on a softer web, with a brake of 1e-3 N·m/Pa; invented otherwise.
Plant plant() {
  Plant plant;
  plant.roll = {0.08, 2e-4, 0.5, pi / 2 * 800, 0};
  plant.brake = {1e-3, 1e4, 1, 0, 1.5};
  plant.air = {0.05, 0};
  plant.span = {3, 2e5, 0, 0, 0};
  return plant;
}

BelievedBrake known(const Plant& plant) {
  return {plant.brake.torque_per_pressure, plant.brake.threshold, plant.brake.drag};
}

Course run_steadily(const Plant& plant, Controller& controller, double duration, const Sampling& sampling = {}) {
  const MotionState start = steady_state(plant, 5, setpoint, full);
  return run(plant, start, 5, {{"hold", duration, 5}}, controller, setpoint, {140, 160}, sampling);
}

double last_tension(const Course& run) { return run.trace.tension.back(); }

// With a constant pressure the torque stays, so T R does: common practice calls it "tension rises as 1/diameter".
TEST(hand_regulator, lets_tension_rise_as_the_roll_gets_smaller) {
  const Plant p = plant();
  const MotionState start = steady_state(p, 5, setpoint, full);
  HandRegulator hand({{1, start[pressure]}}, any);
  const Course done = run_steadily(p, hand, 200);
  ASSERT_FALSE(done.failed);
  EXPECT_NEAR(last_tension(done) * done.end_radius / (setpoint * full), 1, 0.01);
  EXPECT_GT(last_tension(done), 1.2 * setpoint);
}

TEST(hand_regulator, goes_down_its_card) {
  HandRegulator hand({{0.8, 1e5}, {0.6, 8e4}, {0.4, 6e4}}, any);
  EXPECT_EQ(hand.pressure({0, 0.9, 0, setpoint}), 1e5);
  EXPECT_EQ(hand.pressure({0, 0.61, 0, setpoint}), 1e5);
  EXPECT_EQ(hand.pressure({0, 0.6, 0, setpoint}), 8e4);
  EXPECT_EQ(hand.pressure({0, 0.1, 0, setpoint}), 6e4);
}

TEST(diameter_follower, keeps_the_tension_from_full_to_nearly_core) {
  const Plant p = plant();
  DiameterFollower follower(known(p), any);
  const Course done = run_steadily(p, follower, 460);
  ASSERT_FALSE(done.failed);
  EXPECT_LT(done.end_radius, 0.15);
  for (const double tension : done.trace.tension) EXPECT_NEAR(tension, setpoint, 0.02 * setpoint);
  EXPECT_EQ(done.legs.front().outside_window, 0);
}

// Friction a fifth below what the controller believes: following the diameter leaves a fifth of the pad torque missing,
// feeling the tension does not. By hand: pads give 0.8 · (T R − 1.5 N·m), drag its 1.5 N·m.
TEST(load_cell_pi, takes_away_the_error_that_following_the_diameter_leaves) {
  Plant weak = plant();
  const BelievedBrake believed = known(weak);
  weak.brake.torque_per_pressure *= 0.8;
  DiameterFollower follower(believed, any);
  const Course followed = run_steadily(weak, follower, 30);
  const double radius = followed.end_radius;
  EXPECT_NEAR(last_tension(followed), (0.8 * (setpoint * radius - 1.5) + 1.5) / radius, 0.01 * setpoint);
  LoadCellPi felt({20, 0.1, 0.01, 2 * full, false}, believed, any);
  EXPECT_NEAR(last_tension(run_steadily(weak, felt, 30)), setpoint, 0.005 * setpoint);
}

TEST(load_cell_pi, does_not_wind_up_at_the_end_of_its_range) {
  const Plant p = plant();
  const PressureRange low{0, 4e4, 0};  // less than the job needs: the controller pushes against its end
  LoadCellPi held({20, 0.1, 0.01, 2 * full, false}, known(p), low);
  for (int k = 0; k < 10000; ++k) held.pressure({k * 0.01, 0.8, 50, setpoint});
  // Tension above the setpoint must bring the pressure off its end within a few samples.
  double set = 0;
  for (int k = 0; k < 60; ++k) set = held.pressure({100 + k * 0.01, 0.3, 400, setpoint});
  EXPECT_LT(set, 4e4);
}

// In a slow, even stop the follower adds nothing for inertia: the tension falls by J a/R², the balance of the roll
// (physics/torque.hpp) with the brake torque as it was.
TEST(run, drops_the_tension_by_the_inertia_of_the_roll_in_a_stop) {
  const Plant p = plant();
  DiameterFollower follower(known(p), any);
  const MotionState start = steady_state(p, 5, setpoint, full);
  const double rate = 0.25;  // [m/s²]
  const Course done = run(p, start, 5, {{"stop", 5 / rate, 0}}, follower, setpoint, {140, 160}, Sampling{});
  ASSERT_FALSE(done.failed);
  const std::size_t middle = done.trace.time.size() / 2;
  const double radius = done.trace.diameter[middle] / 2;
  const double fall = inertia_at(p.roll, radius) * rate / (radius * radius);
  EXPECT_NEAR(done.trace.tension[middle], setpoint - fall, 0.03 * setpoint);
  EXPECT_GT(done.legs.front().outside_window, 10);
}

TEST(run, stops_when_the_web_runs_out) {
  const Plant p = plant();
  DiameterFollower follower(known(p), any);
  const MotionState start = steady_state(p, 5, setpoint, 0.085);
  const Course done = run(p, start, 5, {{"hold", 1000, 5}, {"stop", 5, 0}}, follower, setpoint, {140, 160}, {});
  EXPECT_TRUE(done.reached_core);
  EXPECT_EQ(done.legs.size(), 1U);
  EXPECT_NEAR(done.end_radius, 0.08, 1e-4);
}

// What goes into the brake in steady running is T v (published check P-2 says so of every diameter).
TEST(run, puts_tension_times_speed_into_the_brake) {
  const Plant p = plant();
  DiameterFollower follower(known(p), any);
  const Course done = run_steadily(p, follower, 60);
  EXPECT_NEAR(done.slip_work / (setpoint * 5 * 60), 1, 0.01);
}

TEST(run, is_the_same_every_time) {
  const Plant p = plant();
  DiameterFollower one(known(p), any);
  DiameterFollower other(known(p), any);
  EXPECT_EQ(run_steadily(p, one, 5).trace.tension, run_steadily(p, other, 5).trace.tension);
}

TEST(settable, keeps_the_range_and_the_step) {
  EXPECT_EQ(settable({1e4, 5e5, 1e3}, 0), 1e4);
  EXPECT_EQ(settable({1e4, 5e5, 1e3}, 1e6), 5e5);
  EXPECT_NEAR(settable({1e4, 5e5, 1e3}, 123456), 123000, 1e-6);
  EXPECT_EQ(settable({1e4, 5e5, 0}, 123456), 123456);
}

}  // namespace
}  // namespace holdback::dynamics
