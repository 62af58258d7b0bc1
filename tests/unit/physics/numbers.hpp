// What the tests of physics/ share: relative closeness and a derivative by central difference.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace holdback::testing {

inline constexpr double infinity = std::numeric_limits<double>::infinity();

/// `actual` within a relative `tolerance` of `expected`.
inline ::testing::AssertionResult near(double actual, double expected, double tolerance = 1e-12) {
  if (std::abs(actual - expected) <= tolerance * std::abs(expected)) return ::testing::AssertionSuccess();
  return ::testing::AssertionFailure() << actual << " is not within " << tolerance << " of " << expected;
}

/// f'(x) by central difference; good to about 1e-9 for the smooth functions of these tests.
template <class F>
double derivative(F f, double x) {
  const double h = 1e-5 * std::max(1.0, std::abs(x));
  return (f(x + h) - f(x - h)) / (2 * h);
}

}  // namespace holdback::testing
