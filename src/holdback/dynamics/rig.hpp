// The whole stand, sample by sample: sensors read, the controller sets, the air carries it to the brake, the equations
// go on, the brake warms. A scenario drives it (run.hpp), or a person at the page (the façade's stepping run).
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "holdback/dynamics/control.hpp"
#include "holdback/dynamics/heat.hpp"
#include "holdback/dynamics/mover.hpp"
#include "holdback/dynamics/sensors.hpp"
#include "holdback/model/control.hpp"

namespace holdback::dynamics {

/// Everything a stand starts with.
struct RigSetup {
  Plant plant{};  // with the pairs below engaged, cold
  HeatPlant heat{};
  std::optional<physics::NodeTemperatures> temperatures{};  // at the start; none: all at ambient
  int pairs{1};                                             // engaged on each brake
  double setpoint{};                                        // [N]
  double line_speed{};                                      // [m/s] at the start, steady
  double radius{};                                          // [m] at the start
  double sample_time{0.01};                                 // [s] > 0
  LoadCell cell{};
  DiameterSensor diameter{};
  MoverOptions mover{};
  /// Makes the mover; empty: make_mover(). A benchmark steps the same stand by another solver.
  std::function<std::unique_ptr<Mover>(const Plant&, const Start&, const MoverOptions&)> maker{};
};

/// The line's speed over time: it goes to a speed within a time, evenly.
class LineDrive {
 public:
  explicit LineDrive(double speed) : speed_(speed) {}
  void go_to(double speed, double from, double duration);
  double speed_at(double time) const;
  double acceleration_at(double time) const { return time < until_ ? rate_ : 0; }
  double until() const { return until_; }  // [s] when it is there
  double target() const { return speed_ + rate_ * (until_ - from_); }

 private:
  double speed_;
  double rate_{};
  double from_{};
  double until_{};
};

class Rig {
 public:
  Rig(const RigSetup& setup, std::unique_ptr<Controller> controller);

  // What a person or a scenario does. Takes effect at the next sample.
  void line_to(double speed, double duration) { line_.go_to(speed, time(), duration); }
  void ask_for(double setpoint) { setpoint_ = setpoint; }
  void engage(int pairs);
  void turn_regulator(std::optional<double> pressure) { by_hand_ = pressure; }  // none: the controller sets
  void fail_air(bool failed) { air_failed_ = failed; }
  void break_web() { broken_ = true; }
  void splice(double new_radius, double mismatch);

  /// Goes on by one sample. False when the steps failed.
  bool sample();

  double time() const { return sight().time; }
  const Sight& sight() const { return *sight_; }
  const Mover& mover() const { return *mover_; }
  const BrakeHeat& heat() const { return heat_; }
  const LineDrive& line() const { return line_; }
  double line_speed() const { return line_.speed_at(time()); }
  double setpoint() const { return setpoint_; }
  double set_pressure() const { return set_; }
  double measured_tension() const { return measured_; }
  double measured_diameter() const { return measured_diameter_; }
  int pairs() const { return pairs_; }
  bool is_broken() const { return broken_; }
  bool at_core() const { return sight().radius <= setup_.plant.roll.core_radius; }
  double web_run() const { return web_run_; }  // [m] that the line has drawn
  double sample_time() const { return setup_.sample_time; }

  double pulled() const { return sight().pull_work + given_; }  // [J], rolls that were changed included
  double stored_gain() const { return mover_->stored() - stored_at_start_; }

 private:
  double share() const;
  void measure();
  double measure_diameter();
  void carry(double to, double pressure);

  RigSetup setup_;
  std::unique_ptr<Controller> controller_;
  std::unique_ptr<Mover> mover_;
  const Sight* sight_;  // the mover's own
  BrakeHeat heat_;
  LineDrive line_;
  Lag cell_;
  Lag diameter_;
  Noise cell_noise_{1};
  Noise diameter_noise_{2};
  Play play_;
  DelayLine delay_;
  double late_{};  // [s] part of the dead time that is not a whole number of samples
  double at_brake_{};
  double set_{};
  double setpoint_;
  double measured_{};
  double measured_diameter_{};
  double turn_angle_{};   // [rad] where the last counted turn ended
  double turn_length_{};  // [m]
  double web_run_{};
  std::optional<double> by_hand_{};
  int pairs_;
  bool air_failed_{};
  bool broken_{};
  bool went_{true};
  double given_{};
  double stored_at_start_{};
  std::size_t samples_{};
};

}  // namespace holdback::dynamics
