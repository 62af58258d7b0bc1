// Straight lines and small linear models through points, by least squares and in ways that a few wrong points cannot
// bend: y = Σ_k b_k x_k + e.
#pragma once

#include <cstddef>
#include <vector>

namespace holdback::numerics {

/// The design of a linear model: one row a point, one entry a coefficient.
struct Design {
  std::size_t columns{};
  std::vector<double> entries{};  // row by row, finite

  std::size_t rows() const { return columns == 0 ? 0 : entries.size() / columns; }
  double operator()(std::size_t row, std::size_t column) const { return entries[row * columns + column]; }
};

/// The design of a straight line: columns 1 and x.
Design line_design(const std::vector<double>& x);

/// A fitted linear model. `full_rank` is false when the points do not tell the coefficients apart; nothing else is set
/// then.
struct LinearFit {
  bool full_rank{};
  std::vector<double> coefficients{};
  std::vector<double> standard_errors{};  // of the coefficients; empty without a degree of freedom
  std::vector<double> covariance{};       // of the coefficients, row by row; empty without a degree of freedom
  std::vector<double> residuals{};        // y − Σ b_k x_k
  std::vector<double> weights{};          // by which each point counts, 0 … 1
  double deviation{};                     // of the residuals: √(RSS/freedom), or the robust scale
  double determination{};                 // r² = 1 − RSS/Σ(y − ȳ)²; least squares with a constant column alone
  double freedom{};                       // points less coefficients
};

/// Least squares by a rank-revealing QR of the columns scaled to equal length. std::invalid_argument when the sizes do
/// not fit. Checked against NIST StRD Norris and Longley [nist-strd].
LinearFit least_squares(const Design& design, const std::vector<double>& y);

/// Least squares with a weight ≥ 0 for each point; the covariance is that of weights that are known beforehand.
LinearFit least_squares(const Design& design, const std::vector<double>& y, const std::vector<double>& weights);

/// Huber's M-estimate with the given tuning constant, by weights made anew until nothing changes; the scale is the
/// median |residual|/0.6745 of each round [huber1964]. Standard errors by Huber's first proposal, K²·(Σψ²/(n − p))·s²/
/// (Σψ'/n)²·(XᵀX)⁻¹ with K = 1 + (p/n)·Var ψ'/(mean ψ')² [huber2009, eq. 7.81]. `scale_floor` is the least scale: below
/// it residuals are no more than the resolution of the readings.
LinearFit huber(const Design& design, const std::vector<double>& y, double tuning = 1.345, double scale_floor = 0);

/// A straight line y = intercept + slope·x.
struct Line {
  double slope{};
  double intercept{};
};

/// Slope as median of the slopes of all pairs of points with different x, intercept as median y − slope·median x
/// [theil1950; sen1968]. At least two different x, else std::invalid_argument.
Line theil_sen(const std::vector<double>& x, const std::vector<double>& y);

/// Slope as median over the points of the median slope to all others, intercept likewise [siegel1982].
Line repeated_medians(const std::vector<double>& x, const std::vector<double>& y);

/// The middle value, the mean of the two middle ones of an even count. std::invalid_argument for none.
double median(std::vector<double> values);

/// Standard deviation of normal values from the median of |value|: median|v|/0.6744897501960817.
double median_deviation(const std::vector<double>& values);

/// The t that a Student variable of so many degrees of freedom stays below with probability p, 0 < p < 1.
double student_quantile(double p, double freedom);

/// Half the width of the interval that holds with the probability `level`: t·standard error.
double half_width(double standard_error, double freedom, double level = 0.95);

}  // namespace holdback::numerics
