// Which input makes the spread of an output: Sobol's indices from a design of quasi-random points.
#pragma once

#include <cstdint>
#include <vector>

namespace holdback::numerics {

/// Points at which an output is to be computed: `base` rows of A, `base` rows of B, then for each input `base` rows of
/// A with that input's column from B; (inputs + 2) · base rows of `inputs` coordinates in (0, 1), row by row. A power
/// of two as base is best. At most eight inputs (std::invalid_argument): A and B share one sequence. Source:
/// [saltelli2010].
std::vector<double> sensitivity_points(std::size_t base, int inputs, std::uint32_t seed);

/// Shares of the variance that an input makes by itself, and with all its interactions [1].
struct Sensitivity {
  double first{};
  double total{};
};

/// Indices of every input from the outputs at sensitivity_points(), in its order. First: Σ f_B (f_AB − f_A)/N/V, total:
/// Σ (f_A − f_AB)²/2N/V (Jansen's form), both kept within 0 … 1; f less its mean. Empty when the output does not vary.
/// Sources: [saltelli2010], [jansen1999].
std::vector<Sensitivity> sensitivities(const std::vector<double>& outputs, std::size_t base, int inputs);

}  // namespace holdback::numerics
