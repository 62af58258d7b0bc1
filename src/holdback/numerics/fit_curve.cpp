#include "holdback/numerics/fit_curve.hpp"

#include <Eigen/Cholesky>
#include <Eigen/QR>
#include <cmath>
#include <stdexcept>

namespace holdback::numerics {

namespace {

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

constexpr int most_rounds = 500;

Eigen::Index index(std::size_t i) { return static_cast<Eigen::Index>(i); }

/// The problem: residuals and their derivatives at given constants.
class Problem {
 public:
  Problem(const CurveModel& model, const std::vector<double>& x, const std::vector<double>& y)
      : model_(model), x_(x), y_(y) {}

  Vector residuals(const Vector& b) const {
    const std::vector<double> constants(b.data(), b.data() + b.size());
    Vector out(index(x_.size()));
    for (std::size_t i = 0; i < x_.size(); ++i) out[index(i)] = y_[i] - model_(x_[i], constants);
    return out;
  }

  /// ∂f/∂b by central differences, the step the cube root of the smallest difference that a number can show.
  Matrix slopes(const Vector& b) const {
    Matrix out(index(x_.size()), b.size());
    for (Eigen::Index k = 0; k < b.size(); ++k) {
      const double step = 6e-6 * (b[k] == 0 ? 1e-3 : std::abs(b[k]));
      Vector up = b;
      Vector down = b;
      up[k] += step;
      down[k] -= step;
      out.col(k) = (residuals(down) - residuals(up)) / (up[k] - down[k]);
    }
    return out;
  }

 private:
  const CurveModel& model_;
  const std::vector<double>& x_;
  const std::vector<double>& y_;
};

/// Marquardt's step: (JᵀJ + λ diag JᵀJ) δ = Jᵀ r, solved as least squares so that JᵀJ is never made.
Vector step_of(const Matrix& j, const Vector& r, double damping) {
  const Vector scale = j.colwise().norm().transpose().cwiseMax(1e-300);
  Matrix stacked(j.rows() + j.cols(), j.cols());
  stacked.topRows(j.rows()) = j * scale.cwiseInverse().asDiagonal();
  stacked.bottomRows(j.cols()) = std::sqrt(damping) * Matrix::Identity(j.cols(), j.cols());
  Vector target = Vector::Zero(stacked.rows());
  target.head(r.size()) = r;
  return stacked.colPivHouseholderQr().solve(target).cwiseQuotient(scale);
}

void give_errors(CurveFit& fit, const Matrix& j) {
  if (fit.freedom <= 0) return;
  fit.deviation = std::sqrt(fit.residual_squares / fit.freedom);
  const Vector scale = j.colwise().norm().transpose().cwiseMax(1e-300);
  const Matrix unit = j * scale.cwiseInverse().asDiagonal();
  const Matrix inverse = (unit.transpose() * unit).ldlt().solve(Matrix::Identity(j.cols(), j.cols()));
  for (Eigen::Index k = 0; k < j.cols(); ++k)
    fit.standard_errors.push_back(fit.deviation * std::sqrt(std::max(0.0, inverse(k, k))) / scale[k]);
}

}  // namespace

CurveFit fit_curve(const CurveModel& model, const std::vector<double>& x, const std::vector<double>& y,
                   const std::vector<double>& start) {
  if (x.size() != y.size() || start.empty() || x.size() < start.size())
    throw std::invalid_argument("a y for each x, and no fewer points than constants");
  const Problem problem(model, x, y);
  Vector b = Eigen::Map<const Vector>(start.data(), index(start.size()));
  Vector r = problem.residuals(b);
  double squares = r.squaredNorm();
  double damping = 1e-3;
  CurveFit fit;
  for (; fit.rounds < most_rounds && !fit.settled && std::isfinite(squares); ++fit.rounds) {
    const Vector step = step_of(problem.slopes(b), r, damping);
    const Vector tried = problem.residuals(b + step);
    const double then = tried.squaredNorm();
    const bool tiny = !(step.cwiseAbs().cwiseQuotient(b.cwiseAbs().cwiseMax(1e-300)).maxCoeff() > 1e-13);
    if (std::isfinite(then) && then <= squares) {
      fit.settled = tiny || squares - then <= 1e-16 * squares;
      b += step;
      r = tried;
      squares = then;
      damping = std::max(1e-15, damping / 10);
    } else {
      fit.settled = tiny && std::isfinite(then);
      damping *= 10;
      if (damping > 1e12) break;
    }
  }
  fit.constants.assign(b.data(), b.data() + b.size());
  fit.residual_squares = squares;
  fit.freedom = static_cast<double>(x.size()) - static_cast<double>(start.size());
  give_errors(fit, problem.slopes(b));
  return fit;
}

}  // namespace holdback::numerics
