// The whole shaft under its roll; its parts are tested in shaft_test.cpp.
#include <numbers>

#include "holdback/physics/shaft.hpp"
#include "holdback/physics/whirl.hpp"
#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using std::numbers::pi;
using testing::infinity;
using testing::near;

constexpr double gravity = 9.80665;

/// 90 mm, solid, bearings 1.8 m apart with the roll in the middle.
Shaft plain() {
  Shaft shaft;
  shaft.bearing_span = 1.8;
  shaft.roll_centre = 0.9;
  shaft.sections = {{1.8, 0.09, 0}};
  shaft.modulus = 210e9;
  shaft.density = 7850;
  shaft.tensile_strength = 600e6;
  shaft.notch_factor = 1.5;
  return shaft;
}

/// Journals of 60 mm on a tube of 90 mm.
Shaft stepped() {
  Shaft shaft = plain();
  shaft.sections = {{0.1, 0.06, 0}, {1.6, 0.09, 0.06}, {0.1, 0.06, 0}};
  return shaft;
}

Shaft cantilever() {
  Shaft shaft = plain();
  shaft.support = Support::cantilever;
  shaft.bearing_span = 0.4;
  shaft.roll_centre = 0.9;
  shaft.sections = {{0.35, 0.1, 0}, {0.95, 0.09, 0.05}};
  return shaft;
}

double weight_per_length(double diameter, double bore) {
  return gravity * 7850 * pi / 4 * (diameter * diameter - bore * bore);
}

TEST(shaft_state, of_a_plain_shaft_is_the_sum_of_two_closed_forms) {
  // Roark, table 8.1 (memory): own weight 5wL⁴/384EI; the roll w b (8L³ − 4b²L + b³)/(384EI) over the middle b.
  const double span = 1.8, b = 1.3, rigidity = 676330.902194, own = weight_per_length(0.09, 0);
  const double roll = 600 * gravity / b;
  const ShaftState state = shaft_state(plain(), 600, b, 0, 0);
  const double expected = 5 * own * std::pow(span, 4) / (384 * rigidity) +
                          roll * b * (8 * std::pow(span, 3) - 4 * b * b * span + b * b * b) / (384 * rigidity);
  EXPECT_TRUE(near(state.deflection, expected, 1e-11));
  EXPECT_TRUE(near(state.deflection_place, 0.9, 1e-6));
  EXPECT_TRUE(near(state.first_bearing_load, (own * span + roll * b) / 2));
  EXPECT_TRUE(near(state.second_bearing_load, state.first_bearing_load));
  const double moment = own * span * span / 8 + roll * b * (2 * span - b) / 8;
  EXPECT_TRUE(near(state.bending_stress, bending_stress(moment, 0.09, 0), 1e-11));
  EXPECT_TRUE(near(state.worst_place, 0.9, 1e-6));
  EXPECT_TRUE(near(state.safety, endurance_limit(600e6, 0.09) / (1.5 * state.bending_stress)));
}

TEST(shaft_state, without_a_roll_carries_its_own_weight) {
  const ShaftState state = shaft_state(stepped(), 0, 1.3, 0, 0);
  const double weight = 1.6 * weight_per_length(0.09, 0.06) + 0.2 * weight_per_length(0.06, 0);
  EXPECT_TRUE(near(state.first_bearing_load + state.second_bearing_load, weight));
}

TEST(shaft_state, adds_a_level_pull_across_the_weight) {
  Shaft weightless = plain();
  weightless.density = 0;
  const ShaftState weight = shaft_state(weightless, 60, 1.3, 0, 0), pull = shaft_state(weightless, 0, 1.3, 400, 0);
  const ShaftState both = shaft_state(weightless, 60, 1.3, 400, 0);
  EXPECT_TRUE(near(both.deflection, std::hypot(weight.deflection, pull.deflection)));
  EXPECT_TRUE(near(both.first_bearing_load, std::hypot(30 * gravity, 200)));
}

