// Controllers of the brake pressure, asked once a sample. One small interface: what is measured goes in, a set pressure
// comes out, rounded to what the regulator can set.
#pragma once

#include <memory>
#include <vector>

namespace holdback::dynamics {

/// What a controller may know at a sample.
struct Sample {
  double time{};               // [s]
  double diameter{};           // [m] as measured
  double tension{};            // [N] as measured
  double dancer_place{};       // [1] −1 … 1 as measured; above zero it has taken web up: tension is too low
  double setpoint{};           // [N]
  double line_speed{};         // [m/s]
  double line_acceleration{};  // [m/s²] as the line's drive commands it
  double brake_share{1};       // [1] of the torque per pressure that the engaged pairs give; heat is not known
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

/// A hand on a regulator that follows its card, from the full roll down, and makes good for pairs that were switched
/// and for another setpoint as a rule of three does.
class HandRegulator : public Controller {
 public:
  /// `card` by falling diameter, at least one line; above the first its pressure holds. `threshold` [Pa] is where the
  /// pads begin to grip, `setpoint` [N] what the card is for.
  HandRegulator(std::vector<HandLine> card, const PressureRange& range, double threshold = 0, double setpoint = 0);
  double pressure(const Sample& sample) override;

 private:
  std::vector<HandLine> card_;
  PressureRange range_;
  double threshold_;
  double setpoint_;
};

/// How a pressure follows from a torque: the brake and the roll as the controller believes them to be.
struct Believed {
  double torque_per_pressure{};   // [N·m/Pa] > 0
  double threshold{};             // [Pa]
  double drag{};                  // [N·m]
  double fixed_inertia{};         // [kg·m²]
  double inertia_per_fourth{};    // [kg/m²]
  double core_radius{};           // [m]
  double inertia_compensation{};  // [1] share of the inertia's torque that is added while the line's speed changes
};

/// Torque [N·m] that the diameter and the line's acceleration ask for at the setpoint, drag taken off.
double torque_asked(const Believed& believed, const Sample& sample);

/// Pressure [Pa] for a torque [N·m], not below the threshold.
double pressure_asked(const Believed& believed, const Sample& sample, double torque);

/// Pressure in proportion to the measured diameter: p = p_0 + (T D/2 − M_d)/K.
class DiameterFollower : public Controller {
 public:
  DiameterFollower(const Believed& believed, const PressureRange& range);
  double pressure(const Sample& sample) override;

 private:
  Believed believed_;
  PressureRange range_;
};

/// Settings of a loop, in pure numbers (model/control.hpp): correction of torque over that of the setpoint, for an
/// error of the whole setpoint or of half the dancer's travel.
struct LoopSettings {
  double gain{};             // [1]
  double integral_time{};    // [s] > 0
  double derivative_time{};  // [s] ≥ 0; filtered by an eighth of it, not less than a sample
  double sample_time{};      // [s] > 0
  double full_radius{};      // [m] > 0: fixed, the torque is that of the full roll
  bool scheduled{};          // the gain follows the diameter as the stand does
  double authority{1};       // [1] > 0, most of the correction, over the torque of the setpoint
};

/// What a loop holds on to.
enum class Held { tension, dancer_place };

/// Arm [m] by which a loop's gain is multiplied at a radius: fixed, that of the full roll. Scheduled, it undoes what
/// the diameter does to the stand: tension answers torque as 1/R, so the arm is R; a dancer's place answers it as R/J,
/// so the arm goes with J/R.
double gain_arm(Held held, const LoopSettings& settings, const Believed& believed, double radius);

/// Proportional, integral and derivative control of the measured tension or the dancer's place, around the pressure
/// that the diameter asks for. While the pressure is at an end of its range the integral stands still where it would go
/// further out; at standstill it stands still altogether.
class LoopController : public Controller {
 public:
  LoopController(Held held, const LoopSettings& settings, const Believed& believed, const PressureRange& range);
  double pressure(const Sample& sample) override;

 private:
  Held held_;
  LoopSettings settings_;
  Believed believed_;
  PressureRange range_;
  double integral_{};  // [1]
  double slow_{};      // [1] the error behind the filter of the derivative
  bool begun_{};
};

}  // namespace holdback::dynamics
