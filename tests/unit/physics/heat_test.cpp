#include "holdback/physics/heat.hpp"

#include "holdback/physics/torque.hpp"
#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using testing::infinity;
using testing::near;

TEST(slip_power, of_a_steady_run_is_tension_times_speed_at_every_diameter) {
  const double tension = 150, speed = 5;
  for (const double radius : {0.08, 0.2, 0.4}) {
    EXPECT_TRUE(near(slip_power(brake_torque(tension, radius, 0, 0, 0), speed / radius), tension * speed));
  }
}

TEST(stop_energy, is_the_integral_of_slip_power) {
  const double torque = 200, omega = 12, time = 2;
  double energy = 0;
  const int steps = 1000;
  for (int i = 0; i < steps; ++i) energy += slip_power(torque, omega * (1 - (i + 0.5) / steps)) * time / steps;
  EXPECT_TRUE(near(stop_energy(torque, omega, time), energy));
}

TEST(stop_energy, is_kinetic_energy_plus_the_web_s_work_less_the_drag_s) {
  const double tension = 150, radius = 0.4, drag = 2, inertia = 30, omega = 12, time = 2;
  const double torque = brake_torque(tension, radius, drag, inertia, -omega / time);
  const double angle = omega * time / 2;
  EXPECT_TRUE(
      near(stop_energy(torque, omega, time), inertia * omega * omega / 2 + tension * radius * angle - drag * angle));
}

TEST(adiabatic_rise, of_two_stops_is_the_sum_of_two_rises) {
  EXPECT_TRUE(near(adiabatic_rise(45e3, 12, 460) + adiabatic_rise(15e3, 12, 460), adiabatic_rise(60e3, 12, 460)));
  EXPECT_TRUE(near(adiabatic_rise(45e3, 12, 460) * 12 * 460, 45e3));
}

TEST(adiabatic_rise, without_a_body_is_infinite_or_nothing) {
  EXPECT_EQ(adiabatic_rise(1, 0, 460), infinity);
  EXPECT_EQ(adiabatic_rise(0, 0, 460), 0);
}

}  // namespace
}  // namespace holdback::physics
