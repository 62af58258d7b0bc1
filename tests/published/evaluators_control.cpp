// Evaluators of control: margins of loops, controller settings, the plant of an unwind.
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "holdback/numerics/frequency.hpp"
#include "holdback/physics/control.hpp"
#include "published/evaluators.hpp"

namespace holdback::published {

using namespace physics;
using numerics::Complex;
using numerics::LoopMargins;
using Q = Quantity;

namespace {

// Kinds that no stand file has.
constexpr const char* frequency = "rad/s";
constexpr const char* torque_slope = "N m s";

/// (s/ω)² + 2 ζ s/ω + 1
Complex swing(Complex s, double omega, double damping) {
  return s * s / (omega * omega) + 2 * damping / omega * s + 1.0;
}

/// k (1 + 1/(τ_I s)) e^(−sθ)/(sⁿ Π (τ_i s + 1) Π swing_i), perhaps with a swing above the line.
numerics::Response loop(Arguments& a) {
  const double gain = a("gain", Q::number), dead_time = a.or_else("dead_time", Q::duration, 0);
  const double integral_time = a.or_else("integral_time", Q::duration, 0);
  const double integrators = a.or_else("integrators", Q::count, 0);
  std::vector<double> lags, swings, dampings;
  for (int i = 1; a.has("lag_" + std::to_string(i)); ++i) lags.push_back(a("lag_" + std::to_string(i), Q::duration));
  for (int i = 1; a.has("swing_" + std::to_string(i)); ++i) {
    swings.push_back(a("swing_" + std::to_string(i), frequency));
    dampings.push_back(a("damping_" + std::to_string(i), Q::number));
  }
  const double zero = a.or_else("zero", frequency, 0), zero_damping = a.or_else("zero_damping", Q::number, 0);
  return [=](Complex s) {
    Complex value = gain * numerics::dead_time(s, dead_time);
    if (integral_time > 0) value *= 1.0 + 1.0 / (integral_time * s);
    if (zero > 0) value *= swing(s, zero, zero_damping);
    for (int i = 0; i < integrators; ++i) value /= s;
    for (const double lag : lags) value /= lag * s + 1.0;
    for (std::size_t i = 0; i < swings.size(); ++i) value /= swing(s, swings[i], dampings[i]);
    return value;
  };
}

Evaluator margin(const Dimension& dimension, double LoopMargins::*part) {
  return {dimension, [part](Arguments& a) { return numerics::loop_margins(loop(a), {}, 0).*part; }};
}

UnwindPoint point(Arguments& a) {
  UnwindPoint made;
  made.inertia = a("inertia", Q::inertia);
  made.radius = a.or_else("radius", Q::short_length, 0.4);
  made.span = a("span", Q::short_length);
  made.stiffness = a("stiffness", Q::force);
  made.speed = a.or_else("speed", Q::speed, 0);
  made.wound_tension = a.or_else("wound_tension", Q::force, 0);
  made.torque_slope = a.or_else("torque_slope", torque_slope, 0);
  return made;
}

PiSettings first_order(Arguments& a) {
  return first_order_pi(a("gain", Q::number), a("time_constant", Q::duration), a("dead_time", Q::duration),
                        a("closed_loop_time", Q::duration));
}

Evaluators loop_evaluators() {
  return {
      {"loop_margins.gain_margin", margin(Q::number, &LoopMargins::gain_margin)},
      {"loop_margins.gain_margin_frequency", margin(frequency, &LoopMargins::gain_margin_frequency)},
      {"loop_margins.phase_margin", margin(Q::angle, &LoopMargins::phase_margin)},
      {"loop_margins.phase_margin_frequency", margin(frequency, &LoopMargins::phase_margin_frequency)},
      {"loop_margins.delay_margin", margin(Q::duration, &LoopMargins::delay_margin)},
      {"loop_margins.sensitivity", margin(Q::number, &LoopMargins::sensitivity)},
      {"loop_margins.complementary_sensitivity", margin(Q::number, &LoopMargins::complementary_sensitivity)},
      {"loop_margins.distance",
       {Q::number, [](Arguments& a) { return 1 / numerics::loop_margins(loop(a), {}, 0).sensitivity; }}},
      {"loop_margins.ultimate_period",
       {Q::duration,
        [](Arguments& a) {
          return 2 * std::numbers::pi / numerics::loop_margins(loop(a), {}, 0).gain_margin_frequency;
        }}},
  };
}

Evaluators settings_evaluators() {
  return {
      {"first_order_pi.gain", {Q::number, [](Arguments& a) { return first_order(a).gain; }}},
      {"first_order_pi.integral_time", {Q::duration, [](Arguments& a) { return first_order(a).integral_time; }}},
      {"step_overshoot", {Q::ratio, [](Arguments& a) { return step_overshoot(a("damping", Q::number)); }}},
      {"step_peak_time",
       {Q::duration, [](Arguments& a) { return step_peak_time(a("frequency", frequency), a("damping", Q::number)); }}},
  };
}

Evaluators plant_evaluators() {
  return {
      {"unwind_mode.frequency", {frequency, [](Arguments& a) { return unwind_mode(point(a)).frequency; }}},
      {"unwind_response.size",
       {"1/m",
        [](Arguments& a) {
          return std::abs(unwind_response(point(a), {0, a("frequency", frequency)}));
        }}},
      {"runout_tension",
       {"N/m",
        [](Arguments& a) {
          return runout_tension(point(a), a("tension", Q::force), static_cast<int>(a.or_else("lobes", Q::count, 1)));
        }}},
      {"stick_slip_onset", {Q::speed, [](Arguments& a) { return stick_slip_onset(point(a)); }}},
  };
}

}  // namespace

Evaluators control_evaluators() {
  Evaluators all = loop_evaluators();
  all.merge(settings_evaluators());
  all.merge(plant_evaluators());
  return all;
}

}  // namespace holdback::published
