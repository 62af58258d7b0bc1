// Sticking and slipping, slack, a web that parts.
#include <gtest/gtest.h>

#include <cmath>

#include "holdback/dynamics/mover.hpp"
#include "holdback/physics/torque.hpp"
#include "unit/dynamics/plants.hpp"

namespace holdback::dynamics {
namespace {

using testing::mover;
using testing::pi;
using testing::plant_of_constant_size;
using testing::published_plant;
using testing::steady_drive;

using Roll = Motion::Roll;

Drive broken(double pressure) {
  Drive drive = steady_drive(0, pressure);
  drive.broken = true;
  return drive;
}

// Published check S-4: v 5 m/s, the line stops at 2.5 m/s², 200 N·m at most: the roll stops after 2.03865230742 s and
// throws 0.0966307685505 m. Closed form for a web that pulls no more from the first moment; the roll keeps its size.
TEST(mover, throws_the_slack_of_a_brake_that_is_too_small_as_published) {
  const Plant plant = plant_of_constant_size();
  const auto roll = mover(plant, {5, 0, 0.40}, 1e-11);
  Drive drive = steady_drive(5, 2e5);
  drive.acceleration = -2.5;
  ASSERT_TRUE(roll->advance(drive, 2.0));
  EXPECT_EQ(roll->sight().motion.roll, Roll::forward);
  EXPECT_NEAR(roll->sight().roll_speed, 5 / 0.4 - 200 / inertia_at(plant.roll, 0.4) * 2.0, 1e-8);
  drive = steady_drive(0, 2e5);
  drive.begin = 2;
  ASSERT_TRUE(roll->advance(drive, 2.0386523));
  EXPECT_EQ(roll->sight().motion.roll, Roll::forward);
  ASSERT_TRUE(roll->advance(drive, 2.0386524));
  EXPECT_EQ(roll->sight().motion.roll, Roll::held);
  EXPECT_NEAR(roll->sight().slack, 0.0966307685505, 1e-8);
  EXPECT_NEAR(roll->sight().slack, physics::overrun_slack(5, 2.45260066261, 2.5), 1e-8);
  EXPECT_EQ(roll->sight().tension, 0);
  EXPECT_EQ(roll->stick_events(), 1);
}

// Published check E-1: J 12 kg·m², 80 rad/s, 40 N·m stops at 24 s after 960 rad and 38400 J, and stays at rest.
TEST(mover, comes_to_rest_by_friction_and_stays) {
  Plant plant = published_plant();
  plant.roll = {0.08, 0, 12, 0, 0, 1, 0};
  const auto roll = mover(plant, {6.4, 0, 0.08}, 1e-11);
  ASSERT_NEAR(roll->sight().roll_speed, 80, 1e-12);
  ASSERT_TRUE(roll->advance(broken(4e4), 23.9999999));
  EXPECT_EQ(roll->sight().motion.roll, Roll::forward);
  ASSERT_TRUE(roll->advance(broken(4e4), 24.0000001));
  EXPECT_EQ(roll->sight().motion.roll, Roll::held);
  ASSERT_TRUE(roll->advance(broken(4e4), 40));
  EXPECT_EQ(roll->sight().motion.roll, Roll::held);
  EXPECT_NEAR(roll->sight().angle, 960, 1e-8);
  EXPECT_NEAR(roll->sight().slip_work, 38400, 1e-6);
  EXPECT_EQ(roll->sight().roll_speed, 0);
}

// A drive that ends just where the roll comes to rest, within rounding and more: the next one must find it at rest.
TEST(mover, rests_when_a_drive_ends_where_the_roll_stops) {
  for (const double off : {0.0, 1e-10, -1e-10, 1e-9, -1e-9, 1e-13}) {
    Plant plant = published_plant();
    plant.roll = {0.08, 0, 12, 0, 0, 1, 0};
    const auto roll = mover(plant, {6.4, 0, 0.08}, 1e-11);
    ASSERT_TRUE(roll->advance(broken(4e4), 24 + off));
    ASSERT_TRUE(roll->advance(broken(4e4), 30));
    EXPECT_EQ(roll->sight().motion.roll, Roll::held) << off;
    EXPECT_EQ(roll->sight().roll_speed, 0) << off;
  }
}

// Published check E-2, a turntable (Downey, ch. 25): J 0.923 kg·m², 2 N at 0.5 m against a friction of 0.3 N·m until
// 0.5 rad, then friction alone. Here the web pulls the 2 N, which stay while the line gains speed as the rim does.
TEST(mover, turns_a_turntable_as_published) {
  struct Case {
    double friction, release, speed, rest, angle;
  };
  // The second friction is the one that the book looks for: a total of 1.5 rad.
  for (const Case& want : {Case{0.3, 1.14829065509, 0.870859651749, 3.82763551697, 1.66666666667},
                           Case{1.0 / 3, std::sqrt(0.923 * 1.5), 2 * 0.5 / std::sqrt(0.923 * 1.5),
                                3 * std::sqrt(0.923 * 1.5) / 1.0, 1.5}}) {
    Plant plant = published_plant();
    plant.roll = {0.4, 0, 0.923, 0, 0, 1, 0};
    plant.brake = {0, 0, 1, 0, want.friction};
    plant.path.wound_in = 2;
    const auto table = mover(plant, {0, 2, 0.5}, 1e-12);
    Drive drive = steady_drive(0, 0);
    drive.acceleration = (2 * 0.5 - want.friction) / 0.923 * 0.5;
    ASSERT_TRUE(table->advance(drive, want.release));
    EXPECT_NEAR(table->sight().tension, 2, 1e-7);
    EXPECT_NEAR(table->sight().roll_speed, want.speed, 1e-9);
    EXPECT_NEAR(table->sight().angle, 0.5, 1e-9);
    ASSERT_TRUE(table->advance(broken(0), want.rest - 1e-7));
    EXPECT_EQ(table->sight().motion.roll, Roll::forward);
    ASSERT_TRUE(table->advance(broken(0), want.rest + 1e-7));
    EXPECT_EQ(table->sight().motion.roll, Roll::held);
    EXPECT_NEAR(table->sight().angle, want.angle, 1e-9);
  }
}

// Published check E-3, stick-slip on a belt (Den Hartog's method): m 1 kg, k 1 N/m, belt 0.1 m/s, static 1 N, kinetic
// 0.6 N. Seen from the belt, the far end of the spring creeps away: a roll of 1 kg·m² and 1 m on a web of EA/L = 1 N/m,
// long and stiff so that its strain, 1e-5, and the draw, v/L, do not count.
TEST(mover, sticks_and_slips_on_a_belt_as_published) {
  Plant plant = published_plant();
  plant.roll = {0.5, 0, 1, 0, 0, 1, 0};
  plant.brake = {1, 0, 1 / 0.6, 0, 0};
  plant.path = single_span(1e5, 1e5);
  const auto mass = mover(plant, {0, 0.2, 1}, 1e-14);
  const Drive belt = steady_drive(0.1, 0.6);
  std::vector<double> caught, let_go;
  double lowest = 1, highest = 0;
  Roll before = mass->sight().motion.roll;
  double tension_before = 0.2;
  EXPECT_EQ(before, Roll::held);
  for (int k = 1; k <= 60000; ++k) {
    const double t = 5e-4 * k;
    ASSERT_TRUE(mass->advance(belt, t));
    const Sight& seen = mass->sight();
    // At rest the tension rises by k v = 0.1 N/s, which tells the times between the samples.
    if (before == Roll::held && seen.motion.roll == Roll::forward)
      let_go.push_back(t - 5e-4 + (1 - tension_before) / 0.1);
    if (before == Roll::forward && seen.motion.roll == Roll::held) caught.push_back(t - (seen.tension - 0.2) / 0.1);
    lowest = std::min(lowest, seen.lowest_tension);
    highest = std::max(highest, seen.highest_tension);
    before = seen.motion.roll;
    tension_before = seen.tension;
  }
  ASSERT_GE(caught.size(), 2U);
  ASSERT_GE(let_go.size(), 2U);
  EXPECT_NEAR(let_go[0], 8, 1e-3);
  EXPECT_NEAR(caught[0] - let_go[0], 3.63154997984, 1e-3);
  EXPECT_NEAR(let_go[1] - let_go[0], 11.6315499798, 1e-3);
  EXPECT_NEAR(lowest, 0.187689437438, 1e-4);
  EXPECT_NEAR(highest, 1.01231056256, 1e-4);
}

// At rest the span stretches at v₂/L: T = EA v₂ t/L reaches static friction, 60 N·m at 0.40 m, after 22.5 s.
TEST(mover, holds_at_standstill_until_the_pull_is_more_than_static_friction) {
  Plant plant = published_plant();
  plant.brake.static_ratio = 1.5;
  const auto roll = mover(plant, {0, 0, 0.40});
  const Drive creeping = steady_drive(1e-4, 4e4);
  ASSERT_TRUE(roll->advance(creeping, 22.0));
  EXPECT_EQ(roll->sight().motion.roll, Roll::held);
  EXPECT_NEAR(roll->sight().tension, 2e5 * 1e-4 * 22.0 / 3, 0.2);
  EXPECT_NEAR(roll->sight().torque, roll->sight().tension * 0.40, 1e-9);
  ASSERT_TRUE(roll->advance(creeping, 22.9));
  EXPECT_LT(roll->sight().tension, 150);  // it broke loose and slid
  EXPECT_GT(roll->sight().angle, 0);
  EXPECT_GE(roll->stick_events(), 1);
}

// A brake that is bled lets the roll go at once, and the stretched web turns it: all by the drive, without an event.
TEST(mover, lets_go_when_the_air_is_taken_away) {
  Plant plant = plant_of_constant_size();
  plant.brake.static_ratio = 1.1;
  const auto roll = mover(plant, {0, 150, 0.40});
  EXPECT_EQ(roll->sight().motion.roll, Roll::held);
  ASSERT_TRUE(roll->advance(steady_drive(0, 0), 0.05));
  EXPECT_EQ(roll->sight().motion.roll, Roll::forward);
  // An undamped quarter swing: T = 150 cos ω t.
  EXPECT_NEAR(roll->sight().tension, 150 * std::cos(18.0835124 * 0.05), 0.2);
}

// A roll off its centre, stopped where its weight pulls it back and let go, swings back as a pendulum, in closed form:
// J ω²/2 = m g e (cos θ₀ − cos θ).
TEST(mover, turns_backward_where_the_weight_is_more_than_the_pull) {
  Plant plant = plant_of_constant_size();
  plant.roll.runout = 0.01;
  plant.roll.gravity = 9.81;
  const auto roll = mover(plant, {0.4, 0, 0.40}, 1e-11);
  double t = 0;
  while (roll->sight().angle < pi + 0.5 && t < 10) ASSERT_TRUE(roll->advance(broken(0), t += 0.01));
  ASSERT_TRUE(roll->advance(broken(1e6), t += 0.2));
  ASSERT_EQ(roll->sight().motion.roll, Roll::held);
  const double from = roll->sight().angle;
  ASSERT_LT(from, 2 * pi);
  ASSERT_TRUE(roll->advance(broken(0), t += 0.5));
  EXPECT_EQ(roll->sight().motion.roll, Roll::backward);
  const double weight = 9.81 * 800 * pi * (0.40 * 0.40 - 0.08 * 0.08);
  const double fall = weight * 0.01 * (std::cos(from) - std::cos(roll->sight().angle));
  EXPECT_GT(fall, 1);
  EXPECT_NEAR(roll->sight().roll_speed, -std::sqrt(2 * fall / 32.6184369187), 1e-8);
}

// After a web break the roll coasts: θ = J ω²/(2 M); by hand the floor holds R θ of web, unstretched.
TEST(mover, lays_the_web_on_the_floor_when_it_parts) {
  const Plant plant = plant_of_constant_size();
  const auto roll = mover(plant, {5, 150, 0.40}, 1e-11);
  ASSERT_TRUE(roll->advance(steady_drive(5, 6e4), 2));
  const Sight before = roll->sight();
  ASSERT_TRUE(roll->advance(broken(6e4), 20));
  const Sight& seen = roll->sight();
  const double coast = physics::coast_angle(32.6184369187, before.roll_speed, 60);
  EXPECT_EQ(seen.motion.roll, Roll::held);
  EXPECT_EQ(seen.tension, 0);
  EXPECT_NEAR(seen.angle - before.angle, coast, 1e-7);
  EXPECT_NEAR(seen.slack, 0.40 * coast, 1e-7);
  EXPECT_NEAR(seen.slip_work - before.slip_work, 60 * coast, 1e-5);
}

// The stretch snaps back and is lost: T ε/2 of 3 m by hand.
TEST(mover, loses_the_stretch_of_a_web_that_parts) {
  const auto roll = mover(plant_of_constant_size(), {0, 150, 0.40});
  const double before = roll->stored();
  ASSERT_TRUE(roll->advance(broken(1e6), 1));
  EXPECT_NEAR(before, 150 * 150 / (2 * 2e5) * 3 / (1 + 150 / 2e5), 1e-9);
  EXPECT_EQ(roll->stored(), 0);
  EXPECT_NEAR(roll->sight().pull_work, -before, 1e-12);
}

// Slack has to be taken up before tension comes back: by hand, a line that creeps at 0.01 m/s takes up the 0.0966 m of
// check S-4 in 9.66 s.
TEST(mover, takes_up_slack_before_tension_comes_back) {
  const auto roll = mover(plant_of_constant_size(), {5, 0, 0.40}, 1e-10);
  Drive drive = steady_drive(5, 2e5);
  drive.acceleration = -2.5;
  ASSERT_TRUE(roll->advance(drive, 2.0));
  ASSERT_TRUE(roll->advance(steady_drive(0, 2e5), 4.0));
  ASSERT_TRUE(roll->advance(steady_drive(0.01, 2e5), 13.66));
  EXPECT_EQ(roll->sight().tension, 0);
  EXPECT_GT(roll->sight().slack, 0);
  ASSERT_TRUE(roll->advance(steady_drive(0.01, 2e5), 13.67));
  EXPECT_NEAR(roll->sight().tension, 2e5 / 3 * 0.01 * (13.67 - 4 - 9.66307685505), 1e-2);
  EXPECT_EQ(roll->sight().slack, 0);
}

// Static friction below sliding friction has no rest to speak of; the roll must creep or rest, never be driven backward
// by its brake.
TEST(mover, is_not_pushed_backward_by_a_brake_that_sticks_less_than_it_slides) {
  Plant plant = plant_of_constant_size();
  plant.brake.static_ratio = 0.8;
  const auto roll = mover(plant, {0, 135, 0.40});
  for (int k = 1; k <= 100; ++k) {
    ASSERT_TRUE(roll->advance(steady_drive(0, 6e4), 0.01 * k));  // pull 54 N·m, sliding 60, static 48
    EXPECT_GE(roll->sight().roll_speed, -1e-9);
  }
}

// Another roll on the shaft, 2 % too fast: by hand ω = 1.02 v/R.
TEST(mover, takes_another_roll) {
  const auto roll = mover(published_plant(), {5, 150, 0.20});
  ASSERT_TRUE(roll->advance(steady_drive(5, 3e4), 1));
  const double tension = roll->sight().tension;
  roll->change_roll(0.40, 5.1);
  EXPECT_NEAR(roll->sight().roll_speed, 5.1 / 0.40, 1e-12);
  EXPECT_EQ(roll->sight().radius, 0.40);
  EXPECT_NEAR(roll->sight().tension, tension, 1e-9);
  ASSERT_TRUE(roll->advance(steady_drive(5, 3e4), 1.02));
  // Web comes 0.1 m/s too fast: 2 mm in 20 ms, more than the 2.25 mm of stretch leave at rest.
  EXPECT_LT(roll->sight().tension, 0.3 * tension);
}

}  // namespace
}  // namespace holdback::dynamics
