#include "holdback/numerics/wide.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace holdback::numerics {
namespace {

std::vector<double> uneven(std::size_t count) {
  std::vector<double> values;
  for (std::size_t i = 0; i < count; ++i) values.push_back(static_cast<double>((i * 7919) % 1009) - 500);
  return values;
}

TEST(highest_of, finds_what_the_standard_library_finds) {
  for (const std::size_t count : {8U, 16U, 64U, 1024U}) {
    const auto values = uneven(count);
    EXPECT_EQ(highest_of(values.data(), count), *std::max_element(values.begin(), values.end()));
    EXPECT_EQ(lowest_of(values.data(), count), *std::min_element(values.begin(), values.end()));
  }
}

TEST(highest_of, finds_it_in_any_lane) {
  for (std::size_t at = 0; at < 64; ++at) {
    std::vector<double> values(64, 1.0);
    values[at] = 2;
    EXPECT_EQ(highest_of(values.data(), 64), 2) << at;
    values[at] = -2;
    EXPECT_EQ(lowest_of(values.data(), 64), -2) << at;
  }
}

TEST(power_of_two, is_that_of_the_standard_library_and_held_at_its_ends) {
  for (double x = 0; x <= 60; x += 0.37) EXPECT_NEAR(power_of_two(x) / std::exp2(x), 1, 1e-8) << x;
  EXPECT_EQ(power_of_two(0), 1);
  EXPECT_EQ(power_of_two(-5), 1);
  EXPECT_EQ(power_of_two(1e9), power_of_two(60));
}

TEST(product_sum, adds_every_pair_once) {
  std::vector<double> a;
  std::vector<double> b;
  double sum = 0;
  for (int i = 0; i < 64; ++i) {
    a.push_back(i);
    b.push_back(3 * i + 1);
    sum += i * (3.0 * i + 1);
  }
  EXPECT_EQ(product_sum(a.data(), b.data(), 64), sum);
}

}  // namespace
}  // namespace holdback::numerics
