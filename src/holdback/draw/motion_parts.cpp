#include "holdback/draw/motion_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

#include "holdback/draw/loop_words.hpp"
#include "holdback/draw/thin.hpp"
#include "holdback/draw/ticks.hpp"

namespace holdback::draw {

namespace {

constexpr double long_run = 5400;     // [s] from here on in hours
constexpr double most_of_window = 2;  // a tension beyond so many times the window leaves the picture
constexpr double names = 36;          // [mm] for the names of the curves

double lowest(const RunTrace& trace) {
  double least = std::numeric_limits<double>::max();
  for (const auto* values : {&trace.lowest_tension, &trace.tension, &trace.setpoint}) {
    for (const double value : *values) least = showable(value) ? std::min(least, value) : least;
  }
  return least;
}

double lowest_of_window(const RunTrace& trace, const TensionTarget& tension) {
  if (!setpoint_moves(trace)) return tension.low;
  double least = tension.low;
  for (const double at : trace.setpoint) least = showable(at) ? std::min(least, window_at(tension, at).low) : least;
  return least;
}

/// The ends of the window as limits; their names give the values where these stay.
void add_window(Chart& chart, const RunTrace& trace, const TensionTarget& tension, units::System system) {
  if (!(tension.high > 0)) return;
  if (!setpoint_moves(trace)) {
    chart.limits.push_back({"window to " + shown(tension.high, Quantity::force, system), {}, {tension.high}, true});
    chart.limits.push_back({"window from " + shown(tension.low, Quantity::force, system), {}, {tension.low}, false});
    return;
  }
  const auto setpoint = thinned(trace.time, trace.setpoint, strip_columns);
  ChartLimit high{"window to", setpoint.x, {}, true};
  ChartLimit low{"window from", setpoint.x, {}, false};
  for (const double at : setpoint.y) {
    const auto ends = window_at(tension, at);
    high.y.push_back(ends.high);
    low.y.push_back(ends.low);
  }
  chart.limits.push_back(std::move(high));
  chart.limits.push_back(std::move(low));
}

}  // namespace

double highest_of(const std::vector<double>& values) {
  double most = 0;
  for (const double value : values) most = showable(value) ? std::max(most, value) : most;
  return most;
}

Quantity time_kind(double end) { return end < long_run ? Quantity::duration : Quantity::running_time; }

std::string time_text(double seconds, units::System system) { return shown(seconds, time_kind(seconds), system); }

std::string slack_text(double slack, units::System system) {
  return shown(slack, slack < long_slack ? Quantity::short_length : Quantity::web_length, system);
}

Curve trace_curve(const std::string& name, const RunTrace& trace, const std::vector<double>& values, Style style) {
  auto line = thinned(trace.time, values, strip_columns);
  return {name, style, std::move(line.x), std::move(line.y)};
}

Chart time_strip(const RunTrace& trace, const std::string& name, Quantity kind, double height, int rows) {
  Chart chart;
  const double end = trace.time.empty() ? 0 : trace.time.back();
  chart.x = {"time", time_kind(end), {}, {}, false, true};
  if (!trace.time.empty()) {
    chart.x.low = trace.time.front();
    chart.x.high = trace.time.back();
  }
  chart.y = {name, kind, {}, {}, true};
  chart.label_room = names;
  chart.rows = rows;
  chart.share = height + 9;  // [mm], the second what stands above and below the plot
  return chart;
}

double top_of(const MotionRun& run, const TensionTarget& tension) {
  const double most = std::max(highest_of(run.trace.highest_tension), highest_of(run.trace.tension));
  const double window =
      setpoint_moves(run.trace) ? window_at(tension, highest_of(run.trace.setpoint)).high : tension.high;
  return window > 0 ? std::min(1.08 * std::max(most, window), most_of_window * window) : 0;
}

Chart tension_strip(const MotionRun& run, const TensionTarget& tension, double height, units::System system) {
  const auto& trace = run.trace;
  auto chart = time_strip(trace, "tension", Quantity::force, height, 6);
  auto band = thinned_band(trace.time, trace.lowest_tension, trace.highest_tension, strip_columns);
  chart.areas = {{"", {MarkRole::area}, std::move(band.x), std::move(band.low), std::move(band.high)}};
  chart.curves = {trace_curve("setpoint", trace, trace.setpoint, {MarkRole::muted, Pattern::dashed, 0}),
                  trace_curve("tension", trace, trace.tension, {MarkRole::curve, Pattern::solid, 0})};
  add_window(chart, trace, tension, system);
  chart.y.from_zero = lowest(trace) < 0.6 * lowest_of_window(trace, tension);  // else the band would be thin
  return chart;
}

void add_peak(Chart& chart, std::vector<Footnote>& notes, const MotionRun& run, double top, units::System system) {
  if (!(run.peak > 0) || !showable(run.peak)) return;
  const auto words = shown(run.peak, Quantity::force, system);
  if (run.peak <= top) {
    chart.captions.push_back({"peak " + words, {MarkRole::text}, {run.peak_time}, {run.peak}, true, false, false});
  } else {
    notes.push_back({fmt::format("The highest tension with control by {}, {} at {}, lies above the picture.",
                                 run.control, words, time_text(run.peak_time, system)),
                     MarkRole::bad});
  }
}

void show_time(std::vector<Chart>& strips) {
  strips.back().x.bare = false;
  strips.back().share += 8.5;
}

double height_of(const std::vector<Chart>& strips) {
  double height = 0;
  for (const auto& chart : strips) height += chart.share;
  return height;
}

std::string_view outcome_of(const MotionRun& run) {
  return run.end == RunEnd::failed ? key_of(run.end) : key_of(run.state);
}

std::string under_of(const Simulation& simulation) {
  return fmt::format("{} · {}; {} on; scenario {}", simulation.job, fit_text(simulation.fit), simulation.pairs,
                     simulation.scenario);
}

void fault_note(std::vector<Footnote>& notes, const MotionRun& run, units::System system) {
  if (run.end != RunEnd::failed) return;
  notes.push_back({fmt::format("Control by {} stopped at {}: {}.", run.control, time_text(run.fault_time, system),
                               run.fault.empty() ? "the steps failed" : run.fault),
                   MarkRole::bad});
}

void window_note(std::vector<Footnote>& notes, const RunTrace& trace) {
  if (setpoint_moves(trace)) notes.push_back({"The window moves with the setpoint, in proportion.", MarkRole::muted});
}

std::string in_words(const MotionRun& run, units::System system) {
  std::string out =
      joined(fmt::format("Control by {}: {}", run.control, outcome_of(run)), units::fill(run.verdict, system));
  if (out.back() != '.') out += '.';
  for (const auto& phase : run.phases) {
    out += fmt::format(" {} from {}: tension {} to {}.", phase.what, time_text(phase.begin, system),
                       units::show_number(phase.lowest_tension, Quantity::force, system),
                       shown(phase.highest_tension, Quantity::force, system));
  }
  return out;
}

}  // namespace holdback::draw
