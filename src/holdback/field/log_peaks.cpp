// Which thing makes a line: whose frequency it keeps while speed and diameter change, and whose it has.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "holdback/field/log_facts.hpp"

namespace holdback::field {

namespace {

using numerics::Line;
using numerics::Spectrum;
using std::numbers::pi;

constexpr double most_chance = 1e-4;    // of being noise
constexpr double least_share = 0.003;   // [1] of the setpoint
constexpr std::size_t most_lines = 20;  // of a spectrum
constexpr int highest_order = 8;

/// A line with the amplitude that its highest entry alone stands for: that of the whole line for a pure tone, less for
/// one that wandered.
struct Found {
  Line line{};
  double sharp{};
  bool used{};
};

struct Lines {
  const Spectrum& density;
  std::vector<Found> found{};
  double tolerance{};  // of a place

  Lines(const Spectrum& spectrum, double least) : density(spectrum), tolerance(1.2 * spectrum.step) {
    if (spectrum.value.empty()) return;
    const auto floor = numerics::noise_floor(spectrum, 40);
    for (const Line& line : numerics::find_lines(spectrum, floor, most_chance)) {
      if (line.amplitude < least || found.size() == most_lines) break;
      const auto at = static_cast<std::size_t>(std::lround(line.place / spectrum.step));
      found.push_back({line, std::sqrt(3 * spectrum.value[at] * spectrum.step), false});
    }
  }

  /// The sharpest line in a range of places; null for none.
  const Found* sharpest(double low, double high) const {
    const Found* best = nullptr;
    for (const Found& one : found)
      if (one.line.place >= low - tolerance && one.line.place <= high + tolerance &&
          (best == nullptr || one.sharp > best->sharp))
        best = &one;
    return best;
  }

  /// What a line found elsewhere leaves in this spectrum.
  void spend(double low, double high, double amplitude) {
    for (Found& one : found)
      if (one.line.place >= low - 2 * tolerance && one.line.place <= high + 2 * tolerance &&
          one.line.amplitude < 1.3 * amplitude)
        one.used = true;
  }
};

double sharp_of(const Found* found) { return found != nullptr ? found->sharp : 0; }

class Namer {
 public:
  Namer(const LogStand& stand, const LogFacts& facts, const SwingVerdict& swing)
      : stand_(stand),
        run_(facts.steady),
        swing_(swing),
        time_(facts.by_time, least_share * stand.tension.setpoint),
        order_(facts.by_order, least_share * stand.tension.setpoint),
        web_(facts.by_web, least_share * stand.tension.setpoint) {}

  std::vector<LogPeak> go() {
    for (Found& one : order_.found) name_roll(one);
    for (Found& one : web_.found) name_idler(one);
    for (Found& one : time_.found) name_by_time(one);
    for (Found& one : web_.found) name_unknown_idler(one);
    std::sort(peaks_.begin(), peaks_.end(),
              [](const LogPeak& a, const LogPeak& b) { return a.amplitude > b.amplitude; });
    if (peaks_.size() > 30) peaks_.resize(30);
    return std::move(peaks_);
  }

 private:
  LogPeak peak_of(const Found& found, double frequency, double order) const {
    LogPeak peak;
    peak.frequency = frequency;
    peak.order = order;
    peak.amplitude = found.line.amplitude;
    peak.share = found.line.amplitude / stand_.tension.setpoint;
    peak.false_alarm = found.line.false_alarm;
    return peak;
  }
  double roll_frequency() const { return run_.radius > 0 ? run_.speed / run_.radius : 0; }  // [rad/s]

