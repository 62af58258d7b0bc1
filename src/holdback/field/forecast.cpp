#include "holdback/field/forecast.hpp"

#include <algorithm>
#include <boost/random/chi_squared_distribution.hpp>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>
#include <boost/random/uniform_01.hpp>
#include <cmath>
#include <cstdint>
#include <limits>
#include <stdexcept>

#include "holdback/model/date.hpp"

namespace holdback::field {

namespace {

constexpr double never = std::numeric_limits<double>::infinity();
constexpr int seed = 20260503;
constexpr std::size_t band_points = 33;
constexpr double low_share = 0.05;
constexpr double high_share = 0.95;

/// Random numbers that are the same on every host.
class Dice {
 public:
  double normal() { return normal_(engine_); }
  double uniform() { return uniform_(engine_); }
  double chi_squared(double freedom) { return boost::random::chi_squared_distribution<double>(freedom)(engine_); }
  /// Time until a Wiener process of drift 1 and this variance a unit has come so far: inverse Gaussian with that mean
  /// and the shape mean²/variance. Source: [@michael1976].
  double passage(double mean, double variance) {
    if (!(mean > 0) || !std::isfinite(mean) || !(variance > 0)) return mean;
    const double z = normal();
    const double y = z * z;
    const double shape = mean * mean / variance;
    const double half = mean * y / (2 * shape);
    const double root = mean / (1 + half + std::sqrt(half * (half + 2)));
    return uniform() <= mean / (mean + root) ? root : mean * mean / root;
  }

 private:
  boost::random::mt19937_64 engine_{static_cast<std::uint64_t>(seed)};
  boost::random::normal_distribution<double> normal_{};
  boost::random::uniform_01<double> uniform_{};
};

/// Values with weights, for their quantiles.
class Weighed {
 public:
  explicit Weighed(std::size_t count) { all_.reserve(count); }
  void add(double value, double weight) {
    all_.emplace_back(value, weight);
    sum_ += weight;
  }
  void sort() { std::sort(all_.begin(), all_.end()); }
  /// Of sorted values; infinite when they are.
  double quantile(double share) const {
    double gone = 0;
    for (const auto& [value, weight] : all_)
      if ((gone += weight) >= share * sum_) return value;
    return all_.back().first;
  }
  double mean() const {
    double sum = 0;
    for (const auto& [value, weight] : all_) sum += value * weight;
    return sum / sum_;
  }
  /// Variance of the finite ones.
  double variance() const {
    double weights = 0;
    double sum = 0;
    double squares = 0;
    for (const auto& [value, weight] : all_) {
      if (!std::isfinite(value)) continue;
      weights += weight;
      sum += weight * value;
      squares += weight * value * value;
    }
    if (!(weights > 0)) return 0;
    return std::max(squares / weights - sum / weights * (sum / weights), 0.0);
  }

