#include "holdback/dynamics/motion.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "unit/dynamics/plants.hpp"

namespace holdback::dynamics {
namespace {

using numerics::Dual;
using testing::chain_path;
using testing::pi;
using testing::plant_of_constant_size;
using testing::published_plant;

using Small = Layout<1, false>;
using Loop = Layout<1, true>;
using Chain = Layout<8, true>;

TEST(tension_of, never_pushes) {
  EXPECT_EQ(tension_of(2e5, 3.0, 3.01), 0);
  EXPECT_EQ(tension_of(2e5, 3.0, 3.0), 0);
  EXPECT_NEAR(tension_of(2e5, 3.0, web_at(2e5, 3, 150)), 150, 1e-9);
  // By hand: 3.003 m of place for 3 m of web is a strain of 0.1 %.
  EXPECT_NEAR(tension_of(2e5, 3.003, 3.0), 200, 1e-9);
}

TEST(drive, changes_its_speed_evenly) {
  Drive drive;
  drive.begin = 2;
  drive.line_speed = 5;
  drive.acceleration = -0.5;
  EXPECT_NEAR(drive.speed_at(4), 4, 1e-15);
}

// An eccentric circle, from its geometry alone: its centre turns about the axis at e (cos θ, sin θ); of all points of
// the circle the one farthest along the normal carries the web's line. h is its distance along the normal.
TEST(surface, of_one_lobe_is_an_eccentric_circle) {
  RollPlant roll = published_plant().roll;
  roll.runout = 0.01;
  for (const double theta : {0.0, 0.7, 2.0, 4.4}) {
    const auto rim = surface(roll, 0.3, theta);
    EXPECT_NEAR(rim.h, 0.3 + 0.01 * std::cos(theta), 1e-15);
    // The arc that leaves is that of a circle of the radius, whatever the place of its centre.
    EXPECT_NEAR(rim.h + rim.bend, 0.3, 1e-15);
    // The tangent point moves along the line with the centre.
    EXPECT_NEAR(std::abs(rim.slope), 0.01 * std::abs(std::sin(theta)), 1e-15);
  }
}

// A curve with the support function h(φ) has the points h n + h′ t (n, t normal and tangent at φ); the length between
// two of them over the angle is h + h″. Measured here as a chord of 1e-4 rad.
TEST(surface, leaves_the_arc_of_the_curve_that_it_envelopes) {
  RollPlant roll = published_plant().roll;
  roll.runout = 0.004;
  roll.lobes = 3;
  const double step = 1e-4;
  for (const double phi : {0.1, 1.3, 3.9}) {
    const auto point = [&](double at) {
      const double h = 0.3 + 0.004 * std::cos(3 * at);
      const double slope = -3 * 0.004 * std::sin(3 * at);
      return std::array<double, 2>{h * std::cos(at) - slope * std::sin(at), h * std::sin(at) + slope * std::cos(at)};
    };
    const auto a = point(phi - step / 2), b = point(phi + step / 2);
    const auto rim = surface(roll, 0.3, phi);
    EXPECT_NEAR(rim.h + rim.bend, std::hypot(b[0] - a[0], b[1] - a[1]) / step, 1e-8);
    EXPECT_NEAR(rim.slope, (surface(roll, 0.3, phi + step).h - surface(roll, 0.3, phi - step).h) / (2 * step), 1e-8);
  }
}

// Points on the web's line that turn with a rigid body at ω move along the line at ω h: an unstretched web would leave
// at that speed. What leaves the roll less what the span takes up as it grows must be the same.
TEST(derivative, draws_web_from_a_roll_out_of_round_at_the_speed_of_its_line) {
  Plant plant = plant_of_constant_size();
  plant.roll.runout = 0.01;
  plant.roll.lobes = 2;
  auto y = steady_state<Small>(plant, 2, 100, 0.3, 1);
  Drive drive;  // the line stands
  for (const double theta : {0.0, 0.9, 2.2}) {
    y[angle] = theta;
    const auto rate = derivative<Small, double>(plant, fixed_of(plant), drive, Motion{}, 0, y, 0);
    const double growth = surface(plant.roll, 0.3, theta).bend * y[speed];
    EXPECT_NEAR(rate[first_web] - growth, y[speed] * (0.3 + 0.01 * std::cos(2 * theta)), 1e-12);
  }
}

// By hand: a roll of 800 kg/m³ whose middle lies e from the axis: m g e sin θ.
TEST(derivative, feels_the_weight_of_a_roll_off_centre) {
  Plant plant = plant_of_constant_size();
  plant.roll.runout = 0.002;
  auto y = steady_state<Small>(plant, 2, 100, 0.3, 1);
  y[angle] = 0.8;
  const auto speed_up = [&](double gravity) {
    plant.roll.gravity = gravity;
    return derivative<Small, double>(plant, fixed_of(plant), Drive{}, Motion{}, 0, y, 0)[speed];
  };
  const double weight = 9.81 * 800 * pi * (0.3 * 0.3 - 0.08 * 0.08);
  EXPECT_NEAR((speed_up(9.81) - speed_up(0)) * inertia_at(plant.roll, 0.3), weight * 0.002 * std::sin(0.8), 1e-8);
}

// dR/dt = −t ω/2π, dp/dt = (p_set − p)/τ, by hand.
TEST(derivative, thins_the_roll_and_fills_the_brake) {
  Plant plant = published_plant();
  plant.air.lag = 0.08;
  auto y = steady_state<Small>(plant, 5, 150, 0.4, 1);
  const auto rate = derivative<Small, double>(plant, fixed_of(plant), Drive{}, Motion{}, 0, y, y[pressure] + 800);
  EXPECT_NEAR(rate[radius], -2e-4 * y[speed] / (2 * pi), 1e-18);
  EXPECT_NEAR(rate[pressure], 1e4, 1e-6);
  EXPECT_EQ(rate[angle], y[speed]);
}

TEST(derivative, leaves_a_held_roll_alone) {
  const Plant plant = published_plant();
  auto y = steady_state<Small>(plant, 0, 150, 0.4, 1);
  Motion motion;
  motion.roll = Motion::Roll::held;
  const auto rate = derivative<Small, double>(plant, fixed_of(plant), Drive{}, motion, 0, y, y[pressure]);
  for (const double r : rate) EXPECT_EQ(r, 0);
}

// Steady running stays where it is when the roll keeps its size.
TEST(steady_state, does_not_move) {
  Plant plant = plant_of_constant_size();
  plant.brake = {1e-3, 2e4, 1, -0.005, 3};
  plant.path = chain_path();
  plant.path.wound_in = 30;
  plant.path.dancer = DancerPlant{2, 5, 0.1, 10, 2, 0.1};
  auto y = steady_state<Chain>(plant, 4, 120, 0.3, 0.8);
  Drive drive;
  drive.line_speed = 4;
  drive.brake_share = 0.8;
  // Two idlers of 0.1 N·m on 50 mm lie before the dancer.
  drive.dancer_force = 2 * (120 + 2 * 2);
  const auto rate = derivative<Chain, double>(plant, fixed_of(plant), drive, Motion{}, 0, y, y[pressure]);
  EXPECT_NEAR(rate[speed], 0, 1e-10);
  for (std::size_t i = first_web; i < Chain::size; ++i) EXPECT_NEAR(rate[i], 0, 1e-4) << i;  // but for the creep
}

// By hand: T R = K (p − p₀) share + drag.
TEST(steady_state, has_the_pressure_that_holds_the_tension) {
  Plant plant = published_plant();
  plant.brake = {1e-3, 2e4, 1, 0, 3};
  const auto y = steady_state<Small>(plant, 4, 120, 0.3, 0.5);
  EXPECT_NEAR(y[pressure], 2e4 + (36 - 3) / 0.5e-3, 1e-6);
  EXPECT_EQ(steady_state<Small>(plant, 4, 5, 0.3, 1)[pressure], 2e4);  // drag alone is too much
}

// The exact slopes against differences, for every component that is smooth there.
TEST(derivative, has_the_slopes_that_differences_show) {
  Plant plant = published_plant();
  plant.brake = {1e-3, 2e4, 1.2, -0.01, 3};
  plant.air.lag = 0.1;
  plant.roll.runout = 0.002;
  plant.roll.gravity = 9.81;
  plant.path = chain_path();
  plant.path.wound_in = 30;
  plant.path.dancer = DancerPlant{2, 5, 0.1, 10, 2, 0.1};
  auto y = steady_state<Chain>(plant, 4, 120, 0.3, 1);
  y[angle] = 1.1;
  y[Chain::dancer_place] = 0.02;
  y[Chain::dancer_speed] = -0.3;
  y[first_web + 2] -= 0.02;
  Drive drive;
  drive.line_speed = 4;
  drive.dancer_force = 260;
  const Fixed fixed = fixed_of(plant);
  for (std::size_t j = 0; j < Chain::size; ++j) {
    Chain::State<Dual> dual;
    for (std::size_t i = 0; i < Chain::size; ++i) dual[i] = Dual(y[i], i == j ? 1 : 0);
    const auto exact = derivative<Chain, Dual>(plant, fixed, drive, Motion{}, 0, dual, Dual(5e4));
    const double h = 1e-6 * std::max(1e-2, std::abs(y[j]));
    auto before = y, after = y;
    before[j] -= h;
    after[j] += h;
    const auto a = derivative<Chain, double>(plant, fixed, drive, Motion{}, 0, before, 5e4);
    const auto b = derivative<Chain, double>(plant, fixed, drive, Motion{}, 0, after, 5e4);
    for (std::size_t i = 0; i < Chain::size; ++i) {
      const double difference = (b[i] - a[i]) / (after[j] - before[j]);
      EXPECT_NEAR(exact[i].slope, difference, 1e-5 * (1 + std::abs(difference))) << i << " by " << j;
    }
  }
}

// By hand: J ω²/2, EA ε²/2 for each metre of unstretched web, m v²/2.
TEST(stored_energy, sums_roll_span_and_dancer) {
  Plant plant = published_plant();
  plant.path.dancer = DancerPlant{0, 5, 0.1, 0, 2, 0};
  auto y = steady_state<Loop>(plant, 4, 200, 0.4, 1);
  y[Loop::dancer_speed] = 2;
  const double roll = 32.6184369187 * y[speed] * y[speed] / 2;
  EXPECT_NEAR(stored_energy<Loop>(plant, Drive{}, y), roll + 200 * 1e-3 / 2 * 3 / 1.001 + 10, 1e-6);
}

}  // namespace
}  // namespace holdback::dynamics
