#include "holdback/field/orders.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace holdback::field {

namespace {

using std::numbers::pi;

constexpr double most_rate = 256;  // [1/s] beyond twice this the tension is decimated
constexpr double usual_averages = 5;

std::size_t power_near(double length) {
  const double clamped = std::clamp(length, 64.0, 65536.0);
  return std::size_t{1} << static_cast<unsigned>(std::lround(std::log2(clamped)));
}

std::size_t factor_of(double rate) { return rate > 2 * most_rate ? static_cast<std::size_t>(rate / most_rate) : 1; }

double run_step(const LogStand& stand, double rate) { return std::max(0.025, stand.speed / rate); }

std::vector<std::size_t> ladder(double first, double factor) {
  std::vector<std::size_t> lengths;
  for (int i = 0; i < 3; ++i, first *= factor) {
    const std::size_t length = power_near(first);
    if (lengths.empty() || length > lengths.back()) lengths.push_back(length);
  }
  return lengths;
}

}  // namespace

DiameterTrack::DiameterTrack(const LogStand& stand, bool has_diameter, bool has_turns)
    : stand_(stand),
      source_(has_diameter                                     ? DiameterSource::logged
              : has_turns                                      ? DiameterSource::turns
              : stand.full_radius > 0 && stand.core_radius > 0 ? DiameterSource::web_run
                                                               : DiameterSource::unknown),
      thinning_(4 * stand.caliper / pi) {
  if (source_ == DiameterSource::web_run) {
    square_ = 4 * stand.full_radius * stand.full_radius;
    weight_ = 1;
    first_ = 2 * stand.full_radius;
  }
}

double DiameterTrack::radius_at(double web_run) const {
  if (!(weight_ > 0)) return 0;
  const double core = 2 * stand_.core_radius;
  return std::sqrt(std::max(square_ - thinning_ * web_run, 0.9 * core * core)) / 2;
}

// Weighed by web, so that a line that stands does not count; the first readings count in full.
void DiameterTrack::follow(double square, double run) {
  const double horizon = 30 * std::max(stand_.speed, 0.1);
  const double own = square + thinning_ * web_run_;
  const double step = std::max(run, 1e-3);
  if (weight_ > 0 && std::abs(own - square_) > 0.15 * square_) {
    // Far off: a dropout, or another roll once it lasts.
    odd_run_ += step;
    odd_square_ = own;
    if (odd_run_ < std::max(2 * stand_.speed, 0.5)) return;
    square_ = odd_square_;
    weight_ = step;
    new_roll_ = true;
  }
  odd_run_ = 0;
  weight_ = std::min(horizon, weight_ + step);
  square_ += (own - square_) * std::min(1.0, step / weight_);
}

// D = 2 dL/dθ over at least three turns, belonging to their middle. A counter that counts whole turns, or parts of one,
// is read where it goes on; that moment is known to a row, so that fifty rows must lie between.
void DiameterTrack::by_turns(const LogBucket& bucket) {
  double last = no_reading, behind = 0, row_run = 0;
  for (std::size_t i = bucket.rows.size(); i-- > 1;) {
    const LogRow& row = bucket.rows[i];
    const double before = bucket.rows[i - 1][LogChannel::turns];
    if (row[LogChannel::turns] > before) {
      last = row[LogChannel::turns];
      break;
    }
    const double speed = row[LogChannel::speed];
    if (!std::isnan(speed)) behind += speed * row.step;
  }
  const double speed = bucket.of(LogChannel::speed);
  if (!std::isnan(speed) && bucket.rows.size() > 1) row_run = speed * bucket.rows.back().step;
  if (std::isnan(last)) return;
  const double here = web_run_ - behind;
  if (std::isnan(turns_begin_) || bucket.after_hole || last < turns_begin_) {
    turns_begin_ = last;
    turned_run_ = here;
    return;
  }
  const double turned = last - turns_begin_, ran = here - turned_run_;
  if (turned < 6 * pi - 1e-6 || ran < 50 * row_run) return;
  const double diameter = 2 * ran / turned;
  if (diameter > 0.8 * 2 * stand_.core_radius && diameter < 1.5 * 2 * stand_.full_radius)
    follow(diameter * diameter - thinning_ * (ran / 2 + behind), ran);
  turns_begin_ = last;
  turned_run_ = here;
}

