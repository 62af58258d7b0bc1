// What `tune` answers: settings of a control and what they hold from the full roll to the core.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "holdback/results/motion.hpp"

namespace holdback {

/// The stand at one diameter, linear, at the job's speed and tension.
struct TunePoint {
  double diameter{};          // [m]
  double mode_frequency{};    // [rad/s] of roll against web, undamped
  double mode_damping{};      // [1] share of critical; below zero it grows
  double stick_slip_onset{};  // [m/s] web speed below which friction makes it grow
  double runout_tension{};    // [N] amplitude that the roll's runout shakes, loop closed; zero without runout
  double runout_frequency{};  // [rad/s] of the runout at the job's speed
  bool stable{};              // the closed loop
  double gain_margin{};       // [1] ≥ 1, factor; 0 when nothing in reach makes it unstable
  double phase_margin{};      // [rad]; 0 when there is no crossover
  double delay_margin{};      // [s] more dead time that it bears; 0 when nothing in reach
  double sensitivity{};       // [1] Ms
  double crossover{};         // [rad/s]; 0 when there is none
};

/// Settings, and what they hold over the roll.
struct LoopTuning {
  GainSchedule schedule{};
  double gain{};                    // [1] as the stand file's control.gain
  double integral_time{};           // [s]
  double derivative_time{};         // [s]
  double real_gain{};               // at the full roll in pressure over the sensor's own unit: [Pa/N] or [Pa/m]
  State state{};                    // holds the asked margins over the whole roll
  double least_gain_margin{};       // [1] factor; 0: nothing in reach makes it unstable
  double least_phase_margin{};      // [rad]; 0 without a crossover
  double worst_diameter{};          // [m] where the margins are least
  double slowest_crossover{};       // [rad/s]
  std::vector<TunePoint> points{};  // from full to core
};

/// A control that was tried because the present one cannot hold the window.
struct ControlAdvice {
  std::string control{};
  bool holds{};     // the window, in the usual scenario
  Note evidence{};  // what it did
};

/// How the tension shakes with a roll that is out of round: rows of speeds, columns of diameters.
struct RunoutMap {
  std::vector<double> speed{};     // [m/s]
  std::vector<double> diameter{};  // [m]
  std::vector<double> share{};     // [1] amplitude over the setpoint, speed by speed
  std::vector<double> meets{};     // [m/s] per diameter: speed at which the runout meets the mode; 0: beyond the line
  double worst_share{};            // [1]
  double worst_speed{};            // [m/s]
  double worst_diameter{};         // [m]
};

struct Tuning {
  std::string title{};
  std::string job{};
  std::string control{};  // that the stand has
  Fit fit{};
  int pairs{};
  TensionTarget tension{};
  double asked_gain_margin{};       // [1] factor
  double asked_phase_margin{};      // [rad]
  double dead_time{};               // [s] air, hold of the sample and computing, as the loop has it
  double lag{};                     // [s] air and measurement together
  std::vector<LoopTuning> loops{};  // fixed and scheduled, the better first; then that of the stand file, when given
  bool from_file{};                 // the last of them is the stand file's own
  Note advice{};                    // which to take
  RunoutMap runout{};               // empty without runout
  double stick_slip_onset{};        // [m/s] highest over the roll; 0: none
  MotionRun run{};                  // the present control with the tuning advised, in the usual scenario; no trace
  bool holds{};                     // it holds the window in steady run, without slack in ramp and stops
  std::vector<ControlAdvice> others{};  // tried when it does not
  std::vector<Note> assumptions{};
  std::vector<Note> cautions{};
};

}  // namespace holdback
