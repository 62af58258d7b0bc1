#include "holdback/dynamics/control.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "unit/dynamics/plants.hpp"

namespace holdback::dynamics {
namespace {

using testing::any_pressure;
using testing::pi;

constexpr double setpoint = 150;

Believed believed() {
  Believed brake;
  brake.torque_per_pressure = 1e-3;
  brake.threshold = 1e4;
  brake.drag = 1.5;
  brake.fixed_inertia = 0.5;
  brake.inertia_per_fourth = pi / 2 * 800;
  brake.core_radius = 0.08;
  return brake;
}

Sample sample_at(double diameter, double tension = setpoint) {
  Sample sample;
  sample.diameter = diameter;
  sample.tension = tension;
  sample.setpoint = setpoint;
  sample.line_speed = 5;
  return sample;
}

TEST(settable, keeps_the_range_and_the_step) {
  EXPECT_EQ(settable({1e4, 5e5, 1e3}, 0), 1e4);
  EXPECT_EQ(settable({1e4, 5e5, 1e3}, 1e6), 5e5);
  EXPECT_NEAR(settable({1e4, 5e5, 1e3}, 123456), 123000, 1e-6);
  EXPECT_EQ(settable({1e4, 5e5, 0}, 123456), 123456);
  EXPECT_EQ(settable({0, 5.4e4, 1e4}, 5.4e4), 5e4);
}

TEST(HandRegulator, goes_down_its_card) {
  HandRegulator hand({{0.8, 1e5}, {0.6, 8e4}, {0.4, 6e4}}, any_pressure);
  EXPECT_EQ(hand.pressure(sample_at(0.9)), 1e5);
  EXPECT_EQ(hand.pressure(sample_at(0.61)), 1e5);
  EXPECT_EQ(hand.pressure(sample_at(0.6)), 8e4);
  EXPECT_EQ(hand.pressure(sample_at(0.1)), 6e4);
}

// By hand: half of the pairs need twice the pressure above the threshold, a third more tension a third more of it.
TEST(HandRegulator, makes_good_for_pairs_and_setpoint) {
  HandRegulator hand({{0.8, 9e4}}, any_pressure, 1e4, setpoint);
  Sample sample = sample_at(0.7);
  EXPECT_NEAR(hand.pressure(sample), 9e4, 1e-9);
  sample.brake_share = 0.5;
  EXPECT_NEAR(hand.pressure(sample), 1e4 + 2 * 8e4, 1e-6);
  sample.brake_share = 1;
  sample.setpoint = 200;
  EXPECT_NEAR(hand.pressure(sample), 1e4 + 8e4 * 200 / 150, 1e-6);
}

// By hand: p = p₀ + (T D/2 − M_d)/K.
TEST(DiameterFollower, sets_pressure_in_proportion_to_the_diameter) {
  DiameterFollower follower(believed(), any_pressure);
  EXPECT_NEAR(follower.pressure(sample_at(0.8)), 1e4 + (60 - 1.5) / 1e-3, 1e-6);
  EXPECT_NEAR(follower.pressure(sample_at(0.4)), 1e4 + (30 - 1.5) / 1e-3, 1e-6);
  EXPECT_EQ(follower.pressure(sample_at(0.01)), 1e4);  // drag alone is too much
  Sample sample = sample_at(0.8);
  sample.brake_share = 0.5;
  EXPECT_NEAR(follower.pressure(sample), 1e4 + (60 - 1.5) / 0.5e-3, 1e-6);
}

// By hand: at 0.40 m the published roll has 32.618 kg·m²; at −0.5 m/s² it asks for J a/R more.
TEST(torque_asked, adds_a_share_of_the_torque_of_inertia) {
  Believed brake = believed();
  brake.inertia_compensation = 0.8;
  Sample sample = sample_at(0.8);
  sample.line_acceleration = -0.5;
  EXPECT_NEAR(torque_asked(brake, sample), 60 - 1.5 + 0.8 * 32.6184369187 * 0.5 / 0.40, 1e-8);
}

LoopSettings settings(double gain, double integral_time) {
  LoopSettings made;
  made.gain = gain;
  made.integral_time = integral_time;
  made.sample_time = 0.01;
  made.full_radius = 0.40;
  return made;
}

double torque_of(double pressure) { return (pressure - 1e4) * 1e-3; }

// By hand: an error of 0.1 of the setpoint asks for gain · 0.1 · T R at once, and for as much again after each
// integral time.
TEST(LoopController, is_proportional_and_integral) {
  LoopController loop(Held::tension, settings(0.2, 0.5), believed(), any_pressure);
  const double direct = 60 - 1.5, whole = 0.2 * 0.1 * 60;
  EXPECT_NEAR(torque_of(loop.pressure(sample_at(0.8, 135))), direct + whole * (1 + 0.02), 1e-9);
  double last = 0;
  for (int k = 1; k < 50; ++k) last = loop.pressure(sample_at(0.8, 135));
  EXPECT_NEAR(torque_of(last), direct + whole * 2, 1e-9);
}

TEST(LoopController, goes_by_the_measured_diameter_when_it_is_scheduled) {
  LoopSettings made = settings(0.2, 1e9);
  made.scheduled = true;
  LoopController scheduled(Held::tension, made, believed(), any_pressure);
  EXPECT_NEAR(torque_of(scheduled.pressure(sample_at(0.4, 135))), 30 - 1.5 + 0.2 * 0.1 * 30, 1e-6);
  LoopController fixed(Held::tension, settings(0.2, 1e9), believed(), any_pressure);
  EXPECT_NEAR(torque_of(fixed.pressure(sample_at(0.4, 135))), 30 - 1.5 + 0.2 * 0.1 * 60, 1e-6);
}

// A dancer that has taken web up hangs in too little tension: more brake.
TEST(LoopController, brakes_more_when_the_dancer_has_taken_web_up) {
  LoopController loop(Held::dancer_place, settings(0.2, 1e9), believed(), any_pressure);
  Sample sample = sample_at(0.8);
  sample.dancer_place = 0.5;
  EXPECT_NEAR(torque_of(loop.pressure(sample)), 58.5 + 0.2 * 0.5 * 60, 1e-6);
}

// An error that rises evenly by 1 a second has the derivative 1 behind its filter (closed form of a first-order lag:
// the slope comes through whole after some time constants).
TEST(LoopController, feels_how_fast_the_error_grows) {
  LoopSettings made = settings(0.2, 1e9);
  made.derivative_time = 0.4;
  LoopController loop(Held::tension, made, believed(), any_pressure);
  double pressure = 0, error = 0;
  for (int k = 0; k < 100; ++k) {
    error = 0.001 * k;
    pressure = loop.pressure(sample_at(0.8, setpoint * (1 - error)));
  }
  EXPECT_NEAR(torque_of(pressure), 58.5 + 0.2 * 60 * (error + 0.4 * 0.1), 1e-3);
}

TEST(LoopController, does_not_start_with_a_jump_of_its_derivative) {
  LoopSettings made = settings(0.2, 1e9);
  made.derivative_time = 0.4;
  LoopController loop(Held::tension, made, believed(), any_pressure);
  EXPECT_NEAR(torque_of(loop.pressure(sample_at(0.8, 135))), 58.5 + 0.2 * 60 * 0.1, 1e-6);
}

// Without winding up the pressure comes off its end with the sign of the error, in one sample.
TEST(LoopController, does_not_wind_up_at_the_end_of_its_range) {
  const PressureRange low{0, 4e4, 0};  // less than the job needs: the loop pushes against its end
  LoopController loop(Held::tension, settings(0.2, 0.1), believed(), low);
  for (int k = 0; k < 10000; ++k) EXPECT_EQ(loop.pressure(sample_at(0.8, 50)), 4e4);
  // The diameter alone asks for 2.1e4 Pa at 0.18 m; the loop asks for less, as the tension is too high.
  EXPECT_LT(loop.pressure(sample_at(0.18, 400)), 2.2e4);
}

TEST(LoopController, does_not_wind_up_at_no_torque) {
  LoopController loop(Held::tension, settings(2, 0.1), believed(), any_pressure);
  for (int k = 0; k < 10000; ++k) EXPECT_EQ(loop.pressure(sample_at(0.8, 400)), 1e4);
  EXPECT_GT(loop.pressure(sample_at(0.8, 140)), 6e4);
}

// At standstill the web's tension is what the brake holds, and no error of the loop: the integral must wait.
TEST(LoopController, waits_at_standstill) {
  LoopController loop(Held::tension, settings(0.2, 0.1), believed(), any_pressure);
  Sample sample = sample_at(0.8, 120);
  sample.line_speed = 0;
  const double first = loop.pressure(sample);
  for (int k = 0; k < 1000; ++k) EXPECT_EQ(loop.pressure(sample), first);
}

}  // namespace
}  // namespace holdback::dynamics
