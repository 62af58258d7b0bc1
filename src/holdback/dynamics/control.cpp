#include "holdback/dynamics/control.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "holdback/dynamics/sensors.hpp"

namespace holdback::dynamics {

namespace {

constexpr double standing = 1e-3;  // [m/s] below which the line counts as standing

double inertia_of(const Believed& believed, double radius) {
  const double square = radius * radius;
  const double core = believed.core_radius * believed.core_radius;
  return believed.fixed_inertia + believed.inertia_per_fourth * std::max(0.0, square * square - core * core);
}

}  // namespace

double settable(const PressureRange& range, double pressure) {
  const double kept = std::clamp(pressure, range.lowest, range.highest);
  if (range.step <= 0) return kept;
  return std::clamp(rounded(kept, range.step), range.lowest, range.highest);
}

HandRegulator::HandRegulator(std::vector<HandLine> card, const PressureRange& range, double threshold, double setpoint)
    : card_(std::move(card)), range_(range), threshold_(threshold), setpoint_(setpoint) {}

double HandRegulator::pressure(const Sample& sample) {
  double set = card_.front().pressure;
  for (const HandLine& line : card_)
    if (sample.diameter <= line.diameter) set = line.pressure;
  const double asked = setpoint_ > 0 ? sample.setpoint / setpoint_ : 1;
  const double share = std::max(1e-6, sample.brake_share);
  return settable(range_, threshold_ + std::max(0.0, set - threshold_) * asked / share);
}

// M = T D/2 − M_d − c J a/(D/2)
double torque_asked(const Believed& believed, const Sample& sample) {
  const double radius = sample.diameter / 2;
  const double steady = sample.setpoint * radius - believed.drag;
  if (sample.line_acceleration == 0 || believed.inertia_compensation == 0) return steady;
  const double inertia = believed.inertia_compensation * inertia_of(believed, radius);
  return steady - inertia * sample.line_acceleration / radius;
}

double pressure_asked(const Believed& believed, const Sample& sample, double torque) {
  const double slope = believed.torque_per_pressure * std::max(1e-6, sample.brake_share);
  return believed.threshold + std::max(0.0, torque) / slope;
}

DiameterFollower::DiameterFollower(const Believed& believed, const PressureRange& range)
    : believed_(believed), range_(range) {}

double DiameterFollower::pressure(const Sample& sample) {
  return settable(range_, pressure_asked(believed_, sample, torque_asked(believed_, sample)));
}

double gain_arm(Held held, const LoopSettings& settings, const Believed& believed, double radius) {
  const double full = settings.full_radius;
  if (!settings.scheduled) return full;
  const double whole = inertia_of(believed, full);
  if (held == Held::tension || whole <= 0) return radius;
  return full * (inertia_of(believed, radius) / whole) * (full / radius);
}

LoopController::LoopController(Held held, const LoopSettings& settings, const Believed& believed,
                               const PressureRange& range)
    : held_(held), settings_(settings), believed_(believed), range_(range) {}

double LoopController::pressure(const Sample& sample) {
  // A load cell reads no more than its range, here twice the setpoint; a dancer goes no farther than its stops.
  const double error =
      held_ == Held::tension ? std::max(-1.0, 1 - sample.tension / sample.setpoint) : sample.dancer_place;
  if (!begun_) slow_ = error;
  begun_ = true;
  double proportional = error;
  if (settings_.derivative_time > 0) {
    const double filter = std::max(settings_.derivative_time / 8, settings_.sample_time);
    proportional += settings_.derivative_time * (error - slow_) / filter;
    slow_ += (error - slow_) * std::min(1.0, settings_.sample_time / filter);
  }
  const double radius = sample.diameter / 2;
  const double whole = settings_.gain * sample.setpoint * gain_arm(held_, settings_, believed_, radius);
  const double most = settings_.authority * sample.setpoint * radius;
  const double asked = torque_asked(believed_, sample);
  const double next = integral_ + error * settings_.sample_time / settings_.integral_time;
  const double correction = whole * (proportional + next);
  const double wanted = asked + std::clamp(correction, -most, most);
  // The range as torques, so that one division is enough.
  const double slope = believed_.torque_per_pressure * std::max(1e-6, sample.brake_share);
  const double highest = slope * (range_.highest - believed_.threshold);
  const double lowest = slope * (range_.lowest - believed_.threshold);
  const bool at_end = (error > 0 && (wanted >= highest || correction >= most)) ||
                      (error < 0 && (wanted <= std::max(0.0, lowest) || correction <= -most));
  if (!at_end && sample.line_speed > standing) integral_ = next;
  const double kept = std::clamp(whole * (proportional + integral_), -most, most);
  return settable(range_, pressure_asked(believed_, sample, asked + kept));
}

}  // namespace holdback::dynamics
