#include "holdback/numerics/frequency.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>

namespace holdback::numerics {
namespace {

using std::numbers::pi;
constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double degree = pi / 180;
const Complex j{0, 1};

Complex squared(Complex s) { return s * s; }

LoopMargins margins_of(const Response& loop, int unstable_open_poles = 0) {
  return loop_margins(loop, {1e-4, 1e4, 100, {}}, unstable_open_poles);
}

// ---- factors --------------------------------------------------------------------------------------------------------

TEST(dead_time, turns_without_changing_the_size) {
  const Complex value = dead_time(2.0 * j, 0.3);
  EXPECT_NEAR(std::abs(value), 1, 1e-15);
  EXPECT_NEAR(std::arg(value), -0.6, 1e-15);
  EXPECT_EQ(dead_time(2.0 * j, -1), Complex(1));
}

TEST(dead_time, is_a_number_far_out) {
  for (const Complex s : {Complex{-1e300, 1}, Complex{1e300, 1e300}, Complex{0, 1e308}, Complex{-1e308, 1e308}}) {
    const Complex value = dead_time(s, 1e6);
    EXPECT_TRUE(std::isfinite(value.real()) && std::isfinite(value.imag())) << s;
  }
}

TEST(sample_and_hold, is_the_mean_of_a_wave_over_one_period) {
  // A held value is on average half a period old: −ωT/2, with the size of the mean of a wave, sin(ωT/2)/(ωT/2).
  for (const double omega : {1e-9, 0.01, 0.7, 3.0, 11.0}) {
    const Complex value = sample_and_hold(omega * j, 0.4), expected = std::polar(std::sin(0.2 * omega), -0.2 * omega);
    EXPECT_LT(std::abs(value - expected / (0.2 * omega)), 1e-14) << omega;
  }
  EXPECT_EQ(sample_and_hold(0, 0.4), Complex(1));
  EXPECT_EQ(sample_and_hold(3.0 * j, 0), Complex(1));
}

TEST(sample_and_hold, joins_its_two_forms) {
  const Complex below = sample_and_hold({0.6, 0.79999}, 1), above = sample_and_hold({0.6, 0.80001}, 1);
  EXPECT_LT(std::abs(below - above), 2e-5);
  const Complex z{0.3, 0.4};
  EXPECT_LT(std::abs(sample_and_hold(z, 1) - (1.0 - std::exp(-z)) / z), 1e-15);
}

TEST(sample_and_hold, is_a_number_far_out) {
  for (const Complex s : {Complex{-1e300, 1}, Complex{1e300, 1e300}, Complex{0, 1e308}, Complex{-1e308, 1e308}}) {
    const Complex value = sample_and_hold(s, 1e6);
    EXPECT_TRUE(std::isfinite(value.real()) && std::isfinite(value.imag())) << s;
  }
}

TEST(logarithmic_grid, holds_both_ends_in_geometric_progression) {
  const std::vector<double> grid = logarithmic_grid({0.1, 100, 10, {}});
  ASSERT_EQ(grid.size(), 31U);
  EXPECT_EQ(grid.front(), 0.1);
  EXPECT_EQ(grid.back(), 100);
  for (std::size_t i = 1; i < grid.size(); ++i) EXPECT_NEAR(grid[i] / grid[i - 1], std::pow(10, 0.1), 1e-12);
}

TEST(logarithmic_grid, refuses_what_is_no_range) {
  for (const FrequencyRange& range : {FrequencyRange{0, 1, 10, {}}, FrequencyRange{2, 2, 10, {}},
                                      FrequencyRange{1, infinity, 10, {}}, FrequencyRange{1, 2, 0, {}}}) {
    EXPECT_THROW(logarithmic_grid(range), std::invalid_argument);
  }
}

TEST(frequency_response, follows_the_phase_past_a_half_turn) {
  const auto loop = [](Complex s) { return dead_time(s, 1) / (s + 1.0); };
  const auto points = frequency_response(loop, logarithmic_grid({0.01, 20, 200, {}}));
  for (const FrequencyPoint& point : points) {
    EXPECT_NEAR(point.gain, 1 / std::hypot(1, point.frequency), 1e-14);
    EXPECT_NEAR(point.phase, -point.frequency - std::atan(point.frequency), 1e-12);
  }
}

// ---- margins against published and closed values --------------------------------------------------------------------

TEST(loop_margins, of_published_check_k_1) {
  // SIMC: e^(−θs)/(2θs). Closed form: crossing at 1/(2θ), phase −90° − ½ rad; angle −180° at ωθ = π/2. Ms computed.
  const double theta = 0.2;
  const LoopMargins found = margins_of([=](Complex s) { return dead_time(s, theta) / (2 * theta * s); });
  EXPECT_TRUE(found.stable);
  EXPECT_TRUE(found.resolved);
  EXPECT_NEAR(found.gain_margin, pi, 1e-11);
  EXPECT_NEAR(found.gain_margin_frequency, pi / 2 / theta, 1e-10);
  EXPECT_EQ(found.gain_rise, found.gain_margin);
  EXPECT_EQ(found.gain_fall, 0);
  EXPECT_NEAR(found.phase_margin, pi / 2 - 0.5, 1e-12);
  EXPECT_NEAR(found.delay_margin, 2.14159265358979 * theta, 1e-12);
  EXPECT_NEAR(found.delay_margin_frequency, 0.5 / theta, 1e-11);
  EXPECT_NEAR(found.sensitivity, 1.59049023, 5e-9);
  EXPECT_NEAR(found.complementary_sensitivity, 1.00, 5e-3);
}

TEST(loop_margins, of_published_check_k_2) {
  // Computed with Octave control.
  const LoopMargins lags = margins_of([](Complex s) { return 10.0 / (s * (s + 1.0) * (s + 5.0)); });
  EXPECT_NEAR(lags.gain_margin, 3.00000000, 1e-7);
  EXPECT_NEAR(lags.phase_margin / degree, 25.38982326, 1e-6);
  EXPECT_NEAR(lags.gain_margin_frequency, 2.23606798, 1e-8);
  EXPECT_NEAR(lags.phase_margin_frequency, 1.22706388, 1e-8);
  EXPECT_TRUE(lags.stable);
}

TEST(loop_margins, of_published_check_k_4) {
  // SciPy brentq: ultimate gain and frequency of e^(−0.3s)/(s + 1).
  const auto loop = [](Complex s) { return dead_time(s, 0.3) / (s + 1.0); };
  const LoopMargins found = margins_of(loop);
  EXPECT_NEAR(found.gain_margin, 5.89016523762, 1e-10);
  EXPECT_NEAR(found.gain_margin_frequency, 5.80465731344, 1e-10);
  EXPECT_EQ(found.phase_margin, infinity);  // |L| is below one everywhere
  EXPECT_EQ(found.phase_margin_frequency, infinity);
  EXPECT_EQ(found.delay_margin, infinity);
  EXPECT_TRUE(found.stable);
  EXPECT_TRUE(margins_of([&](Complex s) { return 5.89 * loop(s); }).stable);
  EXPECT_EQ(margins_of([&](Complex s) { return 5.891 * loop(s); }).unstable_poles, 2);
}

// The loops and margins of the next tests stand in python-control, control/tests/margin_test.py (found), which itself
// grants them 1.5e-3; numbers of unstable closed-loop poles computed with numpy.roots.
constexpr double granted = 1.5e-3;

TEST(loop_margins, of_a_resonance_above_the_crossover) {
  const auto loop = [](Complex s) {
    return 8.75 * (4.0 * s * s + 0.4 * s + 1.0) / ((100.0 * s + 1.0) * (s * s + 0.22 * s + 1.0)) /
           (s * s / 100.0 + 0.08 * s / 10.0 + 1.0);
  };
  const LoopMargins found = margins_of(loop);
  EXPECT_NEAR(found.gain_margin, 2.2716, granted);
  EXPECT_NEAR(found.gain_margin_frequency, 10.0053, granted);
  EXPECT_NEAR(found.phase_margin / degree, 97.5941, granted);
  EXPECT_NEAR(1 / found.sensitivity, 0.5591, granted);
  EXPECT_NEAR(found.sensitivity_frequency, 9.9918, granted);
  ASSERT_EQ(found.gain_crossovers.size(), 3U);
  EXPECT_NEAR(found.gain_crossovers[0], 0.0850, granted);
  EXPECT_NEAR(found.gain_crossovers[1], 0.9373, granted);
  EXPECT_NEAR(found.gain_crossovers[2], 1.0919, granted);
  EXPECT_TRUE(found.stable);
  // The worst angle is at the slow crossover, the shortest delay at the fastest one.
  EXPECT_NEAR(found.delay_margin, 134.7359 * degree / 1.0919, 2e-3);
  EXPECT_LT(found.delay_margin, found.phase_margin / found.phase_margin_frequency);
  const auto delayed = [&](double time) { return margins_of([&](Complex s) { return dead_time(s, time) * loop(s); }); };
  EXPECT_TRUE(delayed(found.delay_margin * (1 - 1e-6)).stable);
  EXPECT_FALSE(delayed(found.delay_margin * (1 + 1e-6)).stable);
}

TEST(loop_margins, of_loops_that_never_cross) {
  const LoopMargins lag = margins_of([](Complex s) { return 1.0 / (s + 1.0); });
  const LoopMargins lead = margins_of([](Complex s) { return 3.0 * (10.0 + s) / (2.0 + s); });
  for (const LoopMargins& found : {lag, lead}) {
    EXPECT_EQ(found.gain_margin, infinity);
    EXPECT_EQ(found.phase_margin, infinity);
    EXPECT_TRUE(found.stable);
  }
  EXPECT_EQ(lag.delay_margin, infinity);
  EXPECT_EQ(lead.delay_margin, 0);  // above one at every frequency: any dead time turns it without end
  const LoopMargins weak = margins_of([](Complex s) { return 0.01 * (10.0 - s) / (2.0 + s) / (1.0 + s); });
  EXPECT_NEAR(weak.gain_margin, 300.0, 1e-8);
  EXPECT_NEAR(weak.gain_margin_frequency, 5.6569, granted);
  EXPECT_NEAR(1 / weak.sensitivity, 0.9917, granted);
}

TEST(loop_margins, of_a_conditionally_stable_loop) {
  const LoopMargins found = margins_of([](Complex s) { return squared(s + 0.1) / (s * s * s * (s + 1.0)); });
  EXPECT_NEAR(found.gain_margin, 0.0626, granted);
  EXPECT_NEAR(found.gain_margin_frequency, 0.1119, granted);
  // By hand: 2 atan 10ω = 90° + atan ω, so ω² = 1/80 and |L| = 16.
  EXPECT_NEAR(found.gain_margin, 1.0 / 16, 1e-13);
  EXPECT_NEAR(found.gain_margin_frequency, std::sqrt(1.0 / 80), 1e-12);
  EXPECT_EQ(found.gain_fall, found.gain_margin);
  EXPECT_EQ(found.gain_rise, infinity);
  EXPECT_NEAR(found.phase_margin / degree, 37.1748, granted);
  EXPECT_TRUE(found.stable);
}

TEST(loop_margins, of_a_loop_with_an_unstable_plant_and_five_crossings) {
  const auto loop = [](double gain) {
    return [gain](Complex s) {
      return gain * 0.002 * (s + 0.02) * (s + 0.05) * (s + 5.0) * (s + 10.0) /
             ((s - 0.0005) * (s + 0.0001) * (s + 0.01) * (s + 0.2) * (s + 1.0) * squared(s + 100.0));
    };
  };
  const FrequencyRange range{1e-7, 1e4, 100, {}};
  const LoopMargins weak = loop_margins(loop(1), range, 1);
  EXPECT_NEAR(weak.gain_margin, 0.0100, 1e-14);
  EXPECT_EQ(weak.gain_margin_frequency, 0);  // L(0) = −100
  EXPECT_NEAR(weak.phase_margin / degree, -14.5640, granted);
  EXPECT_NEAR(weak.gain_rise, 179.2931, 1e-3 * 179.2931);
  EXPECT_EQ(weak.unstable_poles, 2);
  EXPECT_FALSE(weak.stable);
  EXPECT_EQ(weak.delay_margin, 0);

  const LoopMargins middle = loop_margins(loop(1000), range, 1);
  EXPECT_NEAR(middle.gain_margin, 0.1793, granted);
  EXPECT_NEAR(middle.phase_margin / degree, 22.5215, granted);
  EXPECT_TRUE(middle.stable);
  EXPECT_NEAR(middle.gain_rise, 22.798, 1e-3 * 22.798);

  const LoopMargins strong = loop_margins(loop(5000), range, 1);
  EXPECT_NEAR(strong.gain_margin, 4.5596, granted);
  EXPECT_NEAR(strong.gain_margin_frequency, 0.4385, granted);
  EXPECT_NEAR(strong.phase_margin / degree, 21.2101, granted);
  EXPECT_TRUE(strong.stable);
}

TEST(loop_margins, counts_unstable_poles_as_roots_of_the_polynomial_do) {
  const auto poles = [](const Response& loop, int open) { return margins_of(loop, open).unstable_poles; };
  const auto eighth = [](double gain) {
    return [gain](Complex s) { return gain * s / squared(squared(s * s + 2.0 * s + 2.0)); };
  };
  EXPECT_EQ(poles(eighth(1), 0), 0);
  EXPECT_EQ(poles(eighth(100), 0), 2);
  const auto second = [](Complex s) { return squared(s - 0.1) + 1.0; };
  EXPECT_EQ(
      poles([](Complex s) { return (squared(s + 0.1) + 1.0) * (s - 0.1) / ((squared(s + 0.1) + 4.0) * (s + 1.0)); }, 0),
      2);
  EXPECT_EQ(poles([&](Complex s) { return second(s) / ((s + 0.1) * (squared(s - 0.2) + 4.0)); }, 2), 0);
  EXPECT_EQ(poles([&](Complex s) { return second(s) / ((s - 0.3) * (squared(s - 0.2) + 4.0)); }, 3), 1);
  // A negative number of poles betrays a wrong number given.
  EXPECT_LT(poles([&](Complex s) { return second(s) / ((s + 0.1) * (squared(s - 0.2) + 4.0)); }, 0), 0);
}

TEST(loop_margins, phase_margin_of_an_unstable_open_loop) {
  // C (sI − A)⁻¹ B for A = [1 4; 3 2], B = [1; −4], C = [1 0].
  const LoopMargins found = margins_of([](Complex s) { return (s - 18.0) / (s * s - 3.0 * s - 10.0); }, 1);
  EXPECT_NEAR(found.phase_margin / degree, 147.0743, granted);
  EXPECT_NEAR(found.phase_margin_frequency, 2.5483, granted);
  EXPECT_EQ(found.unstable_poles, 1);  // numpy.linalg.eigvals(A − B C): 6.385 and −4.385
}

// ---- closed forms with dead time
// --------------------------------------------------------------------------------------

TEST(loop_margins, counts_one_more_pair_each_turn_of_a_delayed_integrator) {
  // s + K e^(−s) = 0 gains a pair of roots as K passes π/2, 5π/2, 9π/2, … (they cross at s = iK).
  const auto poles = [](double gain) {
    return margins_of([gain](Complex s) { return gain * dead_time(s, 1) / s; }).unstable_poles;
  };
  EXPECT_EQ(poles(1.57), 0);
  EXPECT_EQ(poles(1.58), 2);
  EXPECT_EQ(poles(7.8), 2);
  EXPECT_EQ(poles(7.9), 4);
  EXPECT_EQ(poles(14.1), 4);
  EXPECT_EQ(poles(14.2), 6);
}

TEST(loop_margins, sees_that_an_integrator_with_the_wrong_sign_runs_away) {
  const LoopMargins found = margins_of([](Complex s) { return -1.0 / s; });
  EXPECT_EQ(found.unstable_poles, 1);
  EXPECT_EQ(found.gain_margin, infinity);  // no gain but zero lies on the edge
  const LoopMargins weak = margins_of([](Complex s) { return -0.5 / (s + 1.0); });
  EXPECT_TRUE(weak.stable);
  EXPECT_EQ(weak.gain_margin, 2);
  EXPECT_EQ(weak.gain_margin_frequency, 0);
  EXPECT_EQ(margins_of([](Complex s) { return -2.0 / (s + 1.0); }).unstable_poles, 1);
}

TEST(loop_margins, wraps_angles_beyond_a_whole_turn) {
  // Pure gain below one with a long delay: each half turn crosses, no gain crossover, and the worst Ms is 1/(1 − g).
  const LoopMargins found = loop_margins([](Complex s) { return 0.5 * dead_time(s, 10); }, {1e-3, 100, 100, {}});
  EXPECT_TRUE(found.stable);
  EXPECT_TRUE(found.resolved);
  EXPECT_NEAR(found.gain_margin, 2, 1e-12);
  EXPECT_NEAR(found.sensitivity, 2, 1e-10);
  EXPECT_NEAR(found.complementary_sensitivity, 1, 1e-10);
  EXPECT_EQ(found.phase_crossovers.size(), 159U);  // 10 ω = π, 3π, … up to 1000
  EXPECT_NEAR(found.phase_crossovers[7], 1.5 * pi, 1e-11);
  const LoopMargins strong =
      loop_margins([](Complex s) { return 2.0 * dead_time(s, 10) / (s + 1.0); }, {1e-3, 100, 100, {}});
  EXPECT_FALSE(strong.stable);
  const double late = -10 * std::sqrt(3.0) - pi / 3 + pi;
  EXPECT_NEAR(strong.phase_margin, std::remainder(late, 2 * pi), 1e-11);  // |L| = 1 at ω = √3
}

TEST(loop_margins, are_where_the_loop_loses_its_stability) {
  // Nyquist against margins, for a loop with lag, sample-and-hold, dead time and a swing: two ways to one answer.
  const auto loop = [](double gain, double more_delay) {
    return [=](Complex s) {
      return gain * (1.0 + 1.0 / (0.5 * s)) * sample_and_hold(s, 0.05) * dead_time(s, 0.08 + more_delay) /
             (0.2 * s + 1.0) / (s * s / 324.0 + 0.1 * s / 18.0 + 1.0);
    };
  };
  const LoopMargins found = margins_of(loop(0.6, 0));
  ASSERT_TRUE(found.stable);
  EXPECT_TRUE(margins_of(loop(0.6 * found.gain_rise * (1 - 1e-6), 0)).stable);
  EXPECT_EQ(margins_of(loop(0.6 * found.gain_rise * (1 + 1e-6), 0)).unstable_poles, 2);
  EXPECT_TRUE(margins_of(loop(0.6, found.delay_margin * (1 - 1e-6))).stable);
  EXPECT_EQ(margins_of(loop(0.6, found.delay_margin * (1 + 1e-6))).unstable_poles, 2);
}

TEST(loop_margins, peak_of_a_second_order_loop_has_a_closed_form) {
  // 1/(s (s + 2ζ)) closed is second order: Mt = 1/(2ζ √(1 − ζ²)) at √(1 − 2ζ²).
  const double zeta = 0.3;
  const LoopMargins found = margins_of([=](Complex s) { return 1.0 / (s * (s + 2 * zeta)); });
  EXPECT_NEAR(found.complementary_sensitivity, 1 / (2 * zeta * std::sqrt(1 - zeta * zeta)), 1e-10);
  EXPECT_NEAR(found.complementary_sensitivity_frequency, std::sqrt(1 - 2 * zeta * zeta), 1e-6);
}

// ---- robustness of the search
// -----------------------------------------------------------------------------------------

TEST(loop_margins, finds_two_crossings_within_one_step_of_a_coarse_grid) {
  // A peak that is just above one: 2ζ below one at its top.
  const double zeta = 0.02;
  for (const double height : {1.0001, 1.01}) {
    const auto loop = [=](Complex s) { return height * 2 * zeta * s / (s * s + 2 * zeta * s + 1.0); };
    const LoopMargins found = loop_margins(loop, {1e-2, 1e2, 10, {}});
    EXPECT_EQ(found.gain_crossovers.size(), 2U) << height;
  }
}

TEST(loop_margins, sees_a_narrow_mode_that_it_is_told_of) {
  // A resonance of damping 1e-5, ten times narrower than any step, that carries the loop round −1.
  const double mode = 33.3, zeta = 1e-5;
  const auto loop = [=](Complex s) {
    return 0.5 / s * dead_time(s, 0.05) + 0.001 / (squared(s / mode) + 2 * zeta * s / mode + 1.0);
  };
  const LoopMargins told = loop_margins(loop, {1e-3, 1e3, 50, {mode}});
  EXPECT_GE(told.gain_crossovers.size(), 3U);
  EXPECT_GT(told.complementary_sensitivity, 1.02);
}

TEST(loop_margins, follows_a_sharp_swing_to_its_peak) {
  // L comes to −0.5 at the mode, so that 1/(1 + L) is about 2; checked on a grid 10,000 times as dense.
  const auto loop = [](Complex s) { return 0.04 / s / (s * s / 400.0 + 0.004 * s / 20.0 + 1.0); };
  const LoopMargins found = loop_margins(loop, {1e-2, 1e3, 20, {}});
  double peak = 0;
  for (int i = -20000; i <= 20000; ++i) {
    peak = std::max(peak, 1 / std::abs(1.0 + loop(20 * std::exp(i * 1e-6) * j)));
  }
  EXPECT_NEAR(found.sensitivity, peak, 1e-6 * peak);
  EXPECT_GE(found.sensitivity, peak);
  EXPECT_NEAR(peak, 2, 0.01);
}

TEST(loop_margins, of_no_loop_at_all_are_infinite) {
  const LoopMargins found = margins_of([](Complex) { return Complex{}; });
  EXPECT_TRUE(found.stable);
  EXPECT_EQ(found.gain_margin, infinity);
  EXPECT_EQ(found.phase_margin, infinity);
  EXPECT_EQ(found.delay_margin, infinity);
  EXPECT_EQ(found.sensitivity, 1);
  EXPECT_EQ(found.complementary_sensitivity, 0);
}

TEST(loop_margins, calls_a_loop_on_the_edge_unstable) {
  const LoopMargins found = margins_of([](Complex s) { return 1.0 / (s * s); });
  EXPECT_FALSE(found.stable);
  EXPECT_EQ(found.delay_margin, 0);
  EXPECT_FALSE(std::isnan(found.phase_margin) || std::isnan(found.sensitivity) || std::isnan(found.gain_margin));
  EXPECT_NEAR(found.phase_margin, 0, 1e-12);
}

TEST(loop_margins, refuses_a_response_that_is_no_number) {
  EXPECT_THROW(margins_of([](Complex) { return Complex{infinity, 0}; }), std::invalid_argument);
  EXPECT_THROW(loop_margins([](Complex s) { return 1.0 / s; }, {1, 1, 10, {}}), std::invalid_argument);
}

TEST(loop_margins, says_when_it_could_not_follow) {
  const LoopMargins found = loop_margins([](Complex s) { return 0.5 * dead_time(s, 1e6); }, {1e-3, 1e4, 100, {}});
  EXPECT_FALSE(found.resolved);
}

}  // namespace
}  // namespace holdback::numerics
