#include "holdback/numerics/sobol.hpp"

#include <gtest/gtest.h>

#include <boost/random/sobol.hpp>
#include <cmath>
#include <set>

namespace holdback::numerics {
namespace {

std::uint32_t bits_of(double coordinate) { return static_cast<std::uint32_t>(coordinate * 4294967296.0); }

// Reference library: Boost.Random's sobol engine, whose direction numbers are those of Joe and Kuo too. It leaves out
// the first point; ours are moved by a shift, which an exclusive or takes off again.
TEST(sobol_points, are_those_of_a_reference_library_but_for_the_shift) {
  constexpr std::size_t count = 512;
  const auto points = sobol_points(count, most_sobol_dimensions, 7);
  boost::random::sobol reference(most_sobol_dimensions);
  for (std::size_t i = 1; i < count; ++i)
    for (std::size_t d = 0; d < most_sobol_dimensions; ++d) {
      const std::uint32_t shift = bits_of(points[d]);
      ASSERT_EQ(bits_of(points[i * most_sobol_dimensions + d]) ^ shift, static_cast<std::uint32_t>(reference() >> 32U))
          << "point " << i << " coordinate " << d;
    }
}

TEST(sobol_points, put_one_point_in_each_part_of_a_coordinate) {
  constexpr std::size_t count = 256;
  const auto points = sobol_points(count, 8, 1);
  for (std::size_t d = 0; d < 8; ++d) {
    std::set<int> parts;
    for (std::size_t i = 0; i < count; ++i) parts.insert(static_cast<int>(points[i * 8 + d] * count));
    EXPECT_EQ(parts.size(), count) << d;
  }
}

TEST(sobol_points, never_touch_the_ends) {
  for (const double x : sobol_points(4096, 4, 3)) {
    ASSERT_GT(x, 0);
    ASSERT_LT(x, 1);
  }
}

TEST(sobol_points, are_the_same_for_a_seed_and_others_for_another) {
  EXPECT_EQ(sobol_points(64, 3, 5), sobol_points(64, 3, 5));
  EXPECT_NE(sobol_points(64, 3, 5), sobol_points(64, 3, 6));
}

// ∫ Π 3 x_i² = 1 over the cube: quasi-random points come to it much faster than 1/√n.
TEST(sobol_points, integrate_better_than_chance) {
  const auto error = [](std::size_t count) {
    const auto points = sobol_points(count, 5, 11);
    double sum = 0;
    for (std::size_t i = 0; i < count; ++i) {
      double product = 1;
      for (std::size_t d = 0; d < 5; ++d) product *= 3 * points[i * 5 + d] * points[i * 5 + d];
      sum += product;
    }
    return std::abs(sum / static_cast<double>(count) - 1);
  };
  EXPECT_LT(error(1 << 14), 2e-3);  // chance would give about 0.016
}

TEST(sobol_points, refuse_what_the_table_does_not_reach) {
  EXPECT_THROW(sobol_points(8, 0, 1), std::invalid_argument);
  EXPECT_THROW(sobol_points(8, most_sobol_dimensions + 1, 1), std::invalid_argument);
}

}  // namespace
}  // namespace holdback::numerics
