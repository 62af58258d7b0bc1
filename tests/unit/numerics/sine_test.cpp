#include "holdback/numerics/sine.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace holdback::numerics {
namespace {

// Against the C library in long double, which is good to more than 18 digits.
void expect_right(double x) {
  const SineCosine got = sine_and_cosine(x);
  const auto sine = static_cast<double>(std::sin(static_cast<long double>(x)));
  const auto cosine = static_cast<double>(std::cos(static_cast<long double>(x)));
  EXPECT_NEAR(got.sine, sine, 2.3e-16) << x;
  EXPECT_NEAR(got.cosine, cosine, 2.3e-16) << x;
}

TEST(sine_and_cosine, agrees_with_long_double_over_many_turns) {
  for (int k = -20000; k <= 20000; ++k) expect_right(0.00314159 * k);
  for (double x = 1; x < 1e6; x *= 1.0007) {
    expect_right(x);
    expect_right(-x);
  }
}

// At multiples of a quarter turn one of both is nearly zero, and all its digits come from the reduction.
TEST(sine_and_cosine, is_right_next_to_quarter_turns) {
  for (int k = -1000; k <= 1000; ++k)
    for (const double off : {-1e-9, 0.0, 1e-9}) expect_right(1.5707963267948966 * k + off);
}

TEST(sine_and_cosine, of_zero_is_exact) {
  EXPECT_EQ(sine_and_cosine(0).sine, 0);
  EXPECT_EQ(sine_and_cosine(0).cosine, 1);
}

TEST(sine_and_cosine, leaves_large_angles_to_the_library) {
  EXPECT_EQ(sine_and_cosine(1e7).sine, std::sin(1e7));
  EXPECT_EQ(sine_and_cosine(-3e15).cosine, std::cos(-3e15));
  EXPECT_TRUE(std::isnan(sine_and_cosine(std::numeric_limits<double>::infinity()).sine));
}

}  // namespace
}  // namespace holdback::numerics