void DiameterTrack::put(const LogBucket& bucket, double run) {
  new_roll_ = false;
  web_run_ += run;
  if (source_ == DiameterSource::logged) {
    const double diameter = bucket.of(LogChannel::diameter);
    const bool plausible = diameter > 0.8 * 2 * stand_.core_radius && diameter < 1.5 * 2 * stand_.full_radius;
    if (plausible) follow(diameter * diameter, run);
  } else if (source_ == DiameterSource::turns) {
    by_turns(bucket);
  }
  if (first_ == 0 && weight_ > 0) first_ = 2 * radius();
}

WelchLadder::WelchLadder(double rate, std::vector<std::size_t> lengths) {
  for (const std::size_t length : lengths) streams_.emplace_back(rate, length, numerics::Detrend::line);
}

numerics::Spectrum WelchLadder::best() const {
  for (auto stream = streams_.rbegin(); stream != streams_.rend(); ++stream)
    if (stream->segments() >= usual_averages) return stream->density();
  for (const auto& stream : streams_)
    if (stream.segments() > 0) return stream.density();
  return {};
}

LogSpectra::LogSpectra(const LogStand& stand, double rate)
    : interval_(1 / rate),
      rate_(rate / static_cast<double>(factor_of(rate))),
      decimator_(factor_of(rate)),
      late_(static_cast<std::size_t>(decimator_.delay()) + 1),
      time_(rate_, ladder(8 * rate_, 4)),
      order_(points_a_turn, ladder(16 * points_a_turn, 4)),
      web_(1 / run_step(stand, rate_), ladder(50 / run_step(stand, rate_), 4)),
      swings_(stand, rate_),
      by_angle_(
          2 * pi / points_a_turn, [this](double value) { order_.put(value); }, 8),
      by_run_(
          run_step(stand, rate_), [this](double value) { web_.put(value); }, 8) {}

void LogSpectra::cut() {
  decimator_.cut();
  late_at_ = late_filled_ = 0;
  has_last_ = false;
  time_.cut();
  order_.cut();
  web_.cut();
  by_angle_.cut();
  by_run_.cut();
  swings_.cut();
}

// Rows that do not lie on an even grid of times are brought onto it, straight between neighbours.
void LogSpectra::put(double time, double tension, double angle, double web_run, double pressure) {
  const Sample now{time, tension, angle, web_run, pressure};
  if (!has_last_) {
    has_last_ = true;
    grid_ = time + interval_;
    last_ = now;
    even(now);
    return;
  }
  while (grid_ <= time + 1e-6 * interval_) {
    const double x = std::clamp((grid_ - last_.time) / (time - last_.time), 0.0, 1.0);
    const auto between = [x](double a, double b) { return a + x * (b - a); };
    even({grid_, between(last_.tension, tension), between(last_.angle, angle), between(last_.run, web_run),
          between(last_.pressure, pressure)});
    grid_ += interval_;
  }
  // A clock a little off the grid must not shift it for ever.
  if (std::abs(grid_ - interval_ - time) < 0.02 * interval_) grid_ = time + interval_;
  last_ = now;
}

void LogSpectra::even(const Sample& sample) {
  late_[late_at_] = sample;
  late_at_ = late_at_ + 1 == late_.size() ? 0 : late_at_ + 1;
  if (late_filled_ < late_.size()) ++late_filled_;
  double value = 0;
  if (!decimator_.put(sample.tension, value)) return;
  Sample then = late_[late_filled_ == late_.size() ? late_at_ : 0];
  then.tension = value;
  put_even(then);
}

void LogSpectra::put_even(const Sample& sample) {
  time_.put(sample.tension);
  if (!std::isnan(sample.angle)) by_angle_.put(sample.tension, sample.angle);
  by_run_.put(sample.tension, sample.run);
  swings_.put(sample.time, sample.tension, sample.angle, sample.run, sample.pressure);
}

}  // namespace holdback::field
