#include "holdback/numerics/fft.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace holdback::numerics {
namespace {

using Complex = std::complex<double>;

std::vector<Complex> signal(std::size_t n) {
  std::vector<Complex> values;
  for (std::size_t j = 0; j < n; ++j) {
    const auto x = static_cast<double>(j);
    values.emplace_back(std::sin(0.7 * x) + 0.3 * std::cos(2.1 * x * x), std::cos(1.3 * x) - 0.2);
  }
  return values;
}

/// The definition, term by term.
Complex by_definition(const std::vector<Complex>& x, std::size_t k) {
  Complex sum{};
  const auto n = static_cast<double>(x.size());
  for (std::size_t j = 0; j < x.size(); ++j)
    sum += x[j] * std::polar(1.0, -2 * std::numbers::pi * std::fmod(static_cast<double>(j * k), n) / n);
  return sum;
}

TEST(Fft, is_the_sum_of_its_definition_for_any_length) {
  for (const std::size_t n : {1U, 2U, 3U, 4U, 5U, 7U, 8U, 12U, 16U, 97U, 100U, 128U, 243U, 500U}) {
    const auto x = signal(n);
    auto transformed = x;
    Fft(n).forward(transformed.data());
    for (std::size_t k = 0; k < n; ++k) {
      const Complex expected = by_definition(x, k);
      EXPECT_NEAR(std::abs(transformed[k] - expected), 0, 2e-12 * static_cast<double>(n)) << n << " " << k;
    }
  }
}

TEST(Fft, of_real_values_is_the_first_half_of_the_whole) {
  for (const std::size_t n : {1U, 2U, 3U, 4U, 6U, 8U, 64U, 100U, 101U}) {
    std::vector<double> real;
    std::vector<Complex> x;
    for (const Complex& value : signal(n)) {
      real.push_back(value.real());
      x.emplace_back(value.real(), 0);
    }
    std::vector<Complex> half(n / 2 + 1);
    Fft(n).forward_real(real.data(), half.data());
    for (std::size_t k = 0; k <= n / 2; ++k)
      EXPECT_NEAR(std::abs(half[k] - by_definition(x, k)), 0, 2e-12 * static_cast<double>(n)) << n << " " << k;
  }
}

TEST(Fft, keeps_energy) {  // Parseval: Σ|x|² = Σ|X|²/n
  const auto x = signal(4096);
  auto transformed = x;
  Fft(4096).forward(transformed.data());
  double before = 0, after = 0;
  for (const Complex& value : x) before += std::norm(value);
  for (const Complex& value : transformed) after += std::norm(value) / 4096;
  EXPECT_NEAR(after, before, 1e-12 * before);
}

TEST(Fft, refuses_no_values) { EXPECT_THROW(Fft(0), std::invalid_argument); }

}  // namespace
}  // namespace holdback::numerics
