// A dancer in the path: its equilibrium, its swing, its stops.
#include <gtest/gtest.h>

#include <cmath>

#include "holdback/dynamics/mover.hpp"
#include "unit/dynamics/plants.hpp"

namespace holdback::dynamics {
namespace {

using testing::mover;
using testing::plant_of_constant_size;
using testing::steady_drive;
using testing::swing_frequency;

using Dancer = Motion::Dancer;

/// A dancer of 5 kg on two strands in 3 m of web that stands, held by the roll.
Plant held_loop() {
  Plant plant = plant_of_constant_size();
  plant.brake.static_ratio = 4;
  plant.path.dancer = DancerPlant{0, 5, 0.1, 0, 2, 0};
  return plant;
}

Drive standing(double force) {
  Drive drive = steady_drive(0, 6e4);
  drive.dancer_force = force;
  return drive;
}

// By hand T = F/strands, whatever the brake: with the line running and some damping the dancer settles there.
TEST(dancer, keeps_its_force_over_the_strands_in_the_web) {
  Plant plant = held_loop();
  plant.path.dancer->damping = 2000;
  plant.path.dancer->strands = 3;
  const auto loop = mover(plant, {0, 100, 0.40});
  ASSERT_TRUE(loop->advance(standing(330), 10));
  EXPECT_NEAR(loop->sight().tension, 110, 1e-6);
  // The web that it took up: by hand 10 N/EA of the unstretched web, over three strands.
  EXPECT_NEAR(loop->sight().dancer_place * 0.1, 10 / 2e5 * 3 / (1 + 100 / 2e5) / 3, 1e-9);
}

// With both ends of the web held T is linear in the place, and the swing is harmonic: ω² = strands² EA/(w m), w the web
// unstretched.
TEST(dancer, swings_against_its_strands) {
  for (const double strands : {1.0, 2.0}) {
    Plant plant = held_loop();
    plant.path.dancer->strands = strands;
    const auto loop = mover(plant, {0, 100, 0.40}, 1e-11);
    std::vector<double> place;
    for (int k = 1; k <= 3000; ++k) {
      ASSERT_TRUE(loop->advance(standing(strands * 105), 5e-4 * k));
      place.push_back(loop->sight().dancer_place);
    }
    const double web = 3 / (1 + 100 / 2e5);
    const double middle = 5 * web / 2e5 / strands / 0.1;
    EXPECT_NEAR(swing_frequency(place, middle, 5e-4) / (strands * std::sqrt(2e5 / (web * 5))), 1, 1e-5);
    EXPECT_EQ(loop->dancer_hits(), 0);
  }
}

// A force that rises towards the stops by a tenth of itself in 0.1 m works as a spring below zero: k − F taper/reach.
TEST(dancer, swings_slower_with_a_force_that_rises) {
  Plant plant = held_loop();
  plant.path.stiffness = 2e4;
  plant.path.dancer->taper = 4;
  const auto loop = mover(plant, {0, 100, 0.40}, 1e-11);
  std::vector<double> place;
  for (int k = 1; k <= 3000; ++k) {
    ASSERT_TRUE(loop->advance(standing(201), 5e-4 * k));
    place.push_back(loop->sight().dancer_place);
  }
  const double stiffness = 4 * 2e4 / (3 / (1 + 100 / 2e4)) - 201 * 4 / 0.1;
  EXPECT_NEAR(swing_frequency(place, 1 / stiffness / 0.1, 5e-4) / std::sqrt(stiffness / 5), 1, 1e-4);
}

// From rest at T = 100 N, 150 N more push it x = 0.1 mm to its stop: there m v²/2 = 150 x − k x²/2, lost. It stays
// while the push holds, and comes off when the push turns: T at the stop is 100 N + k x/2.
TEST(dancer, meets_its_stop_loses_its_energy_and_comes_off) {
  Plant plant = held_loop();
  plant.path.dancer->reach = 1e-4;
  const auto loop = mover(plant, {0, 100, 0.40}, 1e-12);
  const double before = loop->stored();
  ASSERT_TRUE(loop->advance(standing(350), 0.1));
  const double web = 3 / (1 + 100 / 2e5);
  const double spring = 4 * 2e5 / web;
  const double lost = 150 * 1e-4 - spring * 1e-8 / 2;
  EXPECT_EQ(loop->sight().motion.dancer, Dancer::at_high_stop);
  EXPECT_EQ(loop->sight().dancer_place, 1);
  EXPECT_EQ(loop->dancer_hits(), 1);
  EXPECT_NEAR(loop->sight().tension, 100 + spring * 1e-4 / 2, 1e-6);
  // Work of the force, 350 x, less what the stop took.
  EXPECT_NEAR(loop->sight().pull_work, 350 * 1e-4 - lost, 1e-9);
  EXPECT_NEAR(loop->sight().pull_work, loop->stored() - before, 1e-9);
  ASSERT_TRUE(loop->advance(standing(2 * loop->sight().tension + 0.1), 0.2));
  EXPECT_EQ(loop->sight().motion.dancer, Dancer::at_high_stop);
  ASSERT_TRUE(loop->advance(standing(2 * loop->sight().tension - 0.1), 0.2001));
  EXPECT_EQ(loop->sight().motion.dancer, Dancer::free);
  EXPECT_LT(loop->sight().dancer_place, 1);
}

// At the stop the web's own pull takes it off again, which no drive announces: the line stretches the web.
TEST(dancer, is_pulled_off_its_stop_by_the_web) {
  Plant plant = held_loop();
  plant.path.dancer->reach = 1e-3;
  plant.path.dancer->damping = 500;
  const auto loop = mover(plant, {0, 100, 0.40}, 1e-10);
  ASSERT_TRUE(loop->advance(standing(1000), 1));
  ASSERT_EQ(loop->sight().motion.dancer, Dancer::at_high_stop);
  // By hand the tension at the stop, 100 N + strands reach EA/w; it comes off at 500 N; the line brings EA v t/w.
  const double at_stop = loop->sight().tension;
  EXPECT_NEAR(at_stop, 100 + 2e-3 * 2e5 / (3 / (1 + 100 / 2e5)), 1e-6);
  Drive drive = standing(1000);
  drive.line_speed = 1e-3;
  const double comes_off = (500 - at_stop) / (2e5 * 1e-3 / 3);
  ASSERT_TRUE(loop->advance(drive, 1 + 0.99 * comes_off));
  EXPECT_EQ(loop->sight().motion.dancer, Dancer::at_high_stop);
  ASSERT_TRUE(loop->advance(drive, 1 + 1.05 * comes_off));
  EXPECT_EQ(loop->sight().motion.dancer, Dancer::free);
}

// Slack web: it falls to the stop that takes web up, and its low stop is reached when the line pulls.
TEST(dancer, goes_to_the_low_stop_when_the_line_pulls_it) {
  Plant plant = held_loop();
  plant.brake.static_ratio = 100;
  plant.path.dancer->reach = 0.02;
  plant.path.dancer->damping = 1000;
  const auto loop = mover(plant, {0, 100, 0.40}, 1e-9);
  Drive drive = standing(200);
  drive.line_speed = 0.1;
  ASSERT_TRUE(loop->advance(drive, 0.5));  // 50 mm of web; 40 mm is all the dancer can give
  EXPECT_EQ(loop->sight().motion.dancer, Dancer::at_low_stop);
  EXPECT_EQ(loop->sight().dancer_place, -1);
  // By hand: 10 mm more on 2.96 m of place; the line takes unstretched web, w falls by what passed.
  EXPECT_NEAR(loop->sight().tension, 100 + 0.010 / 2.95 * 2e5, 12);
}

}  // namespace
}  // namespace holdback::dynamics
