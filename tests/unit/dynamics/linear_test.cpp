// The linear stand: against the closed forms of physics/control.hpp, which were derived and checked apart from it, and
// against the simulation.
#include "holdback/dynamics/linear.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "holdback/dynamics/mover.hpp"
#include "holdback/physics/control.hpp"

namespace holdback::dynamics {
namespace {

constexpr double speed_of_line = 4;  // [m/s]
constexpr double setpoint = 150;     // [N]

/// The roll of the published check S-3 on its span, with a brake of 1e-3 N·m/Pa and no air line; invented otherwise.
Plant plant() {
  Plant plant;
  plant.roll = {0.08, 0, 0.5, std::numbers::pi / 2 * 800, 0, 1, 0};
  plant.brake = {1e-3, 0, 1, 0, 0};
  plant.air = {0.05, 0, 0};
  plant.path = single_span(3, 2e5);
  return plant;
}

physics::UnwindPoint point_of(const Plant& plant, double radius) {
  return {inertia_at(plant.roll, radius),
          radius,
          plant.path.spans[0],
          plant.path.stiffness,
          speed_of_line,
          0,
          setpoint * radius * plant.brake.friction_slope};
}

// Against the exact balance the linear plant of physics/control.hpp is off by about two strains (its header): 0.15 %.
TEST(linear_stand, has_the_mode_of_the_closed_form_at_every_radius) {
  const Plant stand = plant();
  for (const double radius : {0.4, 0.25, 0.1}) {
    const numerics::Mode mode = slowest_swing(linear_stand(stand, speed_of_line, setpoint, radius, 1));
    const physics::SwingMode known = physics::unwind_mode(point_of(stand, radius));
    EXPECT_NEAR(mode.frequency / known.frequency, 1, 3e-3);
    EXPECT_NEAR(mode.damping / known.damping, 1, 6e-3);
  }
}

TEST(linear_stand, answers_a_change_of_pressure_as_the_closed_form_times_the_air) {
  const Plant stand = plant();
  const double radius = 0.3;
  const LinearStand linear = linear_stand(stand, speed_of_line, setpoint, radius, 1);
  for (const double w : {0.01, 1.0, 10.0, 20.0, 60.0}) {
    const Complex s(0, w);
    const Complex known = physics::unwind_response(point_of(stand, radius), s) * stand.brake.torque_per_pressure *
                          physics::pneumatic_lag(s, stand.air.lag, 0);
    const Complex found = tension_response(linear, s);
    EXPECT_NEAR(std::abs(found / known - 1.0), 0, w < 5 ? 3e-3 : 2e-2) << w;
  }
}

TEST(linear_stand, shakes_with_a_runout_as_the_closed_form) {
  Plant stand = plant();
  for (const int lobes : {1, 2}) {
    stand.roll.lobes = lobes;
    const LinearStand linear = linear_stand(stand, speed_of_line, setpoint, 0.3, 1);
    EXPECT_NEAR(linear.runout_frequency, lobes * speed_of_line / 0.3, 0.002 * linear.runout_frequency);
    const double known = physics::runout_tension(point_of(stand, 0.3), setpoint, lobes);
    EXPECT_NEAR(runout_tension_of(linear, Held::tension, nullptr, {}, {}, setpoint) / known, 1, 0.02);
  }
}

TEST(linear_stand, grows_where_friction_falls_faster_than_the_span_damps) {
  Plant stand = plant();
  stand.brake.friction_slope = -0.05;
  const physics::UnwindPoint point = point_of(stand, 0.3);
  const numerics::Mode mode = slowest_swing(linear_stand(stand, speed_of_line, setpoint, 0.3, 1));
  EXPECT_EQ(mode.damping < 0, physics::unwind_mode(point).damping < 0);
}

// The same frequency and decay as a small swing of the simulation, counted by zero crossings and peaks.
TEST(linear_stand, swings_as_the_simulation_does) {
  Plant stand = plant();
  stand.path.retardation = 2e-3;
  const double radius = 0.3;
  const numerics::Mode mode = slowest_swing(linear_stand(stand, speed_of_line, setpoint, radius, 1));
  auto mover = make_mover(stand, {speed_of_line, setpoint, radius, 1}, {1e-9, Steps::explicit_steps});
  Drive drive;
  drive.line_speed = speed_of_line;
  drive.set_pressure = mover->sight().pressure * 1.02;
  ASSERT_TRUE(mover->advance(drive, 0.5));  // the air is through
  const double target = setpoint * 1.02;
  std::vector<double> crossings;
  double before = mover->sight().tension - target;
  for (double t = 0.501; t < 3; t += 0.001) {
    ASSERT_TRUE(mover->advance(drive, t));
    const double now = mover->sight().tension - target;
    if (before < 0 && now >= 0) crossings.push_back(t - 0.001 * now / (now - before));
    before = now;
  }
  ASSERT_GT(crossings.size(), 3U);
  const double period = (crossings.back() - crossings.front()) / static_cast<double>(crossings.size() - 1);
  EXPECT_NEAR(2 * std::numbers::pi / period, mode.frequency * std::sqrt(1 - mode.damping * mode.damping),
              0.01 * mode.frequency);
}

// By hand: a dancer of mass m on two strands of a span whose ends stand: ω² = strands² EA/(L m), from m z″ = −2 T.
TEST(linear_stand, has_the_mode_of_a_dancer_on_its_strands) {
  Plant stand = plant();
  stand.roll.fixed_inertia = 1e6;  // as good as standing
  stand.path.dancer = DancerPlant{0, 4, 0.1, 0, 2, 0};
  const LinearStand linear = linear_stand(stand, 0.01, setpoint, 0.3, 1);
  const double known = std::sqrt(4 * 2e5 / (3 * 4.0));
  const bool found = std::any_of(linear.modes.begin(), linear.modes.end(), [&](const numerics::Mode& mode) {
    return std::abs(mode.frequency / known - 1) < 0.01;
  });
  EXPECT_TRUE(found);
}

// Two idlers far apart from the roll's swing: the slowest mode of the chain is that of the lumped stand.
TEST(linear_stand, keeps_the_slow_mode_with_idlers_by_themselves) {
  Plant chain = plant();
  chain.path.spans = {1, 1, 1};
  chain.path.idlers = {{0.05, 0.001, 0}, {0.05, 0.001, 0}};
  chain.path.cell_span = 2;
  const double slow = slowest_swing(linear_stand(chain, speed_of_line, setpoint, 0.3, 1)).frequency;
  const double lump = slowest_swing(linear_stand(lumped(chain), speed_of_line, setpoint, 0.3, 1)).frequency;
  EXPECT_NEAR(slow / lump, 1, 0.02);
}

TEST(controller_response, is_pi_with_its_gain_in_pressure) {
  LoopSettings settings;
  settings.gain = 0.5;
  settings.integral_time = 2;
  settings.sample_time = 0.01;
  settings.full_radius = 0.4;
  Believed believed;
  believed.torque_per_pressure = 1e-3;
  const Complex s(0, 3);
  // By hand: 0.5 · 0.4 m/(1e-3 N·m/Pa) = 200 Pa/N, times 1 + 1/(2 s).
  EXPECT_NEAR(
      std::abs(controller_response(Held::tension, settings, believed, 150, 0.1, s) - 200.0 * (1.0 + 1.0 / (2.0 * s))),
      0, 1e-9);
}

}  // namespace
}  // namespace holdback::dynamics
