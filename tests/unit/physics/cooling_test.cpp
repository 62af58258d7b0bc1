#include "holdback/physics/cooling.hpp"

#include "holdback/physics/air.hpp"
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

TEST(cooling_power, falls_in_proportion_below_the_map_and_stays_above_it) {
  EXPECT_TRUE(near(cooling_power(finned_disc, 2.5), 350));
  EXPECT_EQ(cooling_power(finned_disc, 0), 0);
  EXPECT_EQ(cooling_power(finned_disc, 1000), 4400);
}

TEST(cooling_power, below_the_map_is_on_the_safe_side_of_the_laminar_law) {
  for (const double speed : {0.1, 1.0, 4.0}) {
    EXPECT_LT(cooling_power(finned_disc, speed), 700 * std::sqrt(speed / 5)) << speed;
  }
}

TEST(cooling_power, of_one_point_or_none) {
  EXPECT_EQ(cooling_power({{10, 500}}, 40), 500);
  EXPECT_TRUE(near(cooling_power({{10, 500}}, 4), 200));
  EXPECT_EQ(cooling_power({}, 40), 0);
}

TEST(default_guard_factor, falls_as_the_guard_closes) {
  EXPECT_EQ(default_guard_factor(Guard::none), 1);
  EXPECT_EQ(default_guard_factor(Guard::mesh), 1);
  EXPECT_LT(default_guard_factor(Guard::partly_closed), default_guard_factor(Guard::mesh));
  EXPECT_LT(default_guard_factor(Guard::closed), default_guard_factor(Guard::partly_closed));
  EXPECT_GT(default_guard_factor(Guard::closed), 0);
}

TEST(altitude_factor, is_one_at_sea_level_and_falls_less_than_density) {
  EXPECT_EQ(altitude_factor(0), 1);
  for (const double altitude : {500.0, 1500.0, 3000.0}) {
    const double density = air_density(standard_pressure(altitude), standard_temperature(altitude)) / 1.225;
    EXPECT_LT(altitude_factor(altitude), 1);
    EXPECT_GT(altitude_factor(altitude), density);
  }
}

Brake cooled_brake() {
  Brake brake;
  brake.cooling = finned_disc;
  brake.cooling_rise = 150;
  return brake;
}

TEST(cooling_conductance, gives_the_rated_rise_at_the_rated_power) {
  const double conductance = cooling_conductance(cooled_brake(), 20, 1, 1);
  EXPECT_TRUE(near(steady_temperature(300, 1500, conductance), 450));
}

TEST(cooling_conductance, scales_with_guard_and_altitude) {
  const Brake brake = cooled_brake();
  EXPECT_TRUE(near(cooling_conductance(brake, 20, 0.4, 0.9), 0.36 * cooling_conductance(brake, 20, 1, 1)));
  EXPECT_EQ(cooling_conductance(brake, 0, 1, 1), 0);
}

TEST(steady_temperature, closes_the_balance_of_heat) {
  const double temperature = steady_temperature(300, 1200, 9);
  EXPECT_TRUE(near(9 * (temperature - 300), 1200));
}

TEST(steady_temperature, is_ambient_without_power_and_infinite_without_cooling) {
  EXPECT_EQ(steady_temperature(300, 0, 0), 300);
  EXPECT_EQ(steady_temperature(300, 1, 0), infinity);
}

}  // namespace
}  // namespace holdback::physics
