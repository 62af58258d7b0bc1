// Evaluators of an unwind's whole loop: the plant, the air, a PI controller that samples and holds.
#include <cmath>
#include <limits>

#include "holdback/numerics/frequency.hpp"
#include "holdback/physics/control.hpp"
#include "published/evaluators.hpp"

namespace holdback::published {

using namespace physics;
using numerics::Complex;
using numerics::LoopMargins;
using Q = Quantity;

namespace {

/// K (1 + 1/(τ_I s)) times plant, air and hold; the gain is torque over tension.
LoopMargins margins(Arguments& a) {
  UnwindPoint point;
  point.inertia = a("inertia", Q::inertia);
  point.radius = a("radius", Q::short_length);
  point.span = a("span", Q::short_length);
  point.stiffness = a("stiffness", Q::force);
  point.speed = a("speed", Q::speed);
  point.wound_tension = a.or_else("wound_tension", Q::force, 0);
  point.torque_slope = a.or_else("torque_slope", "N m s", 0);
  PiSettings settings;
  settings.gain = a("gain", Q::short_length);
  settings.integral_time = a("integral_time", Q::duration);
  settings.integral_gain = settings.gain / settings.integral_time;
  const double lag = a("lag", Q::duration);
  const double dead_time = a.or_else("dead_time", Q::duration, 0);
  const double period = a.or_else("period", Q::duration, 0);
  const auto loop = [=](Complex s) {
    return pi_response(settings, s) * unwind_response(point, s) * pneumatic_lag(s, lag, dead_time) *
           numerics::sample_and_hold(s, period);
  };
  numerics::FrequencyRange range;
  range.highest = period > 0 ? 3 / period : 1e4;
  range.modes = {unwind_mode(point).frequency};
  return numerics::loop_margins(loop, range, 0);
}

Evaluator part(const Dimension& dimension, double LoopMargins::*member) {
  return {dimension, [member](Arguments& a) {
            const LoopMargins found = margins(a);
            return found.stable ? found.*member : std::numeric_limits<double>::quiet_NaN();
          }};
}

}  // namespace

Evaluators motion_evaluators() {
  return {
      {"unwind_loop.gain_margin", part(Q::number, &LoopMargins::gain_margin)},
      {"unwind_loop.gain_margin_frequency", part("rad/s", &LoopMargins::gain_margin_frequency)},
      {"unwind_loop.phase_margin", part(Q::angle, &LoopMargins::phase_margin)},
      {"unwind_loop.phase_margin_frequency", part("rad/s", &LoopMargins::phase_margin_frequency)},
      {"unwind_loop.sensitivity", part(Q::number, &LoopMargins::sensitivity)},
  };
}

}  // namespace holdback::published
