#include "holdback/dynamics/heat.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace holdback::dynamics {
namespace {

/// A brake with every path of heat (invented).
HeatPlant plant() {
  HeatPlant plant;
  plant.nodes.capacity = {6000, 400, 1500, 1500};
  plant.nodes.pads_disc = 4;
  plant.nodes.calipers_pads = 1.5;
  plant.nodes.hub_disc = 2;
  plant.nodes.calipers_air = 0.8;
  plant.nodes.hub_air = 0.6;
  plant.nodes.pad_share = 0.1;
  plant.nodes.radiating_area = 0.1;
  plant.nodes.emissivity = 0.6;
  plant.convection = {2, 3, 5, 8};
  plant.root_step = 1;
  plant.ambient = 298.15;
  return plant;
}

/// Friction of a power [W] on each brake for a time [s] at a speed [rad/s], told every hundredth of a second.
void rub(BrakeHeat& heat, const HeatPlant& of, double power, double duration, double speed, double from = 0) {
  const auto samples = static_cast<int>(std::lround(duration / 0.01));
  for (int k = 1; k <= samples; ++k) heat.go_on(from + 0.01 * k, (from + 0.01 * k) * power * of.brakes, speed);
}

// Against the L-stable order 4 of physics/thermal.hpp, which the closed forms and SciPy are checked with there.
TEST(BrakeHeat, warms_as_the_thermal_network) {
  const HeatPlant of = plant();
  BrakeHeat heat(of);
  rub(heat, of, 800, 600, 4);
  physics::NodeTemperatures cold;
  cold.fill(298.15);
  const auto exact = physics::advance(of.nodes, cold, {600, 800, 800, 5}, 298.15);
  for (std::size_t i = 0; i < 4; ++i) EXPECT_NEAR(heat.temperatures()[i], exact[i], 0.02) << i;
  EXPECT_GT(exact[0], 340);
}

TEST(BrakeHeat, starts_at_given_temperatures_and_cools) {
  const HeatPlant of = plant();
  const physics::NodeTemperatures warm{450, 430, 350, 340};
  BrakeHeat heat(of, warm);
  EXPECT_EQ(heat.temperatures(), warm);
  rub(heat, of, 0, 300, 0);
  const auto exact = physics::advance(of.nodes, warm, {300, 0, 0, 2}, 298.15);
  for (std::size_t i = 0; i < 4; ++i) EXPECT_NEAR(heat.temperatures()[i], exact[i], 0.02) << i;
}

// By hand: between the roots 1 and 2 of the grid convection is 3 … 5 W/K, at 2.25 rad/s (root 1.5) 4 W/K; beyond its
// end the last value holds.
TEST(BrakeHeat, reads_convection_along_the_root_of_speed) {
  for (const auto& [speed, conductance] : {std::pair{2.25, 4.0}, std::pair{9.0, 8.0}, std::pair{400.0, 8.0}}) {
    const HeatPlant of = plant();
    BrakeHeat heat(of);
    rub(heat, of, 800, 300, speed);
    physics::NodeTemperatures cold;
    cold.fill(298.15);
    const auto exact = physics::advance(of.nodes, cold, {300, 800, 800, conductance}, 298.15);
    EXPECT_NEAR(heat.temperatures()[0], exact[0], 0.02) << speed;
  }
}

// By hand: friction falls by 0.2 % for each kelvin above 350 K, and two brakes share the heat.
TEST(BrakeHeat, leaves_the_friction_of_the_grade) {
  HeatPlant of = plant();
  of.grade.fade_start = 350;
  of.grade.fade_rate = 0.002;
  of.brakes = 2;
  EXPECT_EQ(BrakeHeat(of).friction_left(), 1);
  const BrakeHeat hot(of, physics::NodeTemperatures{400, 380, 320, 320});
  EXPECT_NEAR(hot.friction_left(), 0.9, 1e-12);
}

// By hand: wear rate times friction work over the pads and their volume; 800 W for 100 s, four pads of 20 cm³.
TEST(BrakeHeat, wears_its_pads_by_the_work) {
  HeatPlant of = plant();
  of.grade.wear_rate = 1e-13;
  of.usable_volume = 2e-5;
  of.pads = 4;
  of.brakes = 2;
  BrakeHeat heat(of);
  rub(heat, of, 800, 100, 4);
  EXPECT_NEAR(heat.wear(), 1e-13 * 800 * 100 / 4 / 2e-5, 0.002 * heat.wear());
  heat.engage(2);
  const double before = heat.wear();
  rub(heat, of, 800, 100, 4, 100);
  EXPECT_NEAR(heat.wear() - before, 1e-13 * 800 * 100 / 2 / 2e-5, 0.002 * heat.wear());
}

}  // namespace
}  // namespace holdback::dynamics
