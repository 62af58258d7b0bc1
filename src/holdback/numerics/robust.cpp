#include "holdback/numerics/robust.hpp"

#include <Eigen/QR>
#include <algorithm>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <numeric>
#include <stdexcept>

namespace holdback::numerics {

namespace {

constexpr double normal_quartile = 0.6744897501960817;  // of a standard normal variable
constexpr int most_rounds = 500;
constexpr double settled = 1e-12;  // change of the coefficients, relative

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

void demand(bool kept, const char* what) {
  if (!kept) throw std::invalid_argument(what);
}

Eigen::Index index(std::size_t i) { return static_cast<Eigen::Index>(i); }

Matrix matrix_of(const Design& design) {
  Matrix matrix(index(design.rows()), index(design.columns));
  for (std::size_t i = 0; i < design.rows(); ++i)
    for (std::size_t k = 0; k < design.columns; ++k) matrix(index(i), index(k)) = design(i, k);
  return matrix;
}

std::vector<double> numbers_of(const Vector& vector) { return {vector.data(), vector.data() + vector.size()}; }

/// Solution and (XᵀWX)⁻¹ of a weighted problem; columns are scaled to length one first, so that units do not count.
struct Solved {
  bool full_rank{};
  Vector coefficients{};
  Matrix inverse{};
};

Solved solve(const Matrix& x, const Vector& y, const Vector& weights) {
  const Vector roots = weights.cwiseSqrt();
  Matrix scaled = roots.asDiagonal() * x;
  Vector lengths = scaled.colwise().norm().transpose();
  Solved out;
  if (lengths.size() == 0 || !(lengths.minCoeff() > 0) || x.rows() < x.cols()) return out;
  scaled = scaled * lengths.cwiseInverse().asDiagonal();
  Eigen::ColPivHouseholderQR<Matrix> qr(scaled);
  qr.setThreshold(1e-11);
  if (qr.rank() < x.cols()) return out;
  out.full_rank = true;
  const Vector target = roots.cwiseProduct(y);
  out.coefficients = qr.solve(target);
  out.coefficients += qr.solve(target - scaled * out.coefficients);  // one step of refinement
  out.coefficients = out.coefficients.cwiseQuotient(lengths);
  const auto size = x.cols();
  const Matrix r = qr.matrixR().topLeftCorner(size, size).template triangularView<Eigen::Upper>();
  const Matrix r_inverse = r.template triangularView<Eigen::Upper>().solve(Matrix::Identity(size, size));
  const Matrix pivoted = qr.colsPermutation() * (r_inverse * r_inverse.transpose()) * qr.colsPermutation().transpose();
  out.inverse = lengths.cwiseInverse().asDiagonal() * pivoted * lengths.cwiseInverse().asDiagonal();
  return out;
}

void give_covariance(LinearFit& fit, const Matrix& covariance) {
  fit.covariance.clear();
  fit.standard_errors.clear();
  for (Eigen::Index i = 0; i < covariance.rows(); ++i) {
    fit.standard_errors.push_back(std::sqrt(covariance(i, i)));
    for (Eigen::Index k = 0; k < covariance.cols(); ++k) fit.covariance.push_back(covariance(i, k));
  }
}

double determination_of(const Vector& y, const Vector& residuals) {
  const double all = (y.array() - y.mean()).square().sum();
  return all > 0 ? 1 - residuals.squaredNorm() / all : 0;
}

LinearFit fit_of(const Design& design, const Vector& y, const Vector& weights) {
  const Matrix x = matrix_of(design);
  const Solved solved = solve(x, y, weights);
  LinearFit fit;
  if (!solved.full_rank) return fit;
  fit.full_rank = true;
  fit.coefficients = numbers_of(solved.coefficients);
  const Vector residuals = y - x * solved.coefficients;
  fit.residuals = numbers_of(residuals);
  fit.weights = numbers_of(weights);
  fit.freedom = static_cast<double>(x.rows() - x.cols());
  fit.determination = determination_of(y, residuals);
  if (fit.freedom <= 0) return fit;
  const double variance = (weights.array() * residuals.array().square()).sum() / fit.freedom;
  fit.deviation = std::sqrt(variance);
  give_covariance(fit, variance * solved.inverse);
  return fit;
}

Vector vector_of(const std::vector<double>& values) {
  return Eigen::Map<const Vector>(values.data(), index(values.size()));
}

/// Huber's weights min(1, c·s/|r|).
Vector huber_weights(const Vector& residuals, double scale, double tuning) {
  Vector weights(residuals.size());
  for (Eigen::Index i = 0; i < residuals.size(); ++i) {
    const double size = std::abs(residuals[i]);
    weights[i] = size <= tuning * scale ? 1 : tuning * scale / size;
  }
  return weights;
}

/// Huber's first proposal for the covariance of an M-estimate.
Matrix huber_covariance(const Vector& residuals, double scale, double tuning, const Matrix& inverse) {
  const auto n = static_cast<double>(residuals.size());
  const auto p = static_cast<double>(inverse.rows());
  double psi_squares = 0;
  double inside = 0;  // points where ψ' = 1
  for (const double residual : numbers_of(residuals)) {
    const double psi = std::clamp(residual / scale, -tuning, tuning);
    psi_squares += psi * psi;
    inside += std::abs(residual) <= tuning * scale ? 1 : 0;
  }
  const double mean = inside / n;
  const double correction = 1 + p / n * (mean * (1 - mean)) / (mean * mean);
  const double variance = correction * correction * (psi_squares / (n - p)) * scale * scale / (mean * mean);
  return variance * inverse;
}

/// Slopes from a point to all others with a different x.
std::vector<double> slopes_from(std::size_t i, std::size_t first, const std::vector<double>& x,
                                const std::vector<double>& y) {
  std::vector<double> slopes;
  for (std::size_t k = first; k < x.size(); ++k)
    if (k != i && x[k] != x[i]) slopes.push_back((y[k] - y[i]) / (x[k] - x[i]));
  return slopes;
}

}  // namespace

Design line_design(const std::vector<double>& x) {
  Design design{2, {}};
  for (const double each : x) design.entries.insert(design.entries.end(), {1, each});
  return design;
}

LinearFit least_squares(const Design& design, const std::vector<double>& y) {
  return least_squares(design, y, std::vector<double>(y.size(), 1));
}

LinearFit least_squares(const Design& design, const std::vector<double>& y, const std::vector<double>& weights) {
  demand(design.rows() == y.size() && weights.size() == y.size(), "a row and a weight for each point");
  return fit_of(design, vector_of(y), vector_of(weights));
}

LinearFit huber(const Design& design, const std::vector<double>& y, double tuning, double scale_floor) {
  demand(design.rows() == y.size(), "a row for each point");
  demand(tuning > 0 && scale_floor >= 0, "a tuning constant above zero");
  LinearFit fit = least_squares(design, y);
  if (!fit.full_rank || fit.freedom <= 0) return fit;
  const Matrix x = matrix_of(design);
  const Vector target = vector_of(y);
  Vector residuals = vector_of(fit.residuals);
  Vector weights = vector_of(fit.weights);
  Vector coefficients = vector_of(fit.coefficients);
  double scale = std::max(median_deviation(fit.residuals), scale_floor);
  for (int round = 0; round < most_rounds && scale > 0; ++round) {
    weights = huber_weights(residuals, scale, tuning);
    const Solved solved = solve(x, target, weights);
    if (!solved.full_rank) break;
    const double change = (solved.coefficients - coefficients).norm() / (coefficients.norm() + 1e-300);
    coefficients = solved.coefficients;
    residuals = target - x * coefficients;
    scale = std::max(median_deviation(numbers_of(residuals)), scale_floor);
    if (change < settled) break;
  }
  fit.coefficients = numbers_of(coefficients);
  fit.residuals = numbers_of(residuals);
  fit.weights = numbers_of(weights);
  fit.deviation = scale;
  fit.determination = determination_of(target, residuals);
  if (scale > 0)
    give_covariance(fit, huber_covariance(residuals, scale, tuning, solve(x, target, Vector::Ones(x.rows())).inverse));
  return fit;
}

Line theil_sen(const std::vector<double>& x, const std::vector<double>& y) {
  demand(x.size() == y.size(), "a y for each x");
  std::vector<double> slopes;
  for (std::size_t i = 0; i < x.size(); ++i) {
    const auto more = slopes_from(i, i + 1, x, y);
    slopes.insert(slopes.end(), more.begin(), more.end());
  }
  demand(!slopes.empty(), "two points with different x");
  const double slope = median(std::move(slopes));
  return {slope, median(y) - slope * median(x)};
}

Line repeated_medians(const std::vector<double>& x, const std::vector<double>& y) {
  demand(x.size() == y.size(), "a y for each x");
  std::vector<double> slopes;
  std::vector<double> intercepts;
  for (std::size_t i = 0; i < x.size(); ++i) {
    auto from_here = slopes_from(i, 0, x, y);
    if (!from_here.empty()) slopes.push_back(median(std::move(from_here)));
  }
  demand(!slopes.empty(), "two points with different x");
  const double slope = median(std::move(slopes));
  for (std::size_t i = 0; i < x.size(); ++i) intercepts.push_back(y[i] - slope * x[i]);
  return {slope, median(std::move(intercepts))};
}

double median(std::vector<double> values) {
  demand(!values.empty(), "a median needs a value");
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  if (values.size() % 2 == 1) return *middle;
  return (*std::max_element(values.begin(), middle) + *middle) / 2;
}

double median_deviation(const std::vector<double>& values) {
  std::vector<double> sizes;
  sizes.reserve(values.size());
  for (const double value : values) sizes.push_back(std::abs(value));
  return median(std::move(sizes)) / normal_quartile;
}

double student_quantile(double p, double freedom) {
  return boost::math::quantile(boost::math::students_t_distribution<double>(freedom), p);
}

double half_width(double standard_error, double freedom, double level) {
  return student_quantile((1 + level) / 2, freedom) * standard_error;
}

}  // namespace holdback::numerics
