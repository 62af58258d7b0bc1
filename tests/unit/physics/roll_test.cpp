#include "holdback/physics/roll.hpp"

#include <numbers>

#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using std::numbers::pi;
using testing::derivative;
using testing::near;

constexpr double core = 0.0762;
constexpr double full = 0.5;
constexpr double caliper = 1e-4;

TEST(roll_length, matches_the_sum_of_rings) {
  double sum = 0;
  const int rings = 4238;
  for (int i = 0; i < rings; ++i) sum += 2 * pi * (core + (i + 0.5) * caliper);
  EXPECT_TRUE(near(roll_length(core, core + rings * caliper, caliper), sum));
}

TEST(roll_length, fills_the_ring_with_the_cross_section_of_the_web) {
  EXPECT_TRUE(near(roll_length(core, full, caliper) * caliper, pi * (full * full - core * core)));
}

TEST(roll_length, keeps_its_digits_for_a_single_layer) {
  EXPECT_TRUE(near(roll_length(core, core + caliper, caliper), 2 * pi * (core + caliper / 2)));
}

TEST(roll_length, is_nothing_on_a_bare_core) { EXPECT_EQ(roll_length(core, core, caliper), 0); }

TEST(roll_radius, undoes_roll_length) {
  for (const double radius : {core, 0.08, 0.2, full}) {
    EXPECT_TRUE(near(roll_radius(core, roll_length(core, radius, caliper), caliper), radius));
  }
}

TEST(web_mass, of_one_square_metre_is_the_basis_weight) { EXPECT_EQ(web_mass(0.08, 2, 0.5), 0.08); }

TEST(web_inertia, is_the_sum_of_thin_rings) {
  const double basis_weight = 0.08, width = 1.3;
  double sum = 0;
  const int rings = 4238;
  for (int i = 0; i < rings; ++i) {
    const double radius = core + (i + 0.5) * caliper;
    sum += web_mass(basis_weight, width, 2 * pi * radius) * radius * radius;
  }
  // A ring of finite thickness holds a little more than its mean radius says: t²/(4r²).
  EXPECT_TRUE(near(web_inertia(basis_weight, width, caliper, core, core + rings * caliper), sum, 1e-6));
}

TEST(web_inertia, grows_by_the_mass_of_the_rim) {
  const double basis_weight = 0.08, width = 1.3;
  const auto inertia = [&](double r) { return web_inertia(basis_weight, width, caliper, core, r); };
  const auto mass = [&](double r) { return web_mass(basis_weight, width, roll_length(core, r, caliper)); };
  EXPECT_TRUE(near(derivative(inertia, 0.3), 0.3 * 0.3 * derivative(mass, 0.3), 1e-7));
}

TEST(core_inertia, is_the_limit_of_a_hollow_cylinder_and_above_it) {
  const auto hollow = [](double mass, double inner, double outer) {
    return mass * (inner * inner + outer * outer) / 2;
  };
  EXPECT_TRUE(near(core_inertia(4, core), hollow(4, core * (1 - 1e-9), core), 1e-8));
  EXPECT_GT(core_inertia(4, core), hollow(4, 0.9 * core, core));
}

TEST(radius_rate, is_the_derivative_of_roll_radius_as_web_runs_off) {
  const double speed = 5;
  const double on_roll = roll_length(core, 0.3, caliper);
  const auto radius_at = [&](double time) { return roll_radius(core, on_roll - speed * time, caliper); };
  EXPECT_TRUE(near(radius_rate(caliper, speed, 0.3), derivative(radius_at, 0.0), 1e-6));
}

TEST(radius_rate, takes_one_caliper_each_turn) {
  const double speed = 5, radius = 0.3;
  const double turn = 2 * pi * radius / speed;
  EXPECT_TRUE(near(radius_rate(caliper, speed, radius) * turn, -caliper));
}

TEST(roll_acceleration, is_the_derivative_of_speed_over_radius) {
  const double acceleration = -2.5, speed = 5, radius = 0.3;
  const double on_roll = roll_length(core, radius, caliper);
  const auto omega = [&](double time) {
    const double run_off = speed * time + acceleration * time * time / 2;
    return (speed + acceleration * time) / roll_radius(core, on_roll - run_off, caliper);
  };
  EXPECT_TRUE(near(roll_acceleration(acceleration, caliper, speed, radius), derivative(omega, 0.0), 1e-6));
}

TEST(roll_acceleration, is_positive_at_constant_speed_because_the_roll_thins) {
  EXPECT_GT(roll_acceleration(0, caliper, 5, 0.3), 0);
  EXPECT_EQ(roll_acceleration(0, caliper, 0, 0.3), 0);
}

}  // namespace
}  // namespace holdback::physics
