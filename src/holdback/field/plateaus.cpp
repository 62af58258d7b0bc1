#include "holdback/field/plateaus.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/field/friction_track.hpp"

namespace holdback::field {

namespace {

constexpr std::size_t most_lengths = 4000;

}  // namespace

// What chance and the regulator's own play make of a pressure that nobody turns.
double PlateauFinder::tolerance(const LogBucket& bucket) const {
  const Mean& pressure = bucket.mean_of(LogChannel::pressure);
  const double noise = pressure.count > 0 ? std::sqrt(pressure.variance() / pressure.count) : 0;
  return std::max({0.6 * stand_.resolution, 0.004 * std::abs(pressure.value()), 4 * noise, 50.0});
}

void PlateauFinder::put(const LogBucket& bucket) {
  const double pressure = bucket.of(LogChannel::pressure);
  if (std::isnan(pressure)) return;
  const bool steady = bucket.phase == LogPhase::steady;
  if (bucket.phase != LogPhase::steady && bucket.phase != LogPhase::standstill) {
    // A control that makes good for inertia changes the pressure with the speed: no step of a hand or a regulator.
    close();
    before_.reset();
    return;
  }
  if (steady) steady_ += bucket.length();
  if (now_ && std::abs(pressure - now_->pressure.value()) > tolerance(bucket)) {
    // One bucket may be on its way; two have left.
    if (++off_ >= 2) {
      close();
      off_ = 0;
    } else {
      return;
    }
  } else {
    off_ = 0;
  }
  if (!now_) {
    now_.emplace();
    now_->begin = bucket.begin;
    now_->first_pressure = pressure;
    now_->early_radius = bucket.radius;
  }
  now_->end = bucket.end;
  now_->last_pressure = pressure;
  now_->pressure.add(pressure);
  if (now_->early_pressure.count < 4) now_->early_pressure.add(pressure);
  Mean& last = now_->late_pressure;
  if (last.count >= 4) {
    last.sum *= 0.75;
    last.count = 3;
  }
  last.add(pressure);
  if (steady && bucket.settled > 2) {
    now_->steady += bucket.length();
    const double tension = bucket.of(LogChannel::tension);
    if (now_->early_tension.count < 8) {
      now_->early_tension.add(tension);
      now_->early_radius = bucket.radius;
    }
    // A slow mean: the last few seconds.
    Mean& late = now_->late_tension;
    if (late.count >= 8) {
      late.sum *= 0.875;
      late.count = 7;
    }
    late.add(tension);
    now_->late_radius = bucket.radius;
  }
}

void PlateauFinder::close() {
  if (!now_) return;
  const Plateau done = *now_;
  now_.reset();
  const double length = done.end - done.begin;
  if (length < least_flat) return;  // on its way
  // A pressure that creeps makes no steps.
  const auto drift_of = [](const Plateau& one) {
    return std::abs(one.late_pressure.value() - one.early_pressure.value());
  };
  flat_ += std::min(length, done.steady);
  if (lengths_.size() < most_lengths) lengths_.push_back(length);
  if (done.early_tension.count > 3 && done.late_tension.count > 3 && done.early_tension.value() > 0 &&
      done.early_radius > 0 && done.late_radius > 0) {
    const double rise = done.late_tension.value() / done.early_tension.value();
    if (rise > rise_) {
      rise_ = rise;
      fall_ = done.early_radius / done.late_radius;
    }
  }
  if (before_) {
    const double step = done.pressure.value() - before_->pressure.value();
    const double sudden = done.first_pressure - before_->last_pressure;
    const bool jumps =
        std::abs(sudden) > 0.6 * std::abs(step) && std::abs(step) > 3 * std::max(drift_of(done), drift_of(*before_));
    if (jumps && done.begin - before_->end < 10) {
      ++found_;
      if (steps_.size() < most_lengths) steps_.push_back(std::abs(step));
      if (turns_.size() < most) {
        HandTurn turn;
        turn.time = (before_->end + done.begin) / 2;
        turn.pressure_before = before_->pressure.value();
        turn.pressure_after = done.pressure.value();
        if (done.early_radius > 0) turn.diameter = 2 * done.early_radius;
        turn.tension_before = before_->late_tension.count > 0 ? before_->late_tension.value() : no_reading;
        turn.tension_after = done.early_tension.count > 0 ? done.early_tension.value() : no_reading;
        turns_.push_back(turn);
      }
    }
  }
  before_ = done;
}

PlateauFacts PlateauFinder::facts() const {
  return {found_, flat_, steady_, median_of(lengths_), median_of(steps_), rise_, fall_};
}

}  // namespace holdback::field
