#include "holdback/numerics/frequency.hpp"

#include <boost/math/tools/minima.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <numbers>
#include <stdexcept>
#include <utility>

#include "holdback/numerics/roots.hpp"

namespace holdback::numerics {

namespace {

using std::numbers::pi;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double largest_power = 700;    // e^700 is still a number
constexpr double faintest = 1e-3;        // |L| below which no crossing matters
constexpr double step = 0.5;             // [rad] and of ln|L|, from one sample to the next
constexpr double close_to_one = 0.25;    // of ln|L| or of the angle to −1: a peak there may hide two crossings
constexpr double on_the_edge = 1e8;      // Ms above which the loop is no longer called stable
constexpr int most_samples = 400000;     // then the response counts as not resolved
constexpr int most_halvings = 30;        // of one interval of the first grid
constexpr double unequal_part = 0.3819;  // where an interval is split: even parts could hide whole turns

Complex kept(Complex exponent) { return {std::min(exponent.real(), largest_power), exponent.imag()}; }

}  // namespace

// e^(−sθ)
Complex dead_time(Complex s, double time) {
  const Complex exponent = kept(-s * std::max(0.0, time));
  if (std::isfinite(exponent.imag())) return std::exp(exponent);
  return {std::exp(exponent.real()), 0};
}

// (1 − e^(−z))/z = e^(−z/2) · sinh(z/2)/(z/2), the second form without cancelling at small z
Complex sample_and_hold(Complex s, double period) {
  const Complex z = -kept(-s * std::max(0.0, period));
  if (z == Complex{}) return 1;
  if (!std::isfinite(z.real()) || !std::isfinite(z.imag())) return 0;
  const double size = std::hypot(z.real(), z.imag());
  if (size < 1) return std::exp(-z / 2.0) * (std::sinh(z / 2.0) / (z / 2.0));
  if (size > 1e300) return 0;
  return (1.0 - std::exp(-z)) / z;
}

std::vector<double> logarithmic_grid(const FrequencyRange& range) {
  const bool sound = range.lowest > 0 && range.highest > range.lowest && std::isfinite(range.highest);
  if (!sound || range.per_decade < 1) throw std::invalid_argument("logarithmic_grid: not a range of frequencies");
  const double decades = std::log10(range.highest) - std::log10(range.lowest);
  const int steps = std::max(1, static_cast<int>(std::ceil(decades * range.per_decade)));
  std::vector<double> grid;
  for (int i = 0; i < steps; ++i) grid.push_back(range.lowest * std::pow(10, decades * i / steps));
  grid.push_back(range.highest);
  return grid;
}

std::vector<FrequencyPoint> frequency_response(const Response& loop, const std::vector<double>& frequencies) {
  std::vector<FrequencyPoint> points;
  for (const double frequency : frequencies) {
    const Complex value = loop({0, frequency});
    double phase = std::arg(value);
    if (!points.empty()) phase += 2 * pi * std::round((points.back().phase - phase) / (2 * pi));
    points.push_back({frequency, std::abs(value), phase});
  }
  return points;
}

// ---- a path through the plane of s, sampled ------------------------------------------------------------------------

namespace {

/// A place on a path (on the imaginary axis ln ω, on a circle the angle) and L there.
struct Sample {
  double place{};
  Complex loop{};
};

double log_gain(const Sample& a) { return std::log(std::max(std::abs(a.loop), 1e-300)); }
double angle_to_minus_one(const Sample& a) { return std::arg(-a.loop); }
double sensitivity(const Sample& a) { return 1 / std::abs(1.0 + a.loop); }
double complementary(const Sample& a) { return std::abs(a.loop) / std::abs(1.0 + a.loop); }

/// The angle from one number to another, without a division that could overflow.
double turned(Complex from, Complex to) { return std::remainder(std::arg(to) - std::arg(from), 2 * pi); }

/// Angle by which 1 + L turns from one sample to the next.
double turn(const Sample& a, const Sample& b) { return turned(1.0 + a.loop, 1.0 + b.loop); }

bool is_small_step(const Sample& a, const Sample& b) {
  if (std::abs(turn(a, b)) > step) return false;
  const double least = std::min(std::abs(a.loop), std::abs(b.loop)),
               most = std::max(std::abs(a.loop), std::abs(b.loop));
  if (most < faintest) return true;
  return most < (1 + step) * least && std::abs(turned(a.loop, b.loop)) < step;
}

class Path {
 public:
  Path(const Response& loop, std::function<Complex(double)> at) : loop_(loop), at_(std::move(at)) {}

  Sample sample(double place) {
    ++taken_;
    const Complex value = loop_(at_(place));
    if (std::isfinite(value.real()) && std::isfinite(value.imag())) return {place, value};
    throw std::invalid_argument("loop_margins: the response of the loop is not finite within the range");
  }

  /// Samples from the first to the last place, with more of them wherever the response turns or changes.
  std::vector<Sample> follow(const std::vector<double>& places) {
    std::vector<Sample> samples{sample(places.front())};
    for (std::size_t i = 1; i < places.size(); ++i) fill(samples, sample(places[i]), most_halvings);
    return samples;
  }

