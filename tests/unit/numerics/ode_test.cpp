#include "holdback/numerics/ode.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace holdback::numerics {
namespace {

constexpr double pi = 3.14159265358979323846;

// Steps of one length, whatever the error.
template <std::size_t N>
StepControl<N> fixed_steps(double length) {
  StepControl<N> control = StepControl<N>::even(1e-8, 1e200);
  control.first = control.smallest = control.largest = length;
  return control;
}

template <class AnyStepper>
void run_to_end(AnyStepper& stepper) {
  while (stepper.step() == Stepped::accepted) {
  }
}

// y' = y cos t, y = e^(sin t).
State<1> growth(double t, const State<1>& y) { return {y[0] * std::cos(t)}; }

// A mass on a spring, in steps from one of its own states.
State<2> oscillator(double, const State<2>& y) { return {y[1], -y[0]}; }

TEST(explicit_stepper, is_of_order_five) {  // closed form
  const auto error = [](double length) {
    auto stepper = explicit_stepper<1>(growth, fixed_steps<1>(length));
    stepper.start(0, {1}, 4);
    run_to_end(stepper);
    EXPECT_EQ(stepper.counts().steps, static_cast<std::size_t>(4 / length));
    return std::abs(stepper.state()[0] - std::exp(std::sin(4.0)));
  };
  for (const double length : {0.125, 0.0625, 0.03125}) {
    const double order = std::log2(error(length) / error(length / 2));
    EXPECT_GT(order, 4.75) << length;
    EXPECT_LT(order, 5.4) << length;
  }
}

TEST(explicit_stepper, has_a_curve_of_order_four_inside_the_step) {  // closed form; the error of one step goes with h^5
  const auto error = [](double length) {
    auto stepper = explicit_stepper<1>(growth, fixed_steps<1>(length));
    stepper.start(0.3, {std::exp(std::sin(0.3))}, 0.3 + length);
    EXPECT_EQ(stepper.step(), Stepped::accepted);
    double worst = 0;
    for (double s = 0.05; s < 1; s += 0.05) {
      const double t = 0.3 + s * length;
      worst = std::max(worst, std::abs(stepper.at(t)[0] - std::exp(std::sin(t))));
    }
    return worst;
  };
  for (const double length : {0.125, 0.0625, 0.03125}) {
    const double order = std::log2(error(length) / error(length / 2));
    EXPECT_GT(order, 4.7) << length;
    EXPECT_LT(order, 5.3) << length;
  }
}

TEST(explicit_stepper, is_exact_on_the_polynomials_it_must_solve) {
  // The end of a step on t^5, the curve on t^4.
  auto fifth =
      explicit_stepper<1>([](double t, const State<1>&) { return State<1>{5 * t * t * t * t}; }, fixed_steps<1>(2));
  fifth.start(-0.5, {std::pow(-0.5, 5)}, 1.5);
  run_to_end(fifth);
  EXPECT_NEAR(fifth.state()[0], std::pow(1.5, 5), 1e-13);

  auto fourth =
      explicit_stepper<1>([](double t, const State<1>&) { return State<1>{4 * t * t * t}; }, fixed_steps<1>(2));
  fourth.start(-0.5, {std::pow(-0.5, 4)}, 1.5);
  run_to_end(fourth);
  for (double t = -0.5; t <= 1.5; t += 0.125) EXPECT_NEAR(fourth.at(t)[0], std::pow(t, 4), 1e-13) << t;
}

TEST(explicit_stepper, joins_its_curves_smoothly) {
  auto stepper = explicit_stepper<2>(oscillator, StepControl<2>::even(1e-6, 1e-9));
  stepper.start(0, {1, 0}, 20);
  while (stepper.step() == Stepped::accepted) {
    const Dense<2> curve = stepper.dense();
    EXPECT_EQ(curve.at(curve.t0), stepper.before());
    EXPECT_EQ(curve.at(curve.t1), stepper.state());
    const double s = 1e-7;
    const double h = curve.t1 - curve.t0;
    for (std::size_t i = 0; i < 2; ++i) {
      const double slope0 = (curve.at_fraction(s)[i] - curve.at_fraction(-s)[i]) / (2 * s * h);
      const double slope1 = (curve.at_fraction(1 + s)[i] - curve.at_fraction(1 - s)[i]) / (2 * s * h);
      EXPECT_NEAR(slope0, oscillator(0, stepper.before())[i], 1e-7);
      EXPECT_NEAR(slope1, stepper.derivative()[i], 1e-7);
    }
  }
}

TEST(explicit_stepper, holds_states_outside_its_step_at_the_ends) {
  auto stepper = explicit_stepper<1>(growth, StepControl<1>::even(1e-8, 0));
  stepper.start(1, {7}, 2);
  EXPECT_EQ(stepper.at(5)[0], 7);
  EXPECT_EQ(stepper.step(), Stepped::accepted);
  EXPECT_EQ(stepper.at(-5)[0], 7);
  EXPECT_EQ(stepper.at(5)[0], stepper.state()[0]);
}

TEST(explicit_stepper, comes_nearer_with_the_tolerance) {  // closed form
  const auto error = [](double relative) {
    auto stepper = explicit_stepper<1>(growth, StepControl<1>::even(relative, 0));
    stepper.start(0, {1}, 10);
    run_to_end(stepper);
    return std::abs(stepper.state()[0] / std::exp(std::sin(10.0)) - 1);
  };
  for (const double relative : {1e-4, 1e-6, 1e-8, 1e-10, 1e-12}) EXPECT_LT(error(relative), 30 * relative) << relative;
}

TEST(explicit_stepper, minds_the_tolerance_of_each_component) {
  // The fast component is asked for nothing: the slow one alone sets the steps.
  const auto both = [](double t, const State<2>& y) { return State<2>{y[0] * std::cos(t), std::cos(40 * t)}; };
  StepControl<2> control;
  control.relative = 1e-8;
  control.absolute = {0, 1e6};
  auto loose = explicit_stepper<2>(both, control);
  loose.start(0, {1, 0}, 10);
  run_to_end(loose);
  control.absolute = {0, 1e-9};
  auto tight = explicit_stepper<2>(both, control);
  tight.start(0, {1, 0}, 10);
  run_to_end(tight);
  EXPECT_NEAR(loose.state()[0] / std::exp(std::sin(10.0)), 1, 1e-6);
  EXPECT_NEAR(tight.state()[1], std::sin(400.0) / 40, 1e-7);
  EXPECT_GT(tight.counts().steps, 4 * loose.counts().steps);
}

TEST(explicit_stepper, keeps_the_energy_of_an_oscillator_over_many_periods) {
  // Nothing makes this method keep it but its accuracy: 1000 periods, the drift is below the sum of the tolerances.
  auto stepper = explicit_stepper<2>(oscillator, StepControl<2>::even(1e-10, 1e-10));
  stepper.start(0, {1, 0}, 2000 * pi);
  run_to_end(stepper);
  const double energy = stepper.state()[0] * stepper.state()[0] + stepper.state()[1] * stepper.state()[1];
  EXPECT_NEAR(energy, 1, static_cast<double>(stepper.counts().steps) * 1e-10);
  EXPECT_NEAR(energy, 1, 2e-6);
}

TEST(explicit_stepper, costs_six_evaluations_a_step) {
  auto stepper = explicit_stepper<2>(oscillator, StepControl<2>::even(1e-8, 1e-8));
  stepper.start(0, {1, 0}, 100);
  run_to_end(stepper);
  const OdeCounts& counts = stepper.counts();
  EXPECT_EQ(counts.rhs_calls, 6 * (counts.steps + counts.rejected) + 2);  // the start and its guess
  EXPECT_LT(counts.rejected, counts.steps / 20);
}

TEST(explicit_stepper, guesses_a_first_step_that_is_neither_refused_nor_tiny) {
  for (const double rate : {1e-6, 1e-3, 1.0, 1e3, 1e6}) {
    auto stepper = explicit_stepper<1>([rate](double, const State<1>& y) { return State<1>{-rate * y[0]}; },
                                       StepControl<1>::even(1e-8, 1e-12));
    stepper.start(0, {1}, 5 / rate);
    EXPECT_EQ(stepper.try_step(), Stepped::accepted) << rate;
    EXPECT_GT(stepper.t() * rate, 1e-4);
    run_to_end(stepper);
    EXPECT_NEAR(stepper.state()[0], std::exp(-5.0), 1e-8);
    EXPECT_LT(stepper.counts().steps, 60U);
    EXPECT_EQ(stepper.counts().rejected, 0U);
  }
}

TEST(explicit_stepper, lands_on_the_end_and_never_passes_it) {
  for (const double end : {1.0, 0.1, 3.3, 7.77, 1e-9, 24.0, 1e4 / 3}) {
    auto stepper = explicit_stepper<2>(
        [end](double t, const State<2>& y) {
          EXPECT_LE(t, end);
          return oscillator(t, y);
        },
        StepControl<2>::even(1e-5, 1e-5));
    stepper.start(0, {1, 0}, end);
    double before = 0;
    while (stepper.step() == Stepped::accepted) {
      ASSERT_GT(stepper.t(), before);
      ASSERT_LE(stepper.t(), end);
      before = stepper.t();
    }
    EXPECT_EQ(stepper.t(), end);
    EXPECT_EQ(stepper.try_step(), Stepped::at_end);
    EXPECT_EQ(stepper.failure(), OdeFailure::none);
  }
}

TEST(explicit_stepper, goes_on_to_a_later_end_as_if_nothing_were) {
  auto stepper = explicit_stepper<1>(growth, StepControl<1>::even(1e-9, 0));
  stepper.start(0, {1}, 0);
  for (int i = 1; i <= 1000; ++i) {
    stepper.set_end(0.01 * i);
    run_to_end(stepper);
    ASSERT_EQ(stepper.t(), 0.01 * i);
  }
  EXPECT_NEAR(stepper.state()[0] / std::exp(std::sin(10.0)), 1, 1e-8);
  EXPECT_LE(stepper.counts().steps, 1010U);  // short stretches do not shorten the length that is meant
  stepper.set_end(3);
  EXPECT_EQ(stepper.step(), Stepped::at_end);
  stepper.set_end(std::nan(""));
  EXPECT_EQ(stepper.step(), Stepped::at_end);
}

TEST(explicit_stepper, keeps_its_steps_within_their_bounds) {
  StepControl<2> control = StepControl<2>::even(1e-3, 1e-3);
  control.largest = 0.05;
  auto bounded = explicit_stepper<2>(oscillator, control);
  bounded.start(0, {1, 0}, 10);
  while (bounded.step() == Stepped::accepted) ASSERT_LE(bounded.t() - bounded.t0(), 0.05 * (1 + 1e-8));
  EXPECT_LT(bounded.counts().steps, 260U);

  control = StepControl<2>::even(1e-12, 1e-12);
  control.smallest = 0.5;
  auto coarse = explicit_stepper<2>(oscillator, control);
  coarse.start(0, {1, 0}, 10);
  EXPECT_EQ(coarse.step(), Stepped::failed);
  EXPECT_EQ(coarse.failure(), OdeFailure::step_too_small);
  EXPECT_EQ(coarse.t(), 0);
  EXPECT_EQ(coarse.try_step(), Stepped::failed);
  coarse.start(0, {0, 0}, 10);  // a start makes it good again: at rest there is no error
  run_to_end(coarse);
  EXPECT_EQ(coarse.t(), 10);
}

TEST(explicit_stepper, takes_the_derivative_anew_after_a_jump) {  // closed form, y' = −k y
  double rate = 1;
  auto stepper = explicit_stepper<1>([&rate](double, const State<1>& y) { return State<1>{-rate * y[0]}; },
                                     StepControl<1>::even(1e-11, 0));
  stepper.start(0, {1}, 1);
  run_to_end(stepper);
  rate = 300;
  stepper.restart(1, {2});
  EXPECT_EQ(stepper.derivative()[0], -600);
  EXPECT_EQ(stepper.at(1)[0], 2);
  stepper.set_end(1.01);
  run_to_end(stepper);
  EXPECT_NEAR(stepper.state()[0] / (2 * std::exp(-3.0)), 1, 1e-9);
}

TEST(explicit_stepper, says_so_when_the_derivative_is_no_number) {
  auto root = explicit_stepper<1>([](double t, const State<1>&) { return State<1>{std::sqrt(1 - t)}; },
                                  StepControl<1>::even(1e-8, 1e-8));
  root.start(0, {0}, 2);
  run_to_end(root);
  EXPECT_EQ(root.failure(), OdeFailure::not_finite);
  EXPECT_LE(root.t(), 1);
  EXPECT_NEAR(root.t(), 1, 1e-6);
  EXPECT_NEAR(root.state()[0], 2.0 / 3, 1e-7);  // closed form; the last good state stays

  auto pole = explicit_stepper<1>([](double, const State<1>& y) { return State<1>{y[0] * y[0]}; },
                                  StepControl<1>::even(1e-8, 0));
  pole.start(0, {1}, 2);  // 1/(1 − t)
  run_to_end(pole);
  EXPECT_NE(pole.failure(), OdeFailure::none);
  EXPECT_NEAR(pole.t(), 1, 1e-6);
  EXPECT_TRUE(std::isfinite(pole.state()[0]));

  auto never = explicit_stepper<1>([](double, const State<1>&) { return State<1>{std::nan("")}; },
                                   StepControl<1>::even(1e-8, 1e-8));
  never.start(0, {1}, 2);
  EXPECT_EQ(never.step(), Stepped::failed);
  EXPECT_EQ(never.failure(), OdeFailure::not_finite);
  auto fine = explicit_stepper<1>(growth, StepControl<1>::even(1e-8, 1e-8));
  fine.start(0, {std::nan("")}, 2);
  EXPECT_EQ(fine.step(), Stepped::failed);
}

TEST(explicit_stepper, gets_past_a_trial_that_leaves_the_domain) {
  // y' = −√y reaches zero at t = 2; trials beyond are refused, not taken for the end.
  auto stepper = explicit_stepper<1>([](double, const State<1>& y) { return State<1>{-std::sqrt(y[0])}; },
                                     StepControl<1>::even(1e-4, 0));
  stepper.start(0, {1}, 1.99);
  run_to_end(stepper);
  EXPECT_EQ(stepper.failure(), OdeFailure::none);
  EXPECT_NEAR(stepper.state()[0], 0.25e-4, 1e-6);  // (1 − t/2)²
}

TEST(explicit_stepper, gives_the_same_bits_again) {
  const auto made = [] {
    auto stepper = explicit_stepper<2>(oscillator, StepControl<2>::even(1e-7, 1e-9));
    stepper.start(0, {1, 0.3}, 50);
    std::vector<double> all;
    while (stepper.step() == Stepped::accepted) {
      all.push_back(stepper.t());
      all.push_back(stepper.at(0.5 * (stepper.t0() + stepper.t()))[1]);
    }
    return all;
  };
  EXPECT_EQ(made(), made());
}

// Unwinding against a constant brake torque, published-checks S-3 [computed]: J(R) dω/dt = T R − M_b, dR/dt = −tω/2π,
// dT/dt = EA (1 + ε)²/L (v2/(1 + ε) − ωR); states ω, R, T. SciPy DOP853 against Radau, agreeing to 1e-9.
State<3> unwinding(double, const State<3>& y) {
  const double radius = y[1];
  const double stretch = 1 + y[2] / 2e5;
  const double inertia = 0.5 + 0.5 * pi * 800 * (std::pow(radius, 4) - std::pow(0.08, 4));
  return {(y[2] * radius - 60) / inertia, -0.2e-3 * y[0] / (2 * pi),
          2e5 * stretch * stretch / 3 * (5 / stretch - y[0] * radius)};
}
constexpr double unwinding_at[4][4] = {{1, 12.503214485, 0.399602216, 150.8601276},
                                       {10, 12.616501663, 0.396004188, 152.5255500},
                                       {60, 13.308835032, 0.375388174, 160.8500749},
                                       {300, 19.649645977, 0.254155692, 237.1574511}};
const State<3> unwinding_start{5 / (1 + 150 / 2e5) / 0.4, 0.4, 150};

TEST(explicit_stepper, unwinds_a_roll_as_published) {
  auto stepper = explicit_stepper<3>(unwinding, StepControl<3>::even(1e-11, 1e-12));
  stepper.start(0, unwinding_start, 0);
  for (const auto& row : unwinding_at) {
    stepper.set_end(row[0]);
    run_to_end(stepper);
    for (std::size_t i = 0; i < 3; ++i) EXPECT_NEAR(stepper.state()[i] / row[i + 1], 1, 1e-8) << row[0] << ' ' << i;
  }
}

TEST(stiff_stepper, unwinds_a_roll_as_published) {
  auto stepper = stiff_stepper<3>(unwinding, StepControl<3>::even(1e-10, 1e-11));
  stepper.start(0, unwinding_start, 0);
  for (const auto& row : unwinding_at) {
    stepper.set_end(row[0]);
    run_to_end(stepper);
    for (std::size_t i = 0; i < 3; ++i) EXPECT_NEAR(stepper.state()[i] / row[i + 1], 1, 1e-8) << row[0] << ' ' << i;
  }
}

TEST(rough_log2, is_close_enough_for_the_length_of_a_step) {
  for (double x = 1e-30; x < 1e30; x *= 1.37) EXPECT_NEAR(rough_log2(x), std::log2(x), 0.01) << x;
  for (double x = -90; x < 90; x += 0.173) EXPECT_NEAR(rough_exp2(x) / std::exp2(x), 1, 4e-3) << x;
  EXPECT_EQ(rough_log2(1), 0);
  EXPECT_EQ(rough_exp2(3), 8);
}

TEST(StepRule, shortens_after_a_failure_and_does_not_lengthen_at_once) {
  StepRule rule(5);
  EXPECT_LT(rule.rejected(1.01), 0.91);
  EXPECT_EQ(rule.rejected(1e30), 0.2);
  EXPECT_EQ(rule.rejected(std::numeric_limits<double>::infinity()), 0.25);
  EXPECT_EQ(rule.accepted(1e-20), 1);
  EXPECT_EQ(rule.accepted(0), 10);
  rule.forget();
  EXPECT_NEAR(rule.accepted(1), 0.9, 0.01);
}

TEST(describe, has_words_for_every_failure) {
  EXPECT_EQ(describe(OdeFailure::none), "none");
  for (const OdeFailure failure : {OdeFailure::step_too_small, OdeFailure::not_finite, OdeFailure::too_many_steps,
                                   OdeFailure::too_many_events, OdeFailure::no_progress})
    EXPECT_GT(describe(failure).size(), 10U);
}

}  // namespace
}  // namespace holdback::numerics
