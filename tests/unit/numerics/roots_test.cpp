#include "holdback/numerics/roots.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>

namespace holdback::numerics {
namespace {

TEST(find_root, meets_its_tolerance) {
  const auto f = [](double x) { return std::cos(x) - x; };
  for (const double tolerance : {1e-3, 1e-8, 1e-13}) {
    EXPECT_NEAR(find_root(f, 0, 1, tolerance), 0.7390851332151607, tolerance);
  }
}

TEST(find_root, takes_the_ends_in_any_order_and_a_root_at_an_end) {
  const auto f = [](double x) { return x - 2; };
  EXPECT_NEAR(find_root(f, 5, 0, 1e-12), 2, 1e-12);
  EXPECT_EQ(find_root(f, 2, 5, 1e-12), 2);
  EXPECT_EQ(find_root(f, 0, 2, 1e-12), 2);
}

TEST(find_root, copes_with_a_flat_and_a_steep_function) {
  EXPECT_NEAR(find_root([](double x) { return std::pow(x - 0.3, 9); }, 0, 1, 1e-9), 0.3, 1e-2);
  EXPECT_NEAR(find_root([](double x) { return std::atan(1e9 * (x - 0.3)); }, 0, 1, 1e-10), 0.3, 1e-10);
}

TEST(find_root, refuses_ends_that_bracket_nothing) {
  EXPECT_THROW(find_root([](double x) { return x * x + 1; }, -1, 1, 1e-9), std::invalid_argument);
  EXPECT_THROW(find_root([](double) { return std::nan(""); }, -1, 1, 1e-9), std::invalid_argument);
}

TEST(find_boundary, returns_a_value_that_passes_next_to_one_that_fails) {
  const auto below_pi = [](double x) { return x < 3.14159; };
  const double last = find_boundary(below_pi, 1, 10, 1e-6);
  EXPECT_TRUE(below_pi(last));
  EXPECT_FALSE(below_pi(last * (1 + 2e-6)));
}

TEST(find_boundary, works_downwards_too) {
  const auto above = [](double x) { return x >= 0.25; };
  const double last = find_boundary(above, 8, 0, 1e-9);
  EXPECT_TRUE(above(last));
  EXPECT_NEAR(last, 0.25, 1e-9);
}

TEST(find_boundary, ends_even_where_everything_passes_or_fails) {
  EXPECT_NEAR(find_boundary([](double) { return true; }, 1, 2, 1e-9), 2, 1e-8);
  EXPECT_EQ(find_boundary([](double) { return false; }, 1, 2, 1e-9), 1);
  EXPECT_NO_THROW(find_boundary([](double x) { return x > 0; }, 1, 0, 1e-9));
}

TEST(find_boundary, asks_no_more_often_than_the_tolerance_needs) {
  int asked = 0;
  find_boundary(
      [&](double x) {
        ++asked;
        return x < 1.3;
      },
      1, 2, 1e-3);
  EXPECT_LE(asked, 10);
}

}  // namespace
}  // namespace holdback::numerics
