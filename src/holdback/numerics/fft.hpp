// The discrete Fourier transform, X_k = Σ x_j e^(−2πi jk/n), of any length: powers of two directly, others by the chirp
// transform through the next power of two. [cooley1965] [bluestein1970]
#pragma once

#include <complex>
#include <cstddef>
#include <memory>
#include <vector>

namespace holdback::numerics {

/// A transform of one length, with its tables made once. Rounding errors grow as √(log n): some 1e-15 of the largest
/// value for a power of two, some 1e-14 else.
class Fft {
 public:
  /// `length` ≥ 1; std::invalid_argument for zero.
  explicit Fft(std::size_t length);
  Fft(Fft&&) noexcept;
  Fft& operator=(Fft&&) noexcept;
  ~Fft();

  std::size_t length() const { return length_; }

  /// In place, of `length` values.
  void forward(std::complex<double>* values) const;

  /// Of real values: entries 0 … length/2 of X (rounded down); the others are their conjugates.
  void forward_real(const double* values, std::complex<double>* spectrum) const;

 private:
  struct Chirp;
  void power_of_two(std::complex<double>* values) const;

  std::size_t length_;
  std::vector<std::complex<double>> turn_{};  // e^(−2πi j/n), j < n/2; of a power of two
  std::vector<std::size_t> reversed_{};       // places with their bits turned round
  std::unique_ptr<Fft> half_{};               // of even powers of two, for real values
  std::unique_ptr<Chirp> chirp_{};            // of other lengths
};

}  // namespace holdback::numerics
