// What is known of a stand before its log is read: plain numbers from the stand file, the fit and the linear model, so
// that the judge of a log sees neither sizing nor dynamics. Nothing in here comes from the log.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/model/control.hpp"
#include "holdback/results/choice.hpp"

namespace holdback::field {

/// The stand at one radius, linear, at the job's speed and tension.
struct LoopPoint {
  double radius{};     // [m]
  double mode{};       // [rad/s] swing of roll against web
  double crossover{};  // [rad/s] of the loop with the settings of the stand file; 0 without a loop
  double turnover{};   // [rad/s] where the loop's phase is −180°: it swings there when its gain is too high; 0: none
  double quick_turnover{};    // [rad/s] the same while its integral stands still; 0: none
  double proportional{};      // [Pa/N] gain of the controller; 0: no loop on the tension
  double runout_tension{};    // [N] amplitude that the declared runout makes; 0 without one
  double stick_slip_onset{};  // [m/s] web speed below which the declared friction swings; 0: none
  double friction_left{1};    // [1] of the cold brake, in the state of heat that repeats
};

/// Another friction grade of the same brake.
struct OtherGrade {
  std::string name{};
  double ratio{};  // [1] its torque over that of the grade fitted
};

struct KnownIdler {
  std::string name{};
  double diameter{};  // [m]
};

struct LogStand {
  std::string title{};
  std::string log{};
  std::string job{};
  TensionTarget tension{};
  ControlKind control{};

  // roll
  double core_radius{};         // [m]
  double full_radius{};         // [m]
  double caliper{};             // [m]
  double fixed_inertia{};       // [kg·m²]
  double inertia_per_fourth{};  // [kg/m²], times (R⁴ − r⁴)
  int lobes{1};                 // of the declared runout

  // brake with its pairs engaged
  int pairs{1};                        // on each brake
  int brakes{1};                       // on the shaft
  double torque_per_pressure{};        // [N·m/Pa] nominal, cold, of all engaged pairs
  double threshold{};                  // [Pa]
  double drag{};                       // [N·m] of shaft and released pads
  double friction_band{};              // [1] ± around nominal
  std::optional<double> fade_start{};  // [K]
  double fade_rate{};                  // [1/K]
  double rated_disc{};                 // [K]; 0: not known
  std::string grade{};
  std::vector<OtherGrade> grades{};

  // air
  double resolution{};  // [Pa]
  double hysteresis{};  // [Pa]

  double air_lag{};  // [s]

  // loop
  double integral_time{};  // [s]; 0: no loop
  double cell_lag{};       // [s]

  // line
  double top_speed{};        // [m/s]
  double ramp_rate{};        // [m/s²] > 0
  double stop_rate{};        // [m/s²] > 0
  double emergency_rate{};   // [m/s²] > 0
  double stop_share{};       // [1] of the setpoint that must stay in a normal stop
  double emergency_share{};  // [1]
  double speed{};            // [m/s] of the job

  // web path
  std::vector<KnownIdler> idlers{};
  double cell_offset{};  // [N] that the idlers' drag adds from the roll to where the tension is measured

  std::vector<LoopPoint> loop{};  // by falling radius; empty: not computed
};

/// The stand at a radius, between its points; all zero without points.
LoopPoint loop_at(const LogStand& stand, double radius);

/// Pressure at the brake by tension [Pa/N] that the loop as set makes at a frequency [rad/s]; 0 without one.
double answer_of(const LogStand& stand, const LoopPoint& point, double frequency);

/// Friction left at a disc temperature [K]; without one, as computed for the radius.
double friction_left_of(const LogStand& stand, double radius, std::optional<double> disc);

}  // namespace holdback::field
