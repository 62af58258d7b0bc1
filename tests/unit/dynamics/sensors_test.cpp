#include "holdback/dynamics/sensors.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace holdback::dynamics {
namespace {

// Closed form 1 − e^(−t/τ) of a step.
TEST(Lag, follows_a_step_exactly) {
  Lag lag(0.3, 0.01, 2);
  double value = 2;
  for (int k = 0; k < 50; ++k) value = lag.after(5);
  EXPECT_NEAR(value, 2 + 3 * -std::expm1(-0.5 / 0.3), 1e-12);
  lag.jump_to(7);
  EXPECT_EQ(lag.value(), 7);
}

TEST(Lag, without_time_passes_on) {
  Lag lag(0, 0.01, 2);
  EXPECT_EQ(lag.after(5), 5);
}

TEST(DelayLine, gives_back_what_was_set_so_many_samples_ago) {
  DelayLine line(3, -1);
  const double want[] = {-1, -1, -1, 0, 1, 2, 3};
  for (int k = 0; k < 7; ++k) EXPECT_EQ(line.after(k), want[k]);
  DelayLine none(0, -1);
  EXPECT_EQ(none.after(4), 4);
}

// The play operator by hand, width 2: it follows one behind, and stays while the input turns back by up to 2.
TEST(Play, follows_half_its_width_behind) {
  Play play(2, 0);
  const double in[] = {0.5, 1, 3, 5, 4, 3, 2.9, 0, 1, 2, 3};
  const double out[] = {0, 0, 2, 4, 4, 4, 3.9, 1, 1, 1, 2};
  for (int k = 0; k < 11; ++k) EXPECT_NEAR(play.after(in[k]), out[k], 1e-15) << k;
  Play none(0, 3);
  EXPECT_EQ(none.after(-2), -2);
}

// What is no number must not be hidden: the run has to end there.
TEST(Play, does_not_swallow_what_is_no_number) {
  Play play(2, 0);
  EXPECT_TRUE(std::isnan(play.after(std::numeric_limits<double>::quiet_NaN())));
}

// The sum of four even numbers (Irwin–Hall): mean 0, deviation as asked, kurtosis 3 − 6/(5·4) = 2.7, at most 2√3
// deviations. The bounds are four standard errors of 200 000 draws.
TEST(Noise, has_the_moments_of_the_sum_of_four_even_numbers) {
  Noise noise(7);
  const int count = 200000;
  double sum = 0, squares = 0, fourths = 0, most = 0, neighbours = 0, before = 0;
  for (int k = 0; k < count; ++k) {
    const double x = noise.next(2) / 2;
    sum += x;
    squares += x * x;
    fourths += x * x * x * x;
    most = std::max(most, std::abs(x));
    neighbours += x * before;
    before = x;
  }
  const double root = std::sqrt(count);
  EXPECT_NEAR(sum / count, 0, 4 / root);
  EXPECT_NEAR(squares / count, 1, 4 * std::sqrt(1.7) / root);
  EXPECT_NEAR(fourths / squares, 2.7, 0.04);
  EXPECT_NEAR(neighbours / count, 0, 4 / root);
  EXPECT_LE(most, 2 * std::sqrt(3.0));
  EXPECT_GT(most, 3);
}

// SplitMix64 from the seed 1234567 gives 6457827717110365317, 3203168211198807973, 9817491932198370423 and
// 4593380528125082431 first (published test values of the generator, from memory; a transcription in Python agrees).
TEST(Noise, counts_as_the_published_generator) {
  double sum = 0;
  for (const double whole :
       {6457827717110365317.0, 3203168211198807973.0, 9817491932198370423.0, 4593380528125082431.0})
    sum += whole * 0x1p-64 - 0.5;
  EXPECT_NEAR(Noise(1234567).next(1), std::sqrt(3.0) * sum, 1e-14);
}

TEST(Noise, is_the_same_for_the_same_seed) {
  Noise a(3), b(3), c(4);
  EXPECT_EQ(a.next(1), b.next(1));
  EXPECT_NE(a.next(1), c.next(1));
  EXPECT_EQ(a.next(0), 0);
}

TEST(rounded, goes_to_the_nearest_step) {
  EXPECT_NEAR(rounded(1.26, 0.5), 1.5, 1e-15);
  EXPECT_NEAR(rounded(-1.26, 0.5), -1.5, 1e-15);
  EXPECT_EQ(rounded(1.26, 0), 1.26);
}

}  // namespace
}  // namespace holdback::dynamics
