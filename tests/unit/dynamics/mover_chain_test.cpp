// A path that is followed span by span.
#include "holdback/dynamics/mover_chain.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "holdback/dynamics/mover.hpp"
#include "unit/dynamics/plants.hpp"

namespace holdback::dynamics {
namespace {

using testing::chain_path;
using testing::mover;
using testing::pi;
using testing::plant_of_constant_size;
using testing::steady_drive;
using testing::swing_frequency;

Plant chain_plant() {
  Plant plant = plant_of_constant_size();
  plant.path = chain_path();
  return plant;
}

// By hand: each of the four idlers takes 0.1 N·m over 50 mm, 2 N; the cell weighs spans 2 and 3, so 150 + 5 N. The
// lumped model must say the same of nip and cell.
TEST(chain_mover, takes_the_drag_of_its_idlers_as_the_lumped_model_does) {
  const Plant chain = chain_plant();
  const Plant one = lumped(chain);
  for (const Plant& plant : {chain, one}) {
    const auto roll = mover(plant, {5, 150, 0.40}, 1e-10);
    ASSERT_TRUE(roll->advance(steady_drive(5, 6e4), 60));
    EXPECT_NEAR(roll->sight().tension, 150, 1e-3);
    EXPECT_NEAR(roll->sight().nip_tension, 158, 1e-3);
    EXPECT_NEAR(roll->sight().cell_tension, 155, 1e-3);
  }
}

// Long after a step of pressure both models come to the same first tension: by hand T = M/R.
TEST(chain_mover, comes_to_the_tension_of_the_brake) {
  const auto roll = mover(chain_plant(), {5, 150, 0.40}, 1e-9);
  ASSERT_TRUE(roll->advance(steady_drive(5, 8e4), 60));
  EXPECT_NEAR(roll->sight().tension, 80 / 0.40, 1e-3);
}

// One idler between two spans that stand still at both ends: ω² = EA (1/L₁ + 1/L₂) r²/J at small strain, closed form.
TEST(chain_mover, swings_an_idler_between_its_spans) {
  Plant plant = plant_of_constant_size();
  plant.brake.static_ratio = 3;
  plant.path = chain_path();
  plant.path.spans = {1.2, 1.8};
  plant.path.idlers = {IdlerPlant{0.05, 0.01, 0}};
  const auto roll = mover(plant, {0, 20, 0.40}, 1e-11);
  Drive pull = steady_drive(0.001, roll->sight().pressure);
  ASSERT_TRUE(roll->advance(pull, 0.002));
  std::vector<double> tension;
  for (int k = 1; k <= 4000; ++k) {
    ASSERT_TRUE(roll->advance(steady_drive(0, pull.set_pressure), 0.002 + 1e-4 * k));
    tension.push_back(roll->sight().tension);
  }
  double mean = 0;
  for (const double t : tension) mean += t / 4000;
  EXPECT_EQ(roll->sight().motion.roll, Motion::Roll::held);
  EXPECT_NEAR(swing_frequency(tension, mean, 1e-4) / std::sqrt(2e5 * (1 / 1.2 + 1 / 1.8) * 0.25), 1, 1e-3);
}

// The whole chain at low frequency is one span with the idlers' mass on it: the roll's mode of the lumped plant, with
// the idlers' inertia against it (Rayleigh: mass at x of L counts (1 − x/L)² on the roll's side), to the size of what
// is left out.
TEST(chain_mover, has_the_slow_swing_of_roll_and_whole_path) {
  Plant plant = chain_plant();
  for (IdlerPlant& idler : plant.path.idlers) idler.drag = 0;
  const auto roll = mover(plant, {0.05, 30, 0.40}, 1e-9);
  const double pressure = roll->sight().pressure;
  ASSERT_TRUE(roll->advance(steady_drive(0.05, pressure + 1000), 0.01));
  std::vector<double> speeds;
  for (int k = 1; k <= 4000; ++k) {
    ASSERT_TRUE(roll->advance(steady_drive(0.05, pressure), 0.01 + 1e-3 * k));
    speeds.push_back(roll->sight().roll_speed);
  }
  const double places[] = {0.8, 1.3, 1.9, 2.4};
  double mass = 32.6184369187 / (0.40 * 0.40);
  for (const double x : places) mass += 4 * (1 - x / 3) * (1 - x / 3);
  EXPECT_NEAR(swing_frequency(speeds, 0.05 / 0.40, 1e-3) / std::sqrt(2e5 / 3 / mass), 1, 2e-3);
}

// Two methods, one answer: explicit and stiff steps through a step of pressure and a ramp.
TEST(chain_mover, goes_the_same_way_by_explicit_and_by_stiff_steps) {
  Plant plant = chain_plant();
  plant.air.lag = 0.1;
  plant.roll.runout = 3e-4;
  Sight seen[2];
  int k = 0;
  for (const Steps steps : {Steps::explicit_steps, Steps::stiff_steps}) {
    const auto roll = mover(plant, {5, 150, 0.40}, 1e-10, steps);
    Drive drive = steady_drive(5, 6.5e4);
    drive.acceleration = -0.2;
    ASSERT_TRUE(roll->advance(drive, 4));
    seen[k++] = roll->sight();
  }
  EXPECT_NEAR(seen[0].tension, seen[1].tension, 1e-5);
  EXPECT_NEAR(seen[0].nip_tension, seen[1].nip_tension, 1e-5);
  EXPECT_NEAR(seen[0].roll_speed, seen[1].roll_speed, 1e-8);
  EXPECT_NEAR(seen[0].angle, seen[1].angle, 1e-8);
}

TEST(chain_mover, keeps_the_books_of_energy) {
  Plant plant = chain_plant();
  plant.brake = {};
  plant.roll.runout = 1e-3;
  for (IdlerPlant& idler : plant.path.idlers) idler.drag = 0;
  plant.path.dancer = DancerPlant{2, 4, 0.2, 0, 2, 0};
  const auto roll = mover(plant, {2, 150, 0.40}, 1e-12);
  const double before = roll->stored();
  double exchanged = 0, last = before;
  Drive drive = steady_drive(2, 0);
  drive.dancer_force = 300;
  for (int k = 1; k <= 200; ++k) {
    ASSERT_TRUE(roll->advance(drive, 0.01 * k));
    exchanged += std::abs(roll->stored() - last);
    last = roll->stored();
  }
  EXPECT_GT(exchanged, 50);
  EXPECT_NEAR(roll->sight().pull_work, roll->stored() - before, 1e-8 * exchanged);
}

// Idlers come to rest with the line, without an event: by hand their drag stops 0.01 kg·m² within a second or so.
TEST(chain_mover, lets_its_idlers_come_to_rest) {
  const auto roll = mover(chain_plant(), {1, 150, 0.40}, 1e-7);
  Drive drive = steady_drive(1, 6e4);
  drive.acceleration = -0.5;
  ASSERT_TRUE(roll->advance(drive, 2));
  ASSERT_TRUE(roll->advance(steady_drive(0, 6e4), 10));
  EXPECT_EQ(roll->sight().motion.roll, Motion::Roll::held);
  const double tension = roll->sight().tension;
  ASSERT_TRUE(roll->advance(steady_drive(0, 6e4), 11));
  EXPECT_NEAR(roll->sight().tension, tension, 0.01);
}

}  // namespace
}  // namespace holdback::dynamics