  bool resolved() const { return taken_ < most_samples; }

 private:
  /// Adds what is needed between the last sample and `end`, and `end`.
  void fill(std::vector<Sample>& samples, const Sample& end, int halvings) {
    const Sample begin = samples.back();
    if (halvings > 0 && resolved()) {
      const Sample middle = sample(begin.place + unequal_part * (end.place - begin.place));
      if (is_small_step(begin, middle) && is_small_step(middle, end)) {
        samples.push_back(middle);
      } else {
        fill(samples, middle, halvings - 1);
        fill(samples, end, halvings - 1);
        return;
      }
    }
    samples.push_back(end);
  }

  const Response& loop_;
  std::function<Complex(double)> at_;
  int taken_{};
};

double turns(const std::vector<Sample>& samples) {
  double sum = 0;
  for (std::size_t i = 1; i < samples.size(); ++i) sum += turn(samples[i - 1], samples[i]);
  return sum;
}

/// Angle by which 1 + L turns along a quarter circle, from the real axis to the imaginary one.
double turns_of_quarter(const Response& loop, double radius, bool& resolved) {
  std::vector<double> angles;
  for (int i = 0; i <= 32; ++i) angles.push_back(pi / 2 * i / 32);
  Path path(loop, [radius](double angle) { return std::polar(radius, angle); });
  const double sum = turns(path.follow(angles));
  resolved = resolved && path.resolved();
  return sum;
}

/// ln ω of the first grid, dense around each mode that is told.
std::vector<double> first_places(const FrequencyRange& range) {
  std::vector<double> places;
  for (const double frequency : logarithmic_grid(range)) places.push_back(std::log(frequency));
  const double low = places.front(), high = places.back();
  for (const double mode : range.modes) {
    if (!(mode > range.lowest && mode < range.highest)) continue;
    for (int i = 0; i < 20; ++i) {
      for (const double side : {-1.0, 1.0}) {
        const double place = std::log(mode) + side * std::ldexp(1.0, -i - 2);
        if (place > low && place < high) places.push_back(place);
      }
    }
  }
  std::sort(places.begin(), places.end());
  return places;
}

// ---- peaks and crossings along the imaginary axis
// ---------------------------------------------------------------------

using Measure = double (*)(const Sample&);

/// The highest of `sign` · measure between two places; the measure has one peak there.
Sample peak_between(Path& path, Measure measure, double sign, double low, double high) {
  std::uintmax_t evaluations = 100;
  const auto depth = [&](double place) { return -sign * measure(path.sample(place)); };
  const auto found = boost::math::tools::brent_find_minima(depth, low, high, 30, evaluations);
  return path.sample(found.first);
}

/// Tops (sign 1) or bottoms (sign −1) among the samples, but for the ends.
std::vector<std::size_t> summits(const std::vector<Sample>& samples, Measure measure, double sign) {
  std::vector<std::size_t> found;
  for (std::size_t i = 1; i + 1 < samples.size(); ++i) {
    const double here = sign * measure(samples[i]);
    if (here >= sign * measure(samples[i - 1]) && here > sign * measure(samples[i + 1])) found.push_back(i);
  }
  return found;
}

/// Adds the peaks of a measure that come close to zero, so that two crossings in one step are not missed.
void add_peaks(Path& path, std::vector<Sample>& samples, Measure measure) {
  std::vector<Sample> peaks;
  for (const double sign : {-1.0, 1.0}) {
    for (const std::size_t i : summits(samples, measure, sign)) {
      if (std::abs(measure(samples[i])) > close_to_one) continue;
      peaks.push_back(peak_between(path, measure, sign, samples[i - 1].place, samples[i + 1].place));
    }
  }
  samples.insert(samples.end(), peaks.begin(), peaks.end());
  std::sort(samples.begin(), samples.end(), [](const Sample& a, const Sample& b) { return a.place < b.place; });
}

struct Peak {
  double value{};
  double frequency{};
};

Peak highest(Path& path, const std::vector<Sample>& samples, Measure measure) {
  const auto lower = [measure](const Sample& a, const Sample& b) { return measure(a) < measure(b); };
  Sample best = *std::max_element(samples.begin(), samples.end(), lower);
  const double enough = 0.7 * measure(best);
  for (const std::size_t i : summits(samples, measure, 1)) {
    if (measure(samples[i]) < enough) continue;
    const Sample peak = peak_between(path, measure, 1, samples[i - 1].place, samples[i + 1].place);
    if (lower(best, peak)) best = peak;
  }
  return {measure(best), std::exp(best.place)};
}

/// Samples at the zeros of a measure, wherever its sign changes between neighbours that `may` both be near one.
template <class May>
std::vector<Sample> crossings(Path& path, const std::vector<Sample>& samples, Measure measure, May may) {
  std::vector<Sample> found;
  for (std::size_t i = 1; i < samples.size(); ++i) {
    const Sample &a = samples[i - 1], &b = samples[i];
    if ((measure(a) >= 0) == (measure(b) >= 0) || !may(a) || !may(b)) continue;
    const auto at = [&](double place) { return measure(path.sample(place)); };
    found.push_back(path.sample(find_root(at, a.place, b.place, 1e-14 * std::max(1.0, std::abs(a.place)))));
  }
  return found;
}

// ---- margins
// ------------------------------------------------------------------------------------------------------------

void take_gain(LoopMargins& margins, double factor, double frequency) {
  margins.phase_crossovers.push_back(frequency);
  if (factor >= 1) margins.gain_rise = std::min(margins.gain_rise, factor);
  if (factor <= 1) margins.gain_fall = std::max(margins.gain_fall, factor);
  if (std::abs(std::log(factor)) < std::abs(std::log(margins.gain_margin))) {
    margins.gain_margin = factor;
    margins.gain_margin_frequency = frequency;
  }
}

/// A negative number that L tends to at standstill or far above all poles is a crossing too.
void take_end(LoopMargins& margins, double end, double frequency) {
  if (-end > faintest && -end < 1 / faintest) take_gain(margins, -1 / end, frequency);
}

/// L at s = 0; zero where it has a pole there or is not defined.
double at_standstill(const Response& loop) {
  const Complex value = loop(0);
  return std::isfinite(value.real()) && std::isfinite(value.imag()) ? value.real() : 0;
}

/// L far above all poles; zero where it still changes there.
double far_above(const Response& loop, double highest) {
  const double here = loop(highest).real(), there = loop(2 * highest).real();
  return std::abs(there - here) < 0.1 * std::abs(here) ? here : 0;
}

void take_gains(LoopMargins& margins, Path& axis, const std::vector<Sample>& samples) {
  const auto may = [](const Sample& a) {
    const double gain = std::abs(a.loop);
    return a.loop.real() < 0 && gain > faintest && gain < 1 / faintest;
  };
  for (const Sample& crossing : crossings(axis, samples, angle_to_minus_one, may)) {
    take_gain(margins, 1 / std::abs(crossing.loop), std::exp(crossing.place));
  }
}

void take_phases(LoopMargins& margins, Path& axis, const std::vector<Sample>& samples) {
  const auto any = [](const Sample&) { return true; };
  for (const Sample& crossing : crossings(axis, samples, log_gain, any)) {
    const double frequency = std::exp(crossing.place), angle = angle_to_minus_one(crossing);
    margins.gain_crossovers.push_back(frequency);
    if (std::abs(angle) < std::abs(margins.phase_margin)) {
      margins.phase_margin = angle;
      margins.phase_margin_frequency = frequency;
    }
    const double delay = (angle < 0 ? angle + 2 * pi : angle) / frequency;
    if (delay < margins.delay_margin) {
      margins.delay_margin = delay;
      margins.delay_margin_frequency = frequency;
    }
  }
}

LoopMargins without_crossings() {
  LoopMargins none;
  none.gain_margin = none.gain_rise = none.phase_margin = none.delay_margin = infinity;
  none.gain_margin_frequency = none.phase_margin_frequency = none.delay_margin_frequency = infinity;
  return none;
}

}  // namespace

LoopMargins loop_margins(const Response& loop, const FrequencyRange& range, int unstable_open_poles) {
  LoopMargins margins = without_crossings();
  Path axis(loop, [](double place) { return Complex{0, std::exp(place)}; });
  std::vector<Sample> samples = axis.follow(first_places(range));

  // Z = P − Δarg(1 + L)/π along half of the path that encloses the right half plane, its other half being the mirror.
  margins.resolved = axis.resolved();
  const double angle = turns_of_quarter(loop, range.lowest, margins.resolved) + turns(samples) -
                       turns_of_quarter(loop, range.highest, margins.resolved);
  margins.unstable_poles = unstable_open_poles - static_cast<int>(std::lround(angle / pi));

  add_peaks(axis, samples, log_gain);
  add_peaks(axis, samples, angle_to_minus_one);
  take_end(margins, at_standstill(loop), 0);
  take_gains(margins, axis, samples);
  take_end(margins, far_above(loop, range.highest), infinity);
  take_phases(margins, axis, samples);

  const Peak most = highest(axis, samples, sensitivity), followed = highest(axis, samples, complementary);
  margins.sensitivity = most.value;
  margins.sensitivity_frequency = most.frequency;
  margins.complementary_sensitivity = followed.value;
  margins.complementary_sensitivity_frequency = followed.frequency;

  margins.stable = margins.unstable_poles == 0 && margins.sensitivity < on_the_edge;
  // An L that is still above one at the end turns further with any dead time, however short.
  if (!margins.stable || std::abs(samples.back().loop) >= 1) {
    margins.delay_margin = 0;
    if (margins.stable) margins.delay_margin_frequency = infinity;
  }
  return margins;
}

}  // namespace holdback::numerics
