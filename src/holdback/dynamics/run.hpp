// A scenario run through: the line does what it is told, the controller sets the brake at every sample, and what the
// tension did is kept.
#pragma once

#include <string>
#include <vector>

#include "holdback/dynamics/control.hpp"
#include "holdback/dynamics/motion.hpp"

namespace holdback::dynamics {

/// The line goes to a speed within a time, evenly, then goes on to the next leg. A duration of hold at the old speed is
/// a leg to that speed.
struct Leg {
  std::string what{};   // "ramp", "hold", "stop", "emergency stop", as it is told
  double duration{};    // [s] > 0
  double line_speed{};  // [m/s] at its end
};

/// How it is sampled and measured.
struct Sampling {
  double period{0.01};       // [s] > 0, of controller and measurement
  double measuring_lag{};    // [s] ≥ 0, of the load cell
  double diameter_step{};    // [m] ≥ 0, resolution of the measured diameter
  double trace_period{0.1};  // [s] > 0, of what is kept for a picture
  double relative{1e-5};     // [1] accuracy of a step
};

/// What was kept, one entry a trace period.
struct RunTrace {
  std::vector<double> time{};          // [s]
  std::vector<double> line_speed{};    // [m/s]
  std::vector<double> tension{};       // [N] behind the roll
  std::vector<double> slack{};         // [m]
  std::vector<double> pressure{};      // [Pa] at the brake
  std::vector<double> set_pressure{};  // [Pa]
  std::vector<double> diameter{};      // [m]
  std::vector<double> slip_power{};    // [W]
};

/// One leg as it went, over its samples.
struct LegFacts {
  std::string what{};
  double begin{};            // [s]
  double lowest_tension{};   // [N]
  double highest_tension{};  // [N]
  double mean_tension{};     // [N]
  double outside_window{};   // [s] time with tension outside of the window
  double most_slack{};       // [m]
};

struct Course {
  RunTrace trace{};
  std::vector<LegFacts> legs{};
  double slip_work{};   // [J] into brake and drag
  double end_radius{};  // [m]
  bool reached_core{};  // the web ran out before the scenario did
  bool failed{};        // the steps failed: the plant is beyond what can be integrated
  std::size_t steps{};
};

/// Window within which tension is wanted [N].
struct Window {
  double low{};
  double high{};
};

/// Runs a scenario from steady running (or standstill) at a radius. The dead time of the air is kept in whole samples.
Course run(const Plant& plant, const MotionState& start, double line_speed, const std::vector<Leg>& legs,
           Controller& controller, double setpoint, const Window& window, const Sampling& sampling);

}  // namespace holdback::dynamics
