#include "holdback/field/pluck.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

#include "holdback/field/measure_inputs.hpp"
#include "holdback/numerics/fft.hpp"

namespace holdback::field {

namespace {

constexpr double turn = 2 * std::numbers::pi;
constexpr double lowest = 2;          // [Hz]
constexpr double highest = 2000;      // [Hz]
constexpr double longest = 4;         // [s] of the sound after the tap
constexpr double shortest = 0.1;      // [s]
constexpr double faint = 0.03;        // of the highest peak: lower ones are not looked at
constexpr double near_enough = 0.03;  // of a frequency: air moves partials this far off whole ratios
constexpr std::size_t most_peaks = 8;
constexpr int padding = 8;
constexpr double cycles = 8;       // in a part whose frequency is to be told by itself
constexpr double silence = 1e-12;  // power; full scale is 1

/// Samples with their rate, thinned so that the highest frequency still has room.
struct Stretch {
  double rate{};
  std::vector<double> samples{};
  double duration() const { return static_cast<double>(samples.size()) / rate; }
};

/// Means of `factor` neighbours: what lies above the new half rate is damped, and is not of interest here.
Stretch thinned(const Sound& sound) {
  const auto factor = std::max<std::size_t>(1, static_cast<std::size_t>(sound.rate / (6 * highest)));
  Stretch out{sound.rate / static_cast<double>(factor), {}};
  for (std::size_t at = 0; at + factor <= sound.samples.size(); at += factor) {
    double sum = 0;
    for (std::size_t k = 0; k < factor; ++k) sum += static_cast<double>(sound.samples[at + k]);
    out.samples.push_back(sum / static_cast<double>(factor));
  }
  return out;
}

double power(const std::vector<double>& samples, std::size_t from, std::size_t to) {
  double mean = 0;
  for (std::size_t k = from; k < to; ++k) mean += samples[k];
  mean /= static_cast<double>(to - from);
  double sum = 0;
  for (std::size_t k = from; k < to; ++k) sum += (samples[k] - mean) * (samples[k] - mean);
  return sum / static_cast<double>(to - from);
}

/// From just after the loudest moment until the sound has died away into what was there before, or a few seconds.
Stretch after_tap(const Stretch& all) {
  const auto step = std::max<std::size_t>(8, static_cast<std::size_t>(all.rate * 0.02));
  std::vector<double> loud;
  for (std::size_t at = 0; at + step <= all.samples.size(); at += step)
    loud.push_back(power(all.samples, at, at + step));
  if (loud.empty()) return {all.rate, {}};
  const auto peak = static_cast<std::size_t>(std::max_element(loud.begin(), loud.end()) - loud.begin());
  auto quiet = loud;
  std::sort(quiet.begin(), quiet.end());
  const double floor = std::clamp(4 * quiet[quiet.size() / 20], 1e-5 * loud[peak], 1e-2 * loud[peak]);
  std::size_t end = peak + 1;
  while (end < loud.size() && (loud[end] > floor || end < peak + 5)) ++end;
  const std::size_t from = std::min((peak + 1) * step, all.samples.size());  // the tap itself is left out
  const std::size_t most = from + static_cast<std::size_t>(longest * all.rate);
  const std::size_t to = std::max(from, std::min({end * step, most, all.samples.size()}));
  const auto begin = all.samples.begin();
  return {all.rate, {begin + static_cast<std::ptrdiff_t>(from), begin + static_cast<std::ptrdiff_t>(to)}};
}

/// Amplitudes of a stretch under a Hann window; `bin` [Hz] apart.
struct Spectrum {
  double bin{};
  double line{};  // [Hz] width of a line: one over the duration
  std::vector<double> level{};
};

Spectrum spectrum_of(const Stretch& part) {
  const std::size_t n = part.samples.size();
  std::size_t size = 1;
  while (size < n * padding) size *= 2;
  double mean = 0;
  for (const double sample : part.samples) mean += sample;
  mean /= static_cast<double>(n);
  std::vector<double> windowed(size, 0.0);
  for (std::size_t k = 0; k < n; ++k)
    windowed[k] =
        (part.samples[k] - mean) * 0.5 * (1 - std::cos(turn * (static_cast<double>(k) + 0.5) / static_cast<double>(n)));
  std::vector<std::complex<double>> values(size / 2 + 1);
  numerics::Fft(size).forward_real(windowed.data(), values.data());
  Spectrum out{part.rate / static_cast<double>(size), 1 / part.duration(), {}};
  for (const auto& value : values) out.level.push_back(std::abs(value));
  return out;
}

struct Peak {
  double frequency{};  // [Hz]
  double level{};
};

/// The top of a parabola through the logarithms of a bin and its neighbours.
Peak peak_at(const Spectrum& spectrum, std::size_t k) {
  const auto log = [&](std::size_t i) { return std::log(std::max(spectrum.level[i], 1e-300)); };
  const double left = log(k - 1);
  const double middle = log(k);
  const double right = log(k + 1);
  const double bend = left - 2 * middle + right;
  const double shift = bend < 0 ? std::clamp(0.5 * (left - right) / bend, -0.5, 0.5) : 0;
  return {(static_cast<double>(k) + shift) * spectrum.bin, spectrum.level[k]};
}

/// Tops of the spectrum from low to high within the range, none within two lines of a higher one.
std::vector<Peak> peaks_of(const Spectrum& spectrum, double from, double to) {
  const auto first = std::max<std::size_t>(1, static_cast<std::size_t>(from / spectrum.bin));
  const auto last = std::min(spectrum.level.size() - 1, static_cast<std::size_t>(to / spectrum.bin));
  std::vector<Peak> tops;
  for (std::size_t k = first; k < last; ++k)
    if (spectrum.level[k] > spectrum.level[k - 1] && spectrum.level[k] >= spectrum.level[k + 1])
      tops.push_back(peak_at(spectrum, k));
  std::sort(tops.begin(), tops.end(), [](const Peak& a, const Peak& b) { return a.level > b.level; });
  std::vector<Peak> kept;
  for (const Peak& top : tops) {
    if (kept.size() == most_peaks || top.level < faint * tops.front().level) break;
    const bool apart = std::none_of(kept.begin(), kept.end(), [&](const Peak& other) {
      return std::abs(other.frequency - top.frequency) < 2.5 * spectrum.line;
    });
    if (apart) kept.push_back(top);
  }
  std::sort(kept.begin(), kept.end(), [](const Peak& a, const Peak& b) { return a.frequency < b.frequency; });
  return kept;
}

const Peak* near(const std::vector<Peak>& peaks, double frequency, double line) {
  const Peak* best = nullptr;
  for (const Peak& peak : peaks) {
    if (std::abs(peak.frequency - frequency) > std::max(near_enough * frequency, line)) continue;
    if (best == nullptr || peak.level > best->level) best = &peak;
  }
  return best;
}

/// The first partial: the strongest peak, unless peaks stand at its half or third, whose partials it would be.
const Peak* first_partial(const std::vector<Peak>& peaks, double line) {
  const Peak* strongest =
      &*std::max_element(peaks.begin(), peaks.end(), [](const Peak& a, const Peak& b) { return a.level < b.level; });
  for (const int divisor : {3, 2}) {
    const Peak* lower = near(peaks, strongest->frequency / divisor, line);
    if (lower != nullptr) return lower;
  }
  return strongest;
}

/// The frequency in one part of the stretch, near a known one.
std::optional<double> frequency_in(const Stretch& part, double near_to) {
  const Spectrum spectrum = spectrum_of(part);
  const double reach = std::max(0.05 * near_to, 1.5 * spectrum.line);
  const auto peaks = peaks_of(spectrum, std::max(near_to - reach, lowest / 2), near_to + reach);
  if (peaks.empty()) return std::nullopt;
  return std::max_element(peaks.begin(), peaks.end(), [](const Peak& a, const Peak& b) { return a.level < b.level; })
      ->frequency;
}

/// Standard uncertainty [Hz]: what thirds of the stretch say differently, and a fiftieth of a line.
double doubt_of(const Stretch& part, double frequency) {
  std::vector<double> thirds;
  const auto length = static_cast<std::ptrdiff_t>(part.samples.size() / 3);
  for (std::ptrdiff_t k = 0; k < 3; ++k) {
    const auto begin = part.samples.begin() + k * length;
    const Stretch third{part.rate, {begin, begin + length}};
    if (third.duration() * frequency < cycles) continue;
    if (const auto found = frequency_in(third, frequency)) thirds.push_back(*found);
  }
  const double line = 1 / part.duration();
  double spread = thirds.size() < 2 ? line / std::sqrt(12.0) : 0;
  if (thirds.size() >= 2) {
    const auto [least, most] = std::minmax_element(thirds.begin(), thirds.end());
    spread = (*most - *least) / 2 / std::sqrt(3.0);
  }
  return std::hypot(spread, line / 50);
}

void warn(Problems& problems, const std::string& name, Note what) {
  Problem problem = reading_problem(Severity::warning, "recording", std::move(what));
  problem.file = name;
  problems.push_back(std::move(problem));
}

Amount hertz(double frequency) { return {frequency * turn, Quantity::frequency}; }

void warn_of_hum(double frequency, double line, const std::string& name, Problems& problems) {
  for (const double mains : {50.0, 60.0})
    for (const int times : {1, 2, 3})
      if (std::abs(frequency - times * mains) < std::max(line, 0.004 * times * mains)) {
        warn(problems, name,
             {"the frequency of {0} is that of hum from the mains ({1}); record again with the microphone's lead away "
              "from "
              "motors and cables",
              {hertz(frequency), hertz(times * mains)}});
        return;
      }
}

void warn_of_partials(const PluckSound& out, const Peak& strongest, double expected, const std::string& name,
                      Problems& problems) {
  const double frequency = out.frequency / turn;
  if (std::abs(strongest.frequency - frequency) > near_enough * frequency)
    warn(problems, name,
         {"the strongest tone, {0}, is taken for a higher partial of {1}; tap in the middle of the span to hear the "
          "lowest",
          {hertz(strongest.frequency), hertz(frequency)}});
  const bool alone =
      std::none_of(out.peaks.begin(), out.peaks.end(), [](const SpectrumPeak& p) { return p.partial > 1; });
  if (alone && out.peaks.size() > 1)
    warn(problems, name,
         {"no partials at two or three times {0} stand beside it, but other tones do; listen again whether "
          "it is the span that rings",
          {hertz(frequency)}});
  if (!(expected > 0)) return;
  const double ratio = out.frequency / expected;
  for (const int times : {2, 3})
    if (std::abs(ratio / times - 1) < 0.1)
      warn(problems, name,
           {"{0} is about {1} times what the job's tension would give; it may be that partial: then say so by partial",
            {hertz(frequency), {static_cast<double>(times), Quantity::count}}});
}

Problem silent(const std::string& name, const std::string& what) {
  Problem problem = reading_problem(Severity::error, "recording", {what});
  problem.file = name;
  problem.accepted = {"a second or more of a span that rings between 2 Hz and 2 kHz"};
  return problem;
}

}  // namespace

std::optional<PluckSound> pluck_frequency(const Sound& sound, std::optional<double> expected, const std::string& name,
                                          Problems& problems) {
  const Stretch all = thinned(sound);
  if (!all.samples.empty() && power(all.samples, 0, all.samples.size()) < silence) {
    problems.push_back(silent(name, "nothing rings in the recording: it is silent"));
    return std::nullopt;
  }
  const Stretch part = after_tap(all);
  if (part.samples.size() < 16 || part.duration() < shortest) {
    problems.push_back(silent(name, "the recording ends before anything rings after the tap"));
    return std::nullopt;
  }
  const Spectrum spectrum = spectrum_of(part);
  const auto peaks = peaks_of(spectrum, std::max(lowest, 1.5 * spectrum.line), std::min(highest, 0.45 * part.rate));
  if (peaks.empty() || !(peaks.front().level > 1e-9)) {
    problems.push_back(silent(name, "nothing rings in the recording"));
    return std::nullopt;
  }
  const Peak& first = *first_partial(peaks, spectrum.line);
  const Peak& strongest =
      *std::max_element(peaks.begin(), peaks.end(), [](const Peak& a, const Peak& b) { return a.level < b.level; });
  PluckSound out;
  out.rate = sound.rate * turn;
  out.duration = part.duration();
  out.frequency = first.frequency * turn;
  out.uncertainty = doubt_of(part, first.frequency) * turn;
  for (const Peak& peak : peaks) {
    const double ratio = peak.frequency / first.frequency;
    const double whole = std::round(ratio);
    const bool partial = whole >= 1 && std::abs(ratio / whole - 1) < near_enough;
    out.peaks.push_back({peak.frequency * turn, peak.level / strongest.level, partial ? static_cast<int>(whole) : 0});
  }
  warn_of_hum(first.frequency, spectrum.line, name, problems);
  warn_of_partials(out, strongest, expected.value_or(0), name, problems);
  if (sound.cut) warn(problems, name, {"the recording is long: only its first part was read", {}});
  return out;
}

}  // namespace holdback::field
