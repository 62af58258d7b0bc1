#include "holdback/sizing/cooling_curve.hpp"

#include <gtest/gtest.h>

#include "holdback/physics/cooling.hpp"
#include "support/stands.hpp"

namespace holdback::sizing {
namespace {

/// A stand like the room a cooling map is taken in: no guard, sea level, 20 °C.
Stand test_room() {
  Stand stand = test::small_stand();
  stand.guard = Guard::none;
  stand.ambient = 293.15;
  stand.altitude = 0;
  return stand;
}

double shed_at_rating(const CoolingCurve& curve, double speed, double ambient) {
  const Shedding here = curve.at(speed);
  return physics::shed_power(ambient, curve.rated_rise(), here.convection, here.radiation);
}

TEST(cooling_curve, gives_the_map_back_in_the_room_it_was_taken_in) {
  const Stand stand = test_room();
  const CoolingCurve curve(stand.brakes[0], site_of(stand));
  for (const CoolingPoint& point : stand.brakes[0].cooling)
    EXPECT_NEAR(shed_at_rating(curve, point.speed, stand.ambient) / point.power, 1, 3e-3) << point.speed;
}

TEST(cooling_curve, sheds_less_the_more_the_guard_is_closed) {
  double before = 1e9;
  for (const Guard guard : {Guard::none, Guard::mesh, Guard::partly_closed, Guard::closed}) {
    Stand stand = test_room();
    stand.guard = guard;
    const double shed = shed_at_rating(CoolingCurve(stand.brakes[0], site_of(stand)), 40, stand.ambient);
    EXPECT_LT(shed, before);
    before = shed;
  }
}

TEST(cooling_curve, takes_a_measured_guard_factor_for_convection) {
  Stand stand = test_room();
  const double free = CoolingCurve(stand.brakes[0], site_of(stand)).at(40).convection;
  stand.guard = Guard::closed;
  stand.guard_factor = 0.6;
  EXPECT_NEAR(CoolingCurve(stand.brakes[0], site_of(stand)).at(40).convection, 0.6 * free, 1e-9 * free);
}

TEST(cooling_curve, lets_more_air_through_a_larger_opening) {
  Stand stand = test_room();
  stand.guard = Guard::closed;
  stand.guard_opening = 0.005;
  const double small = CoolingCurve(stand.brakes[0], site_of(stand)).at(40).convection;
  stand.guard_opening = 0.05;
  EXPECT_GT(CoolingCurve(stand.brakes[0], site_of(stand)).at(40).convection, small);
}

TEST(cooling_curve, sheds_less_in_thin_air_but_not_less_than_in_proportion_to_its_density) {
  Stand stand = test_room();
  const double sea = CoolingCurve(stand.brakes[0], site_of(stand)).at(40).convection;
  stand.altitude = 3000;
  const double high = CoolingCurve(stand.brakes[0], site_of(stand)).at(40).convection;
  EXPECT_LT(high, sea);
  EXPECT_GT(high, 0.742 * sea);  // density at 3000 m over that at sea level, published check A-1
}

TEST(cooling_curve, follows_the_physics_below_the_map_and_stays_above_it) {
  const Stand stand = test_room();
  const CoolingCurve curve(stand.brakes[0], site_of(stand));
  EXPECT_GT(shed_at_rating(curve, 0, stand.ambient), 0);
  EXPECT_LT(shed_at_rating(curve, 2, stand.ambient), stand.brakes[0].cooling.front().power);
  EXPECT_NEAR(shed_at_rating(curve, 200, stand.ambient), stand.brakes[0].cooling.back().power, 20);
}

// By hand: a plain disc of 0.36 m with faces from 0.1325 m outwards, at 42 rad/s in air of 410 K (ν 27e-6 m²/s, k 0.034
// W/(m·K), from memory): Nu = 0.326 √Re, h = 0.326 · 0.034 · √(42/27e-6) = 13.8 W/(m²·K) on two faces of 0.0466 m².
TEST(cooling_curve, is_plausible_without_a_map) {
  Stand stand = test_room();
  stand.brakes[0].cooling.clear();
  stand.brakes[0].cooling_rise = 0;
  stand.brakes[0].disc_diameter = 0.36;
  const CoolingCurve curve(stand.brakes[0], site_of(stand));
  EXPECT_DOUBLE_EQ(curve.rated_rise(), stand.brakes[0].rated_temperature - stand.ambient);
  EXPECT_NEAR(curve.at(42).convection, 13.8 * 2 * 0.0466, 0.1 * 1.29);
  EXPECT_EQ(curve.map_over_model(), 1);
}

TEST(cooling_curve, never_falls_with_speed_on_a_map_that_rises) {
  const Stand stand = test_room();
  const CoolingCurve curve(stand.brakes[0], site_of(stand));
  double before = 0;
  for (double speed = 0; speed < 300; speed += 0.5) {
    const double shed = shed_at_rating(curve, speed, stand.ambient);
    ASSERT_GE(shed, before * (1 - 1e-9)) << speed;
    before = shed;
  }
}

TEST(cooling_curve, heats_the_face_more_in_a_short_stop_of_the_same_power_than_its_share_of_time) {
  const Stand stand = test_room();
  const CoolingCurve curve(stand.brakes[0], site_of(stand));
  EXPECT_GT(curve.surface_per_watt(4), curve.surface_per_watt(1));
  EXPECT_LT(curve.surface_per_watt(4), 4 * curve.surface_per_watt(1));
}

}  // namespace
}  // namespace holdback::sizing
