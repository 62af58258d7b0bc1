// What `simulate` answers: a job run through a scenario under one control, or under several side by side.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "holdback/model/control.hpp"
#include "holdback/model/quantity.hpp"
#include "holdback/results/choice.hpp"

namespace holdback {

std::string_view key_of(ControlKind kind);  // "load cell"
inline constexpr ControlKind last_control_kind = ControlKind::dancer;

/// What was kept of a run, one entry a trace period.
struct RunTrace {
  std::vector<double> time{};              // [s]
  std::vector<double> line_speed{};        // [m/s]
  std::vector<double> rim_speed{};         // [m/s] of the roll's surface
  std::vector<double> tension{};           // [N] in the span behind the roll
  std::vector<double> lowest_tension{};    // [N] since the entry before
  std::vector<double> highest_tension{};   // [N] since the entry before
  std::vector<double> measured_tension{};  // [N] as the load cell gives it; as `tension` without one
  std::vector<double> setpoint{};          // [N]
  std::vector<double> slack{};             // [m] web that hangs loose, or lies on the floor after a break
  std::vector<double> pressure{};          // [Pa] at the brake
  std::vector<double> set_pressure{};      // [Pa] asked for
  std::vector<double> pairs{};             // [1] engaged on each brake
  std::vector<double> diameter{};          // [m]
  std::vector<double> torque{};            // [N·m] of brake and drag
  std::vector<double> slip_power{};        // [W]
  std::vector<double> disc{};              // [K]
  std::vector<double> pads{};              // [K]
  std::vector<double> dancer{};            // [1] −1 … 1, its place between the stops; 0 without one
};

/// A stretch of a run between two events, as it went. Tensions are those in the span behind the roll.
struct PhaseFacts {
  std::string what{};        // "ramp", "hold", "run", "stop", "emergency stop", "standstill", …
  double begin{};            // [s]
  double end{};              // [s]
  double diameter{};         // [m] at its beginning
  double lowest_tension{};   // [N]
  double highest_tension{};  // [N]
  double mean_tension{};     // [N]
  double outside{};          // [s] with the tension outside of the window
  double slack{};            // [m] most of it
  double settling{};         // [s] from the beginning until the tension stays in the window; the whole if it never does
  bool settles{};            // it does before the end
};

/// Where a run came to its end.
enum class RunEnd { done, core, failed };
std::string_view key_of(RunEnd end);  // "scenario over", "core reached", "stopped by a fault"
inline constexpr RunEnd last_run_end = RunEnd::failed;

/// How the equations were stepped.
enum class Method { explicit_steps, stiff_steps };
std::string_view key_of(Method method);  // "explicit", "stiff"
inline constexpr Method last_method = Method::stiff_steps;

/// Where the energy went [J]. The roll, the web in the spans and what moves with it are the store.
struct EnergyBooks {
  double pulled{};    // in by the line, less what leaves with the web and in idlers, dancer and the like
  double slipped{};   // into brake and drag
  double stored{};    // gained by the store
  double residual{};  // pulled − slipped − stored: what the steps lost or made
};

/// One control through one scenario.
struct MotionRun {
  std::string control{};      // "hand", "diameter", "load cell", "dancer"
  State state{State::holds};  // tight: outside of the window for a while; fails: slack, break or beyond a rating
  Note verdict{};             // why, in words
  std::vector<PhaseFacts> phases{};
  double run_lowest{};        // [N] while the line runs at a steady speed, after a second to settle
  double run_highest{};       // [N]
  double peak{};              // [N] highest of all
  double peak_time{};         // [s]
  double outside{};           // [s] outside of the window while the line moves
  double moving{};            // [s] with the line moving
  double steady_outside{};    // [1] share of steady running outside of the window
  bool accident{};            // the scenario holds a web break or an air failure
  double slack{};             // [m] most of it
  double slack_time{};        // [s] when it was most
  double settling{};          // [s] longest of any phase that does settle
  double disc_highest{};      // [K]
  double pads_highest{};      // [K]
  double highest_pressure{};  // [Pa]
  double highest_torque{};    // [N·m] of the brakes
  double pad_wear{};          // [1] share of a pad's usable depth
  double dancer_stops{};      // [1] how often the dancer hit a stop
  double sticks{};            // [1] how often the brake caught the roll or let go of it
  double line_time{};         // [s] of the run
  double web_run{};           // [m] off the roll
  EnergyBooks energy{};
  RunEnd end{RunEnd::done};
  std::string fault{};  // what broke it off, "roll speed is no longer a number"; empty when nothing did
  double fault_time{};  // [s]
  Method method{Method::explicit_steps};
  double steps{};  // [1] accepted
  RunTrace trace{};
};

/// The answer to `simulate`.
struct Simulation {
  std::string title{};
  std::string job{};
  std::string scenario{};  // its name; "usual" for the one that every job has
  Fit fit{};
  int pairs{};  // engaged on each brake at the start
  TensionTarget tension{};
  double full_diameter{};         // [m]
  double core_diameter{};         // [m]
  double speed{};                 // [m/s] of the job
  std::vector<MotionRun> runs{};  // one a control, best first when several were compared
  Note best{};                    // which control and why, when several were compared
  std::vector<Note> assumptions{};
  std::vector<Note> cautions{};
};

}  // namespace holdback
