// Curves; certified values of NIST stand in tests/published/cases/fit.txt.
#include "holdback/numerics/fit_curve.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <stdexcept>

namespace holdback::numerics {
namespace {

double decay(double x, const std::vector<double>& b) { return b[0] * std::exp(-x / b[1]); }

TEST(fit_curve, finds_constants_from_afar) {
  const std::vector<double> x{0, 1, 2, 3, 5, 8};
  std::vector<double> y;
  for (const double each : x) y.push_back(12 * std::exp(-each / 2.5));
  const CurveFit fit = fit_curve(decay, x, y, {5, 6});
  EXPECT_TRUE(fit.settled);
  EXPECT_NEAR(fit.constants[0], 12, 1e-8);
  EXPECT_NEAR(fit.constants[1], 2.5, 1e-8);
  EXPECT_EQ(fit.freedom, 4);
}

TEST(fit_curve, ends_on_a_model_that_is_not_finite) {
  const auto broken = [](double, const std::vector<double>&) { return std::numeric_limits<double>::quiet_NaN(); };
  const CurveFit fit = fit_curve(broken, {1, 2}, {1, 2}, {1});
  EXPECT_FALSE(fit.settled);
  EXPECT_EQ(fit.constants[0], 1);
}

TEST(fit_curve, refuses_fewer_points_than_constants) {
  EXPECT_THROW(fit_curve(decay, {1}, {1}, {1, 2}), std::invalid_argument);
  EXPECT_THROW(fit_curve(decay, {1, 2}, {1}, {1}), std::invalid_argument);
}

}  // namespace
}  // namespace holdback::numerics
