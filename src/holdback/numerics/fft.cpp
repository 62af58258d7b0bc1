#include "holdback/numerics/fft.hpp"

#include <cmath>
#include <numbers>
#include <stdexcept>
#include <utility>

namespace holdback::numerics {

namespace {

using Complex = std::complex<double>;

bool is_power_of_two(std::size_t n) { return n > 0 && (n & (n - 1)) == 0; }

std::size_t power_of_two_from(std::size_t n) {
  std::size_t power = 1;
  while (power < n) power *= 2;
  return power;
}

Complex on_circle(double share) { return std::polar(1.0, -2 * std::numbers::pi * share); }

// Without the checks for infinities that operator* makes.
Complex product(Complex a, Complex b) {
  return {a.real() * b.real() - a.imag() * b.imag(), a.real() * b.imag() + a.imag() * b.real()};
}

}  // namespace

/// X_k = c_k Σ (x_j c_j) conj(c_(k−j)), c_j = e^(−πi j²/n): a convolution, done at a power of two.
struct Fft::Chirp {
  Fft wide;
  std::vector<Complex> turn;    // c
  std::vector<Complex> filter;  // transform of conj(c)

  explicit Chirp(std::size_t n) : wide(power_of_two_from(2 * n)), turn(n), filter(wide.length()) {
    for (std::size_t j = 0; j < n; ++j) {
      const auto square = static_cast<unsigned long long>(j) * j % (2ULL * n);  // the angle goes round
      turn[j] = on_circle(static_cast<double>(square) / (2.0 * static_cast<double>(n)));
      filter[j] = std::conj(turn[j]);
      if (j > 0) filter[filter.size() - j] = filter[j];
    }
    wide.forward(filter.data());
  }

  void forward(Complex* values) const {
    std::vector<Complex> work(wide.length());
    const std::size_t n = turn.size();
    for (std::size_t j = 0; j < n; ++j) work[j] = product(values[j], turn[j]);
    wide.forward(work.data());
    for (std::size_t j = 0; j < work.size(); ++j) work[j] = std::conj(product(work[j], filter[j]));
    wide.forward(work.data());  // backwards, by conjugates
    const double scale = 1 / static_cast<double>(work.size());
    for (std::size_t j = 0; j < n; ++j) values[j] = product(std::conj(work[j]) * scale, turn[j]);
  }
};

Fft::Fft(Fft&&) noexcept = default;
Fft& Fft::operator=(Fft&&) noexcept = default;
Fft::~Fft() = default;

Fft::Fft(std::size_t length) : length_(length) {
  if (length == 0) throw std::invalid_argument("a transform of no values");
  if (!is_power_of_two(length)) {
    chirp_ = std::make_unique<Chirp>(length);
    return;
  }
  turn_.resize(length / 2);
  for (std::size_t j = 0; j < turn_.size(); ++j)
    turn_[j] = on_circle(static_cast<double>(j) / static_cast<double>(length));
  reversed_.resize(length);
  for (std::size_t j = 1, r = 0; j < length; ++j) {
    std::size_t bit = length / 2;
    for (; (r & bit) != 0; bit /= 2) r ^= bit;
    r |= bit;
    reversed_[j] = r;
  }
  if (length >= 4) half_ = std::make_unique<Fft>(length / 2);
}

void Fft::forward(std::complex<double>* values) const {
  if (chirp_)
    chirp_->forward(values);
  else
    power_of_two(values);
}

void Fft::power_of_two(std::complex<double>* values) const {
  for (std::size_t j = 0; j < length_; ++j)
    if (j < reversed_[j]) std::swap(values[j], values[reversed_[j]]);
  for (std::size_t span = 1; span < length_; span *= 2) {
    const std::size_t stride = length_ / (2 * span);
    for (std::size_t begin = 0; begin < length_; begin += 2 * span)
      for (std::size_t j = 0; j < span; ++j) {
        Complex& low = values[begin + j];
        Complex& high = values[begin + j + span];
        const Complex turned = product(high, turn_[j * stride]);
        high = low - turned;
        low += turned;
      }
  }
}

// Even and odd places as one complex signal of half the length, taken apart by symmetry.
void Fft::forward_real(const double* values, std::complex<double>* spectrum) const {
  if (!half_) {
    std::vector<Complex> work(values, values + length_);
    forward(work.data());
    for (std::size_t k = 0; k <= length_ / 2; ++k) spectrum[k] = work[k];
    return;
  }
  const std::size_t half = length_ / 2;
  for (std::size_t j = 0; j < half; ++j) spectrum[j] = {values[2 * j], values[2 * j + 1]};
  half_->power_of_two(spectrum);
  const Complex first = spectrum[0];
  spectrum[0] = first.real() + first.imag();
  spectrum[half] = first.real() - first.imag();
  for (std::size_t k = 1; k <= half - k; ++k) {
    const Complex a = spectrum[k];
    const Complex b = std::conj(spectrum[half - k]);
    const Complex even = 0.5 * (a + b);
    const Complex odd = product(product(Complex{0, -0.5}, a - b), turn_[k]);
    spectrum[k] = even + odd;
    spectrum[half - k] = std::conj(even - odd);
  }
}

}  // namespace holdback::numerics
