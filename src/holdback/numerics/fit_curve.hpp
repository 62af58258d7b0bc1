// Curves with few constants through points: the constants with the least sum of squares.
#pragma once

#include <functional>
#include <vector>

namespace holdback::numerics {

/// The curve at x with constants b.
using CurveModel = std::function<double(double x, const std::vector<double>& b)>;

/// Constants found.
struct CurveFit {
  bool settled{};                         // no step makes the sum smaller any more
  std::vector<double> constants{};        // b
  std::vector<double> standard_errors{};  // of b; empty without a degree of freedom
  double residual_squares{};              // Σ(y − f(x, b))²
  double deviation{};                     // √(residual_squares/freedom)
  double freedom{};                       // points less constants
  int rounds{};                           // steps tried
};

/// Levenberg and Marquardt's descent with derivatives by central differences [marquardt1963]; each constant should
/// start with the sign and about the size of its own: a far start may end in another valley. std::invalid_argument when
/// the sizes do not fit or there are fewer points than constants. A model that is not finite at a step turns the step
/// back. Checked against NIST StRD DanWood and Misra1a [nist-strd].
CurveFit fit_curve(const CurveModel& model, const std::vector<double>& x, const std::vector<double>& y,
                   const std::vector<double>& start);

}  // namespace holdback::numerics
