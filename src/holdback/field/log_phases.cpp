#include "holdback/field/log_phases.hpp"

#include <algorithm>
#include <utility>

namespace holdback::field {

namespace {

constexpr std::size_t beside = 2;  // buckets to either side of the one judged

}  // namespace

double moving_from(const LogStand& stand) { return std::max(0.005, 0.004 * stand.top_speed); }

PhaseBounds phase_bounds(const LogStand& stand) {
  PhaseBounds bounds;
  bounds.moving = moving_from(stand);
  const double slowest = std::min(stand.ramp_rate, stand.stop_rate);
  bounds.changing = slowest > 0 ? slowest / 5 : 0.01;
  // Between the two rates as a factor; twice the stop where the line has but one.
  bounds.emergency = stand.emergency_rate > 1.2 * stand.stop_rate ? std::sqrt(stand.emergency_rate * stand.stop_rate)
                                                                  : 2 * stand.stop_rate;
  return bounds;
}

LogPhase phase_of(const PhaseBounds& bounds, double speed, double slope, double slope_deviation) {
  if (std::abs(slope) > std::max(bounds.changing, 4 * slope_deviation)) {
    if (slope > 0) return LogPhase::ramp_up;
    return -slope > bounds.emergency ? LogPhase::emergency_stop : LogPhase::ramp_down;
  }
  return speed < bounds.moving ? LogPhase::standstill : LogPhase::steady;
}

bool PhaseFinder::put(LogBucket&& in, LogBucket& out) {
  near_.push_back(std::move(in));
  if (near_.size() <= beside + next_) return false;
  judge(next_);
  if (next_ < beside) {
    out = near_[next_];
    ++next_;
    return true;
  }
  out = std::move(near_[next_]);
  near_[next_] = LogBucket{};
  near_[next_].begin = out.begin;
  near_[next_].end = out.end;
  near_[next_].mean = out.mean;
  near_[next_].after_hole = out.after_hole;
  near_.pop_front();
  return true;
}

bool PhaseFinder::finish(LogBucket& out) {
  if (next_ >= near_.size()) return false;
  judge(next_);
  out = near_[next_++];
  return true;
}

void PhaseFinder::judge(std::size_t at) {
  std::size_t first = at > beside ? at - beside : 0;
  std::size_t last = std::min(near_.size() - 1, at + beside);
  for (std::size_t i = first + 1; i <= at; ++i)
    if (near_[i].after_hole) first = i;
  for (std::size_t i = last; i > at; --i)
    if (near_[i].after_hole) last = i - 1;
  double t = 0, v = 0, n = 0;
  for (std::size_t i = first; i <= last; ++i) {
    const double speed = near_[i].of(LogChannel::speed);
    if (std::isnan(speed)) continue;
    t += near_[i].middle();
    v += speed;
    ++n;
  }
  LogBucket& judged = near_[at];
  if (n < 1) {  // no speed: as it was
    judged.phase = last_speed_ < bounds_.moving ? LogPhase::standstill : LogPhase::steady;
    return;
  }
  t /= n;
  v /= n;
  double tt = 0, tv = 0, noise = 0;
  for (std::size_t i = first; i <= last; ++i) {
    const Mean& speed = near_[i].mean_of(LogChannel::speed);
    if (speed.count < 1) continue;
    const double off = near_[i].middle() - t;
    tt += off * off;
    tv += off * (speed.value() - v);
    noise += speed.variance() / speed.count;
  }
  const double slope = tt > 0 ? tv / tt : 0;
  // Within a bucket a ramp adds its own spread to the noise.
  const double ramp_part = slope * slope * judged.length() * judged.length() / 12;
  const double deviation =
      tt > 0 ? std::sqrt(std::max(0.0, noise / n - ramp_part / std::max(1.0, judged.mean_of(LogChannel::speed).count)) /
                         tt)
             : 0;
  const double own = judged.of(LogChannel::speed);
  last_speed_ = std::isnan(own) ? v : own;
  judged.phase = phase_of(bounds_, last_speed_, slope, deviation);
  const bool changes = judged.phase != LogPhase::steady && judged.phase != LogPhase::standstill;
  since_change_ = changes || judged.after_hole ? 0 : since_change_ + judged.length();
  judged.settled = since_change_;
}

}  // namespace holdback::field
