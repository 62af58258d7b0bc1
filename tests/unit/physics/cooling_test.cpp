#include "holdback/physics/cooling.hpp"

#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using testing::infinity;
using testing::near;

const std::vector<CoolingPoint> finned_disc{{5, 700}, {20, 1500}, {60, 3200}, {120, 4400}};

TEST(cooling_power, gives_the_map_at_its_points) {
  for (const CoolingPoint& point : finned_disc) EXPECT_EQ(cooling_power(finned_disc, point.speed), point.power);
}

TEST(cooling_power, never_falls_with_speed_on_a_map_that_rises) {
  double before = 0;
  for (double speed = 0; speed < 150; speed += 0.1) {
    const double power = cooling_power(finned_disc, speed);
    ASSERT_GE(power, before) << speed;
    before = power;
  }
}

TEST(cooling_power, holds_its_ends) {
  EXPECT_EQ(cooling_power(finned_disc, 2.5), 700);
  EXPECT_EQ(cooling_power(finned_disc, 0), 700);
  EXPECT_EQ(cooling_power(finned_disc, 1000), 4400);
}

TEST(cooling_power, of_one_point_or_none) {
  EXPECT_EQ(cooling_power({{10, 500}}, 40), 500);
  EXPECT_EQ(cooling_power({}, 40), 0);
}

// By hand: 20 W/K · 100 K + 5e-9 W/K⁴ · ((400 K)⁴ − (300 K)⁴) = 2000 W + 87.5 W.
TEST(shed_power, is_convection_and_radiation) {
  EXPECT_TRUE(near(shed_power(300, 100, 20, 5e-9), 2087.5));
  EXPECT_EQ(shed_power(300, 0, 20, 5e-9), 0);
}

TEST(steady_temperature, is_the_root_of_what_is_shed_from_cool_to_glowing) {
  for (const double convection : {0.0, 0.05, 1.0, 9.0, 60.0})
    for (const double radiation : {0.0, 1e-10, 3e-9, 2e-8})
      for (double rise = 0.01; rise < 3000; rise *= 1.7) {
        if (convection + radiation == 0) continue;
        const double power = shed_power(300, rise, convection, radiation);
        EXPECT_NEAR((steady_temperature(300, power, convection, radiation) - 300) / rise, 1, 1e-6)
            << convection << ' ' << radiation << ' ' << rise;
      }
}

// Published check H-9, computed with SciPy brentq: 900 W, 0.09 m², 25 W/(m²·K), emissivity 0.8, air at 298.15 K.
TEST(steady_temperature, of_the_published_disc_with_radiation) {
  EXPECT_NEAR(steady_temperature(298.15, 900, 25 * 0.09, 0.8 * stefan_boltzmann * 0.09), 548.387342585, 1e-5);
}

TEST(steady_temperature, closes_the_balance_of_heat) {
  const double temperature = steady_temperature(300, 1200, 9, 0);
  EXPECT_TRUE(near(9 * (temperature - 300), 1200));
}

TEST(steady_temperature, is_ambient_without_power_and_infinite_without_cooling) {
  EXPECT_EQ(steady_temperature(300, 0, 0, 0), 300);
  EXPECT_EQ(steady_temperature(300, -50, 9, 1e-9), 300);
  EXPECT_EQ(steady_temperature(300, 1, 0, 0), infinity);
}

}  // namespace
}  // namespace holdback::physics