 private:
  std::vector<std::pair<double, double>> all_;  // value, weight
  double sum_{};
};

/// The lines of all pads, and what they know of the scatter together.
struct Lines {
  std::vector<const PadCase*> pads{};
  std::vector<WearLine> lines{};
  double freedom{scatter_weight};
  double squares{};  // [m²]
  double least{};    // [m²] variance below which no reading is
};

Lines lines_of(const ForecastCase& of) {
  Lines out;
  out.squares = scatter_weight * of.resolution * of.resolution;
  out.least = of.resolution * of.resolution / 12;  // of rounding alone, JCGM 100, F.2.2.1
  for (const PadCase& pad : of.pads) {
    if (!can_forecast(pad)) continue;
    out.pads.push_back(&pad);
    out.lines.push_back(wear_line(pad.use, pad.depth));
    const WearLine& line = out.lines.back();
    out.freedom += std::max(line.count - (line.spread > 0 ? 2 : 1), 0);
    out.squares += line.residual;
  }
  if (out.pads.empty()) throw std::invalid_argument("forecast: no pad has what a forecast needs");
  return out;
}

/// The work to come.
struct Work {
  double per_day{};
  double days{};
  double freedom{};
  double squares{};  // of use² a day
  bool certain{};    // the calendar
};

Work work_of(const ForecastCase& of) {
  Work work;
  if (of.basis == UseBasis::calendar) return {seconds_a_day, 0, 0, 0, true};
  double use = 0;
  for (const UsePeriod& period : of.periods) {
    work.days += period.days;
    use += period.use;
  }
  if (!(work.days > 0)) throw std::invalid_argument("forecast: the log is empty");
  work.per_day = use / work.days;
  for (const UsePeriod& period : of.periods) {
    const double off = period.use - work.per_day * period.days;
    work.squares += off * off / period.days;
  }
  const double spread = work_spread * work.per_day;
  work.freedom = static_cast<double>(of.periods.size()) - 1 + work_weight;
  work.squares += work_weight * spread * spread * month;
  return work;
}

/// One draw of everything.
struct Draw {
  std::vector<double> depth{};  // [m] of each pad now
  std::vector<double> rate{};   // [m/use] of each
  double per_day{};
  double variance{};  // use² a day
  double ahead{};     // a standard normal, for the work on a day
  double weight{1};
};

double log_normal(double x, double mean, double variance) {
  return -0.5 * ((x - mean) * (x - mean) / variance + std::log(variance));
}

/// Middle and rate of one pad's line; answers with the logarithm of the draw's weight, and the prior's share in the
/// rate.
double draw_pad(const WearLine& line, const PadCase& pad, double variance, Dice& dice, Draw& draw,
                double& prior_share) {
  double precision = line.spread / variance;
  double mean = line.rate;
  double weight = 0;
  prior_share = 0;
  if (pad.prior) {
    const double known = 1 / (pad.prior->uncertainty * pad.prior->uncertainty);
    mean = (precision * line.rate + known * pad.prior->rate) / (precision + known);
    prior_share = known / (precision + known);
    if (line.spread > 0) weight = log_normal(line.rate, pad.prior->rate, 1 / precision + 1 / known);
    precision += known;
  }
  const double rate = mean + dice.normal() / std::sqrt(precision);
  const double middle = line.depth_mean + dice.normal() * std::sqrt(variance / line.count);
  draw.rate.push_back(rate);
  draw.depth.push_back(middle - rate * (pad.used - line.use_mean));
  return weight;
}

double remaining(double depth, double rate) {
  if (!(depth > 0)) return 0;
  return rate > 0 ? depth / rate : never;
}

std::optional<Interval> interval_of(Weighed& values) {
  values.sort();
  const double low = values.quantile(low_share);
  const double middle = values.quantile(0.5);
  const double high = values.quantile(high_share);
  if (!std::isfinite(low)) return std::nullopt;
  Interval out{low, {}, {}};
  if (std::isfinite(middle)) out.middle = middle;
  if (std::isfinite(high)) out.high = high;
  return out;
}

/// The draws, and what they say.
class Sampler {
 public:
  Sampler(const ForecastCase& of) : of_(of), lines_(lines_of(of)), work_(work_of(of)) { draw_all(); }

  std::optional<Forecast> run() {
    Forecast out;
    out.basis = of_.basis;
    out.from = of_.from;
    out.samples = of_.samples;
    out.seed = seed;
    out.per_day = work_.per_day;
    pads(out);
    if (!first_worn(out)) return std::nullopt;
    band(out);
    return out;
  }

 private:
  void draw_all() {
    const auto pads = lines_.pads.size();
    prior_share_.assign(pads, 0);
    double most = -never;
    for (int i = 0; i < of_.samples; ++i) {
      Draw draw;
      const double variance = std::max(lines_.squares / dice_.chi_squared(lines_.freedom), lines_.least);
      double weight = 0;
      for (std::size_t pad = 0; pad < pads; ++pad) {
        double share = 0;
        weight += draw_pad(lines_.lines[pad], *lines_.pads[pad], variance, dice_, draw, share);
        prior_share_[pad] += share / of_.samples;
      }
      draw.per_day = work_.per_day;
      if (!work_.certain) {
        draw.variance = work_.squares / dice_.chi_squared(work_.freedom);
        draw.per_day += dice_.normal() * std::sqrt(draw.variance / work_.days);
      }
      draw.ahead = dice_.normal();
      draw.weight = weight;
      most = std::max(most, weight);
      draws_.push_back(std::move(draw));
    }
    for (Draw& draw : draws_) draw.weight = std::exp(draw.weight - most);
  }

  void pads(Forecast& out) {
    const auto count = draws_.size();
    for (std::size_t pad = 0; pad < lines_.pads.size(); ++pad) {
      Weighed rate(count);
      Weighed depth(count);
      Weighed left(count);
      for (const Draw& draw : draws_) {
        rate.add(draw.rate[pad], draw.weight);
        depth.add(draw.depth[pad], draw.weight);
        left.add(remaining(draw.depth[pad], draw.rate[pad]), draw.weight);
      }
      PadForecast forecast;
      forecast.pad = lines_.pads[pad]->pad;
      forecast.measured = lines_.pads[pad]->measured;
      forecast.rate_uncertainty = std::sqrt(rate.variance());
      rate.sort();
      depth.sort();
      forecast.rate = rate.quantile(0.5);
      forecast.depth_now = depth.quantile(0.5);
      forecast.rate_from_prior = prior_share_[pad];
      forecast.remaining = interval_of(left);
      out.pads.push_back(std::move(forecast));
    }
  }

  /// Days that a piece of work takes.
  double days_for(double use, const Draw& draw) {
    if (!(use > 0) || !std::isfinite(use)) return use;
    if (!(draw.per_day > 0)) return never;
    return dice_.passage(use / draw.per_day, draw.variance / (draw.per_day * draw.per_day));
  }

