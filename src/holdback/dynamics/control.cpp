#include "holdback/dynamics/control.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "holdback/physics/pressure.hpp"

namespace holdback::dynamics {

namespace {

/// What the diameter alone asks for [Pa].
double following(const BelievedBrake& brake, const Sample& sample) {
  return physics::pressure_for_tension(sample.setpoint, sample.diameter / 2, brake.drag, brake.torque_per_pressure,
                                       brake.threshold);
}

}  // namespace

double settable(const PressureRange& range, double pressure) {
  const double kept = std::clamp(pressure, range.lowest, range.highest);
  if (range.step <= 0) return kept;
  return std::clamp(std::round(kept / range.step) * range.step, range.lowest, range.highest);
}

HandRegulator::HandRegulator(std::vector<HandLine> card, const PressureRange& range)
    : card_(std::move(card)), range_(range) {}

double HandRegulator::pressure(const Sample& sample) {
  double set = card_.front().pressure;
  for (const HandLine& line : card_)
    if (sample.diameter <= line.diameter) set = line.pressure;
  return settable(range_, set);
}

DiameterFollower::DiameterFollower(const BelievedBrake& brake, const PressureRange& range)
    : brake_(brake), range_(range) {}

double DiameterFollower::pressure(const Sample& sample) { return settable(range_, following(brake_, sample)); }

LoadCellPi::LoadCellPi(const PiSettings& settings, const BelievedBrake& brake, const PressureRange& range)
    : settings_(settings), brake_(brake), range_(range) {}

double LoadCellPi::pressure(const Sample& sample) {
  const double error = sample.setpoint - sample.tension;
  const double gain = settings_.gain * (settings_.scheduled ? sample.diameter / settings_.at_diameter : 1);
  const double next = integral_ + gain * error * settings_.sample_time / settings_.integral_time;
  const double wanted = following(brake_, sample) + gain * error + next;
  const bool winds_up = (wanted > range_.highest && error > 0) || (wanted < range_.lowest && error < 0);
  if (!winds_up) integral_ = next;
  return settable(range_, following(brake_, sample) + gain * error + integral_);
}

}  // namespace holdback::dynamics
