#include "holdback/numerics/linear.hpp"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace holdback::numerics {

namespace {

using Complex = std::complex<double>;

Eigen::MatrixXd checked(const SquareMatrix& matrix) {
  const bool finite =
      std::all_of(matrix.entries.begin(), matrix.entries.end(), [](double entry) { return std::isfinite(entry); });
  if (!finite || matrix.entries.size() != matrix.size * matrix.size)
    throw std::invalid_argument("the entries of a matrix are not size² finite numbers");
  const auto size = static_cast<Eigen::Index>(matrix.size);
  using ByRow = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
  return Eigen::Map<const ByRow>(matrix.entries.data(), size, size);
}

/// Scales one state so that its row and its column are of like size; true when that made a difference.
bool balance(Eigen::MatrixXd& matrix, Eigen::Index state) {
  const double diagonal = std::abs(matrix(state, state));
  const double row = matrix.row(state).lpNorm<1>() - diagonal, column = matrix.col(state).lpNorm<1>() - diagonal;
  if (!(row > 0 && column > 0)) return false;
  const auto halvings = static_cast<int>(std::lround((std::log2(row) - std::log2(column)) / 2));
  if (halvings == 0) return false;
  const double scale = std::ldexp(1.0, halvings);
  if (row / scale + column * scale >= 0.95 * (row + column)) return false;
  matrix.row(state) /= scale;
  matrix.col(state) *= scale;
  return true;
}

Eigen::MatrixXd balanced(Eigen::MatrixXd matrix) {
  for (int sweep = 0; sweep < 100; ++sweep) {
    bool changed = false;
    for (Eigen::Index state = 0; state < matrix.rows(); ++state) changed = balance(matrix, state) || changed;
    if (!changed) break;
  }
  return matrix;
}

}  // namespace

std::vector<Complex> eigenvalues(const SquareMatrix& matrix) {
  if (matrix.size == 0) return {};
  const Eigen::VectorXcd found = balanced(checked(matrix)).eigenvalues();
  std::vector<Complex> values(found.data(), found.data() + found.size());
  // The two of a pair are equal in size and real part to the last digit.
  std::sort(values.begin(), values.end(), [](const Complex& a, const Complex& b) {
    const double size_a = std::hypot(a.real(), a.imag()), size_b = std::hypot(b.real(), b.imag());
    if (size_a != size_b) return size_a < size_b;
    if (a.real() != b.real()) return a.real() < b.real();
    if (std::abs(a.imag()) != std::abs(b.imag())) return std::abs(a.imag()) < std::abs(b.imag());
    return a.imag() > b.imag();
  });
  return values;
}

std::vector<Mode> modes(const SquareMatrix& matrix) {
  std::vector<Mode> found;
  for (const Complex& pole : eigenvalues(matrix)) {
    if (pole.imag() < 0) continue;
    const double frequency = std::hypot(pole.real(), pole.imag());
    found.push_back({pole, frequency, frequency > 0 ? -pole.real() / frequency : 0});
  }
  return found;
}

// C(sI − A)⁻¹B + D
Complex transfer(const StateSpace& system, Complex s) {
  const std::size_t size = system.a.size;
  if (system.b.size() != size || system.c.size() != size)
    throw std::invalid_argument("transfer: the sizes of A, B and C do not fit");
  if (size == 0) return system.d;
  const auto n = static_cast<Eigen::Index>(size);
  const Eigen::MatrixXcd pencil = s * Eigen::MatrixXcd::Identity(n, n) - checked(system.a).cast<Complex>();
  const Eigen::VectorXd b = Eigen::Map<const Eigen::VectorXd>(system.b.data(), n);
  const Eigen::VectorXd c = Eigen::Map<const Eigen::VectorXd>(system.c.data(), n);
  Eigen::FullPivLU<Eigen::MatrixXcd> factors(pencil);
  factors.setThreshold(0);  // states of unlike units make pivots of unlike size
  const Complex infinite{std::numeric_limits<double>::infinity(), 0};
  if (!factors.isInvertible()) return infinite;
  const Eigen::VectorXcd state = factors.solve(b.cast<Complex>());
  const Complex output = (c.cast<Complex>().transpose() * state)(0) + system.d;
  return std::isfinite(output.real()) && std::isfinite(output.imag()) ? output : infinite;
}

}  // namespace holdback::numerics
