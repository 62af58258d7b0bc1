// Lines and linear models; values against NIST, SciPy and statsmodels stand in tests/published/cases/fit.txt.
#include "holdback/numerics/robust.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>

namespace holdback::numerics {
namespace {

const std::vector<double> x{1, 2, 3, 4, 5, 6};

std::vector<double> line_through(double slope, double intercept) {
  std::vector<double> y;
  for (const double each : x) y.push_back(intercept + slope * each);
  return y;
}

TEST(least_squares, finds_an_exact_line) {
  const LinearFit fit = least_squares(line_design(x), line_through(-2.5, 4));
  ASSERT_TRUE(fit.full_rank);
  EXPECT_NEAR(fit.coefficients[0], 4, 1e-12);
  EXPECT_NEAR(fit.coefficients[1], -2.5, 1e-12);
  EXPECT_NEAR(fit.deviation, 0, 1e-12);
  EXPECT_NEAR(fit.determination, 1, 1e-12);
  EXPECT_EQ(fit.freedom, 4);
}

TEST(least_squares, tells_columns_that_cannot_be_told_apart) {
  EXPECT_FALSE(least_squares({2, {1, 2, 2, 4, 3, 6}}, {1, 2, 3}).full_rank);
  EXPECT_FALSE(least_squares({2, {1, 0, 2, 0, 3, 0}}, {1, 2, 3}).full_rank);
  EXPECT_FALSE(least_squares({2, {1, 1}}, {1}).full_rank);
}

TEST(least_squares, has_no_errors_without_a_degree_of_freedom) {
  const LinearFit fit = least_squares(line_design({1, 3}), {2, 8});
  ASSERT_TRUE(fit.full_rank);
  EXPECT_NEAR(fit.coefficients[1], 3, 1e-14);
  EXPECT_TRUE(fit.standard_errors.empty());
}

// Units of the columns must not count: the rank is judged on columns of equal length.
TEST(least_squares, takes_columns_of_any_size) {
  const LinearFit fit = least_squares({2, {1e9, 1e-9, 2e9, 1e-9, 3e9, 1e-9, 4e9, 1e-9}}, {1, 2, 3, 4.5});
  ASSERT_TRUE(fit.full_rank);
  EXPECT_NEAR(fit.coefficients[0] * 1e9, 1.15, 1e-12);    // by hand: slope of 1, 2, 3, 4.5 over 1 … 4
  EXPECT_NEAR(fit.coefficients[1] * 1e-9, -0.25, 1e-12);  // and its intercept
}

// A weight of two is a point that stands twice.
TEST(least_squares, heeds_weights) {
  const LinearFit twice = least_squares(line_design({0, 1, 2, 2}), {0, 1, 4, 4});
  const LinearFit weighed = least_squares(line_design({0, 1, 2}), {0, 1, 4}, {1, 1, 2});
  EXPECT_NEAR(twice.coefficients[0], weighed.coefficients[0], 1e-14);
  EXPECT_NEAR(twice.coefficients[1], weighed.coefficients[1], 1e-14);
}

TEST(least_squares, refuses_sizes_that_do_not_fit) {
  EXPECT_THROW(least_squares(line_design({1, 2}), {1}), std::invalid_argument);
  EXPECT_THROW(least_squares(line_design({1, 2}), {1, 2}, {1}), std::invalid_argument);
}

TEST(huber, is_not_bent_by_one_point_however_far) {
  auto y = line_through(3, 1);
  for (std::size_t i = 0; i < y.size(); ++i) y[i] += i % 2 == 0 ? 0.01 : -0.01;
  const double before = huber(line_design(x), y).coefficients[1];
  y[2] += 1e6;
  const LinearFit fit = huber(line_design(x), y);
  EXPECT_NEAR(fit.coefficients[1], before, 0.02);
  EXPECT_LT(fit.weights[2], 1e-6);
}

TEST(huber, equals_least_squares_when_no_residual_is_large) {
  const std::vector<double> y{1.1, 1.9, 3.1, 3.9, 5.1, 5.9};  // residuals of one size, none beyond 1.345 scales
  const LinearFit plain = least_squares(line_design(x), y);
  const LinearFit robust = huber(line_design(x), y, 1.345, 1);
  EXPECT_NEAR(plain.coefficients[1], robust.coefficients[1], 1e-14);
}

TEST(median, takes_the_middle) {
  EXPECT_EQ(median({3, 1, 2}), 2);
  EXPECT_EQ(median({4, 1, 2, 3}), 2.5);
  EXPECT_THROW(median({}), std::invalid_argument);
}

TEST(median_deviation, is_that_of_a_normal_variable) {
  // Quartiles of the standard normal law: half of |v| lie within 0.674489750196.
  EXPECT_NEAR(median_deviation({-0.6744897501960817, 0.1, 3, 0.6744897501960817, -0.2}), 1, 1e-12);
}

TEST(theil_sen, needs_two_different_x) {
  EXPECT_THROW(theil_sen({1, 1}, {1, 2}), std::invalid_argument);
  EXPECT_THROW(repeated_medians({1, 1}, {1, 2}), std::invalid_argument);
  EXPECT_NEAR(theil_sen({1, 1, 2}, {0, 2, 3}).slope, 2, 1e-14);  // slopes 3 and 1
}

}  // namespace
}  // namespace holdback::numerics