TEST(shaft_state, is_relieved_by_a_pull_straight_up_and_loaded_by_one_down) {
  Shaft up = plain(), down = plain();
  up.pull_angle = pi / 2;
  down.pull_angle = -pi / 2;
  const double own = 1.8 * weight_per_length(0.09, 0) + 60 * gravity;
  EXPECT_TRUE(near(shaft_state(up, 60, 1.3, 400, 0).first_bearing_load, (own - 400) / 2));
  EXPECT_TRUE(near(shaft_state(down, 60, 1.3, 400, 0).first_bearing_load, (own + 400) / 2));
}

TEST(shaft_state, finds_the_weakest_place_at_the_step_of_a_thin_journal) {
  Shaft shaft = stepped();
  shaft.sections[0].diameter = shaft.sections[2].diameter = 0.04;
  const ShaftState state = shaft_state(shaft, 600, 1.3, 0, 50);
  EXPECT_TRUE(near(std::min(state.worst_place, 1.8 - state.worst_place), 0.1));
  EXPECT_TRUE(near(state.torsion_stress, torsion_stress(50, 0.04, 0)));
  EXPECT_LT(state.safety, shaft_state(stepped(), 600, 1.3, 0, 50).safety);
}

TEST(shaft_state, counts_torque_as_a_steady_stress_with_its_notch) {
  // DE-Goodman by hand: 1/n grows by √3 K_f τ/S_ut.
  const double without = shaft_state(plain(), 600, 1.3, 0, 0).safety, torque = 900;
  const double expected = 1 / without + std::sqrt(3.0) * 1.5 * torsion_stress(torque, 0.09, 0) / 600e6;
  EXPECT_TRUE(near(1 / shaft_state(plain(), 600, 1.3, 0, torque).safety, expected));
}

TEST(shaft_state, of_a_cantilever_is_worst_at_the_front_bearing) {
  const ShaftState state = shaft_state(cantilever(), 300, 0.8, 0, 0);
  EXPECT_TRUE(near(state.worst_place, 0.4, 1e-9));
  EXPECT_TRUE(near(state.deflection_place, 1.3));
  // Moments about the front bearing by hand: the rear one is lifted.
  const double front = weight_per_length(0.1, 0), tube = weight_per_length(0.09, 0.05);
  const double lift = (300 * gravity * 0.5 + front * 0.35 * -0.225 + tube * 0.95 * 0.425) / 0.4;
  EXPECT_TRUE(near(state.first_bearing_load, lift));
  EXPECT_TRUE(near(state.second_bearing_load, lift + 300 * gravity + front * 0.35 + tube * 0.95));
}

TEST(shaft_state, goes_on_with_the_last_section_to_the_end_of_the_roll) {
  Shaft shorter = cantilever();
  shorter.sections[1].length = 0.1;
  EXPECT_TRUE(
      near(shaft_state(shorter, 300, 0.8, 0, 0).deflection, shaft_state(cantilever(), 300, 0.8, 0, 0).deflection));
}

TEST(shaft_state, goes_on_with_the_first_section_where_the_roll_begins_before_the_bearing) {
  Shaft shaft = plain();
  shaft.roll_centre = 0.3;
  const ShaftState state = shaft_state(shaft, 60, 1, 0, 0);  // the roll begins at -0.2 m
  const double own = weight_per_length(0.09, 0), roll = 60 * gravity;
  EXPECT_TRUE(near(state.second_bearing_load, (own * 2 * 0.8 + roll * 0.3) / 1.8));
  EXPECT_TRUE(near(state.first_bearing_load, own * 2 + roll - (own * 2 * 0.8 + roll * 0.3) / 1.8));
}

