#include "holdback/numerics/sensitivity.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace holdback::numerics {
namespace {

template <class F>
std::vector<Sensitivity> indices(std::size_t base, int inputs, F output) {
  const auto points = sensitivity_points(base, inputs, 4);
  std::vector<double> outputs;
  for (std::size_t at = 0; at < points.size(); at += static_cast<std::size_t>(inputs))
    outputs.push_back(output(&points[at]));
  return sensitivities(outputs, base, inputs);
}

// The test function of Ishigami and Homma (1990), sin x₁ + 7 sin² x₂ + 0.1 x₃⁴ sin x₁ over (−π, π)³. Closed form:
// V = 7²/8 + 0.1 π⁴/5 + 0.1² π⁸/18 + ½; first 0.3139, 0.4424, 0; total 0.5576, 0.4424, 0.2437. From memory; the
// arithmetic was redone by hand.
double ishigami(const double* u) {
  const auto x = [&](int i) { return (2 * u[i] - 1) * std::numbers::pi; };
  return std::sin(x(0)) + 7 * std::pow(std::sin(x(1)), 2) + 0.1 * std::pow(x(2), 4) * std::sin(x(0));
}

TEST(sensitivities, come_to_the_closed_form_of_ishigami_and_homma) {
  const auto found = indices(1 << 13, 3, ishigami);
  const double first[] = {0.3139, 0.4424, 0};
  const double total[] = {0.5576, 0.4424, 0.2437};
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_NEAR(found[i].first, first[i], 0.01) << i;
    EXPECT_NEAR(found[i].total, total[i], 0.01) << i;
  }
}

TEST(sensitivities, come_closer_the_more_points_there_are) {
  const auto error = [](std::size_t base) { return std::abs(indices(base, 3, ishigami)[1].total - 0.4424); };
  EXPECT_LT(error(1 << 13), 0.3 * error(1 << 6));
}

// A sum of independent parts has no interactions: shares 1, 4, 9, 16 of 30, by hand.
TEST(sensitivities, of_a_sum_are_the_shares_of_its_variance) {
  const auto found = indices(1024, 4, [](const double* u) { return u[0] + 2 * u[1] + 3 * u[2] + 4 * u[3]; });
  for (std::size_t i = 0; i < 4; ++i) {
    const double share = std::pow(static_cast<double>(i + 1), 2) / 30;
    EXPECT_NEAR(found[i].first, share, 0.01);
    EXPECT_NEAR(found[i].total, share, 0.01);
  }
}

TEST(sensitivities, of_what_does_not_vary_are_none) {
  EXPECT_TRUE(indices(64, 2, [](const double*) { return 3.0; }).empty());
}

TEST(sensitivity_points, change_one_input_in_each_block) {
  constexpr std::size_t base = 16;
  const auto points = sensitivity_points(base, 3, 1);
  ASSERT_EQ(points.size(), 5 * base * 3);
  for (std::size_t block = 0; block < 3; ++block)
    for (std::size_t row = 0; row < base; ++row)
      for (std::size_t input = 0; input < 3; ++input)
        EXPECT_EQ(points[((block + 2) * base + row) * 3 + input],
                  points[((input == block ? base : 0) + row) * 3 + input]);
}

TEST(sensitivity_points, refuse_more_inputs_than_one_sequence_serves) {
  EXPECT_THROW(sensitivity_points(8, 9, 1), std::invalid_argument);
  EXPECT_THROW(sensitivity_points(8, 0, 1), std::invalid_argument);
}

}  // namespace
}  // namespace holdback::numerics
