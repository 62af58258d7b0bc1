// State and verdict of a run.
#include <algorithm>
#include <cmath>

#include "holdback/dynamics/run.hpp"

namespace holdback::dynamics {

namespace {

constexpr double least_slack = 1e-3;        // [m] that counts as slack
constexpr double accepted_outside = 0.005;  // [1] of steady running that may lie outside of the window

Note force(std::string text, double a, double b) {
  return {std::move(text), {{a, Quantity::force}, {b, Quantity::force}}};
}

/// What a maker's rating or the web itself does not bear; empty text when nothing.
Note beyond_rating(const MotionRun& run, const RunBounds& bounds) {
  if (bounds.web_strength > 0 && run.peak > bounds.web_strength)
    return force("the tension reaches {0}, beyond the web's yield at {1}", run.peak, bounds.web_strength);
  const auto exceeds = [](double value, double bound) { return bound > 0 && value > bound * (1 + 1e-9); };
  if (exceeds(run.highest_torque, bounds.torque))
    return {"the brakes give {0}, beyond their rating of {1}",
            {{run.highest_torque, Quantity::torque}, {bounds.torque, Quantity::torque}}};
  if (exceeds(run.highest_pressure, bounds.pressure))
    return {"the pressure reaches {0}, beyond the rating of {1}",
            {{run.highest_pressure, Quantity::pressure}, {bounds.pressure, Quantity::pressure}}};
  if (exceeds(run.disc_highest, bounds.disc))
    return {"the disc reaches {0}, beyond its rating of {1}",
            {{run.disc_highest, Quantity::temperature}, {bounds.disc, Quantity::temperature}}};
  if (exceeds(run.pads_highest, bounds.pads))
    return {"the pads reach {0}, beyond the limit of their grade, {1}",
            {{run.pads_highest, Quantity::temperature}, {bounds.pads, Quantity::temperature}}};
  return {};
}

/// Setpoint [N] that held in a phase, by the trace; `otherwise` without one.
double setpoint_in(const PhaseFacts& phase, const RunTrace& trace, double otherwise) {
  const auto after = std::upper_bound(trace.time.begin(), trace.time.end(), phase.end);
  if (after == trace.time.begin() || trace.setpoint.size() != trace.time.size()) return otherwise;
  return trace.setpoint[static_cast<std::size_t>(after - trace.time.begin()) - 1];
}

/// The first stop in which less tension is left than was asked to be kept.
Note lost_in_stop(const MotionRun& run, const RunBounds& bounds, double setpoint) {
  for (const PhaseFacts& phase : run.phases) {
    // Of the window's low end: what is accepted around the setpoint is accepted in a stop too.
    const double share = phase.what == "stop"             ? bounds.stop_share
                         : phase.what == "emergency stop" ? bounds.emergency_stop_share
                                                          : 0;
    const double least = share * bounds.low * setpoint_in(phase, run.trace, setpoint);
    if (phase.lowest_tension < least * (1 - 1e-6))
      return {"in the " + phase.what + " at {0} the tension falls to {1}; {2} must stay",
              {{phase.diameter, Quantity::short_length},
               {phase.lowest_tension, Quantity::force},
               {least, Quantity::force}}};
  }
  return {};
}

}  // namespace

void judge(MotionRun& run, const RunBounds& bounds, double setpoint) {
  const auto say = [&](State state, Note why) {
    run.state = state;
    run.verdict = std::move(why);
  };
  const Note rating = beyond_rating(run, bounds);
  if (run.end == RunEnd::failed)
    return say(State::fails, {"the computation stopped at {0}: " + run.fault, {{run.fault_time, Quantity::duration}}});
  if (!rating.text.empty()) return say(State::fails, rating);
  if (run.slack > least_slack)
    return say(State::fails, {"the web goes slack by {0} at {1} of the run",
                              {{run.slack, Quantity::short_length}, {run.slack_time, Quantity::duration}}});
  if (run.steady_outside > accepted_outside)
    return say(State::fails,
               {"in steady running the tension lies outside of its window for {0} of the time, from {1} to {2}",
                {{run.steady_outside, Quantity::ratio},
                 {run.run_lowest, Quantity::force},
                 {run.run_highest, Quantity::force}}});
  const Note stop = lost_in_stop(run, bounds, setpoint);
  if (!stop.text.empty()) return say(State::fails, stop);
  if (run.outside > 0)
    return say(State::tight,
               {"the tension stays in its window in steady running and leaves it in ramps and stops for {0} in all, "
                "without slack",
                {{run.outside, Quantity::duration}}});
  say(State::holds, {"the tension stays in its window throughout, from {0} to {1} in steady running",
                     {{run.run_lowest, Quantity::force}, {run.run_highest, Quantity::force}}});
}

}  // namespace holdback::dynamics
