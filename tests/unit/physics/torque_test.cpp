#include "holdback/physics/torque.hpp"

#include "holdback/physics/roll.hpp"
#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using testing::infinity;
using testing::near;

constexpr double tension = 150;
constexpr double radius = 0.4;
constexpr double drag = 2;
constexpr double inertia = 30;

TEST(brake_torque, closes_the_balance_of_the_roll) {
  const double rate = -6.0;
  const double torque = brake_torque(tension, radius, drag, inertia, rate);
  EXPECT_TRUE(near(tension * radius - torque - drag, inertia * rate));
}

TEST(brake_torque, keeps_the_balance_of_energy) {
  // Power of the web in = power of brake and drag + change of kinetic energy; inertia taken constant.
  const double omega = 12, rate = -6;
  const double torque = brake_torque(tension, radius, drag, inertia, rate);
  EXPECT_TRUE(near(tension * radius * omega, (torque + drag) * omega + inertia * omega * rate));
}

TEST(brake_torque, keeps_angular_momentum_when_mass_runs_off) {
  // d(Jω)/dt with the web leaving tangentially: momentum of roll and of the web that left changes by the torques alone.
  const double basis_weight = 0.08, width = 1.3, caliper = 1e-4, core = 0.0762, speed = 5;
  const auto momentum = [&](double r) { return web_inertia(basis_weight, width, caliper, core, r) * speed / r; };
  const double h = 1e-6;
  const double roll_change =
      (momentum(radius + h) - momentum(radius - h)) / (2 * h) * radius_rate(caliper, speed, radius);
  const double outflow = basis_weight * width * speed * speed * radius;
  const double rate = roll_acceleration(0, caliper, speed, radius);
  const double roll = web_inertia(basis_weight, width, caliper, core, radius);
  const double torque = brake_torque(tension, radius, drag, roll, rate);
  EXPECT_NEAR(tension * radius - torque - drag, roll_change + outflow, 1e-6);
}

TEST(brake_torque, is_negative_where_drag_alone_is_too_much) {
  EXPECT_LT(brake_torque(1, radius, drag, inertia, 0), 0);
}

TEST(released_tension, is_where_the_brake_has_nothing_to_do) {
  const double lowest = released_tension(inertia, 3, drag, radius);
  EXPECT_NEAR(brake_torque(lowest, radius, drag, inertia, 3), 0, 1e-12);
}

TEST(lowest_tension, is_highest_at_the_core) {
  EXPECT_GT(lowest_tension(5, drag, 0.08), lowest_tension(5, drag, 0.4));
  EXPECT_EQ(lowest_tension(0, drag, radius), released_tension(inertia, 0, drag, radius));
}

TEST(tension_step, is_the_difference_of_two_lowest_tensions) {
  const double step = lowest_tension(5.5, drag, radius) - lowest_tension(5, drag, radius);
  EXPECT_TRUE(near(tension_step(0.5, radius), step));
}

TEST(slack_deceleration, is_what_the_balance_gives_without_tension) {
  const double rim = slack_deceleration(200, drag, inertia, radius);
  EXPECT_NEAR(brake_torque(0, radius, drag, inertia, -rim / radius), 200, 1e-10);
}

TEST(slack_deceleration, without_inertia_is_at_once_or_never) {
  EXPECT_EQ(slack_deceleration(200, drag, 0, radius), infinity);
  EXPECT_EQ(slack_deceleration(0, 0, 0, radius), 0);
}

TEST(overrun_slack, is_the_difference_of_two_stopping_distances) {
  const double speed = 5, roll = 2, line = 2.5;
  double slack = 0;  // integral of the speed difference until the roll stands
  const int steps = 100000;
  const double dt = speed / roll / steps;
  for (int i = 0; i < steps; ++i) {
    const double time = (i + 0.5) * dt;
    slack += (speed - roll * time - std::max(0.0, speed - line * time)) * dt;
  }
  EXPECT_TRUE(near(overrun_slack(speed, roll, line), slack, 1e-8));
}

TEST(overrun_slack, is_zero_when_the_roll_stops_first_and_infinite_when_it_never_stops) {
  EXPECT_EQ(overrun_slack(5, 2.5, 2.5), 0);
  EXPECT_EQ(overrun_slack(5, 3, 2.5), 0);
  EXPECT_EQ(overrun_slack(5, infinity, 2.5), 0);
  EXPECT_EQ(overrun_slack(5, 0, 2.5), infinity);
  EXPECT_EQ(overrun_slack(0, 0, 2.5), 0);
}

TEST(shortest_stop, needs_just_the_torque_that_there_is) {
  const double speed = 5, torque = 200;
  const double time = shortest_stop(speed, tension, radius, torque, drag, inertia);
  const double rate = -speed / time / radius;
  EXPECT_TRUE(near(brake_torque(tension, radius, drag, inertia, rate), torque));
}

TEST(shortest_stop, with_slack_web_agrees_with_slack_deceleration) {
  EXPECT_TRUE(
      near(5 / shortest_stop(5, 0, radius, 200, drag, inertia), slack_deceleration(200, drag, inertia, radius)));
}

TEST(shortest_stop, is_infinite_where_the_torque_only_holds_the_tension) {
  EXPECT_EQ(shortest_stop(5, tension, radius, tension * radius - drag, drag, inertia), infinity);
  EXPECT_EQ(shortest_stop(5, tension, radius, 10, drag, inertia), infinity);
}

TEST(coast_angle, turns_all_kinetic_energy_into_the_torque_s_work) {
  const double omega = 80;
  EXPECT_TRUE(near(40 * coast_angle(12, omega, 40), 12 * omega * omega / 2));
}

TEST(coast_angle, is_infinite_without_torque_and_zero_at_rest) {
  EXPECT_EQ(coast_angle(12, 80, 0), infinity);
  EXPECT_EQ(coast_angle(12, 0, 0), 0);
}

TEST(coast_time, at_half_the_first_speed_covers_the_angle) {
  EXPECT_TRUE(near(coast_time(12, 80, 40) * 80 / 2, coast_angle(12, 80, 40)));
}

TEST(coast_time, is_infinite_without_torque_and_zero_at_rest) {
  EXPECT_EQ(coast_time(12, 80, 0), infinity);
  EXPECT_EQ(coast_time(12, 0, 0), 0);
}

}  // namespace
}  // namespace holdback::physics
