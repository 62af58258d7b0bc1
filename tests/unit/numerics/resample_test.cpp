#include "holdback/numerics/resample.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace holdback::numerics {
namespace {

using std::numbers::pi;

std::vector<double> decimated(std::size_t factor, double frequency, std::size_t count) {
  Decimator decimator(factor);
  std::vector<double> out;
  double value = 0;
  for (std::size_t i = 0; i < count; ++i)
    if (decimator.put(std::sin(2 * pi * frequency * static_cast<double>(i)), value)) out.push_back(value);
  return out;
}

double highest(const std::vector<double>& values) {
  double most = 0;
  for (const double value : values) most = std::max(most, std::abs(value));
  return most;
}

TEST(Decimator, passes_what_is_slow_and_stops_what_would_come_back_as_slow) {
  EXPECT_NEAR(highest(decimated(8, 0.003, 8000)), 1, 2e-3);
  EXPECT_LT(highest(decimated(8, 0.122, 8000)), 1e-3);  // 1/8 − 0.003 would come back at 0.003
  EXPECT_LT(highest(decimated(8, 0.25, 8000)), 1e-3);
}

TEST(Decimator, gives_the_sample_of_its_delay_before) {
  Decimator decimator(4);
  double value = 0;
  for (std::size_t i = 0; i < 2000; ++i)
    if (decimator.put(std::sin(0.01 * static_cast<double>(i)), value)) {
      EXPECT_NEAR(value, std::sin(0.01 * (static_cast<double>(i) - decimator.delay())), 1e-3);
    }
}

TEST(Decimator, by_one_passes_everything) { EXPECT_EQ(decimated(1, 0.1, 50).size(), 50U); }

TEST(EvenSteps, keeps_a_constant_and_takes_a_sine_at_equal_angles) {
  std::vector<double> out;
  EvenSteps steps(2 * pi / 16, [&](double value) { out.push_back(value); });
  for (int i = 0; i < 20000; ++i) {
    const double t = i / 100.0, angle = 2 * pi * (t + 0.002 * t * t);
    steps.put(2 + std::sin(3 * angle), angle);
  }
  ASSERT_GT(out.size(), 3000U);
  // Order 3 at 16 points a turn: whatever the start, x_(j+16) = x_j and the mean over a turn is 2.
  for (std::size_t j = 0; j + 16 < out.size(); j += 97) {
    EXPECT_NEAR(out[j + 16], out[j], 2e-3);
    double mean = 0;
    for (std::size_t k = j; k < j + 16; ++k) mean += out[k] / 16;
    EXPECT_NEAR(mean, 2, 1e-3);
  }
}

TEST(EvenSteps, gives_nothing_while_the_angle_stands) {
  int count = 0;
  EvenSteps steps(0.1, [&](double /*unused*/) { ++count; });
  for (int i = 0; i < 1000; ++i) steps.put(1, 5);
  EXPECT_EQ(count, 0);
}

// A not-a-knot spline reproduces a cubic (as scipy.interpolate.CubicSpline does).
TEST(cubic_spline, is_exact_for_a_cubic) {
  const auto cubic = [](double x) { return 1 - 2 * x + 0.5 * x * x - 0.3 * x * x * x; };
  std::vector<double> x{0, 0.4, 1.1, 1.5, 2.7, 3}, y;
  for (const double at : x) y.push_back(cubic(at));
  const std::vector<double> at{0, 0.2, 0.4, 1.3, 2, 2.9, 3};
  const auto values = cubic_spline(x, y, at);
  for (std::size_t i = 0; i < at.size(); ++i) EXPECT_NEAR(values[i], cubic(at[i]), 1e-13);
}

TEST(cubic_spline, refuses_places_that_do_not_rise) {
  EXPECT_THROW(cubic_spline({0, 1, 1, 2}, {0, 1, 1, 2}, {0.5}), std::invalid_argument);
  EXPECT_THROW(cubic_spline({0, 1, 2}, {0, 1, 2}, {0.5}), std::invalid_argument);
}

}  // namespace
}  // namespace holdback::numerics
