// Controllers of the brake pressure, asked once a sample. One small interface: what is measured goes in, a set pressure
// comes out, rounded to what the regulator can set.
#pragma once

#include <memory>
#include <vector>

#include "holdback/dynamics/plant.hpp"

namespace holdback::dynamics {

/// What a controller may know at a sample.
struct Sample {
  double time{};      // [s]
  double diameter{};  // [m] as measured
  double tension{};   // [N] as measured
  double setpoint{};  // [N]
};

/// What any of them must respect.
struct PressureRange {
  double lowest{};   // [Pa]
  double highest{};  // [Pa] > lowest
  double step{};     // [Pa] ≥ 0, smallest that is set; 0: any
};

/// A pressure within the range, rounded to its step.
double settable(const PressureRange& range, double pressure);

class Controller {
 public:
  Controller() = default;
  Controller(const Controller&) = delete;
  Controller& operator=(const Controller&) = delete;
  virtual ~Controller() = default;

  /// Set pressure [Pa] until the next sample.
  virtual double pressure(const Sample& sample) = 0;
};

/// One line of a hand-setting card: from this diameter down, this pressure.
struct HandLine {
  double diameter{};  // [m]
  double pressure{};  // [Pa]
};

/// A hand on a regulator that follows its card, from the full roll down.
class HandRegulator : public Controller {
 public:
  /// `card` by falling diameter, at least one line; above the first its pressure holds.
  HandRegulator(std::vector<HandLine> card, const PressureRange& range);
  double pressure(const Sample& sample) override;

 private:
  std::vector<HandLine> card_;
  PressureRange range_;
};

/// How a pressure follows from a torque: the brake as the controller believes it to be.
struct BelievedBrake {
  double torque_per_pressure{};  // [N·m/Pa] > 0
  double threshold{};            // [Pa]
  double drag{};                 // [N·m]
};

/// Pressure in proportion to the measured diameter: p = p_0 + (T D/2 − M_d)/K.
class DiameterFollower : public Controller {
 public:
  DiameterFollower(const BelievedBrake& brake, const PressureRange& range);
  double pressure(const Sample& sample) override;

 private:
  BelievedBrake brake_;
  PressureRange range_;
};

/// Settings of a load-cell loop, in pressure for tension.
struct PiSettings {
  double gain{};           // [Pa/N] at `at_diameter`
  double integral_time{};  // [s] > 0
  double sample_time{};    // [s] > 0
  double at_diameter{};    // [m] > 0: with `scheduled` the gain grows in proportion to the diameter from there
  bool scheduled{};
};

/// Proportional and integral control of the measured tension, around the pressure that the diameter asks for. While the
/// pressure is at an end of its range the integral stands still where it would go further out.
class LoadCellPi : public Controller {
 public:
  LoadCellPi(const PiSettings& settings, const BelievedBrake& brake, const PressureRange& range);
  double pressure(const Sample& sample) override;

 private:
  PiSettings settings_;
  BelievedBrake brake_;
  PressureRange range_;
  double integral_{};  // [Pa]
};

}  // namespace holdback::dynamics
