#include "holdback/physics/pressure.hpp"

#include <limits>

#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using testing::infinity;
using testing::near;

constexpr double drag = 2;
constexpr double slope = 4e-4;
constexpr double threshold = 2e4;

TEST(pressure_for_tension, is_undone_by_tension_at_pressure) {
  for (const double radius : {0.08, 0.2, 0.4}) {
    const double pressure = pressure_for_tension(150, radius, drag, slope, threshold);
    EXPECT_TRUE(near(tension_at_pressure(pressure, radius, drag, slope, threshold), 150)) << radius;
  }
}

TEST(pressure_for_tension, is_the_threshold_where_drag_is_enough) {
  EXPECT_EQ(pressure_for_tension(5, 0.4, drag, slope, threshold), threshold);
  EXPECT_EQ(pressure_for_tension(1, 0.4, drag, slope, threshold), threshold);
  EXPECT_EQ(pressure_for_tension(1, 0.4, drag, 0, threshold), threshold);
}

TEST(pressure_for_tension, is_infinite_without_torque_per_pressure) {
  EXPECT_EQ(pressure_for_tension(150, 0.4, drag, 0, threshold), infinity);
}

TEST(tension_at_pressure, rises_as_one_over_the_radius) {
  const auto at = [](double radius) { return tension_at_pressure(3e5, radius, drag, slope, threshold); };
  EXPECT_TRUE(near(at(0.08), 5 * at(0.4)));
}

TEST(tension_at_pressure, is_drag_alone_below_the_threshold) {
  EXPECT_TRUE(near(tension_at_pressure(1e4, 0.4, drag, slope, threshold), drag / 0.4));
}

/// Settings a hand needs when each is used until the tension leaves the band: the rule's own story, step by step.
int settings_by_walking(double full, double core, double tolerance) {
  int settings = 0;
  for (double radius = full; radius > core * (1 + 1e-9); radius *= (1 - tolerance) / (1 + tolerance)) ++settings;
  return settings;
}

TEST(hand_settings, is_as_many_as_walking_down_the_roll_needs) {
  for (const double tolerance : {0.03, 0.05, 0.1, 0.25}) {
    for (const double core : {0.05, 0.1, 0.4, 0.49}) {
      EXPECT_EQ(hand_settings(0.5, core, tolerance), settings_by_walking(0.5, core, tolerance))
          << tolerance << ' ' << core;
    }
  }
}

TEST(hand_settings, is_exact_where_the_progression_fits) {
  // (1 + ε)/(1 − ε) = 2 for ε = 1/3: a roll of 8:1 needs exactly three.
  EXPECT_EQ(hand_settings(0.8, 0.1, 1.0 / 3), 3);
}

TEST(hand_settings, is_at_least_one_and_never_enough_without_tolerance) {
  EXPECT_EQ(hand_settings(0.1, 0.1, 0.1), 1);
  EXPECT_EQ(hand_settings(0.5, 0.1, 1), 1);
  EXPECT_EQ(hand_settings(0.5, 0.1, 2), 1);
  EXPECT_EQ(hand_settings(0.5, 0.1, 0), std::numeric_limits<int>::max());
  EXPECT_EQ(hand_settings(0.5, 0.1, -0.1), std::numeric_limits<int>::max());
}

}  // namespace
}  // namespace holdback::physics
