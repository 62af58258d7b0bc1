#include "holdback/numerics/linear.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <stdexcept>

#include "holdback/numerics/frequency.hpp"

namespace holdback::numerics {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

/// Companion matrix of sⁿ + c[n−1] sⁿ⁻¹ + … + c[0].
SquareMatrix companion(const std::vector<double>& coefficients) {
  const std::size_t size = coefficients.size();
  SquareMatrix made{size, std::vector<double>(size * size, 0.0)};
  for (std::size_t i = 0; i < size; ++i) {
    if (i + 1 < size) made.entries[i * size + i + 1] = 1;
    made.entries[(size - 1) * size + i] = -coefficients[i];
  }
  return made;
}

/// Numbers between −1 and 1 that are the same on every machine.
class Scatter {
 public:
  double operator()() {
    state_ = (1103515245U * state_ + 12345U) % 2147483648U;
    return static_cast<double>(state_) / 1073741824.0 - 1;
  }

 private:
  std::uint64_t state_{12345};
};

TEST(eigenvalues, are_the_roots_of_the_characteristic_polynomial) {
  // (s + 1)(s + 5)(s² + 2s + 10), its roots by hand.
  const auto found = eigenvalues(companion({50, 70, 27, 8}));
  ASSERT_EQ(found.size(), 4U);
  EXPECT_NEAR(found[0].real(), -1, 1e-13);
  EXPECT_EQ(found[0].imag(), 0);
  EXPECT_NEAR(std::abs(found[1] - Complex(-1, 3)), 0, 1e-13);
  EXPECT_NEAR(std::abs(found[2] - Complex(-1, -3)), 0, 1e-13);
  EXPECT_NEAR(found[3].real(), -5, 1e-13);
}

TEST(eigenvalues, add_up_to_the_trace) {
  Scatter scatter;
  for (std::size_t size = 1; size <= 8; ++size) {
    SquareMatrix matrix{size, std::vector<double>(size * size)};
    for (double& entry : matrix.entries) entry = scatter();
    Complex sum{};
    double trace = 0;
    for (const Complex& value : eigenvalues(matrix)) sum += value;
    for (std::size_t i = 0; i < size; ++i) trace += matrix(i, i);
    EXPECT_NEAR(sum.real(), trace, 1e-13);
    EXPECT_NEAR(sum.imag(), 0, 1e-14);
  }
}

TEST(eigenvalues, bear_states_of_unlike_units) {
  // Roots −1, −2, −3 with states scaled by 1e-9, 1, 1e9: unbalanced, the small ones would drown in the rounding.
  SquareMatrix matrix = companion({6, 11, 6});
  const double scales[] = {1e-9, 1, 1e9};
  for (std::size_t i = 0; i < 3; ++i) {
    for (std::size_t k = 0; k < 3; ++k) matrix.entries[i * 3 + k] *= scales[i] / scales[k];
  }
  const auto found = eigenvalues(matrix);
  for (std::size_t i = 0; i < 3; ++i) EXPECT_NEAR(found[i].real(), -1.0 - static_cast<double>(i), 1e-12);
}

TEST(eigenvalues, refuse_what_is_no_matrix) {
  EXPECT_TRUE(eigenvalues({}).empty());
  EXPECT_THROW(eigenvalues({2, {1, 2, 3}}), std::invalid_argument);
  EXPECT_THROW(eigenvalues({1, {std::nan("")}}), std::invalid_argument);
  EXPECT_THROW(eigenvalues({1, {infinity}}), std::invalid_argument);
}

TEST(modes, tell_frequency_and_damping) {
  // s² + 2ζω s + ω² with ω 18.0835124, ζ 0.05, and a lag of 0.5 s; by hand.
  const double omega = 18.0835124, zeta = 0.05;
  const SquareMatrix swing = companion({2 * omega * omega, omega * omega + 4 * zeta * omega, 2 + 2 * zeta * omega});
  const std::vector<Mode> found = modes(swing);
  ASSERT_EQ(found.size(), 2U);
  EXPECT_NEAR(found[0].frequency, 2, 1e-12);
  EXPECT_NEAR(found[0].damping, 1, 1e-14);
  EXPECT_NEAR(found[1].frequency, omega, 1e-12);
  EXPECT_NEAR(found[1].damping, zeta, 1e-13);
  EXPECT_GT(found[1].pole.imag(), 0);
}

TEST(modes, tell_growth_and_standstill) {
  const std::vector<Mode> found = modes({2, {0, 1, 0, 3}});  // s (s − 3)
  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[0].frequency, 0);
  EXPECT_EQ(found[0].damping, 0);
  EXPECT_NEAR(found[1].frequency, 3, 1e-15);
  EXPECT_NEAR(found[1].damping, -1, 1e-15);
}

