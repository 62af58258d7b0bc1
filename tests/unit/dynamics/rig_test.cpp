#include "holdback/dynamics/rig.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "holdback/physics/torque.hpp"
#include "unit/dynamics/plants.hpp"

namespace holdback::dynamics {
namespace {

using testing::any_pressure;
using testing::known;
using testing::pi;
using testing::rig_setup;

constexpr double setpoint = 150;

std::unique_ptr<Controller> follower(const RigSetup& setup, double compensation = 0) {
  Believed believed = known(setup.plant);
  believed.inertia_compensation = compensation;
  return std::make_unique<DiameterFollower>(believed, any_pressure);
}

std::unique_ptr<Controller> load_cell_loop(const Believed& believed, double gain = 0.05) {
  LoopSettings settings;
  settings.gain = gain;
  settings.integral_time = 0.5;
  settings.sample_time = 0.01;
  settings.full_radius = 0.40;
  settings.scheduled = true;
  return std::make_unique<LoopController>(Held::tension, settings, believed, any_pressure);
}

void go(Rig& rig, double until) {
  while (rig.time() < until - 1e-9) ASSERT_TRUE(rig.sample());
}

TEST(LineDrive, goes_evenly_to_its_speed_and_stays) {
  LineDrive line(2);
  EXPECT_EQ(line.speed_at(5), 2);
  line.go_to(5, 10, 6);
  EXPECT_NEAR(line.speed_at(12), 3, 1e-12);
  EXPECT_EQ(line.acceleration_at(12), 0.5);
  EXPECT_EQ(line.acceleration_at(16), 0);
  EXPECT_NEAR(line.speed_at(100), 5, 1e-12);
  EXPECT_NEAR(line.target(), 5, 1e-12);
  line.go_to(0, 13, 7);  // before it was there
  EXPECT_NEAR(line.speed_at(13), 3.5, 1e-12);
  EXPECT_NEAR(line.speed_at(20), 0, 1e-12);
}

// With a constant pressure the torque stays, so T R does.
TEST(Rig, lets_tension_rise_as_the_roll_gets_smaller_under_a_hand) {
  const RigSetup setup = rig_setup();
  Rig rig(setup, follower(setup));
  rig.turn_regulator(rig.sight().pressure);
  go(rig, 200);
  EXPECT_NEAR(rig.sight().tension * rig.sight().radius / (setpoint * 0.40), 1, 0.01);
  EXPECT_GT(rig.sight().tension, 1.2 * setpoint);
}

TEST(Rig, keeps_the_tension_by_following_the_diameter) {
  const RigSetup setup = rig_setup();
  Rig rig(setup, follower(setup));
  while (rig.time() < 460) {
    ASSERT_TRUE(rig.sample());
    ASSERT_NEAR(rig.sight().tension, setpoint, 0.02 * setpoint) << rig.time();
  }
  EXPECT_LT(rig.sight().radius, 0.15);
  // By hand π (R₀² − R²) = t times the web drawn, less its strain of 7.5e-4.
  const double left = 0.16 - rig.sight().radius * rig.sight().radius;
  EXPECT_NEAR(pi * left / 2e-4 / rig.web_run(), 1, 1e-3);
}

// Friction a fifth below what the controller believes. By hand, following the diameter: 0.8 (T R − M_d) + M_d; a load
// cell's integral takes the rest away.
TEST(Rig, loses_with_a_load_cell_the_error_that_following_the_diameter_leaves) {
  RigSetup setup = rig_setup();
  const Believed believed = known(setup.plant);
  setup.plant.brake.torque_per_pressure *= 0.8;
  Rig followed(setup, std::make_unique<DiameterFollower>(believed, any_pressure));
  Rig felt(setup, load_cell_loop(believed));
  go(followed, 30);
  // By hand the integral takes 1/(0.8 · gain/τ_I) = 12.5 s for each factor of e.
  go(felt, 30);
  EXPECT_NEAR(setpoint - felt.sight().tension, 30 * std::exp(-30 / 12.5), 0.3);
  go(felt, 120);
  const double radius = followed.sight().radius;
  EXPECT_NEAR(followed.sight().tension, (0.8 * (setpoint * radius - 1.5) + 1.5) / radius, 0.01 * setpoint);
  EXPECT_NEAR(felt.sight().tension, setpoint, 0.002 * setpoint);
  EXPECT_NEAR(felt.measured_tension(), setpoint, 0.002 * setpoint);
}

// In an even stop the follower adds nothing for inertia and the tension falls by J a/R², the balance of the roll
// (physics/torque.hpp); told of the inertia it makes that good.
TEST(Rig, keeps_the_tension_in_a_ramp_when_inertia_is_compensated) {
  const RigSetup setup = rig_setup();
  const double rate = 0.25;  // [m/s²]
  for (const double share : {0.0, 1.0}) {
    Rig rig(setup, follower(setup, share));
    rig.line_to(0, 5 / rate);
    go(rig, 10);
    const double radius = rig.sight().radius;
    const double fall = physics::released_tension(inertia_at(setup.plant.roll, radius), rate / radius, 0, radius);
    EXPECT_NEAR(rig.sight().tension, setpoint - (1 - share) * fall, 0.01 * setpoint) << share;
    EXPECT_GT(fall, 0.3 * setpoint);
  }
}

/// When a step of pressure at the first sample comes to the brake, from p = p₀ + Δ (1 − e^(−(t − θ)/τ)).
double arrival_with(double dead_time) {
  RigSetup setup = rig_setup();
  setup.plant.air.dead_time = dead_time;
  Rig rig(setup, follower(setup));
  const double before = rig.sight().pressure;
  rig.turn_regulator(before + 1000);
  while (rig.time() < 0.1 - 1e-9) rig.sample();
  return 0.1 + 0.05 * std::log(1 - (rig.sight().pressure - before) / 1000);
}

TEST(Rig, delays_the_air_by_its_dead_time_a_whole_number_of_samples_or_not) {
  for (const double dead_time : {0.0, 0.01, 0.04, 0.025, 0.0333, 0.003}) {
    EXPECT_NEAR(arrival_with(dead_time), dead_time, 1e-6) << dead_time;
  }
}

// By hand: a play of 10 kPa lets the pressure stay while the hand turns back by less than that.
TEST(Rig, has_a_regulator_with_play) {
  RigSetup setup = rig_setup();
  setup.plant.air.hysteresis = 1e4;
  Rig rig(setup, follower(setup));
  const double before = rig.sight().pressure;
  rig.turn_regulator(before + 2e4);
  go(rig, 2);
  EXPECT_NEAR(rig.sight().pressure, before + 1.5e4, 1);
  rig.turn_regulator(before + 1.1e4);
  go(rig, 4);
  EXPECT_NEAR(rig.sight().pressure, before + 1.5e4, 1);
  rig.turn_regulator(before);
  go(rig, 6);
  EXPECT_NEAR(rig.sight().pressure, before + 5e3, 1);
}

// By hand: two of three pairs at the same pressure give two thirds of the pads' torque.
TEST(Rig, gives_the_share_of_the_pairs_engaged) {
  RigSetup setup = rig_setup();
  setup.pairs = 3;
  setup.plant.roll.caliper = 0;
  Rig rig(setup, follower(setup));
  const double pads = setpoint * 0.40 - 1.5;
  rig.turn_regulator(rig.sight().pressure);
  rig.engage(2);
  go(rig, 8);
  EXPECT_EQ(rig.pairs(), 2);
  EXPECT_NEAR(rig.sight().tension * rig.sight().radius, 2 * pads / 3 + 1.5, 0.005 * 60);
  // A controller that knows of it sets the pressure for it.
  rig.turn_regulator({});
  go(rig, 20);
  EXPECT_NEAR(rig.sight().tension, setpoint, 0.01 * setpoint);
}

TEST(Rig, follows_another_setpoint) {
  const RigSetup setup = rig_setup();
  Rig rig(setup, load_cell_loop(known(setup.plant)));
  rig.ask_for(200);
  go(rig, 10);
  EXPECT_EQ(rig.setpoint(), 200);
  EXPECT_NEAR(rig.sight().tension, 200, 1);
}

// By hand: without air drag alone brakes, T = M_d/R in steady running.
TEST(Rig, loses_its_tension_when_the_air_fails) {
  RigSetup setup = rig_setup();
  setup.plant.roll.caliper = 0;
  Rig rig(setup, follower(setup));
  rig.fail_air(true);
  go(rig, 60);
  EXPECT_NEAR(rig.sight().pressure, 0, 1);
  EXPECT_NEAR(rig.sight().tension, 1.5 / rig.sight().radius, 1);
  rig.fail_air(false);
  go(rig, 90);
  EXPECT_NEAR(rig.sight().tension, setpoint, 0.02 * setpoint);
}

// The roll coasts as physics/torque.hpp says, against the pads at the pressure set and the drag.
TEST(Rig, stops_the_roll_by_the_brake_when_the_web_parts) {
  RigSetup setup = rig_setup();
  setup.plant.roll.caliper = 0;
  Rig rig(setup, follower(setup));
  go(rig, 1);
  rig.turn_regulator(rig.sight().pressure);
  const Sight before = rig.sight();
  rig.break_web();
  go(rig, 20);
  EXPECT_TRUE(rig.is_broken());
  EXPECT_EQ(rig.sight().roll_speed, 0);
  const double coast = physics::coast_angle(32.6184369187, before.roll_speed, setpoint * 0.40);
  EXPECT_NEAR((rig.sight().angle - before.angle) / coast, 1, 1e-3);
  EXPECT_NEAR(rig.sight().slack / (0.40 * coast), 1, 1e-3);
}

// The new roll at the line's speed; its energy is no gain of the stand, and the books stay even.
TEST(Rig, goes_over_to_a_new_roll) {
  RigSetup setup = rig_setup();
  setup.radius = 0.12;
  setup.mover.relative = 1e-9;
  Rig rig(setup, follower(setup));
  go(rig, 5);
  rig.splice(0.40, 0);
  EXPECT_EQ(rig.sight().radius, 0.40);
  EXPECT_NEAR(rig.sight().roll_speed, 5 / 0.40, 1e-12);
  go(rig, 20);
  EXPECT_NEAR(rig.sight().tension, setpoint, 0.02 * setpoint);
  EXPECT_NEAR(rig.pulled(), rig.sight().slip_work + rig.stored_gain(), 1e-6 * rig.pulled());
}

// Web over turns: the whole turn before is at a mean diameter one caliper larger than the present one, and the line
// draws web that is stretched by 7.5e-4.
TEST(Rig, measures_the_diameter_by_counted_turns) {
  RigSetup setup = rig_setup();
  setup.diameter.method = DiameterMethod::turns;
  Rig rig(setup, follower(setup));
  go(rig, 100);
  const double true_diameter = 2 * rig.sight().radius;
  EXPECT_NEAR(rig.measured_diameter(), true_diameter * (1 + setpoint / 2e5), 1.5e-3);
  EXPECT_GT(rig.measured_diameter(), true_diameter);
}

// Before a turn of the new roll is counted its diameter is what was told at the splice, not that of the roll before.
TEST(Rig, knows_the_diameter_of_a_new_roll_at_once) {
  RigSetup setup = rig_setup();
  setup.radius = 0.12;
  setup.diameter.method = DiameterMethod::turns;
  Rig rig(setup, follower(setup));
  go(rig, 5);
  rig.splice(0.40, 0);
  ASSERT_TRUE(rig.sample());
  EXPECT_NEAR(rig.measured_diameter(), 0.80, 1e-9);
  // By hand: p = p₀ + (T D/2 − M_d)/K.
  EXPECT_NEAR(rig.set_pressure(), 1e4 + (60 - 1.5) / 1e-3, 1);
}

// Sound meets the surface as it stands: ±2 e about the diameter, through a lag of 2 s almost nothing of it.
TEST(Rig, measures_the_diameter_by_sound) {
  RigSetup setup = rig_setup();
  setup.plant.roll.runout = 1e-3;
  Rig rig(setup, follower(setup));
  double most = 0, least = 1;
  for (int k = 0; k < 100; ++k) {
    ASSERT_TRUE(rig.sample());
    const double off = rig.measured_diameter() - 2 * rig.sight().radius;
    most = std::max(most, off);
    least = std::min(least, off);
  }
  EXPECT_NEAR(most, 2e-3, 1e-4);
  EXPECT_NEAR(least, -2e-3, 1e-4);
}

// A reading with noise of 3 N, rounded to half a newton; nothing else is disturbed by it under a follower.
TEST(Rig, reads_its_load_cell_with_noise_and_in_steps) {
  RigSetup setup = rig_setup();
  setup.plant.roll.caliper = 0;
  setup.cell.noise = 3;
  setup.cell.resolution = 0.5;
  Rig rig(setup, follower(setup));
  double sum = 0, squares = 0;
  for (int k = 0; k < 4000; ++k) {
    ASSERT_TRUE(rig.sample());
    const double off = rig.measured_tension() - setpoint;
    EXPECT_NEAR(std::remainder(rig.measured_tension(), 0.5), 0, 1e-9);
    sum += off;
    squares += off * off;
  }
  EXPECT_NEAR(sum / 4000, 0, 4 * 3 / std::sqrt(4000));
  EXPECT_NEAR(std::sqrt(squares / 4000), std::sqrt(9 + 0.25 / 12), 0.15);
}

// Hot pads: by hand a fifth of the friction left off the pads' torque at constant pressure.
TEST(Rig, loses_torque_as_the_disc_gets_hot) {
  RigSetup setup = rig_setup();
  setup.heat.grade.fade_start = 350;
  setup.heat.grade.fade_rate = 0.002;
  setup.heat.nodes.capacity.fill(1e9);
  setup.plant.roll.caliper = 0;
  setup.temperatures = physics::NodeTemperatures{450, 450, 450, 450};
  Rig rig(setup, follower(setup));
  EXPECT_NEAR(rig.sight().tension, setpoint, 1e-9);  // it starts in steady running all the same
  rig.turn_regulator(1e4 + (60 - 1.5) / 1e-3);
  go(rig, 8);
  EXPECT_NEAR(rig.sight().tension * rig.sight().radius, 0.8 * 58.5 + 1.5, 0.3);
}

// A dancer's loop: the force keeps the tension, the loop the place.
TEST(Rig, keeps_a_dancer_in_the_middle) {
  RigSetup setup = rig_setup();
  setup.plant.path.dancer = DancerPlant{0, 5, 0.1, 200, 2, 0};
  LoopSettings settings;
  // By hand: J z̈ strands reach/R² = −gain T e, 1.05 rad/s, damped by half of its critical value.
  settings.gain = 0.3;
  settings.integral_time = 10;
  settings.derivative_time = 1;
  settings.sample_time = 0.01;
  settings.full_radius = 0.40;
  settings.scheduled = true;
  Believed believed = known(setup.plant);
  believed.torque_per_pressure *= 0.98;  // the pads grip better than it believes
  Rig rig(setup, std::make_unique<LoopController>(Held::dancer_place, settings, believed, any_pressure));
  go(rig, 100);
  EXPECT_EQ(rig.mover().dancer_hits(), 0);
  EXPECT_NEAR(rig.sight().dancer_place, 0, 0.02);
  EXPECT_NEAR(rig.sight().tension, setpoint, 0.01 * setpoint);
}

TEST(Rig, is_the_same_every_time) {
  RigSetup setup = rig_setup();
  setup.cell.noise = 3;
  setup.plant.roll.runout = 5e-4;
  Rig one(setup, load_cell_loop(known(setup.plant)));
  Rig other(setup, load_cell_loop(known(setup.plant)));
  go(one, 5);
  go(other, 5);
  EXPECT_EQ(one.sight().tension, other.sight().tension);
  EXPECT_EQ(one.sight().slip_work, other.sight().slip_work);
}

}  // namespace
}  // namespace holdback::dynamics
