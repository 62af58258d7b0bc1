// Small linear systems in state space: dx/dt = A x + B u, y = C x + D u, one input and one output.
#pragma once

#include <complex>
#include <cstddef>
#include <vector>

namespace holdback::numerics {

/// A square matrix of real numbers, row by row.
struct SquareMatrix {
  std::size_t size{};
  std::vector<double> entries{};  // size², finite
  double operator()(std::size_t row, std::size_t column) const { return entries[row * size + column]; }
};

/// Eigenvalues with those of a pair side by side, the one with the positive imaginary part first; by rising size, then
/// by rising real part. Method: powers of two balance rows against columns [parlett1969], then Eigen's real Schur form;
/// errors are a few ulp of the balanced matrix's norm. std::invalid_argument for entries that are not size² finite
/// numbers.
std::vector<std::complex<double>> eigenvalues(const SquareMatrix& matrix);

/// A pole, or a pair of them, told as engineers tell it.
struct Mode {
  std::complex<double> pole{};  // [rad/s], of a pair the one with the positive imaginary part
  double frequency{};           // [rad/s] undamped: |pole|
  double damping{};  // [1] −Re(pole)/|pole|: 1 for a real pole that decays, −1 for one that grows, 0 at zero
};

/// Modes of dx/dt = A x by rising undamped frequency, one for each pair. Errors as eigenvalues().
std::vector<Mode> modes(const SquareMatrix& matrix);

struct StateSpace {
  SquareMatrix a{};
  std::vector<double> b{};  // a.size entries
  std::vector<double> c{};  // a.size entries
  double d{};
};

/// Response C(sI − A)⁻¹B + D at s [rad/s], by Gaussian elimination with complete pivoting. Infinite (real, positive) at
/// a pole. std::invalid_argument when the sizes do not fit.
std::complex<double> transfer(const StateSpace& system, std::complex<double> s);

}  // namespace holdback::numerics