TEST(transfer, is_the_ratio_of_polynomials) {
  // (s − 18)/(s² − 3s − 10), python-control's margin_test.py (found), here by Cramer's rule.
  const StateSpace system{{2, {1, 4, 3, 2}}, {1, -4}, {1, 0}, 0};
  for (const Complex s : {Complex{0, 0}, Complex{0, 2.5483}, Complex{0.3, -7}, Complex{-100, 3}}) {
    EXPECT_LT(std::abs(transfer(system, s) - (s - 18.0) / (s * s - 3.0 * s - 10.0)), 1e-14);
  }
  StateSpace direct = system;
  direct.d = 0.25;
  EXPECT_LT(std::abs(transfer(direct, {0, 1}) - transfer(system, {0, 1}) - 0.25), 1e-15);
}

TEST(transfer, is_infinite_at_a_pole_and_never_no_number) {
  const StateSpace integrator{{1, {0}}, {1}, {1}, 0};
  EXPECT_EQ(transfer(integrator, 0), Complex(infinity));
  EXPECT_EQ(transfer({{}, {}, {}, 3}, {0, 1}), Complex(3));
  // Units 1e12 apart do not look like a pole.
  const StateSpace apart{{2, {-1e-12, 0, 0, -1e12}}, {1, 1}, {1, 1}, 0};
  EXPECT_NEAR(transfer(apart, 0).real() * 1e-12, 1, 1e-14);
}

TEST(transfer, refuses_sizes_that_do_not_fit) {
  EXPECT_THROW(transfer({{2, {1, 2, 3, 4}}, {1}, {1, 2}, 0}, 1), std::invalid_argument);
  EXPECT_THROW(transfer({{2, {1, 2, 3}}, {1, 2}, {1, 2}, 0}, 1), std::invalid_argument);
}

TEST(transfer, encircles_minus_one_as_often_as_the_closed_loop_has_unstable_poles) {
  // Two ways to one answer: Nyquist's count along the response against the eigenvalues of A − B C.
  Scatter scatter;
  int compared = 0, unstable = 0;
  for (int trial = 0; trial < 200; ++trial) {
    const std::size_t size = 2 + static_cast<std::size_t>(trial % 4);
    StateSpace system{
        {size, std::vector<double>(size * size)}, std::vector<double>(size), std::vector<double>(size), 0};
    for (double& entry : system.a.entries) entry = 3 * scatter();
    for (double& entry : system.b) entry = 3 * scatter();
    for (double& entry : system.c) entry = 3 * scatter();
    SquareMatrix closed = system.a;
    for (std::size_t i = 0; i < size; ++i) {
      for (std::size_t k = 0; k < size; ++k) closed.entries[i * size + k] -= system.b[i] * system.c[k];
    }
    int open_poles = 0, closed_poles = 0;
    double nearest = infinity;
    for (const Complex& pole : eigenvalues(system.a)) {
      open_poles += pole.real() > 0 ? 1 : 0;
      nearest = std::min(nearest, std::abs(pole.real()));
    }
    for (const Complex& pole : eigenvalues(closed)) {
      closed_poles += pole.real() > 0 ? 1 : 0;
      nearest = std::min(nearest, std::abs(pole.real()));
    }
    if (nearest < 1e-3) continue;  // on the edge of the path
    const LoopMargins found =
        loop_margins([&](Complex s) { return transfer(system, s); }, {1e-4, 1e4, 20, {}}, open_poles);
    EXPECT_EQ(found.unstable_poles, closed_poles) << "trial " << trial;
    ++compared;
    unstable += closed_poles > 0 ? 1 : 0;
  }
  EXPECT_GT(compared, 180);
  EXPECT_GT(unstable, 50);
}

}  // namespace
}  // namespace holdback::numerics
