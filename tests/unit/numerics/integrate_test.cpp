#include "holdback/numerics/integrate.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace holdback::numerics {
namespace {

const auto no_stretch = [](const auto&, double, double) {};

// published-checks E-1 [computed, closed form]: J 12 kg·m², 80 rad/s, 40 N·m of friction: stops at 24 s after 960 rad
// and 38400 J, and stays at rest. States: angle, speed, work of friction.
struct SpinDown {
  bool turns{true};
  auto stepper() {
    return explicit_stepper<3>(
        [this](double, const State<3>& y) {
          return turns ? State<3>{y[1], -40.0 / 12, 40 * y[1]} : State<3>{0, 0, 0};
        },
        StepControl<3>::even(1e-10, 1e-12));
  }
};
std::array<double, 1> speed_guard(double, const State<3>& y) { return {y[1]}; }

TEST(integrate, stops_a_disc_by_dry_friction) {
  SpinDown disc;
  auto stepper = disc.stepper();
  auto finder = event_finder<3>(speed_guard, std::array<Guard, 1>{Guard{Crossing::falling}}, {});
  stepper.start(0, {0, 80, 0}, 0);
  double stopped_at = 0;
  const RunReport report = integrate(
      stepper, finder, 100,
      [&](Event<3, 1>& event) {
        stopped_at = event.t;
        EXPECT_EQ(event.crossed[0], -1);
        EXPECT_NEAR(event.y[1], 0, 1e-10);
        event.y[1] = 0;
        disc.turns = false;
        return AfterEvent::changed;
      },
      no_stretch);
  EXPECT_NEAR(stopped_at / 24, 1, 1e-12);
  EXPECT_EQ(report.t, 100);
  EXPECT_EQ(report.events, 1U);
  EXPECT_EQ(report.failure, OdeFailure::none);
  EXPECT_FALSE(report.stopped);
  EXPECT_NEAR(stepper.state()[0] / 960, 1, 1e-12);
  EXPECT_EQ(stepper.state()[1], 0);
  EXPECT_NEAR(stepper.state()[2] / 38400, 1, 1e-12);
  EXPECT_EQ(report.steps, stepper.counts().steps);
  EXPECT_EQ(report.rhs_calls, stepper.counts().rhs_calls - 1);  // that of start was before the run
}

TEST(integrate, tells_an_event_exactly_at_the_end) {
  SpinDown disc;
  auto stepper = disc.stepper();
  auto finder = event_finder<3>(speed_guard, std::array<Guard, 1>{}, {});
  stepper.start(0, {0, 80, 0}, 0);
  std::vector<double> times;
  const auto keep = [&](Event<3, 1>& event) {
    times.push_back(event.t);
    return AfterEvent::same;
  };
  EXPECT_EQ(integrate(stepper, finder, 23.9, keep, no_stretch).events, 0U);
  EXPECT_EQ(integrate(stepper, finder, 24, keep, no_stretch).events, 1U);
  ASSERT_EQ(times.size(), 1U);
  EXPECT_NEAR(times[0], 24, 1e-11);
  EXPECT_EQ(stepper.t(), 24);
}

// published-checks E-2 [found: A. B. Downey, Modeling and Simulation in Python, ch. 25; digits computed]: disc 7 kg of
// 0.5 m radius with 0.3 kg at 0.4 m; 2 N at the rim until 0.5 rad, then friction of 0.3 N·m alone. States: angle,
// speed.
TEST(integrate, pushes_and_releases_a_turntable_as_published) {
  const double inertia = 0.5 * 7 * 0.5 * 0.5 + 0.3 * 0.4 * 0.4;
  const auto turned = [inertia](double friction, std::vector<double>& times, std::vector<double>& speeds) {
    double push = 2 * 0.5;
    auto stepper = explicit_stepper<2>(
        [&](double, const State<2>& y) {
          return State<2>{y[1], (push - friction) / inertia};
        },
        StepControl<2>::even(1e-10, 1e-12));
    auto finder = event_finder<2>(
        [](double, const State<2>& y) {
          return std::array<double, 2>{y[0] - 0.5, y[1]};
        },
        std::array<Guard, 2>{Guard{Crossing::rising}, Guard{Crossing::falling}}, {});
    stepper.start(0, {0, 0}, 0);
    const RunReport report = integrate(
        stepper, finder, 60,
        [&](Event<2, 2>& event) {
          times.push_back(event.t);
          speeds.push_back(event.y[1]);
          push = 0;
          return event.crossed[1] != 0 ? AfterEvent::stop : AfterEvent::changed;
        },
        no_stretch);
    EXPECT_TRUE(report.stopped);
    EXPECT_EQ(report.t, times.back());
    return stepper.state()[0];
  };
  std::vector<double> times;
  std::vector<double> speeds;
  EXPECT_NEAR(turned(0.3, times, speeds), 1.66666666667, 1e-9);
  ASSERT_EQ(times.size(), 2U);
  EXPECT_NEAR(times[0], 1.14829065509, 1e-9);
  EXPECT_NEAR(speeds[0], 0.870859651749, 1e-9);
  EXPECT_NEAR(times[1], 3.82763551697, 1e-9);
  EXPECT_NEAR(speeds[0], 0.87, 0.005);  // the book's own digits
  EXPECT_NEAR(turned(1.0 / 3, times, speeds), 1.5, 1e-9);
}

// published-checks E-3 [computed, closed form of Den Hartog's method]: 1 kg on a spring of 1 N/m and a belt of 0.1 m/s,
// friction 1 N at rest and 0.6 N sliding. States: place, speed.
TEST(integrate, sticks_and_slips_with_the_known_period) {
  bool sticks = true;
  auto stepper = explicit_stepper<2>(
      [&sticks](double, const State<2>& y) {
        return sticks ? State<2>{0.1, 0} : State<2>{y[1], 0.6 - y[0]};
      },
      StepControl<2>::even(1e-12, 1e-13));
  // When sticking: the spring reaches the friction at rest. When slipping: the speed of the belt is met again.
  auto finder = event_finder<2>(
      [&sticks](double, const State<2>& y) {
        return std::array<double, 2>{sticks ? y[0] - 1 : -1, sticks ? -1 : y[1] - 0.1};
      },
      std::array<Guard, 2>{Guard{Crossing::rising}, Guard{Crossing::rising}}, {});
  std::vector<double> slips;
  std::vector<double> sticks_again;
  double lowest = 1;
  double highest = 0;
  stepper.start(0, {0.2, 0.1}, 0);
  const RunReport report = integrate(
      stepper, finder, 200,
      [&](Event<2, 2>& event) {
        EXPECT_NE(event.crossed[0] != 0, event.crossed[1] != 0);
        (sticks ? slips : sticks_again).push_back(event.t);
        EXPECT_NEAR(event.y[0], sticks ? 1 : 0.2, 1e-9);
        sticks = !sticks;
        event.y[1] = 0.1;
        return AfterEvent::changed;
      },
      [&](const Dense<2>& step, double from, double to) {
        for (int i = 0; i <= 400; ++i) {
          const double place = step.at(from + (to - from) * i / 400)[0];
          lowest = std::min(lowest, place);
          highest = std::max(highest, place);
        }
      });
  EXPECT_EQ(report.failure, OdeFailure::none);
  ASSERT_EQ(slips.size(), 17U);
  ASSERT_EQ(sticks_again.size(), 17U);
  for (std::size_t i = 0; i < 17; ++i) EXPECT_NEAR(sticks_again[i] - slips[i], 3.63154997984, 1e-9);
  for (std::size_t i = 0; i < 16; ++i) {
    EXPECT_NEAR(slips[i + 1] - sticks_again[i], 8, 1e-9);
    EXPECT_NEAR(slips[i + 1] - slips[i], 11.6315499798, 1e-9);
  }
  EXPECT_NEAR(lowest, 0.187689437438, 1e-6);
  EXPECT_NEAR(highest, 1.01231056256, 1e-6);
}

TEST(integrate, bounces_a_ball_with_the_known_times) {  // closed form: flights of 2 v0 e^k / g
  auto stepper = explicit_stepper<2>(
      [](double, const State<2>& y) {
        return State<2>{y[1], -9.81};
      },
      StepControl<2>::even(1e-10, 1e-12));
  auto finder = event_finder<2>([](double, const State<2>& y) { return std::array<double, 1>{y[0]}; },
                                std::array<Guard, 1>{Guard{Crossing::falling, 1e-10}}, {});
  std::vector<double> times;
  stepper.start(0, {0, 5}, 0);
  const RunReport report = integrate(
      stepper, finder, 10,
      [&](Event<2, 1>& event) {
        times.push_back(event.t);
        event.y = {0, -0.5 * event.y[1]};
        return times.size() == 12 ? AfterEvent::stop : AfterEvent::changed;
      },
      no_stretch);
  EXPECT_TRUE(report.stopped);
  ASSERT_EQ(times.size(), 12U);
  double due = 0;
  for (std::size_t k = 0; k < times.size(); ++k) {
    due += 2 * 5 * std::pow(0.5, static_cast<double>(k)) / 9.81;
    EXPECT_NEAR(times[k], due, 1e-10) << k;
  }
}

TEST(integrate, counts_the_zeros_of_an_oscillator_without_cutting_its_steps) {
  const auto oscillator = [](double, const State<2>& y) { return State<2>{y[1], -y[0]}; };
  auto plain = explicit_stepper<2>(oscillator, StepControl<2>::even(1e-11, 1e-11));
  plain.start(0, {1, 0}, 0);
  const RunReport without = integrate(plain, 100, no_stretch);
  auto stepper = explicit_stepper<2>(oscillator, StepControl<2>::even(1e-11, 1e-11));
  auto finder = event_finder<2>([](double, const State<2>& y) { return y; }, std::array<Guard, 2>{}, {});
  stepper.start(0, {1, 0}, 0);
  int zeros = 0;
  int turns = 0;
  double covered = 0;
  const RunReport report = integrate(
      stepper, finder, 100,
      [&](Event<2, 2>& event) {
        const double halves = event.crossed[0] != 0 ? zeros++ + 0.5 : ++turns;
        EXPECT_NEAR(event.t, halves * 3.14159265358979324, 1e-8);
        return AfterEvent::same;
      },
      [&](const Dense<2>&, double from, double to) {
        EXPECT_EQ(from, covered);
        covered = to;
      });
  EXPECT_EQ(zeros, 32);
  EXPECT_EQ(turns, 31);
  EXPECT_EQ(covered, 100);
  EXPECT_EQ(report.events, 63U);
  EXPECT_EQ(report.steps, without.steps);
  EXPECT_EQ(plain.state(), stepper.state());
}

TEST(integrate, takes_a_stiff_stepper_as_well) {  // closed form: ln 2 / 3 s to half, while another state dies at once
  auto stepper = stiff_stepper<2>(
      [](double, const State<2>& y) {
        return State<2>{-3 * y[0], -1e6 * (y[1] - y[0])};
      },
      StepControl<2>::even(1e-10, 1e-12));
  auto finder = event_finder<2>([](double, const State<2>& y) { return std::array<double, 1>{y[0] - 0.5}; },
                                std::array<Guard, 1>{}, {});
  stepper.start(0, {1, 0}, 0);
  const RunReport report = integrate(
      stepper, finder, 1, [](Event<2, 1>&) { return AfterEvent::stop; }, no_stretch);
  EXPECT_TRUE(report.stopped);
  EXPECT_NEAR(report.t, std::log(2.0) / 3, 1e-8);
}

TEST(integrate, reports_a_failure_and_where) {
  auto stepper = explicit_stepper<1>([](double t, const State<1>&) { return State<1>{t < 1 ? 1 : std::nan("")}; },
                                     StepControl<1>::even(1e-8, 1e-8));
  stepper.start(0, {0}, 0);
  const RunReport report = integrate(stepper, 2, no_stretch);
  EXPECT_EQ(report.failure, OdeFailure::not_finite);
  EXPECT_NEAR(report.t, 1, 1e-9);
  EXPECT_LT(report.t, 1);
  EXPECT_GT(report.rejected, 5U);
}

TEST(integrate, gives_up_at_its_limits) {
  const auto fall = [](double, const State<1>&) { return State<1>{-1}; };
  const auto itself = [](double, const State<1>& y) { return y; };
  StepControl<1> control = StepControl<1>::even(1e-8, 1e-8);
  control.largest = 0.01;
  auto stepper = explicit_stepper<1>(fall, control);
  RunLimits limits;
  limits.steps = 50;
  stepper.start(0, {1}, 0);
  EXPECT_EQ(integrate(stepper, 10, no_stretch, limits).failure, OdeFailure::too_many_steps);

  // Thrown back by less than a rounding of time can tell: nothing goes on.
  auto finder = event_finder<1>(itself, std::array<Guard, 1>{Guard{Crossing::falling, 0}}, {});
  stepper.start(0, {1}, 0);
  const RunReport stuck = integrate(
      stepper, finder, 10,
      [](Event<1, 1>& event) {
        event.y[0] = 1e-13;
        return AfterEvent::changed;
      },
      no_stretch);
  EXPECT_EQ(stuck.failure, OdeFailure::no_progress);
  EXPECT_NEAR(stuck.t, 1, 1e-9);

  limits = {};
  limits.events = 7;
  stepper.start(0, {1}, 0);
  const RunReport many = integrate(
      stepper, finder, 100,
      [](Event<1, 1>& event) {
        event.y[0] = 1;
        return AfterEvent::changed;
      },
      no_stretch, limits);
  EXPECT_EQ(many.failure, OdeFailure::too_many_events);
  EXPECT_EQ(many.events, 7U);
  EXPECT_NEAR(many.t, 7, 1e-9);
}

TEST(integrate, gives_the_same_bits_again) {
  const auto made = [] {
    std::vector<double> all;
    auto stepper = explicit_stepper<2>(
        [](double t, const State<2>& y) {
          return State<2>{y[1], std::cos(t) - y[0]};
        },
        StepControl<2>::even(1e-9, 1e-9));
    auto finder = event_finder<2>([](double, const State<2>& y) { return y; }, std::array<Guard, 2>{}, {});
    stepper.start(0, {1, 0}, 0);
    integrate(
        stepper, finder, 40,
        [&](Event<2, 2>& event) {
          all.push_back(event.t);
          event.y[1] *= 0.99;
          return AfterEvent::changed;
        },
        no_stretch);
    all.push_back(stepper.state()[0]);
    return all;
  };
  const auto once = made();
  EXPECT_GT(once.size(), 20U);
  EXPECT_EQ(once, made());
}

}  // namespace
}  // namespace holdback::numerics
