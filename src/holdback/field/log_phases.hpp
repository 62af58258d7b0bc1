// What the line does, from its speed alone: stands, ramps, runs steadily, stops. A bucket is judged by the slope of the
// speed over itself and its neighbours, so that the answer comes two buckets late.
#pragma once

#include <array>
#include <cstddef>
#include <deque>
#include <vector>

#include "holdback/field/log_rows.hpp"
#include "holdback/field/log_stand.hpp"

namespace holdback::field {

/// Slowest speed that counts as moving [m/s].
double moving_from(const LogStand& stand);

/// Slopes at which a phase changes into another.
struct PhaseBounds {
  double moving{};     // [m/s]
  double changing{};   // [m/s²] below it the line runs steadily
  double emergency{};  // [m/s²] a stop above it is an emergency stop
};
PhaseBounds phase_bounds(const LogStand& stand);

/// The phase of a speed [m/s] with a slope [m/s²] that chance shifts by so much (standard deviation).
LogPhase phase_of(const PhaseBounds& bounds, double speed, double slope, double slope_deviation);

/// Puts phases on buckets in the order of time.
class PhaseFinder {
 public:
  explicit PhaseFinder(const LogStand& stand) : bounds_(phase_bounds(stand)) {}

  /// A bucket in; the one two before comes out with its phase, once there is one: true.
  bool put(LogBucket&& in, LogBucket& out);
  /// The last ones, after the end.
  bool finish(LogBucket& out);

 private:
  void judge(std::size_t at);

  PhaseBounds bounds_;
  std::deque<LogBucket> near_{};
  std::size_t next_{};  // in near_, to be handed on
  double since_change_{};
  double last_speed_{};
};

}  // namespace holdback::field