  void name_roll(Found& one) {
    const double order = one.line.place;
    const double whole = std::round(order);
    if (one.used || whole < 1 || whole > highest_order) return;
    if (std::abs(order - whole) > 0.4 * order_.density.step + 0.006 * order) return;
    if (!(run_.radius > 0)) return;
    // Where the same shake would lie by time and by web run.
    const double time_low = order * run_.slowest / run_.largest / (2 * pi);
    const double time_high = order * run_.fastest / run_.smallest / (2 * pi);
    const double web_low = order / (2 * pi * run_.largest), web_high = order / (2 * pi * run_.smallest);
    const double others =
        std::max(sharp_of(time_.sharpest(time_low, time_high)), sharp_of(web_.sharpest(web_low, web_high)));
    if (others > 1.2 * one.sharp) return;  // it keeps time or web better than it keeps the roll
    const double pure = one.sharp / one.line.amplitude;
    if (pure < 0.45) return;  // a hump, not a line
    if (is_of_swing(order * roll_frequency(), one.line.amplitude)) return;
    one.used = true;
    time_.spend(time_low, time_high, one.line.amplitude);
    web_.spend(web_low, web_high, one.line.amplitude);
    LogPeak peak = peak_of(one, order * roll_frequency(), order);
    peak.by_order = true;
    peak.source = PeakSource::roll;
    peak.harmonic = static_cast<int>(whole);
    const bool proven = others < 0.8 * one.sharp;
    peak.confidence = proven ? 0.97 : 0.85;
    peak.why = {proven ? "it keeps to {0} times a turn of the roll while speed or diameter change"
                       : "it lies at {0} times a turn of the roll; speed and diameter changed too little to prove it",
                {{whole, Quantity::number}}};
    peaks_.push_back(peak);
  }

  /// Whether a line is a harmonic of what swings by itself, and less than it.
  bool is_of_swing(double frequency, double amplitude) const {
    if (swing_.empty() || swing_.source == PeakSource::unknown || amplitude > swing_.amplitude) return false;
    const double harmonic = std::max(1.0, std::round(frequency / swing_.frequency));
    return harmonic <= 10 && frequency > 0.97 * harmonic * swing_.lowest &&
           frequency < 1.03 * harmonic * swing_.highest;
  }

  void name_idler(Found& one) {
    if (one.used || !(run_.speed > 0)) return;
    const KnownIdler* best = nullptr;
    double off = 1e300;
    int harmonic = 1;
    for (const KnownIdler& idler : stand_.idlers)
      for (int k = 1; k <= 3; ++k) {
        const double place = k / (pi * idler.diameter);
        const double error = std::abs(one.line.place - place);
        if (error < std::max(web_.tolerance, 0.008 * place) && error < off) {
          best = &idler;
          off = error;
          harmonic = k;
        }
      }
    if (best == nullptr) return;
    const double low = one.line.place * run_.slowest, high = one.line.place * run_.fastest;
    const double others = sharp_of(time_.sharpest(low, high));
    if (others > 1.2 * one.sharp) return;
    one.used = true;
    spend_web(one);
    const double frequency = 2 * pi * one.line.place * run_.speed;
    LogPeak peak = peak_of(one, frequency, roll_frequency() > 0 ? frequency / roll_frequency() : 0);
    peak.source = PeakSource::idler;
    peak.idler = best->name;
    peak.diameter = best->diameter;
    peak.harmonic = harmonic;
    const bool proven = others < 0.8 * one.sharp;
    peak.confidence = proven ? 0.95 : 0.75;
    peak.why = {proven ? "it keeps to the turns of a roller of {0} while the speed changes"
                       : "it lies at the turns of a roller of {0}; the speed changed too little to prove it",
                {{best->diameter, Quantity::short_length}}};
    peaks_.push_back(peak);
  }

  void spend_web(const Found& one) {
    const double place = one.line.place;
    time_.spend(place * run_.slowest, place * run_.fastest, one.line.amplitude);
    if (run_.radius > 0)
      order_.spend(2 * pi * run_.smallest * place, 2 * pi * run_.largest * place, one.line.amplitude);
  }

  void spend_time(const Found& one) {
    const double place = one.line.place;
    web_.spend(place / run_.fastest, place / run_.slowest, one.line.amplitude);
    if (run_.radius > 0)
      order_.spend(2 * pi * place * run_.smallest / run_.fastest, 2 * pi * place * run_.largest / run_.slowest,
                   one.line.amplitude);
  }

