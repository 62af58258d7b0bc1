#include "holdback/dynamics/motion.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace holdback::dynamics {
namespace {

using std::numbers::pi;

/// The roll of the published checks R-5, S-3 and S-4: J(R) = 0.5 + ½π·800·1.0·(R⁴ − 0.08⁴), caliper 0.2 mm.
Plant published_plant() {
  Plant plant;
  plant.roll = {0.08, 2e-4, 0.5, pi / 2 * 800, 0};
  plant.brake = {1e-3, 0, 1, 0, 0};
  plant.span = {3, 2e5, 0, 0, 0};
  return plant;
}

TEST(inertia_at, is_that_of_the_published_roll) {
  EXPECT_NEAR(inertia_at(published_plant().roll, 0.40), 32.6184369187, 1e-9);
  EXPECT_NEAR(inertia_at(published_plant().roll, 0.08), 0.5, 1e-12);
}

// Published check S-3, computed with SciPy DOP853 and Radau: EA 2e5 N, L 3 m, v 5 m/s, M_b 60 N·m, R 0.40 m, T 150 N.
TEST(mover, unwinds_against_a_constant_torque_as_published) {
  const Plant plant = published_plant();
  MotionState start = steady_state(plant, 5, 150, 0.40);
  start[pressure] = 6e4;
  Mover mover(plant, start, 1e-11);
  struct Row {
    double t, omega, radius, tension;
  };
  const Drive drive{0, 5, 0, 6e4};
  for (const Row& row :
       {Row{1, 12.503214485, 0.399602216, 150.8601276}, Row{10, 12.616501663, 0.396004188, 152.5255500},
        Row{60, 13.308835032, 0.375388174, 160.8500749}, Row{300, 19.649645977, 0.254155692, 237.1574511}}) {
    ASSERT_TRUE(mover.advance(drive, row.t));
    EXPECT_NEAR(mover.state()[speed] / row.omega, 1, 1e-8) << row.t;
    EXPECT_NEAR(mover.state()[radius] / row.radius, 1, 1e-8) << row.t;
    EXPECT_NEAR(mover.tension() / row.tension, 1, 1e-7) << row.t;
  }
}

// Published check S-4: v 5 m/s, the line stops at 2.5 m/s², 200 N·m at most: the roll stops after 2.03865230742 s and
// throws 0.0966307685505 m. Closed form for a web that pulls no more from the first moment; the roll keeps its size.
TEST(mover, throws_the_slack_of_a_brake_that_is_too_small_as_published) {
  Plant plant = published_plant();
  plant.roll.caliper = 0;
  MotionState start = steady_state(plant, 5, 0, 0.40);
  start[pressure] = 2e5;
  Mover mover(plant, start, 1e-10);
  ASSERT_TRUE(mover.advance({0, 5, -2.5, 2e5}, 2.0));
  EXPECT_EQ(mover.motion(), Motion::slipping);
  EXPECT_NEAR(mover.state()[speed], 5 / 0.4 - 200 / inertia_at(plant.roll, 0.4) * 2.0, 1e-7);
  ASSERT_TRUE(mover.advance({2, 0, 0, 2e5}, 3.0));
  EXPECT_EQ(mover.motion(), Motion::held);
  EXPECT_NEAR(mover.slack(), 0.0966307685505, 1e-6);
}

// Published check E-1: J 12 kg·m², 80 rad/s, 40 N·m stops after 960 rad and 38400 J, and stays at rest.
TEST(mover, comes_to_rest_by_friction_and_stays) {
  Plant plant = published_plant();
  plant.roll = {0.08, 0, 12, 0, 0};
  plant.brake = {1e-3, 0, 1, 0, 0};
  MotionState start{};
  start[speed] = 80;
  start[radius] = 0.08;
  start[fullness] = 2;  // slack: nothing pulls
  start[pressure] = 4e4;
  Mover mover(plant, start, 1e-10);
  ASSERT_TRUE(mover.advance({0, 0, 0, 4e4}, 23.9));
  EXPECT_EQ(mover.motion(), Motion::slipping);
  ASSERT_TRUE(mover.advance({0, 0, 0, 4e4}, 40));
  EXPECT_EQ(mover.motion(), Motion::held);
  EXPECT_NEAR(mover.state()[angle], 960, 1e-6);
  EXPECT_NEAR(mover.state()[slip_work], 38400, 1e-3);
  EXPECT_EQ(mover.state()[speed], 0);
}

TEST(mover, holds_at_standstill_until_the_pull_is_more_than_static_friction) {
  Plant plant = published_plant();
  plant.brake.static_ratio = 1.5;
  MotionState start{};
  start[radius] = 0.40;
  start[fullness] = 1;
  start[pressure] = 4e4;  // 40 N·m sliding, 60 N·m static: 150 N at the rim
  Mover mover(plant, start, 1e-10);
  const Drive creeping{0, 1e-4, 0, 4e4};
  // The span stretches at v₂/L: tension EA v₂ t/L reaches 150 N after 22.5 s (small strains).
  ASSERT_TRUE(mover.advance(creeping, 22.0));
  EXPECT_EQ(mover.motion(), Motion::held);
  EXPECT_NEAR(mover.tension(), 2e5 * 1e-4 * 22.0 / 3, 0.2);
  ASSERT_TRUE(mover.advance(creeping, 22.9));
  EXPECT_LT(mover.tension(), 150);  // it broke loose and slid
  EXPECT_GT(mover.state()[angle], 0);
}

// Steady running stays where it is: dω/dt and du/dt vanish but for the thinning of the roll.
TEST(steady_state, does_not_move_when_the_roll_keeps_its_size) {
  Plant plant = published_plant();
  plant.roll.caliper = 0;
  plant.brake = {1e-3, 2e4, 1, -0.005, 3};
  const MotionState y = steady_state(plant, 4, 120, 0.3);
  const MotionState rate = derivative(plant, {0, 4, 0, y[pressure]}, Motion::slipping, 0, y);
  EXPECT_NEAR(rate[speed], 0, 1e-10);
  EXPECT_NEAR(rate[fullness], 0, 1e-12);
}

// Energy: what the nip pulls out goes into brake and drag, into the web's stretch and into turning the roll.
TEST(mover, keeps_the_books_of_energy) {
  Plant plant = published_plant();
  plant.roll.caliper = 0;
  MotionState start = steady_state(plant, 1, 100, 0.35);
  Mover mover(plant, start, 1e-11);
  const double inertia = inertia_at(plant.roll, 0.35);
  const auto stored = [&](const MotionState& y) {
    const double tension = tension_of(plant.span, y[fullness]);
    const double strain = tension / plant.span.stiffness;
    // Strain energy of the web in the span, EA ε²/2 over its unstretched length L u.
    return inertia * y[speed] * y[speed] / 2 +
           plant.span.stiffness * strain * strain / 2 * plant.span.length * y[fullness];
  };
  const double before = stored(start);
  ASSERT_TRUE(mover.advance({0, 1, 0.4, start[pressure]}, 5));
  const MotionState& y = mover.state();
  // The nip takes stretched web away: with it goes the strain energy T ε/2 of each unstretched metre, v u of them a
  // second; small beside the rest and bounded here.
  const double carried = 0.5 * 200 * 200 / plant.span.stiffness * 15;
  EXPECT_NEAR(y[pull_work], y[slip_work] + stored(y) - before, carried);
  EXPECT_GT(y[pull_work], 10 * carried);
}

TEST(tension_of, never_pushes) {
  const SpanPlant span{3, 2e5, 0, 0, 0};
  EXPECT_EQ(tension_of(span, 1.01), 0);
  EXPECT_NEAR(tension_of(span, fullness_at(span, 150)), 150, 1e-9);
  EXPECT_NEAR(slack_of(span, 1.01), 0.03, 1e-12);
  EXPECT_EQ(slack_of(span, 0.99), 0);
}

// By hand: 100 N, idlers that take 2 N of drag and 4 kg that follow at 0.5 m/s².
TEST(nip_tension, adds_what_the_idlers_take) {
  EXPECT_NEAR(nip_tension({3, 2e5, 0, 2, 4}, 100, 0.5), 104, 1e-12);
  EXPECT_EQ(nip_tension({3, 2e5, 0, 2, 4}, 0, 0.5), 0);
}

}  // namespace
}  // namespace holdback::dynamics
