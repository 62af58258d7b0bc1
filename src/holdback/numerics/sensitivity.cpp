#include "holdback/numerics/sensitivity.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "holdback/numerics/sobol.hpp"

namespace holdback::numerics {

std::vector<double> sensitivity_points(std::size_t base, int inputs, std::uint32_t seed) {
  if (inputs < 1 || 2 * inputs > most_sobol_dimensions)
    throw std::invalid_argument("sensitivity_points: inputs outside 1 … 8");
  const auto width = static_cast<std::size_t>(inputs);
  const std::vector<double> both = sobol_points(base, 2 * inputs, seed);
  std::vector<double> points((width + 2) * base * width);
  const auto at = [&](std::size_t block, std::size_t row, std::size_t column) -> double& {
    return points[((block * base) + row) * width + column];
  };
  for (std::size_t row = 0; row < base; ++row)
    for (std::size_t column = 0; column < width; ++column) {
      const double a = both[row * 2 * width + column];
      const double b = both[row * 2 * width + width + column];
      at(0, row, column) = a;
      at(1, row, column) = b;
      for (std::size_t block = 0; block < width; ++block) at(block + 2, row, column) = block == column ? b : a;
    }
  return points;
}

std::vector<Sensitivity> sensitivities(const std::vector<double>& outputs, std::size_t base, int inputs) {
  const auto f = [&](std::size_t block, std::size_t row) { return outputs[block * base + row]; };
  const auto n = static_cast<double>(base);
  double mean = 0;
  for (std::size_t row = 0; row < base; ++row) mean += (f(0, row) + f(1, row)) / (2 * n);
  double variance = 0;
  for (std::size_t row = 0; row < base; ++row)
    variance += (std::pow(f(0, row) - mean, 2) + std::pow(f(1, row) - mean, 2)) / (2 * n);
  if (!(variance > 1e-24 * (1 + mean * mean))) return {};
  std::vector<Sensitivity> indices;
  for (std::size_t input = 0; input < static_cast<std::size_t>(inputs); ++input) {
    double first = 0;
    double total = 0;
    for (std::size_t row = 0; row < base; ++row) {
      const double mixed = f(input + 2, row);
      first += (f(1, row) - mean) * (mixed - f(0, row)) / n;
      total += std::pow(f(0, row) - mixed, 2) / (2 * n);
    }
    indices.push_back({std::clamp(first / variance, 0.0, 1.0), std::clamp(total / variance, 0.0, 1.0)});
  }
  return indices;
}

}  // namespace holdback::numerics