  /// Whether a frequency [Hz] is the mains', or what sampling makes of it.
  bool is_hum(double frequency) const {
    for (const double mains : {50.0, 60.0, 100.0, 120.0}) {
      const double images = std::round(mains / run_.rate);
      const double seen = std::abs(mains - images * run_.rate);
      if (seen > 3 * time_.tolerance && std::abs(frequency - seen) < std::max(time_.tolerance, 0.0015 * mains))
        return true;
    }
    return false;
  }

  void name_by_time(Found& one) {
    if (one.used) return;
    const double frequency = 2 * pi * one.line.place;
    LogPeak peak = peak_of(one, frequency, roll_frequency() > 0 ? frequency / roll_frequency() : 0);
    const bool swings = !swing_.empty() && swing_.confidence > 0;
    int harmonic = 0;
    for (int k = 1; swings && k <= 4 && harmonic == 0; ++k)
      if (frequency > 0.85 * k * swing_.lowest && frequency < 1.15 * k * swing_.highest) harmonic = k;
    if (harmonic > 0) {
      peak.source = swing_.source;
      peak.harmonic = harmonic;
      peak.confidence = swing_.confidence;
      peak.why = swing_.source == PeakSource::loop
                     ? Note{"it swings by itself near {0}, where the loop would if its gain were too high",
                            {{swing_.frequency / std::max(swing_.to_turnover, 1e-9), Quantity::frequency}}}
                     : Note{"it swings by itself near {0}, where roll and web swing against each other",
                            {{swing_.frequency / std::max(swing_.to_mode, 1e-9), Quantity::frequency}}};
    } else if (is_hum(one.line.place) && one.sharp > 0.6 * one.line.amplitude) {
      peak.source = PeakSource::hum;
      peak.confidence = 0.8;
      peak.why = {"it lies at the frequency of the mains, or where sampling puts it", {}};
    } else {
      // What goes with the web better than with time is named there, what lies on a steady web line as well.
      const Found* by_web = web_.sharpest(one.line.place / run_.fastest, one.line.place / run_.slowest);
      if (by_web != nullptr && !by_web->used && by_web->sharp > 0.9 * one.sharp) return;
      peak.why = {"nothing that is known of the stand has this frequency", {}};
    }
    one.used = true;
    spend_time(one);
    peaks_.push_back(peak);
  }

  void name_unknown_idler(Found& one) {
    if (one.used || !(run_.speed > 0)) return;
    one.used = true;
    const double low = one.line.place * run_.slowest, high = one.line.place * run_.fastest;
    const double others = sharp_of(time_.sharpest(low, high));
    const double frequency = 2 * pi * one.line.place * run_.speed;
    LogPeak peak = peak_of(one, frequency, roll_frequency() > 0 ? frequency / roll_frequency() : 0);
    const double diameter = 1 / (pi * one.line.place);
    const bool possible = diameter > 0.02 && diameter < 1;
    const bool proven = others < 0.8 * one.sharp && run_.by_speed() > 1.15;
    if (possible && one.sharp > 0.6 * one.line.amplitude && peak.share < 0.3) {
      peak.source = PeakSource::idler;
      peak.diameter = diameter;
      peak.confidence = proven ? 0.8 : 0.35;
      peak.why = {proven ? "it keeps to the turns of a roller of {0}, which the stand file does not have"
                         : "a roller of {0} would turn at it; so would anything with a frequency of its own, for the "
                           "speed hardly changed",
                  {{diameter, Quantity::short_length}}};
    } else {
      peak.why = {"nothing that is known of the stand has this frequency", {}};
    }
    spend_web(one);
    peaks_.push_back(peak);
  }

  const LogStand& stand_;
  const SteadyRun& run_;
  const SwingVerdict& swing_;
  Lines time_, order_, web_;
  std::vector<LogPeak> peaks_{};
};

}  // namespace

std::vector<LogPeak> peaks_of(const LogStand& stand, const LogFacts& facts, const SwingVerdict& swing) {
  return Namer(stand, facts, swing).go();
}

}  // namespace holdback::field
