#include "holdback/field/log_changes.hpp"

#include <algorithm>
#include <cmath>

namespace holdback::field {

namespace {

constexpr double look_after = 30;       // [s] for the tension to come back
constexpr double least_change = 0.03;   // [1] of the top speed, or of the job's
constexpr double moving_share = 0.004;  // [1] of the top speed below which the line stands

bool is_change(LogPhase phase) {
  return phase == LogPhase::ramp_up || phase == LogPhase::ramp_down || phase == LogPhase::emergency_stop;
}

bool same_way(LogPhase a, LogPhase b) { return (a == LogPhase::ramp_up) == (b == LogPhase::ramp_up); }

}  // namespace

void ChangeFinder::put(const LogBucket& bucket) {
  if (bucket.after_hole && (open_ || settling_)) close();
  if (is_change(bucket.phase)) {
    if (open_ && !same_way(bucket.phase, now_.phase)) close();
    if (!open_) begin(bucket);
    if (bucket.phase == LogPhase::emergency_stop) now_.phase = bucket.phase;
    now_.end = bucket.end;
    look_at(bucket);
  } else if (open_) {
    open_ = false;
    settling_ = true;
    last_outside_ = now_.end;
  }
  if (settling_) settle(bucket);
  const double speed = bucket.of(LogChannel::speed);
  if (!std::isnan(speed)) {
    if (open_ || settling_) now_.to_speed = open_ || bucket.begin <= now_.end + 1e-9 ? speed : now_.to_speed;
    if (!open_) speed_before_ = speed;
  }
}

void ChangeFinder::begin(const LogBucket& bucket) {
  if (settling_) close();
  now_ = LogChange{};
  now_.phase = bucket.phase;
  now_.begin = bucket.begin;
  now_.from_speed = speed_before_;
  now_.lowest_tension = 1e300;
  now_.highest_tension = -1e300;
  sure_low_ = 1e300;
  if (bucket.radius > 0) now_.diameter = 2 * bucket.radius;
  open_ = true;
}

void ChangeFinder::look_at(const LogBucket& bucket) {
  const double none = slack_share * stand_.tension.setpoint;
  double loose = 0;
  for (const LogRow& row : bucket.rows) {
    const double tension = row[LogChannel::tension];
    if (std::isnan(tension)) continue;
    now_.lowest_tension = std::min(now_.lowest_tension, tension);
    now_.highest_tension = std::max(now_.highest_tension, tension);
    if (tension < none) loose += row.step;
  }
  now_.slack += loose;
  const double mean = bucket.of(LogChannel::tension);
  if (!std::isnan(mean)) sure_low_ = std::min(sure_low_, mean);
}

void ChangeFinder::settle(const LogBucket& bucket) {
  const double tension = bucket.of(LogChannel::tension);
  if (bucket.phase != LogPhase::standstill && !std::isnan(tension)) {
    if (bucket.begin < now_.end + 2) look_at(bucket);
    if (tension < stand_.tension.low || tension > stand_.tension.high) last_outside_ = bucket.end;
  }
  looked_until_ = bucket.end;
  if (bucket.end > now_.end + look_after) close();
}

void ChangeFinder::finish() {
  if (open_ || settling_) close();
}

void ChangeFinder::close() {
  const bool was_cut = open_;
  open_ = settling_ = false;
  LogChange change = now_;
  const double lasts = change.end - change.begin;
  const double least = least_change * std::max(stand_.speed, 0.3 * stand_.top_speed);
  if (!(lasts > 0) || std::abs(change.to_speed - change.from_speed) < least) return;
  change.rate = (change.to_speed - change.from_speed) / lasts;
  if (change.lowest_tension > 1e299) change.lowest_tension = change.highest_tension = no_reading;
  change.settling = std::max(0.0, last_outside_ - change.end);
  if (was_cut) change.settling = 0;
  change.settles = !was_cut && last_outside_ < looked_until_ - 1e-9;
  judge(change);
  ++found_;
  if (kept_.size() < most) kept_.push_back(change);
}

void ChangeFinder::judge(LogChange& change) const {
  const TensionTarget& target = stand_.tension;
  const auto force = [](double value) { return Amount{value, Quantity::force}; };
  if (std::isnan(change.lowest_tension)) {
    change.verdict = {"No tension was recorded.", {}};
    return;
  }
  const bool slows = change.phase != LogPhase::ramp_up;
  const double share = change.phase == LogPhase::emergency_stop ? stand_.emergency_share
                       : slows                                  ? stand_.stop_share
                                                                : 0;
  // Limits are judged by means over a fraction of a second: a single reading may be noise.
  const double limit = share * target.setpoint * (1 - 1e-9);
  const bool stands = std::abs(change.to_speed) < moving_share * stand_.top_speed;
  if (change.slack > 0.05 && sure_low_ < 2 * slack_share * target.setpoint) {
    change.state = State::fails;
    change.verdict = {slows ? "The web went slack for {0}: the brake did not stop the roll as fast as the line stopped."
                            : "The web went slack for {0} while the line sped up.",
                      {{change.slack, Quantity::duration}}};
  } else if (slows && sure_low_ < std::min(limit, target.low) && !(stands && sure_low_ > 0.5 * limit && limit <= 0)) {
    change.state = State::fails;
    change.verdict = {"The tension fell to {0}; {1} must remain.", {force(sure_low_), force(limit)}};
  } else if (change.highest_tension > target.high || sure_low_ < target.low) {
    change.state = State::tight;
    change.verdict = change.settles ? Note{"Outside of the window for a while, back {0} after the change.",
                                           {{change.settling, Quantity::duration}}}
                                    : Note{"Outside of the window, and not back in it as far as was looked ({0}).",
                                           {{looked_until_ - change.end, Quantity::duration}}};
  } else {
    change.verdict = {"Kept the window, {0} to {1}.", {force(change.lowest_tension), force(change.highest_tension)}};
  }
}

}  // namespace holdback::field