  bool first_worn(Forecast& out) {
    Weighed left(draws_.size());
    Weighed days(draws_.size());
    Weighed wear(draws_.size());
    Weighed work(draws_.size());
    double weights = 0;
    for (const Draw& draw : draws_) {
      std::size_t first = 0;
      double least = never;
      for (std::size_t pad = 0; pad < draw.rate.size(); ++pad) {
        const double here = remaining(draw.depth[pad], draw.rate[pad]);
        if (here < least) first = pad;
        least = std::min(least, here);
      }
      const double time = days_for(least, draw);
      out.pads[first].first += draw.weight;
      weights += draw.weight;
      left.add(least, draw.weight);
      days.add(time, draw.weight);
      if (!(least > 0) || !std::isfinite(time)) continue;
      wear.add(std::log(least), draw.weight);
      work.add(std::log(time / least), draw.weight);
    }
    for (PadForecast& pad : out.pads) pad.first /= weights;
    const auto use_left = interval_of(left);
    const auto days_left = interval_of(days);
    if (!use_left || !use_left->middle || !days_left || !days_left->middle) return false;
    out.remaining = *use_left;
    dates(out, *days_left);
    const double of_wear = wear.variance();
    const double of_work = work.variance();
    out.wear_share = of_wear + of_work > 0 ? of_wear / (of_wear + of_work) : 1;
    governing_ = static_cast<std::size_t>(
        std::max_element(out.pads.begin(), out.pads.end(),
                         [](const PadForecast& a, const PadForecast& b) { return a.first < b.first; }) -
        out.pads.begin());
    out.governs = out.pads[governing_].pad;
    Weighed rate(draws_.size());
    for (const Draw& draw : draws_) rate.add(draw.per_day, draw.weight);
    out.per_day_uncertainty = work_.certain ? 0 : std::sqrt(rate.variance());
    return true;
  }

  static void dates(Forecast& out, const Interval& days) {
    static const double last = *day_of(CivilDate{last_year, 12, 31});
    const auto day = [&](double ahead) { return static_cast<int>(std::min(std::floor(out.from + ahead), last)); };
    out.date.low = day(days.low);
    out.date.middle = day(*days.middle);
    out.beyond_calendar = out.from + *days.middle >= last;
    if (days.high && out.from + *days.high < last) out.date.high = day(*days.high);
    out.measure_by = out.from + std::max((out.date.low - out.from) / 2, 0);
  }

  /// Depth of the governing pad over the days to come.
  void band(Forecast& out) const {
    const int until = out.date.high ? *out.date.high : out.date.middle + (out.date.middle - out.from) / 2;
    const double end = std::min<double>(std::max(until - out.from, 1), 20 * 365.0);
    for (std::size_t i = 0; i < band_points; ++i) {
      const double days = end * static_cast<double>(i) / static_cast<double>(band_points - 1);
      Weighed depth(draws_.size());
      for (const Draw& draw : draws_) {
        const double use = draw.per_day * days + std::sqrt(draw.variance * days) * draw.ahead;
        depth.add(std::max(draw.depth[governing_] - draw.rate[governing_] * std::max(use, 0.0), 0.0), draw.weight);
      }
      depth.sort();
      out.band.day.push_back(out.from + days);
      out.band.low.push_back(depth.quantile(low_share));
      out.band.middle.push_back(depth.quantile(0.5));
      out.band.high.push_back(depth.quantile(high_share));
    }
  }

  const ForecastCase& of_;
  Lines lines_;
  Work work_;
  Dice dice_{};
  std::vector<Draw> draws_{};
  std::vector<double> prior_share_{};
  std::size_t governing_{};
};

}  // namespace

WearLine wear_line(const std::vector<double>& use, const std::vector<double>& depth) {
  WearLine line;
  const auto count = std::min(use.size(), depth.size());
  line.count = static_cast<int>(count);
  for (std::size_t i = 0; i < count; ++i) {
    line.use_mean += use[i] / line.count;
    line.depth_mean += depth[i] / line.count;
  }
  double together = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const double off = use[i] - line.use_mean;
    line.spread += off * off;
    together += off * (depth[i] - line.depth_mean);
  }
  if (line.spread > 0) line.rate = -together / line.spread;
  for (std::size_t i = 0; i < count; ++i) {
    const double off = depth[i] - line.depth_mean + line.rate * (use[i] - line.use_mean);
    line.residual += off * off;
  }
  return line;
}

bool can_forecast(const PadCase& pad) {
  if (pad.use.empty()) return false;
  const auto [least, most] = std::minmax_element(pad.use.begin(), pad.use.end());
  return pad.prior.has_value() || *most > *least;
}

std::optional<Forecast> forecast(const ForecastCase& of) { return Sampler(of).run(); }

}  // namespace holdback::field
