#include "holdback/numerics/monotone.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace holdback::numerics {
namespace {

struct Knot {
  double x, y;
};
using Knots = std::vector<Knot>;

double at(const Knots& knots, double x) { return interpolate_monotone(knots, &Knot::x, &Knot::y, x); }

TEST(interpolate_monotone, gives_its_points_back) {
  const Knots knots{{0, 1}, {1, 3}, {4, 3.5}, {6, 9}};
  for (const Knot& knot : knots) EXPECT_EQ(at(knots, knot.x), knot.y);
}

TEST(interpolate_monotone, is_exact_on_a_straight_line) {
  const Knots knots{{0, 1}, {1, 3}, {4, 9}, {6, 13}};
  for (double x = 0; x <= 6; x += 0.1) EXPECT_NEAR(at(knots, x), 1 + 2 * x, 1e-13);
}

TEST(interpolate_monotone, neither_overshoots_nor_turns_between_rising_points) {
  const Knots knots{{0, 0}, {1, 0}, {2, 0.1}, {2.5, 5}, {6, 5}, {7, 30}};
  double before = at(knots, 0);
  for (double x = 0; x <= 7; x += 0.001) {
    const double y = at(knots, x);
    ASSERT_GE(y, before - 1e-12) << x;
    before = y;
  }
}

TEST(interpolate_monotone, has_its_turn_in_a_point_where_the_points_turn) {
  const Knots knots{{0, 0}, {1, 2}, {2, 1}, {3, 3}};
  for (double x = 0; x <= 3; x += 0.001) {
    ASSERT_LE(at(knots, x), x < 2 ? 2 : 3) << x;
    ASSERT_GE(at(knots, x), x < 1 ? 0 : 1) << x;
  }
}

TEST(interpolate_monotone, is_smooth_across_its_points) {
  const Knots knots{{0, 1}, {1, 3}, {4, 3.5}, {6, 9}};
  const double h = 1e-6;
  for (const double x : {1.0, 4.0}) {
    EXPECT_NEAR((at(knots, x + h) - at(knots, x)) / h, (at(knots, x) - at(knots, x - h)) / h, 1e-4);
  }
}

TEST(interpolate_monotone, converges_with_the_square_of_the_spacing_or_better) {
  const auto error = [](int intervals) {
    Knots knots;
    for (int i = 0; i <= intervals; ++i) {
      const double x = static_cast<double>(i) / intervals;
      knots.push_back({x, std::exp(x)});
    }
    double worst = 0;
    for (double x = 0; x <= 1; x += 0.0007) worst = std::max(worst, std::abs(at(knots, x) - std::exp(x)));
    return worst;
  };
  EXPECT_LT(error(20), error(10) / 3.9);
  EXPECT_LT(error(40), error(20) / 3.9);
}

TEST(interpolate_monotone, stays_outside_its_points) {
  const Knots knots{{1, 3}, {4, 9}};
  EXPECT_EQ(at(knots, -5), 3);
  EXPECT_EQ(at(knots, 50), 9);
  EXPECT_EQ(at({{2, 7}}, 3), 7);
  EXPECT_EQ(at({}, 3), 0);
}

TEST(monotone_inner_slope, is_the_harmonic_mean_for_even_spacing) {
  EXPECT_NEAR(monotone_inner_slope(1, 2, 1, 6), 3, 1e-14);
  EXPECT_EQ(monotone_inner_slope(1, 2, 1, -6), 0);
  EXPECT_EQ(monotone_inner_slope(1, 0, 1, 6), 0);
}

TEST(monotone_end_slope, is_exact_on_a_parabola_and_never_points_the_wrong_way) {
  // y = x² at 1, 2, 4: secants 3 and 6, slope 2 at 1.
  EXPECT_NEAR(monotone_end_slope(1, 3, 2, 6), 2, 1e-14);
  EXPECT_EQ(monotone_end_slope(1, 1, 1, 10), 0);
  EXPECT_EQ(monotone_end_slope(1, 1, 0.1, -10), 3);
}

TEST(hermite, is_exact_on_a_cubic) {
  const auto cubic = [](double x) { return 1 - x + 2 * x * x - 0.5 * x * x * x; };
  const auto slope = [](double x) { return -1 + 4 * x - 1.5 * x * x; };
  for (double s = 0; s <= 1; s += 0.125) {
    EXPECT_NEAR(hermite(s, 2, cubic(1), slope(1), cubic(3), slope(3)), cubic(1 + 2 * s), 1e-13);
  }
}

}  // namespace
}  // namespace holdback::numerics
