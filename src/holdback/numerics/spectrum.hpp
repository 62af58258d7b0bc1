// What a signal is made of by frequency: amplitudes of its lines, the density of its noise, and the lines that stand
// out of it. Frequencies are in the unit of the rate (samples a second give Hz, samples a turn give orders).
#pragma once

#include <complex>
#include <cstddef>
#include <vector>

#include "holdback/numerics/fft.hpp"

namespace holdback::numerics {

/// The periodic Hann window, w_j = ½ − ½ cos(2πj/n). Its lines are 1.5 bins wide as noise sees them. [harris1978]
std::vector<double> hann_window(std::size_t length);

/// Entries 0 … n/2 of a spectrum, `step` apart.
struct Spectrum {
  double step{};                // rate/n
  std::vector<double> value{};  // amplitude, or density
  double segments{1};           // averaged
  double place(std::size_t entry) const { return step * static_cast<double>(entry); }
};

/// Amplitudes of the lines of a whole signal under a Hann window: 2|X|/Σw, at zero and at half the rate |X|/Σw, so
/// that a line in the middle of an entry shows its own amplitude and entry 0 the mean. A line half an entry off shows
/// 8/(3π) of it in both neighbours (check F-1). Empty for fewer than 2 values or a rate that is not positive.
Spectrum amplitude_spectrum(const std::vector<double>& values, double rate);

/// What is taken off each segment before it is windowed.
enum class Detrend { constant, line };

/// Density over frequency [unit²/frequency], one side, averaged over segments that a signal fills bit by bit: Hann
/// window, half overlap, as [welch1967]. Memory is that of one segment; what does not fill a segment is left out.
class WelchStream {
 public:
  /// `segment` ≥ 4 values, even; `rate` > 0. std::invalid_argument else.
  WelchStream(double rate, std::size_t segment, Detrend detrend = Detrend::constant);

  void put(double value) {
    kept_.push_back(value);
    if (kept_.size() == segment_) take();
  }
  void cut() { kept_.clear(); }  // the signal is broken here: no segment reaches over

  double segments() const { return segments_; }
  Spectrum density() const;  // empty without a segment

  /// Periodogram [unit²/frequency] of the segment taken last; empty before the first.
  const std::vector<double>& latest() const { return latest_; }

 private:
  void take();

  double rate_;
  std::size_t segment_;
  Detrend detrend_;
  Fft fft_;
  std::vector<double> window_;
  double scale_;
  std::vector<double> kept_{};
  std::vector<double> work_{};
  std::vector<std::complex<double>> transform_{};
  std::vector<double> sum_{};
  std::vector<double> latest_{};
  double segments_{};
};

/// The same of a whole signal, with segments no longer than it (as scipy.signal.welch has it).
Spectrum welch_density(const std::vector<double>& values, double rate, std::size_t segment,
                       Detrend detrend = Detrend::constant);

/// Independent segments that half-overlapping Hann segments are worth: K/(1 + 2/36 (1 − 1/K)), the correlation of two
/// neighbours' densities being (1/6)². [welch1967]
double independent_segments(double segments);

/// Density of the noise under the lines: at each entry the median over its neighbourhood, brought from the median of
/// the averaged density of noise to its mean. The neighbourhood reaches `reach` entries to either side, near zero
/// half the entry's own number, at least 4.
std::vector<double> noise_floor(const Spectrum& density, std::size_t reach);

/// A line in a density that noise does not explain.
struct Line {
  double place{};        // frequency, between the entries
  double amplitude{};    // of a sine, from the density over the line's width less that of the noise
  double over_noise{};   // [1] density over the noise's
  double false_alarm{};  // [1] chance that noise alone makes one entry of this spectrum so high
  double width{};        // in frequency, at half its height; 2 entries: a pure tone
};

/// The lines whose chance of being noise is at most `false_alarm`, highest amplitude first; entries 0 to `first` - 1
/// are not looked at. A line hides what lies within its own width.
std::vector<Line> find_lines(const Spectrum& density, const std::vector<double>& floor, double false_alarm,
                             std::size_t first = 3);

/// Chance [1] that noise makes at least one of `entries` densities this many times its mean, averaged over so many
/// independent segments: 1 − (1 − Q(k, k r))^N, Q the upper regularised gamma function.
double false_alarm_chance(double over_noise, double independent, double entries);

}  // namespace holdback::numerics
