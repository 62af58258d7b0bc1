// Temperatures of one brake as a run goes on, by the four bodies of physics/thermal.hpp, and the wear of its pads. They
// change in minutes and the motion in hundredths of a second: so they are advanced in steps of a tenth of a second with
// the friction heat of that time, by Heun's method, and what friction they leave holds over the next step. Friction and
// wear go by the disc, whose face the pads rub, as in sizing. Drag heats the discs too: the safe side.
#pragma once

#include <optional>
#include <vector>

#include "holdback/model/brake.hpp"
#include "holdback/physics/thermal.hpp"

namespace holdback::dynamics {

/// One brake of the shaft as heat sees it.
struct HeatPlant {
  physics::ThermalNodes nodes{};
  std::vector<double> convection{};  // [W/K] of the disc, over even steps of the root of speed
  double root_step{1};               // [√(rad/s)]
  double ambient{};                  // [K]
  Grade grade{};                     // fade and wear
  int brakes{1};                     // that share the heat
  double usable_volume{};            // [m³] of one pad
  int pads{2};                       // of one brake, with the pairs engaged
};

class BrakeHeat {
 public:
  /// Starts at these temperatures; none: all at ambient.
  explicit BrakeHeat(const HeatPlant& plant, const std::optional<physics::NodeTemperatures>& start = {});

  /// Goes on to a time [s] with the work [J] that all brakes have taken since the start, and the roll's speed [rad/s].
  void go_on(double time, double work, double roll_speed);

  double friction_left() const { return friction_left_; }  // [1]
  const physics::NodeTemperatures& temperatures() const { return state_; }
  double wear() const { return wear_; }  // [1] share of a pad's usable volume
  void engage(int pads) { plant_.pads = pads; }

 private:
  void step(double duration, double power, double roll_speed);
  double convection_at(double roll_speed) const;

  HeatPlant plant_;
  physics::NodeTemperatures state_{};
  double time_{};
  double work_{};
  double friction_left_{1};
  double wear_{};
};

}  // namespace holdback::dynamics