TEST(shaft_state, that_cannot_bear_has_no_safety) {
  for (int fault = 0; fault < 4; ++fault) {
    Shaft shaft = plain();
    if (fault == 0) shaft.bearing_span = 0;
    if (fault == 1) shaft.sections.clear();
    if (fault == 2) shaft.sections[0].bore = 0.09;
    if (fault == 3) shaft.modulus = 0;
    const ShaftState state = shaft_state(shaft, 600, 1.3, 200, 50);
    EXPECT_EQ(state.deflection, infinity);
    EXPECT_EQ(state.first_bearing_load, infinity);
    EXPECT_EQ(state.bending_stress, infinity);
    EXPECT_EQ(state.safety, 0);
    EXPECT_EQ(first_whirl(shaft, 600, 1.3), 0);
  }
}

TEST(first_whirl, of_a_plain_shaft_without_roll_is_that_of_published_check_x_4) {
  EXPECT_TRUE(near(first_whirl(plain(), 0, 1.3) * 30 / pi, 3385.19315711, 1e-7));
  Shaft hollow = plain();
  hollow.sections[0].bore = 0.06;
  EXPECT_TRUE(near(first_whirl(hollow, 0, 1.3) * 30 / pi, 4068.4958351, 1e-7));
}

TEST(first_whirl, under_a_roll_far_heavier_than_the_shaft_is_that_of_its_mass) {
  EXPECT_TRUE(near(first_whirl(plain(), 1e8, 0), std::sqrt(48 * 676330.902194 / (1e8 * std::pow(1.8, 3))), 1e-6));
}

TEST(first_whirl, falls_with_the_roll_s_mass_and_rises_with_its_width) {
  EXPECT_GT(first_whirl(stepped(), 100, 1.3), first_whirl(stepped(), 800, 1.3));
  EXPECT_GT(first_whirl(stepped(), 800, 1.3), first_whirl(stepped(), 800, 0.3));
}

TEST(first_whirl, is_near_the_speed_at_which_the_sag_under_weight_swings) {
  // Rayleigh's rule of thumb for an even load, by hand: ω² = 1.268 g/y_max for a half wave, 1 to 1.27 in general.
  const double sag = shaft_state(plain(), 600, 1.3, 0, 0).deflection, omega = first_whirl(plain(), 600, 1.3);
  EXPECT_GT(omega * omega * sag / gravity, 1);
  EXPECT_LT(omega * omega * sag / gravity, 1.27);
}

TEST(first_whirl, is_never_not_a_number_and_neither_is_anything_else) {
  const double numbers[] = {-1e308, -3, 0, 1e-308, 0.05, 2, 1e160, 1e308};
  for (const double a : numbers) {
    for (const double b : numbers) {
      for (const double c : numbers) {
        Shaft shaft = stepped();
        shaft.bearing_span = std::abs(a);
        shaft.roll_centre = b;
        shaft.sections[1].diameter = c;
        shaft.sections[0].length = a;
        shaft.density = b;
        shaft.notch_factor = c;
        const ShaftState state = shaft_state(shaft, b, c, a, c);
        for (const double number : {state.deflection,
                                    state.deflection_place,
                                    state.first_slope,
                                    state.second_slope,
                                    state.bending_stress,
                                    state.torsion_stress,
                                    state.worst_place,
                                    state.safety,
                                    state.first_bearing_load,
                                    state.second_bearing_load,
                                    first_whirl(shaft, b, c),
                                    first_whirl(stepped(), a, b),
                                    bending_rigidity(a, b, c),
                                    bending_stress(a, b, c),
                                    torsion_stress(a, b, c),
                                    torsion_twist(a, b, c, a, b),
                                    von_mises_stress(a, b),
                                    endurance_limit(a, b),
                                    fatigue_safety(a, b, c, a),
                                    bearing_life(a, b, BearingKind::roller),
                                    bearing_running_time(a, b),
                                    grip_torque(a, b, c, a),
                                    equivalent_bearing_load({{a, b, c}, {c, a, b}}, BearingKind::ball),
                                    uniform_whirl(a, b, c)})
          EXPECT_FALSE(std::isnan(number)) << a << " " << b << " " << c;
      }
    }
  }
}

}  // namespace
}  // namespace holdback::physics
