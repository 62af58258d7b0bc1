#include "holdback/field/log_trace.hpp"

#include <algorithm>

namespace holdback::field {

namespace {

Mean joined(const Mean& a, const Mean& b) { return {a.sum + b.sum, a.squares + b.squares, a.count + b.count}; }

}  // namespace

void TraceKeeper::Stretch::add(const Stretch& other) {
  end = other.end;
  speed = joined(speed, other.speed);
  tension = joined(tension, other.tension);
  pressure = joined(pressure, other.pressure);
  diameter = joined(diameter, other.diameter);
  lowest = std::min(lowest, other.lowest);
  highest = std::max(highest, other.highest);
}

void TraceKeeper::put(const LogBucket& bucket) {
  Stretch now;
  now.begin = bucket.begin;
  now.end = bucket.end;
  now.speed = bucket.mean_of(LogChannel::speed);
  now.tension = bucket.mean_of(LogChannel::tension);
  now.pressure = bucket.mean_of(LogChannel::pressure);
  now.diameter = bucket.mean_of(LogChannel::diameter);
  if (now.diameter.count <= 0 && bucket.radius > 0) now.diameter.add(2 * bucket.radius);
  for (const LogRow& row : bucket.rows) {
    const double tension = row[LogChannel::tension];
    now.lowest = std::min(now.lowest, tension);  // not-a-number compares as neither
    now.highest = std::max(now.highest, tension);
  }
  if (!kept_.empty() && filled_ < merged_) {
    kept_.back().add(now);
    ++filled_;
    return;
  }
  if (kept_.size() == most) {
    for (std::size_t i = 0; i < most / 2; ++i) {
      kept_[i] = kept_[2 * i];
      kept_[i].add(kept_[2 * i + 1]);
    }
    kept_.resize(most / 2);
    merged_ *= 2;
  }
  kept_.push_back(now);
  filled_ = 1;
}

LogTrace TraceKeeper::trace(bool has_pressure) const {
  LogTrace made;
  const bool has_diameter =
      std::any_of(kept_.begin(), kept_.end(), [](const Stretch& s) { return s.diameter.count > 0; });
  for (const Stretch& s : kept_) {
    made.time.push_back((s.begin + s.end) / 2);
    made.speed.push_back(s.speed.value());
    made.tension.push_back(s.tension.value());
    made.lowest_tension.push_back(s.tension.count > 0 ? s.lowest : no_reading);
    made.highest_tension.push_back(s.tension.count > 0 ? s.highest : no_reading);
    if (has_pressure) made.pressure.push_back(s.pressure.value());
    if (has_diameter) made.diameter.push_back(s.diameter.value());
  }
  return made;
}

}  // namespace holdback::field
