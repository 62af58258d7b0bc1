#include "holdback/field/friction_track.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/physics/roll.hpp"

namespace holdback::field {

namespace {

constexpr double settled_after = 2;   // [s] of steady speed
constexpr double least_share = 0.05;  // [1] of the setpoint's torque, below which the brake hardly grips

double inertia_at(const LogStand& stand, double radius) {
  const double core = stand.core_radius;
  return stand.fixed_inertia + stand.inertia_per_fourth * (std::pow(radius, 4) - core * core * core * core);
}

void add(FrictionStretch& to, const FrictionStretch& other) {
  to.time += other.time;
  to.count += other.count;
  to.asked += other.asked;
  to.expected += other.expected;
  to.over += other.over;
  to.radius += other.radius;
  to.speed += other.speed;
  to.tension += other.tension;
  to.temperature += other.temperature;
  to.warm += other.warm;
}

}  // namespace

double median_of(std::vector<double> values) {
  if (values.empty()) return 0;
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  if (values.size() % 2 == 1) return *middle;
  return (*middle + *std::max_element(values.begin(), middle)) / 2;
}

double robust_slope(const std::vector<double>& x, const std::vector<double>& y, const std::vector<double>& group) {
  std::vector<double> slopes;
  const std::size_t stride = std::max<std::size_t>(1, x.size() / 280);
  for (std::size_t i = 0; i < x.size(); i += stride)
    for (std::size_t j = i + stride; j < x.size(); j += stride)
      if (x[j] != x[i] && (group.empty() || std::abs(group[j] - group[i]) < 0.1 * std::abs(group[i])))
        slopes.push_back((y[j] - y[i]) / (x[j] - x[i]));
  return median_of(std::move(slopes));
}

void FrictionKeeper::put(const LogBucket& bucket) {
  if (bucket.phase != LogPhase::steady || bucket.settled < settled_after || !(bucket.radius > 0)) return;
  const double speed = bucket.of(LogChannel::speed), tension = bucket.of(LogChannel::tension);
  const double pressure = bucket.of(LogChannel::pressure);
  if (std::isnan(speed) || std::isnan(tension) || std::isnan(pressure)) return;
  double share = 1;
  const double pairs = bucket.of(LogChannel::pairs);
  if (!std::isnan(pairs)) share = pairs / stand_.pairs;
  const double disc = bucket.of(LogChannel::temperature);
  const double radius = bucket.radius;
  const double left = friction_left_of(stand_, radius, std::isnan(disc) ? std::nullopt : std::optional<double>(disc));
  FrictionStretch now;
  const double at_roll = tension - stand_.cell_offset;
  now.asked = at_roll * radius - stand_.drag -
              inertia_at(stand_, radius) * physics::roll_acceleration(0, stand_.caliper, speed, radius);
  now.over = pressure - stand_.threshold;
  now.expected = stand_.torque_per_pressure * share * left * now.over;
  if (!(now.expected > least_share * stand_.tension.setpoint * radius)) return;
  const double weight = bucket.length();
  now.time = bucket.middle();
  now.radius = radius;
  now.speed = speed;
  now.tension = at_roll;
  now.temperature = std::isnan(disc) ? 0 : disc;
  for (double* value :
       {&now.time, &now.asked, &now.expected, &now.over, &now.radius, &now.speed, &now.tension, &now.temperature})
    *value *= weight;
  now.count = weight;
  now.warm = std::isnan(disc) ? 0 : weight;
  if (!sums_.empty() && filled_ < merged_) {
    add(sums_.back(), now);
    ++filled_;
    return;
  }
  if (sums_.size() == most) {
    for (std::size_t i = 0; i < most / 2; ++i) {
      sums_[i] = sums_[2 * i];
      add(sums_[i], sums_[2 * i + 1]);
    }
    sums_.resize(most / 2);
    merged_ *= 2;
  }
  sums_.push_back(now);
  filled_ = 1;
}

std::vector<FrictionStretch> FrictionKeeper::stretches() const {
  std::vector<FrictionStretch> made = sums_;
  for (FrictionStretch& s : made) {
    for (double* value : {&s.time, &s.asked, &s.expected, &s.over, &s.radius, &s.speed, &s.tension}) *value /= s.count;
    s.temperature = s.warm > 0 ? s.temperature / s.warm : no_reading;
  }
  return made;
}

FrictionTrack FrictionKeeper::track() const {
  FrictionTrack track;
  bool warm = true;
  std::vector<double> speeds;
  for (const FrictionStretch& s : stretches()) {
    track.time.push_back(s.time);
    track.ratio.push_back(s.asked / s.expected);
    track.diameter.push_back(2 * s.radius);
    speeds.push_back(s.speed);
    track.temperature.push_back(s.temperature);
    warm = warm && !std::isnan(s.temperature);
  }
  if (!warm) track.temperature.clear();
  const std::size_t n = track.time.size();
  if (n == 0) return track;
  track.level = median_of(track.ratio);
  const double slope = n >= 3 ? robust_slope(track.time, track.ratio, speeds) : 0;
  std::vector<double> at_begin;
  for (std::size_t i = 0; i < n; ++i) at_begin.push_back(track.ratio[i] - slope * (track.time[i] - track.time[0]));
  track.first = median_of(at_begin);
  const double span = track.time[n - 1] - track.time[0];
  track.last = track.first + slope * span;
  track.change = track.last - track.first;
  // Scatter around the line, 1.4826 times the median of its sizes; neighbours depend on each other, so that only every
  // tenth stretch, at least five, counts as a reading of its own (common practice, no source).
  for (double& value : at_begin) value = std::abs(value - track.first);
  const double scatter = 1.4826 * median_of(at_begin);
  const double readings = std::max(std::min<double>(5, static_cast<double>(n)), static_cast<double>(n) / 10);
  track.level_uncertainty = scatter / std::sqrt(readings);
  track.change_uncertainty = scatter * std::sqrt(12 / readings);
  if (!track.temperature.empty() && n >= 5) {
    const auto [low, high] = std::minmax_element(track.temperature.begin(), track.temperature.end());
    if (*high - *low > 5) track.per_kelvin = robust_slope(track.temperature, track.ratio);
  }
  return track;
}

std::optional<FrictionLine> FrictionKeeper::line() const {
  const auto all = stretches();
  if (all.size() < 8) return std::nullopt;
  double n = 0, x = 0, y = 0, low = 1e300, high = 0;
  for (const FrictionStretch& s : all) {
    x += s.expected;
    y += s.asked;
    ++n;
    low = std::min(low, s.expected);
    high = std::max(high, s.expected);
  }
  x /= n;
  y /= n;
  FrictionLine line;
  line.spread = low > 0 ? high / low : 0;
  if (line.spread < 1.25) return std::nullopt;
  double xx = 0, xy = 0;
  for (const FrictionStretch& s : all) {
    xx += (s.expected - x) * (s.expected - x);
    xy += (s.expected - x) * (s.asked - y);
  }
  line.slope = xy / xx;
  line.offset = y - line.slope * x;
  double rest = 0;
  for (const FrictionStretch& s : all) {
    const double off = s.asked - line.offset - line.slope * s.expected;
    rest += off * off;
  }
  const double readings = std::max(5.0, n / 10);
  const double variance = rest / n;
  line.slope_uncertainty = std::sqrt(variance / readings / (xx / n));
  line.offset_uncertainty = std::sqrt(variance / readings * (1 + x * x / (xx / n)));
  return line;
}

}  // namespace holdback::field
