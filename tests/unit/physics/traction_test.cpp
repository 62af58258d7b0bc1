#include "holdback/physics/traction.hpp"

#include <numbers>

#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using std::numbers::pi;
using testing::infinity;
using testing::near;

constexpr double air = 1.846e-5;  // [Pa·s] at 300 K

Idler idler() { return {"idler", 0.1, pi / 2, 0.25, 3e-6, 0.03, 0.005}; }

// Published check C-2, see cases/window.txt; here the law itself.
TEST(air_film, grows_with_the_two_thirds_power_of_speed_over_tension) {
  const double film = air_film(0.05, air, 5, 175);
  EXPECT_TRUE(near(air_film(0.05, air, 40, 175), 4 * film));
  EXPECT_TRUE(near(air_film(0.05, air, 5, 8 * 175), film / 4));
  EXPECT_TRUE(near(air_film(0.1, air, 5, 175), 2 * film));
}

TEST(air_film, is_none_at_rest_and_without_end_for_a_slack_web) {
  EXPECT_EQ(air_film(0.05, air, 0, 175), 0);
  EXPECT_EQ(air_film(0.05, air, 5, 0), infinity);
}

// The foil-bearing constant: y‴ = (y − 1)/y³ from the growing mode at y = 1, curvature far away. Runge and Kutta's
// fourth order here; 0.64304 by SciPy DOP853 (published check C-2, computed).
TEST(air_film, has_the_constant_of_the_foil_bearing) {
  double y = 1 + 1e-6;
  double slope = 1e-6;
  double curvature = 1e-6;
  const auto third = [](double at) { return (at - 1) / (at * at * at); };
  const double h = 1e-3;
  while (y < 1e7) {
    const double k1 = third(y);
    const double k2 = third(y + h / 2 * slope);
    const double k3 = third(y + h / 2 * (slope + h / 2 * curvature));
    const double k4 = third(y + h * (slope + h / 2 * (curvature + h / 2 * k1)));
    y += h * slope + h * h / 6 * (3 * curvature + h * (k1 + k2 + k3) / 4);
    slope += h * curvature + h * h / 6 * (k1 + k2 + k3);
    curvature += h / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
  }
  EXPECT_NEAR(curvature, 0.64304, 2e-4);
  EXPECT_NEAR(air_film(1, 1.0 / 12, 1, 1), curvature, 3e-4);
}

TEST(film_friction, is_whole_in_contact_half_between_and_none_afloat) {
  EXPECT_EQ(film_friction(0.3, 2e-6, 3e-6), 0.3);
  EXPECT_EQ(film_friction(0.3, 3e-6, 3e-6), 0.3);
  EXPECT_TRUE(near(film_friction(0.3, 6e-6, 3e-6), 0.15));
  EXPECT_EQ(film_friction(0.3, 9e-6, 3e-6), 0);
  EXPECT_EQ(film_friction(0.3, 1e-3, 3e-6), 0);
  EXPECT_EQ(film_friction(0.3, 1e-9, 0), 0);
}

TEST(capstan_ratio, multiplies_over_parts_of_the_wrap) {
  EXPECT_TRUE(near(capstan_ratio(0.3, 1) * capstan_ratio(0.3, 2), capstan_ratio(0.3, 3)));
  EXPECT_EQ(capstan_ratio(0.3, 0), 1);
}

TEST(traction_torque, is_the_difference_of_the_two_tensions_on_its_radius) {
  EXPECT_TRUE(near(traction_torque(100, 0.05, 0.25, pi), (100 * capstan_ratio(0.25, pi) - 100) * 0.05));
}

TEST(idler_tension, is_where_traction_just_turns_the_idler) {
  for (const double speed : {0.5, 2.0, 5.0, 15.0}) {
    const IdlerDuty duty{1.2, speed, 0.5, air};
    const double tension = idler_tension(idler(), duty);
    const double film = air_film(0.05, air, speed, tension / 1.2);
    const double torque = traction_torque(tension, 0.05, film_friction(0.25, film, 3e-6), pi / 2);
    EXPECT_NEAR(torque, 0.03 + 0.005 * 0.5 / 0.05, 1e-6) << speed;
  }
}

TEST(idler_tension, never_falls_with_speed) {
  double before = 0;
  for (double speed = 0; speed < 20; speed += 0.1) {
    const double tension = idler_tension(idler(), {1.2, speed, 0.5, air});
    ASSERT_GE(tension, before * (1 - 1e-8)) << speed;
    before = tension;
  }
}

TEST(idler_tension, of_a_slow_line_is_that_without_air) {
  const double asked = 0.03 + 0.005 * 0.5 / 0.05;
  EXPECT_TRUE(near(idler_tension(idler(), {1.2, 1e-4, 0.5, air}), asked / (0.05 * std::expm1(0.25 * pi / 2)), 1e-9));
}

TEST(idler_tension, is_found_for_every_idler_that_a_file_may_describe) {
  for (const double diameter : {0.005, 0.1, 3.0})
    for (const double wrap : {0.02, 1.5, 12.5})
      for (const double drag : {0.0, 1e-9, 0.02, 100.0})
        for (const double roughness : {1e-8, 3e-6, 1e-3})
          for (const double speed : {0.0, 1e-5, 1.0, 50.0})
            for (const double rate : {0.0, 1e-9, 1.0, 500.0}) {
              const Idler odd{"odd", diameter, wrap, 0.25, roughness, drag, 0.005};
              const double tension = idler_tension(odd, {1.0, speed, rate, air});
              ASSERT_GE(tension, 0) << diameter << ' ' << wrap << ' ' << drag << ' ' << roughness << ' ' << speed;
              ASSERT_TRUE(std::isfinite(tension));
            }
}

TEST(idler_tension, asks_only_for_contact_when_nothing_brakes_the_idler) {
  Idler free = idler();
  free.drag = 0;
  const double tension = idler_tension(free, {1.2, 5, 0, air});
  EXPECT_TRUE(near(air_film(0.05, air, 5, tension / 1.2), 9e-6, 1e-9));
  EXPECT_EQ(idler_tension(free, {1.2, 0, 0, air}), 0);
}

}  // namespace
}  // namespace holdback::physics
