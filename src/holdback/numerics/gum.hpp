// How sure a result is: standard uncertainties of its inputs, carried through by sensitivities, and the same by drawing
// from the inputs' distributions. Inputs are independent. Sources: [jcgm100] for the first, [jcgm101] for the second.
#pragma once

#include <cstdint>
#include <functional>
#include <limits>
#include <optional>
#include <vector>

namespace holdback::numerics {

/// What is drawn from: a normal, a rectangular, or a t-distribution of `freedom` degrees.
enum class Shape { normal, rectangular, student };

/// One reason why an input is not sure. `uncertainty` is its standard uncertainty (of a t: the scale), in the input's
/// unit, ≥ 0.
struct Doubt {
  Shape shape{Shape::normal};
  double uncertainty{};
  double freedom{std::numeric_limits<double>::infinity()};  // > 0
};

/// Of a scale that is read to a step ≥ 0: step/√12, rectangular ([jcgm100], F.2.2.1).
Doubt resolution_doubt(double step);

/// Of limits ± a, every value between as likely as another: a/√3 ([jcgm100], 4.3.7).
Doubt limit_doubt(double half_width);

/// Of the mean of two or more readings: s/√n with n − 1 degrees of freedom ([jcgm100], 4.2.3), a t-distribution when
/// drawn from ([jcgm101], 6.4.9). std::invalid_argument for fewer.
Doubt repeat_doubt(const std::vector<double>& readings);

/// Arithmetic mean; 0 of none.
double mean_of(const std::vector<double>& values);

/// An input with all that makes it unsure.
struct UnsureInput {
  double value{};
  std::vector<Doubt> doubts{};
};

/// Root of the sum of squares, and the effective degrees of freedom by Welch and Satterthwaite ([jcgm100], G.2b).
double uncertainty_of(const UnsureInput& input);
double freedom_of(const UnsureInput& input);

using Model = std::function<double(const std::vector<double>& inputs)>;

/// A result by linear propagation.
struct Propagated {
  double value{};
  double uncertainty{};                // standard
  double freedom{};                    // effective; infinite when no input has any
  std::vector<double> sensitivity{};   // of the result to each input
  std::vector<double> contribution{};  // |sensitivity| times the input's standard uncertainty, in the result's unit
};

/// u² = Σ (∂f/∂x u(x))², ν by Welch and Satterthwaite ([jcgm100], 5.1.2 and G.4.1); slopes by central differences with
/// a relative step of 1e-5, so f must be smooth around its inputs; their error is about 1e-9.
Propagated propagate(const Model& model, const std::vector<UnsureInput>& inputs);

/// k of a two-sided interval of that probability (0 … 1): Student's t, the normal for infinite freedom ([jcgm100],
/// G.3.2, there truncated to whole degrees; here not). Freedom is taken as at least 1.
double coverage_factor(double freedom, double probability);

/// Probability that a quantity y ± u with so many degrees of freedom lies between two bounds, by Student's t. For u = 0
/// one or zero.
double probability_between(double value, double uncertainty, double freedom, double low, double high);

/// A result by drawing.
struct Drawn {
  int count{};  // of draws that the model took
  int lost{};   // draws for which the model gave no number
  bool even{};  // quasi-random (Sobol's points); otherwise pseudo-random
  double mean{};
  std::optional<double> uncertainty{};  // standard deviation; none where an input's has none (two readings or three)
  double low{};                         // ends of the interval, as much probability left out below as above
  double high{};
  std::vector<double> sorted{};  // every draw, rising
};

/// Draws `count` results ([jcgm101], 7): Sobol's points for up to 16 doubts, else a Mersenne twister of 64 bits; `seed`
/// for both, so the draws are the same everywhere. A power of two is best. Empty (count 0) when the model gave none.
Drawn draw(const Model& model, const std::vector<UnsureInput>& inputs, double probability, int count,
           std::uint32_t seed);

/// The tolerance of a standard uncertainty that is stated with so many digits: half a unit of the last ([jcgm101],
/// 7.9.2). 0 for u = 0.
double numerical_tolerance(double uncertainty, int digits);

}  // namespace holdback::numerics
