#include "holdback/dynamics/mover.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <stdexcept>

#include "holdback/dynamics/mover_of.hpp"
#include "holdback/physics/control.hpp"
#include "unit/dynamics/plants.hpp"

namespace holdback::dynamics {
namespace {

using testing::chain_path;
using testing::mover;
using testing::pi;
using testing::plant_of_constant_size;
using testing::published_plant;
using testing::steady_drive;
using testing::swing_frequency;

using Roll = Motion::Roll;
using Small = Layout<1, false>;

// Published check S-3, computed with SciPy DOP853 and Radau: EA 2e5 N, L 3 m, v 5 m/s, M_b 60 N·m, R 0.40 m, T 150 N.
TEST(mover, unwinds_against_a_constant_torque_as_published) {
  const auto roll = mover(published_plant(), {5, 150, 0.40}, 1e-11);
  struct Row {
    double t, omega, radius, tension;
  };
  for (const Row& row :
       {Row{1, 12.503214485, 0.399602216, 150.8601276}, Row{10, 12.616501663, 0.396004188, 152.5255500},
        Row{60, 13.308835032, 0.375388174, 160.8500749}, Row{300, 19.649645977, 0.254155692, 237.1574511}}) {
    ASSERT_TRUE(roll->advance(steady_drive(5, 6e4), row.t));
    EXPECT_NEAR(roll->sight().roll_speed / row.omega, 1, 1e-8) << row.t;
    EXPECT_NEAR(roll->sight().radius / row.radius, 1, 1e-8) << row.t;
    EXPECT_NEAR(roll->sight().tension / row.tension, 1, 1e-7) << row.t;
  }
}

// A roll too heavy to change its speed: v₁ = 2.000 m/s of web wound in at 100 N, which the line draws off faster.
Plant imposed_speed() {
  Plant plant = plant_of_constant_size();
  plant.roll.fixed_inertia = 1e15;
  plant.path = single_span(5, 48000);
  return plant;
}

// Published check S-2, closed form of the exact balance: EA 48000 N, L 5 m, v₁ 2.000, v₂ 2.002 m/s, T₀ = T(0) = 100 N.
TEST(mover, stretches_a_span_by_a_step_in_draw_as_published) {
  Plant plant = imposed_speed();
  plant.path.wound_in = 100;
  const auto roll = mover(plant, {2, 100, 1}, 1e-12);
  const Drive drive = steady_drive(2.002, roll->sight().pressure);
  EXPECT_NEAR(roll->sight().rim_speed, 2, 1e-12);
  const double times[] = {1, 2.5, 5, 10, 60};
  const double tensions[] = {115.859873225, 130.41150845, 141.597760723, 147.221673217, 148.1};
  for (int i = 0; i < 5; ++i) {
    ASSERT_TRUE(roll->advance(drive, times[i]));
    EXPECT_NEAR(roll->sight().tension / tensions[i], 1, 2e-9) << times[i];
  }
}

// Published check S-1 is linear in strain, and off by two strains (0.17 % at 100 N). At a thousandth of the tension and
// of the step in draw its closed form T = T∞ + (T₀ − T∞) e^(−v₂t/L), T∞ = (EA (v₂ − v₁) + v₁ T₀)/v₂ must come out.
TEST(mover, is_linear_at_small_strain_as_published) {
  Plant plant = imposed_speed();
  plant.path.wound_in = 0.1;
  const auto roll = mover(plant, {2, 0.1, 1}, 1e-13);
  const double line = 2.000002;
  const double end = (48000 * 2e-6 + 2 * 0.1) / line;
  for (const double t : {1.0, 2.5, 5.0, 10.0}) {
    ASSERT_TRUE(roll->advance(steady_drive(line, roll->sight().pressure), t));
    EXPECT_NEAR(roll->sight().tension / (end + (0.1 - end) * std::exp(-line * t / 5)), 1, 5e-6) << t;
  }
}

// A disturbance that has entered the span leaves it with the time constant L/v [campbell1958]: 48 N too much at first.
TEST(mover, carries_strain_out_with_the_time_of_the_span) {
  Plant plant = imposed_speed();
  plant.path.wound_in = 1;
  const auto roll = mover(plant, {2, 1, 1}, 1e-12);
  const double pressure = roll->sight().pressure;
  ASSERT_TRUE(roll->advance(steady_drive(2.002, pressure), 0.1));  // a tenth of a second of more draw
  const double more = roll->sight().tension - 1;
  ASSERT_TRUE(roll->advance(steady_drive(2, pressure), 2.6));
  EXPECT_NEAR((roll->sight().tension - 1) / more, std::exp(-2.5 * 2 / 5), 1e-4);
}

// √(EA R²/(L J)) from a step of 1 N·m at light tension and a slow line; damping and strain are below 1e-4 of it. The
// published mode of check S-3: 18.0835124 rad/s.
TEST(mover, swings_on_its_span_with_the_published_mode) {
  const auto roll = mover(plant_of_constant_size(), {0.05, 15, 0.40}, 1e-10);
  const double pressure = roll->sight().pressure;
  ASSERT_TRUE(roll->advance(steady_drive(0.05, pressure + 1000), 1e-3));
  std::vector<double> tension;
  for (int k = 0; k < 6000; ++k) {
    ASSERT_TRUE(roll->advance(steady_drive(0.05, pressure), 1e-3 * (k + 2)));
    tension.push_back(roll->sight().tension);
  }
  EXPECT_EQ(roll->sight().motion.roll, Roll::forward);
  EXPECT_NEAR(swing_frequency(tension, 15, 1e-3) / 18.0835124, 1, 1e-4);
}

// The linear plant's mode for a whole operating point: damped swing after a small step, ratio of neighbouring peaks.
TEST(mover, loses_its_swing_as_the_linear_plant_says) {
  Plant plant = plant_of_constant_size();
  plant.brake.friction_slope = 0.01;
  const auto roll = mover(plant, {5, 150, 0.40}, 1e-11);
  physics::UnwindPoint point{inertia_at(plant.roll, 0.4), 0.4, 3, 2e5, 5, 0, 0};
  // D = slope · M/(1 + slope ω), M = 60 N·m at ω.
  point.torque_slope = 0.01 * 60 / (1 + 0.01 * roll->sight().roll_speed);
  const auto mode = physics::unwind_mode(point);
  const double pressure = roll->sight().pressure + 100;
  double before = 150, rising = 0;
  std::vector<double> peaks;
  for (int k = 1; k < 3000; ++k) {
    ASSERT_TRUE(roll->advance(steady_drive(5, pressure), 1e-3 * k));
    const double now = roll->sight().tension;
    if (rising > 0 && now < before) peaks.push_back(before);
    rising = now - before;
    before = now;
  }
  ASSERT_GT(peaks.size(), 4U);
  ASSERT_TRUE(roll->advance(steady_drive(5, pressure), 40));
  const double middle = roll->sight().tension;
  const double ratio = (peaks[3] - middle) / (peaks[1] - middle);
  const double share = mode.damping / std::sqrt(1 - mode.damping * mode.damping);
  EXPECT_NEAR(ratio, std::exp(-2 * 2 * pi * share), 0.01 * ratio);
}

/// Errors of the roll's speed at four times of a swing, summed, with imposed steps of a length [s], against the
/// explicit pair at 1e-13.
template <class Method>
double error_with(double length, const Method& method, const Rate<Small>& rate, const Small::State<double>& from) {
  using Stepper = numerics::Stepper<Small::size, RateAt<Small>, Method>;
  auto control = numerics::StepControl<Small::size>::even(1, 1e9);  // any error is allowed
  control.first = control.largest = length;
  Stepper coarse({&rate}, control, method);
  numerics::Stepper<Small::size, RateAt<Small>, numerics::DormandPrince<Small::size>> fine(
      {&rate}, numerics::StepControl<Small::size>::even(1e-13, 1e-14));
  coarse.start(0, from, 0);
  fine.start(0, from, 0);
  double sum = 0;
  for (const double end : {0.32, 0.48, 0.64, 0.8}) {
    coarse.set_end(end);
    fine.set_end(end);
    while (coarse.step() == numerics::Stepped::accepted) {
    }
    while (fine.step() == numerics::Stepped::accepted) {
    }
    sum += std::abs(coarse.state()[speed] - fine.state()[speed]);
  }
  return sum;
}

struct Swing {
  Plant plant = published_plant();
  Rate<Small> rate{};
  Small::State<double> start{};
  Swing() {
    plant.roll.runout = 5e-4;
    plant.air.lag = 0.1;
    plant.brake = {1e-3, 1e4, 1, -0.005, 2};
    start = steady_state<Small>(plant, 5, 150, 0.40, 1);
    rate = {&plant, fixed_of(plant), steady_drive(5, start[pressure] + 2e3), {}};
    rate.drive.acceleration = -0.1;
  }
};

// Halving the step divides the error by 2^5 with the explicit pair [dormand1980], by 2^4 with RODAS [hairer1996].
TEST(mover, has_steps_of_the_order_that_is_promised) {
  const Swing swing;
  const auto order = [&](const auto& method, double length) {
    const double coarse = error_with(length, method, swing.rate, swing.start);
    return std::log2(coarse / error_with(length / 2, method, swing.rate, swing.start));
  };
  EXPECT_NEAR(order(numerics::DormandPrince<Small::size>{}, 0.02), 5, 0.3);
  using Slopes = RateSlopes<Small>;
  EXPECT_NEAR(order(numerics::Rodas<Small::size, Slopes>(Slopes{&swing.rate}), 0.02), 4, 0.3);
}

// The tolerance is kept: a thousandth of it gives at least a hundredth of the error.
TEST(mover, gets_better_with_its_tolerance) {
  Swing swing;
  const auto tension_at = [&](double relative, Steps steps) {
    const auto roll = mover(swing.plant, {5, 150, 0.40}, relative, steps);
    EXPECT_TRUE(roll->advance(swing.rate.drive, 3));
    return roll->sight().tension;
  };
  const double exact = tension_at(1e-13, Steps::explicit_steps);
  for (const Steps steps : {Steps::explicit_steps, Steps::stiff_steps}) {
    const double coarse = std::abs(tension_at(1e-5, steps) - exact);
    const double fine = std::abs(tension_at(1e-8, steps) - exact);
    // A relative error of the web counts in the tension with EA.
    EXPECT_LT(coarse, 1e-5 * 2e5);
    EXPECT_LT(fine, 0.01 * coarse);
  }
}

// Energy without brake and drag: nothing may be lost or made. Swings, runout, weight and a thinning roll.
TEST(mover, keeps_the_books_of_energy_without_a_brake) {
  Plant plant = published_plant();
  plant.brake = {};
  plant.roll.runout = 2e-3;
  plant.roll.gravity = 9.81;
  plant.path.wound_in = 80;
  const auto roll = mover(plant, {3, 150, 0.40}, 1e-12);
  const double before = roll->stored();
  double exchanged = 0, last = before;
  for (int k = 1; k <= 1000; ++k) {
    ASSERT_TRUE(roll->advance(steady_drive(3, 0), 0.02 * k));
    exchanged += std::abs(roll->stored() - last);
    last = roll->stored();
  }
  EXPECT_EQ(roll->sight().slip_work, 0);
  EXPECT_GT(exchanged, 100);
  EXPECT_NEAR(roll->sight().pull_work, roll->stored() - before, 1e-8 * exchanged);
}

TEST(mover, keeps_the_books_of_energy_with_one) {
  Plant plant = published_plant();
  plant.brake = {1e-3, 1e4, 1.2, -0.004, 2};
  plant.air.lag = 0.1;
  for (const Steps steps : {Steps::explicit_steps, Steps::stiff_steps}) {
    const auto roll = mover(plant, {1, 100, 0.35}, 1e-11, steps);
    const double before = roll->stored();
    Drive drive = steady_drive(1, roll->sight().pressure);
    drive.acceleration = 0.4;
    ASSERT_TRUE(roll->advance(drive, 5));
    const Sight& seen = roll->sight();
    EXPECT_GT(seen.slip_work, 100);
    EXPECT_NEAR(seen.pull_work, seen.slip_work + roll->stored() - before, 1e-8 * seen.pull_work);
  }
}

// In steady running T v goes into the brake: published check P-2 says so of every diameter.
TEST(mover, puts_tension_times_speed_into_the_brake) {
  const auto roll = mover(plant_of_constant_size(), {5, 150, 0.40}, 1e-9);
  ASSERT_TRUE(roll->advance(steady_drive(5, 6e4), 10));
  // Less the strain energy that leaves with the web, T ε/2 of T ε to T.
  EXPECT_NEAR(roll->sight().slip_work / (150 * 5 * 10), 1, 1e-3);
}

// Weighing and pulling by hand: 100 N, idlers of 2 N and 4 kg, of which the cell sees a quarter, at 0.5 m/s².
TEST(mover, adds_what_idlers_take_that_follow_the_line) {
  Plant plant = plant_of_constant_size();
  plant.roll.fixed_inertia = 1e15;
  plant.path.following_drag = 2;
  plant.path.following_mass = 4;
  plant.path.cell_drag = 0.5;
  plant.path.cell_mass = 1;
  const auto roll = mover(plant, {2, 100, 0.4});
  Drive drive = steady_drive(2, roll->sight().pressure);
  drive.acceleration = 0.5;
  ASSERT_TRUE(roll->advance(drive, 1e-9));
  EXPECT_NEAR(roll->sight().nip_tension, 104, 1e-3);
  EXPECT_NEAR(roll->sight().cell_tension, 101, 1e-3);
}

TEST(mover, tells_the_lowest_and_highest_tension_on_its_way) {
  const auto roll = mover(plant_of_constant_size(), {0.5, 100, 0.40});
  // The first half swing of a step of 10 N·m goes to twice its end, 25 N (undamped swing, closed form); it is over in
  // 0.174 s, and the drive ends at the end of the whole swing.
  ASSERT_TRUE(roll->advance(steady_drive(0.5, roll->sight().pressure + 1e4), 2 * pi / 18.08));
  EXPECT_NEAR(roll->sight().highest_tension, 100 + 2 * 25, 1);
  EXPECT_NEAR(roll->sight().lowest_tension, 100, 1);
}

TEST(mover, names_what_is_no_longer_a_number) {
  const double none = std::numeric_limits<double>::quiet_NaN();
  for (const double lag : {0.0, 0.1}) {
    Plant plant = published_plant();
    plant.air.lag = lag;
    const auto roll = mover(plant, {5, 150, 0.40});
    ASSERT_TRUE(roll->advance(steady_drive(5, 6e4), 1));
    EXPECT_FALSE(roll->advance(steady_drive(5, none), 2));
    EXPECT_EQ(roll->fault(), "brake pressure is no longer a number");
    EXPECT_FALSE(roll->advance(steady_drive(5, none), 3));  // and stays
  }
  const auto roll = mover(published_plant(), {5, 150, 0.40});
  EXPECT_FALSE(roll->advance(steady_drive(none, 6e4), 2));
  EXPECT_EQ(roll->fault(), "web in a span is no longer a number");
}

TEST(mover, is_the_same_every_time) {
  const Swing swing;
  double tension[2];
  for (double& value : tension) {
    const auto roll = mover(swing.plant, {5, 150, 0.40}, 1e-5);
    EXPECT_TRUE(roll->advance(swing.rate.drive, 10));
    value = roll->sight().tension;
  }
  EXPECT_EQ(tension[0], tension[1]);
}

TEST(make_mover, refuses_a_path_that_is_none) {
  Plant plant = published_plant();
  plant.path.spans.clear();
  EXPECT_THROW(mover(plant, {5, 150, 0.4}), std::invalid_argument);
  plant.path.spans.assign(9, 0.5);
  plant.path.idlers.assign(8, IdlerPlant{0.05, 0.01, 0.1});
  EXPECT_THROW(mover(plant, {5, 150, 0.4}), std::invalid_argument);
  plant.path = single_span(3, 0);
  EXPECT_THROW(mover(plant, {5, 150, 0.4}), std::invalid_argument);
}

TEST(choose_method, takes_stiff_steps_for_light_idlers_on_short_spans) {
  Plant plant = published_plant();
  EXPECT_EQ(choose_method(plant, 0.01).steps, Steps::explicit_steps);
  plant.path = chain_path();
  EXPECT_EQ(choose_method(plant, 0.01).steps, Steps::explicit_steps);
  EXPECT_EQ(choose_method(plant, 0.01).fastest, fastest_idler_mode(plant.path));
  plant.path.stiffness = 1e8;
  EXPECT_EQ(choose_method(plant, 0.01).steps, Steps::stiff_steps);
}

}  // namespace
}  // namespace holdback::dynamics
