// A scenario run through on a rig: events come when they are due, what the tension did is kept, and the run is judged.
#pragma once

#include <functional>
#include <memory>

#include "holdback/dynamics/rig.hpp"
#include "holdback/model/scenario.hpp"
#include "holdback/results/motion.hpp"

namespace holdback::dynamics {

/// What a run is judged by. A bound of zero is none.
struct RunBounds {
  double low{};                   // [1] of the setpoint, window
  double high{};                  // [1]
  double stop_share{};            // [1] of the setpoint that must stay in a normal stop
  double emergency_stop_share{};  // [1]
  double web_strength{};          // [N]
  double torque{};                // [N·m] makers' ratings, all brakes
  double pressure{};              // [Pa]
  double disc{};                  // [K]
  double pads{};                  // [K]
};

/// What job and line say of events that leave it open.
struct LineHabits {
  double speed{};                // [m/s] of the job
  double ramp_time{};            // [s] from standstill to it
  double stop_time{};            // [s] from it
  double emergency_stop_time{};  // [s] from it
  double full_radius{};          // [m] of the roll that a splice brings
};

struct RunRequest {
  RigSetup rig{};
  std::function<std::unique_ptr<Controller>()> controller{};
  ControlKind kind{};
  Scenario scenario{};
  LineHabits habits{};
  RunBounds bounds{};
  double trace_period{0.1};                // [s] > 0; longer where a run would keep more than most_trace entries
  std::function<void(double)> progress{};  // share done, now and then; may be empty
};
inline constexpr std::size_t most_trace = 40000;

/// Where the usual scenario has its stops.
struct HardestDiameters {
  double stop{};            // [m]
  double emergency_stop{};  // [m]
};

/// The scenario that every job has: a start, a normal stop and an emergency stop at the diameters where each is
/// hardest, and on to nearly the core, with a last stop there.
Scenario usual_scenario(const HardestDiameters& hardest, const LineHabits& habits, double core_radius, double caliper);

/// Runs a scenario. What was computed before a fault is kept.
MotionRun run(const RunRequest& request);

/// State and verdict of a run by its bounds.
void judge(MotionRun& run, const RunBounds& bounds, double setpoint);

}  // namespace holdback::dynamics
