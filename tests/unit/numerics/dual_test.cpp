#include "holdback/numerics/dual.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace holdback::numerics {
namespace {

/// The slope of a function at a place.
template <class F>
double slope_at(const F& f, double x) {
  return f(Dual(x, 1)).slope;
}

// Derivatives by the rules of calculus, by hand.
TEST(Dual, differentiates_sums_products_and_quotients) {
  EXPECT_NEAR(slope_at([](Dual x) { return 3.0 * x + x * 2.0 - 5.0 + (1.0 + x) - (4.0 - x); }, 2), 7, 1e-15);
  EXPECT_NEAR(slope_at([](Dual x) { return x * x * x; }, 2), 12, 1e-15);
  EXPECT_NEAR(slope_at([](Dual x) { return 1.0 / x; }, 2), -0.25, 1e-15);
  EXPECT_NEAR(slope_at([](Dual x) { return x / 4.0; }, 2), 0.25, 1e-15);
  EXPECT_NEAR(slope_at([](Dual x) { return (x * x + 1.0) / (x - 3.0); }, 2), (4 * -1 - 5) / 1.0, 1e-14);
  EXPECT_NEAR(slope_at([](Dual x) { return -x; }, 2), -1, 1e-15);
  EXPECT_NEAR(slope_at([](Dual x) { return x - x * x; }, 2), -3, 1e-15);
}

TEST(Dual, differentiates_in_place) {
  EXPECT_NEAR(slope_at([](Dual x) { return x += x * x; }, 3), 7, 1e-15);
  EXPECT_NEAR(slope_at([](Dual x) { return x -= x * x; }, 3), -5, 1e-15);
}

TEST(Dual, differentiates_roots_and_angles) {
  EXPECT_NEAR(slope_at([](Dual x) { return sqrt(x); }, 9), 1.0 / 6, 1e-15);
  EXPECT_EQ(slope_at([](Dual x) { return sqrt(x); }, 0), 0);  // no infinite slope
  EXPECT_NEAR(slope_at([](Dual x) { return sin(2.0 * x); }, 0.4), 2 * std::cos(0.8), 1e-15);
  EXPECT_NEAR(slope_at([](Dual x) { return cos(x * x); }, 0.4), -0.8 * std::sin(0.16), 1e-15);
}

TEST(Dual, compares_by_value) {
  EXPECT_TRUE(Dual(1, 5) < Dual(2, -5));
  EXPECT_TRUE(Dual(2, 0) > Dual(1, 9));
  EXPECT_TRUE(Dual(2, 0) > 1.0);
  EXPECT_TRUE(Dual(2, 0) < 3.0);
  EXPECT_FALSE(Dual(2, 0) < 2.0);
}

// sin²x + cos²x is 1 everywhere, and √(x²) is x: slopes 0 and 1.
TEST(Dual, keeps_identities) {
  for (const double x : {0.3, 1.7, 12.0}) {
    EXPECT_NEAR(slope_at([](Dual y) { return sin(y) * sin(y) + cos(y) * cos(y); }, x), 0, 1e-15);
    EXPECT_NEAR(slope_at([](Dual y) { return sqrt(y * y); }, x), 1, 1e-15);
  }
}

}  // namespace
}  // namespace holdback::numerics
