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
constexpr double lowest = 2;      // [Hz]
constexpr double highest = 2000;  // [Hz]
constexpr double longest = 4;     // [s] of the sound after the tap
constexpr double shortest = 0.1;  // [s]
constexpr double faint = 0.03;    // of the highest peak: lower ones are not looked at
constexpr std::size_t most_peaks = 8;
constexpr double by_chance = 1e-4;   // that noise alone makes a peak which is taken for a tone
constexpr double uneven = 2;         // noise may be so much louder at a tone than in the middle of what lies around
constexpr double main_lobe = 3;      // lines on either side of a tone that are not noise
constexpr double fewest_lines = 24;  // on one side of a tone, for the noise around it
constexpr int padding = 8;
constexpr double cycles = 8;         // in a part whose frequency is to be told by itself
constexpr double steady = 1.0 / 30;  // quietest over loudest power from which there was no tap
constexpr double silence = 1e-12;    // power; full scale is 1

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

/// From just after the loudest moment until the sound has died away into what was there before, or a few seconds; all
/// of a sound that neither begins nor dies away.
Stretch after_tap(const Stretch& all) {
  const auto step = std::max<std::size_t>(8, static_cast<std::size_t>(all.rate * 0.02));
  std::vector<double> loud;
  for (std::size_t at = 0; at + step <= all.samples.size(); at += step)
    loud.push_back(power(all.samples, at, at + step));
  if (loud.empty()) return {all.rate, {}};
  const auto peak = static_cast<std::size_t>(std::max_element(loud.begin(), loud.end()) - loud.begin());
  auto quiet = loud;
  std::sort(quiet.begin(), quiet.end());
  const auto count = [&](double seconds) { return static_cast<std::size_t>(seconds * all.rate); };
  const auto begin = all.samples.begin();
  if (quiet[quiet.size() / 20] > steady * loud[peak]) {
    const std::size_t to = std::min(count(longest), all.samples.size());
    return {all.rate, {begin, begin + static_cast<std::ptrdiff_t>(to)}};
  }
  const double floor = std::clamp(4 * quiet[quiet.size() / 20], 1e-5 * loud[peak], 1e-2 * loud[peak]);
  std::size_t end = peak + 1;
  while (end < loud.size() && (loud[end] > floor || end < peak + 5)) ++end;
  const std::size_t from = std::min((peak + 1) * step, all.samples.size());  // the tap itself is left out
  const std::size_t most = from + count(longest);
  const std::size_t to = std::max(from, std::min({end * step, most, all.samples.size()}));
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

/// The top of a parabola through the logarithms of a bin and its neighbours.
Tone peak_at(const Spectrum& spectrum, std::size_t k) {
  const auto log = [&](std::size_t i) { return std::log(std::max(spectrum.level[i], 1e-300)); };
  const double left = log(k - 1);
  const double middle = log(k);
  const double right = log(k + 1);
  const double bend = left - 2 * middle + right;
  const double shift = bend < 0 ? std::clamp(0.5 * (left - right) / bend, -0.5, 0.5) : 0;
  return {(static_cast<double>(k) + shift) * spectrum.bin, spectrum.level[k]};
}

/// Tops of the spectrum from low to high within the range, none within two lines of a higher one.
std::vector<Tone> peaks_of(const Spectrum& spectrum, double from, double to) {
  const auto first = std::max<std::size_t>(1, static_cast<std::size_t>(from / spectrum.bin));
  const auto last = std::min(spectrum.level.size() - 1, static_cast<std::size_t>(to / spectrum.bin));
  std::vector<Tone> tops;
  for (std::size_t k = first; k < last; ++k)
    if (spectrum.level[k] > spectrum.level[k - 1] && spectrum.level[k] >= spectrum.level[k + 1])
      tops.push_back(peak_at(spectrum, k));
  std::sort(tops.begin(), tops.end(), [](const Tone& a, const Tone& b) { return a.level > b.level; });
  std::vector<Tone> kept;
  for (const Tone& top : tops) {
    if (kept.size() == most_peaks || top.level < faint * tops.front().level) break;
    const bool apart = std::none_of(kept.begin(), kept.end(), [&](const Tone& other) {
      return std::abs(other.frequency - top.frequency) < 2.5 * spectrum.line;
    });
    if (apart) kept.push_back(top);
  }
  std::sort(kept.begin(), kept.end(), [](const Tone& a, const Tone& b) { return a.frequency < b.frequency; });
  return kept;
}

/// Level in the middle of all those from one frequency to another; zero where there are next to none.
double middle_level(const Spectrum& spectrum, double from, double to) {
  const auto first = static_cast<std::size_t>(std::max(0.0, from) / spectrum.bin);
  const auto last = std::min(spectrum.level.size(), static_cast<std::size_t>(std::max(0.0, to) / spectrum.bin));
  if (static_cast<double>(last) < static_cast<double>(first) + 8 * spectrum.line / spectrum.bin) return 0;
  std::vector<double> levels(spectrum.level.begin() + static_cast<std::ptrdiff_t>(first),
                             spectrum.level.begin() + static_cast<std::ptrdiff_t>(last));
  const auto half = levels.begin() + static_cast<std::ptrdiff_t>(levels.size() / 2);
  std::nth_element(levels.begin(), half, levels.end());
  return *half;
}

/// Level that noise as loud as what lies around a frequency reaches anywhere in the range with a small chance. Powers
/// of noise under a window follow the exponential distribution: one of N goes beyond x times its mean with N e^(−x),
/// and the median is ln 2 of the mean. Padding shows peaks between the lines; half a line apart is counted.
double noise_reach(const Spectrum& spectrum, double frequency, double range) {
  const double lobe = main_lobe * spectrum.line;
  const double wide = fewest_lines * spectrum.line;
  const double below = middle_level(spectrum, std::min(frequency / 2, frequency - lobe - wide), frequency - lobe);
  const double above = middle_level(spectrum, frequency + lobe, std::max(2 * frequency, frequency + lobe + wide));
  const double lines = std::max(1.0, 2 * range / spectrum.line);
  return uneven * std::max(below, above) * std::sqrt(std::log(lines / by_chance) / std::log(2.0));
}

/// The tones that stand out of the noise around them.
std::vector<Tone> standing_out(const Spectrum& spectrum, std::vector<Tone> peaks, double range) {
  const auto lost = [&](const Tone& peak) { return peak.level < noise_reach(spectrum, peak.frequency, range); };
  peaks.erase(std::remove_if(peaks.begin(), peaks.end(), lost), peaks.end());
  return peaks;
}

/// The frequency in one part of the stretch, near a known one.
std::optional<double> frequency_in(const Stretch& part, double near_to) {
  const Spectrum spectrum = spectrum_of(part);
  const double reach = std::max(0.05 * near_to, 1.5 * spectrum.line);
  const auto peaks = peaks_of(spectrum, std::max(near_to - reach, lowest / 2), near_to + reach);
  if (peaks.empty()) return std::nullopt;
  return std::max_element(peaks.begin(), peaks.end(), [](const Tone& a, const Tone& b) { return a.level < b.level; })
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

void warn_of_missing(const Partials& partials, const std::vector<Tone>& tones, const std::string& name,
                     Problems& problems) {
  const double frequency = tones[partials.first].frequency;
  const auto number = static_cast<double>(partials.number);
  if (partials.number > 1)
    warn(problems, name,
         {"the lowest tone of the span is not heard: the tones lie as those from the {0}. partial on, so {1} is taken "
          "for that one and the lowest would be about {2}; record again, tapped in the middle, or say by partial which "
          "one it is",
          {{number, Quantity::count}, hertz(frequency), hertz(frequency / std::pow(partials.number, partials.power))}});
  if (partials.lower > 0)
    warn(problems, name,
         {"the tones also lie as those from the {0}. partial on of a lowest tone of {1} that is not heard; then the "
          "tension is far less: say so by partial, or record again, tapped in the middle",
          {{static_cast<double>(partials.lower), Quantity::count}, hertz(partials.lower_first)}});
}

void warn_of_others(const Partials& partials, const std::vector<Tone>& tones, const std::string& name,
                    Problems& problems) {
  const Tone& first = tones[partials.first];
  const Tone& strongest =
      *std::max_element(tones.begin(), tones.end(), [](const Tone& a, const Tone& b) { return a.level < b.level; });
  if (partials.number == 1 && strongest.frequency > first.frequency)
    warn(problems, name,
         {"the strongest tone, {0}, is taken for a higher partial of {1}; tap in the middle of the span to hear the "
          "lowest",
          {hertz(strongest.frequency), hertz(first.frequency)}});
  const auto own = std::count_if(partials.of.begin(), partials.of.end(), [](int n) { return n > 0; });
  if (own == 1 && tones.size() > 1)
    warn(problems, name,
         {"no higher partials of {0} stand beside it, but other tones do; listen again whether it is the span that "
          "rings",
          {hertz(first.frequency)}});
}

/// Near a partial of what the job's tension would give: the nearest of the second and the third.
void warn_of_the_job(const Partials& partials, double frequency, const PluckKnown& known, const std::string& name,
                     Problems& problems) {
  if (partials.number > 1 || !(known.expected.value_or(0) > 0)) return;
  const double ratio = turn * frequency / *known.expected;
  for (const int n : {2, 3}) {
    const double low = 0.9 * std::pow(n, known.spread.least);
    const double high = 1.1 * std::pow(n, known.spread.most);
    if (ratio < low || ratio > high) continue;
    warn(problems, name,
         {"{0} is where the {1}. partial would be at the job's tension; it may be that one: then say so by partial",
          {hertz(frequency), {static_cast<double>(n), Quantity::count}}});
    return;
  }
}

Problem silent(const std::string& name, const std::string& what) {
  Problem problem = reading_problem(Severity::error, "recording", {what});
  problem.file = name;
  problem.accepted = {"a second or more of a span that rings between 2 Hz and 2 kHz; or its frequency, counted"};
  return problem;
}

PluckSound sound_of(const Stretch& part, const std::vector<Tone>& tones, const Partials& partials) {
  PluckSound out;
  const Tone& first = tones[partials.first];
  out.duration = part.duration();
  out.frequency = first.frequency * turn;
  out.uncertainty = doubt_of(part, first.frequency) * turn;
  out.partial = partials.number;
  double highest_level = 0;
  for (const Tone& tone : tones) highest_level = std::max(highest_level, tone.level);
  for (std::size_t i = 0; i < tones.size(); ++i)
    out.peaks.push_back({tones[i].frequency * turn, tones[i].level / highest_level, partials.of[i]});
  return out;
}

/// What rings in the part after the tap; empty, with a problem, where nothing does.
std::vector<Tone> tones_of(const Stretch& part, const Spectrum& spectrum, const std::string& name, Problems& problems) {
  const double from = std::max(lowest, 1.5 * spectrum.line);
  const double to = std::min(highest, 0.45 * part.rate);
  const auto peaks = peaks_of(spectrum, from, to);
  const bool any = std::any_of(peaks.begin(), peaks.end(), [](const Tone& peak) { return peak.level > 1e-9; });
  auto tones = any ? standing_out(spectrum, peaks, to - from) : std::vector<Tone>{};
  if (!any) problems.push_back(silent(name, "nothing rings in the recording"));
  if (any && tones.empty())
    problems.push_back(silent(name,
                              "no tone stands out of the noise in the recording; tap the span once in the middle, "
                              "microphone close to it, fans and pumps off"));
  return tones;
}

}  // namespace

std::optional<PluckSound> pluck_frequency(const Sound& sound, const PluckKnown& known, const std::string& name,
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
  const auto tones = tones_of(part, spectrum, name, problems);
  if (tones.empty()) return std::nullopt;
  const Partials partials = partials_of(tones, known.spread, spectrum.line);
  PluckSound out = sound_of(part, tones, partials);
  out.rate = sound.rate * turn;
  const double frequency = tones[partials.first].frequency;
  warn_of_hum(frequency, spectrum.line, name, problems);
  warn_of_missing(partials, tones, name, problems);
  warn_of_others(partials, tones, name, problems);
  warn_of_the_job(partials, frequency, known, name, problems);
  if (sound.cut) warn(problems, name, {"the recording is long: only its first part was read", {}});
  return out;
}

}  // namespace holdback::field
