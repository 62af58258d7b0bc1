// A run in time: strips of tension, slack, pressure, speeds, power and temperatures over one axis.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/draw/figures.hpp"
#include "holdback/draw/motion_parts.hpp"
#include "holdback/draw/thin.hpp"
#include "holdback/draw/ticks.hpp"

namespace holdback::draw {

namespace {

bool ever(const std::vector<double>& values) {
  return std::any_of(values.begin(), values.end(), [](double value) { return showable(value) && value != 0; });
}

Chart slack_strip(const MotionRun& run, units::System system) {
  const auto& trace = run.trace;
  const double most = highest_of(trace.slack);
  auto chart = time_strip(trace, "slack", most < long_slack ? Quantity::short_length : Quantity::web_length, 14, 3);
  auto line = thinned(trace.time, trace.slack, strip_columns);
  chart.areas = {{"", {MarkRole::bad}, line.x, std::vector<double>(line.x.size(), 0.0), line.y}};
  const double shown_most = std::max(run.slack, most);
  chart.curves = {
      {"slack, most " + slack_text(shown_most, system), {MarkRole::curve, Pattern::solid, 1}, line.x, line.y}};
  chart.captions = {{"", {MarkRole::text}, {run.slack_time}, {shown_most}, true, false, false}};
  return chart;
}

std::vector<Chart> lower_strips(const MotionRun& run, units::System system) {
  const auto& trace = run.trace;
  constexpr Style solid{MarkRole::curve, Pattern::solid, 0};
  constexpr Style dashed{MarkRole::curve, Pattern::dashed, 1};
  std::vector<Chart> strips;
  if (ever(trace.slack)) strips.push_back(slack_strip(run, system));
  if (ever(trace.dancer)) {
    strips.push_back(time_strip(trace, "dancer, −1 to 1 from stop to stop", Quantity::number, 14, 3));
    strips.back().curves = {trace_curve("dancer", trace, trace.dancer, solid)};
    strips.back().y.low = -1;
    strips.back().y.high = 1;
  }
  strips.push_back(time_strip(trace, "pressure", Quantity::pressure, 17, 4));
  strips.back().curves = {trace_curve("at the brake", trace, trace.pressure, solid),
                          trace_curve("asked for", trace, trace.set_pressure, dashed)};
  strips.push_back(time_strip(trace, "speed", Quantity::speed, 17, 4));
  strips.back().curves = {trace_curve("roll's surface", trace, trace.rim_speed, dashed),
                          trace_curve("line", trace, trace.line_speed, solid)};
  strips.push_back(time_strip(trace, "slip power", Quantity::power, 14, 3));
  strips.back().curves = {trace_curve("all brakes", trace, trace.slip_power, solid)};
  strips.push_back(time_strip(trace, "temperature", Quantity::temperature, 17, 4));
  strips.back().y.from_zero = false;
  strips.back().curves = {trace_curve("disc", trace, trace.disc, solid),
                          trace_curve("pads", trace, trace.pads, dashed)};
  return strips;
}

/// Lines at the beginnings of the phases, named in the uppermost strip alone.
void add_phases(std::vector<Chart>& strips, const MotionRun& run) {
  for (auto& chart : strips) {
    const bool named = &chart == &strips.front();
    for (const auto& phase : run.phases)
      chart.marks.push_back({named ? phase.what : "", phase.begin, {MarkRole::muted, Pattern::dotted, 0}});
    if (run.end == RunEnd::failed)
      chart.marks.push_back({named ? "fault" : "", run.fault_time, {MarkRole::bad, Pattern::dashed, 0}});
  }
}

}  // namespace

Scene motion_figure(const Simulation& simulation, std::size_t run_index, units::System system) {
  const MotionRun none;
  const auto& run = run_index < simulation.runs.size() ? simulation.runs[run_index] : none;
  std::vector<Footnote> notes;
  std::vector<Chart> strips{tension_strip(run, simulation.tension, 40, system)};
  const double top = top_of(run, simulation.tension);
  if (top > 0) strips.front().y.high = top;
  add_peak(strips.front(), notes, run, top, system);
  for (auto& chart : lower_strips(run, system)) strips.push_back(std::move(chart));
  add_phases(strips, run);
  if (!run.phases.empty()) strips.front().share += 7;
  show_time(strips);
  fault_note(notes, run, system);
  window_note(notes, run.trace);
  notes.push_back({ever(run.trace.slack)
                       ? "Light band: lowest to highest tension between two points of the line."
                       : "Light band: lowest to highest tension between two points of the line. The web "
                         "never hangs slack.",
                   MarkRole::muted});
  auto out = page(fmt::format("Run with control by {}: {}", run.control, outcome_of(run)), under_of(simulation),
                  height_of(strips), notes);
  add_panels(out.scene, strips, out.room, system);
  out.scene.description = in_words(run, system);
  return out.scene;
}

}  // namespace holdback::draw
