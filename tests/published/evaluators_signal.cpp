// Evaluators of signals: amplitudes of lines, densities of noise, orders of a roll that gets smaller. The signals are
// those of the published checks, written out here as formulas.
#include <algorithm>
#include <cmath>
#include <complex>
#include <cstdint>
#include <numbers>
#include <vector>

#include "holdback/numerics/resample.hpp"
#include "holdback/numerics/spectrum.hpp"
#include "published/evaluators.hpp"

namespace holdback::published {

using Q = Quantity;
using std::numbers::pi;

namespace {

double entry_of(const numerics::Spectrum& spectrum, double entry) {
  const auto at = static_cast<std::size_t>(entry);
  if (at >= spectrum.value.size()) throw CaseFault("no such entry");
  return spectrum.value[at];
}

/// A mean and two sines, 4000 samples at 1000 Hz.
double two_lines(Arguments& a) {
  std::vector<double> x;
  for (int i = 0; i < 4000; ++i) {
    const double t = i / 1000.0;
    x.push_back(1.5 + 2 * std::sin(2 * pi * 12.5 * t + 0.3) + 0.5 * std::sin(2 * pi * 37.25 * t));
  }
  return entry_of(numerics::amplitude_spectrum(x, 1000), a("entry", Q::count));
}

/// One sine of amplitude 1 anywhere, 4000 samples at 1000 Hz.
double one_line(Arguments& a) {
  const double frequency = a("frequency", Q::number);
  std::vector<double> x;
  for (int i = 0; i < 4000; ++i) x.push_back(std::sin(2 * pi * frequency * i / 1000.0));
  return entry_of(numerics::amplitude_spectrum(x, 1000), a("entry", Q::count));
}

std::vector<double> generated_noise() {
  std::vector<double> values;
  std::uint64_t state = 12345;
  for (int i = 0; i < 4096; ++i) {
    state = (1103515245U * state + 12345U) % 2147483648U;
    values.push_back(static_cast<double>(state) / 2147483648.0 - 0.5);
  }
  return values;
}

double noise_density(Arguments& a) {
  return entry_of(numerics::welch_density(generated_noise(), 1, 256), a("entry", Q::count));
}

double noise_power(Arguments& /*unused*/) {
  const numerics::Spectrum density = numerics::welch_density(generated_noise(), 1, 256);
  double sum = 0;
  for (const double value : density.value) sum += value * density.step;
  return sum;
}

/// A roll of 0.4 m with a caliper of 0.2 mm at 5 m/s, a minute at 500 Hz: its angle, and a signal of orders 1 and 3
/// with a line at 8 Hz.
struct Unwind {
  std::vector<double> angle{}, signal{};

  static double angle_at(double t) {
    constexpr double v = 5, full = 0.4, caliper = 0.2e-3;
    return (full - std::sqrt(full * full - caliper * v * t / pi)) * 2 * pi / caliper;
  }
  Unwind() {
    for (int i = 0; i < 30000; ++i) {
      const double t = i / 500.0, theta = angle_at(t);
      angle.push_back(theta);
      signal.push_back(std::sin(theta) + 0.4 * std::sin(3 * theta + 0.5) + 0.6 * std::sin(2 * pi * 8 * t));
    }
  }
};

double unwind_turns(Arguments& /*unused*/) { return Unwind().angle.back() / (2 * pi); }

/// Amplitude by a cubic spline over whole turns, 64 points each.
double order_by_spline(Arguments& a) {
  const Unwind unwind;
  std::vector<double> at;
  for (int i = 0; i < 123 * 64; ++i) at.push_back(2 * pi * i / 64);
  const auto even = numerics::cubic_spline(unwind.angle, unwind.signal, at);
  return entry_of(numerics::amplitude_spectrum(even, 64), 123 * a("order", Q::count));
}

/// The same as a log is judged: samples one after another, a windowed sinc, whole turns of what came out.
double order_by_stream(Arguments& a) {
  const Unwind unwind;
  std::vector<double> even;
  numerics::EvenSteps steps(2 * pi / 64, [&](double value) { even.push_back(value); });
  for (std::size_t i = 0; i < unwind.angle.size(); ++i) steps.put(unwind.signal[i], unwind.angle[i]);
  if (even.size() < 120 * 64) throw CaseFault("too few turns came out");
  even.resize(120 * 64);
  return entry_of(numerics::amplitude_spectrum(even, 64), 120 * a("order", Q::count));
}

/// The highest amplitude of all other orders, which the line at 8 Hz smears over; without window.
double highest_other_order(Arguments& /*unused*/) {
  const Unwind unwind;
  std::vector<double> at;
  for (int i = 0; i < 123 * 64; ++i) at.push_back(2 * pi * i / 64);
  const auto even = numerics::cubic_spline(unwind.angle, unwind.signal, at);
  std::vector<std::complex<double>> transform(even.size() / 2 + 1);
  numerics::Fft(even.size()).forward_real(even.data(), transform.data());
  double highest = 0;
  for (std::size_t k = 1; k + 1 < transform.size(); ++k)
    if (k != 123 && k != 369)
      highest = std::max(highest, 2 * std::abs(transform[k]) / static_cast<double>(even.size()));
  return highest;
}

}  // namespace

Evaluators signal_evaluators() {
  return {
      {"amplitude_spectrum.two_lines", {Q::number, two_lines}},
      {"amplitude_spectrum.one_line", {Q::number, one_line}},
      {"welch_density.noise", {Q::number, noise_density}},
      {"welch_density.noise_power", {Q::number, noise_power}},
      {"orders.turns", {Q::number, unwind_turns}},
      {"orders.by_spline", {Q::number, order_by_spline}},
      {"orders.by_stream", {Q::number, order_by_stream}},
      {"orders.highest_other", {Q::number, highest_other_order}},
  };
}

}  // namespace holdback::published
