#include "holdback/physics/air.hpp"

#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using testing::derivative;
using testing::near;

TEST(geopotential_altitude, is_the_work_against_gravity_that_falls_with_the_square_of_distance) {
  EXPECT_EQ(geopotential_altitude(0), 0);
  const double earth = 6356766;
  const double h = 3000;
  EXPECT_TRUE(near(derivative(geopotential_altitude, h), std::pow(earth / (earth + h), 2), 1e-8));
}

TEST(standard_temperature, falls_by_the_lapse_rate) {
  EXPECT_EQ(standard_temperature(0), 288.15);
  EXPECT_TRUE(near(derivative(standard_temperature, 1.0), -0.0065, 1e-5));
}

TEST(standard_pressure, carries_the_weight_of_the_air_above) {
  // Hydrostatics: dp = −ρ g dH, with H geopotential.
  for (const double h : {10.0, 1000.0, 5000.0, 10000.0}) {
    const double density = air_density(standard_pressure(h), standard_temperature(h));
    const double slope = derivative(standard_pressure, h) / derivative(geopotential_altitude, h);
    EXPECT_TRUE(near(slope, -density * 9.80665, 1e-6)) << h;
  }
}

TEST(air_density, doubles_with_pressure_and_halves_with_temperature) {
  EXPECT_TRUE(near(air_density(2e5, 300), 2 * air_density(1e5, 300)));
  EXPECT_TRUE(near(air_density(1e5, 600), air_density(1e5, 300) / 2));
}

TEST(air_viscosity, rises_with_an_exponent_between_a_half_and_one_and_a_half) {
  for (const double temperature : {200.0, 300.0, 600.0}) {
    const double exponent = derivative(air_viscosity, temperature) * temperature / air_viscosity(temperature);
    EXPECT_GT(exponent, 0.5);
    EXPECT_LT(exponent, 1.5);
  }
}

TEST(air_conductivity, keeps_the_prandtl_number_of_air) {
  for (const double temperature : {250.0, 300.0, 400.0}) {
    const double specific_heat = 1010;
    const double prandtl = air_viscosity(temperature) * specific_heat / air_conductivity(temperature);
    EXPECT_GT(prandtl, 0.68) << temperature;
    EXPECT_LT(prandtl, 0.73) << temperature;
  }
}

}  // namespace
}  // namespace holdback::physics
