#include "holdback/field/log_stand.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/physics/brake.hpp"

namespace holdback::field {

LoopPoint loop_at(const LogStand& stand, double radius) {
  const auto& points = stand.loop;
  if (points.empty()) return {};
  std::size_t i = 0;
  while (i + 2 < points.size() && points[i + 1].radius > radius) ++i;
  if (points.size() == 1) return points.front();
  const LoopPoint &a = points[i], &b = points[i + 1];
  const double apart = b.radius - a.radius;
  const double x = apart != 0 ? std::clamp((radius - a.radius) / apart, 0.0, 1.0) : 0;
  // A crossover that is missing at one end is missing between.
  const auto between = [x](double low, double high) { return low > 0 && high > 0 ? low + x * (high - low) : 0; };
  return {radius,
          between(a.mode, b.mode),
          between(a.crossover, b.crossover),
          between(a.turnover, b.turnover),
          between(a.quick_turnover, b.quick_turnover),
          between(a.proportional, b.proportional),
          a.runout_tension + x * (b.runout_tension - a.runout_tension),
          a.stick_slip_onset + x * (b.stick_slip_onset - a.stick_slip_onset),
          a.friction_left + x * (b.friction_left - a.friction_left)};
}

// K (1 + 1/(τ_I s)) behind the lags of cell and air; the sample's hold and dead time turn but do not shrink it.
double answer_of(const LogStand& stand, const LoopPoint& point, double frequency) {
  if (!(stand.integral_time > 0) || !(frequency > 0)) return 0;
  return point.proportional * std::hypot(1, 1 / (frequency * stand.integral_time)) /
         std::hypot(1, frequency * stand.cell_lag) / std::hypot(1, frequency * stand.air_lag);
}

double friction_left_of(const LogStand& stand, double radius, std::optional<double> disc) {
  if (disc) return stand.fade_start ? physics::friction_left(*stand.fade_start, stand.fade_rate, *disc) : 1;
  return stand.loop.empty() ? 1 : loop_at(stand, radius).friction_left;
}

}  // namespace holdback::field
