// The tensions of several controls below each other.
#include <fmt/format.h>

#include <algorithm>
#include <limits>

#include "holdback/draw/figures.hpp"
#include "holdback/draw/motion_parts.hpp"
#include "holdback/draw/thin.hpp"

namespace holdback::draw {

namespace {

constexpr std::size_t most_strips = 8;

/// A strip of a comparison: the tension, and where the web hangs slack as a bar along the bottom.
Chart comparison_strip(const MotionRun& run, const TensionTarget& tension, double top, units::System system) {
  auto chart = tension_strip(run, tension, 27, system);
  chart.heading = fmt::format("{}: {}", run.control, outcome_of(run));
  if (run.slack > 0) chart.heading += ", slack up to " + slack_text(run.slack, system);
  chart.share += 5.2;
  if (top > 0) {
    chart.y.low = 0;
    chart.y.high = top;
  }
  const auto slack = thinned_band(run.trace.time, run.trace.slack, run.trace.slack, strip_columns);
  const double bar = 0.06 * (top > 0 ? top : tension.high);
  ChartArea area{"", {MarkRole::bad}, {}, {}, {}};
  const auto point = [&](double x, double y) {
    area.x.push_back(x);
    area.low.push_back(y > 0 ? 0 : y);
    area.high.push_back(y);
  };
  for (std::size_t i = 0; i < slack.x.size(); ++i) {
    const bool loose = slack.high[i] > 0;
    const bool before = i > 0 && slack.high[i - 1] > 0;
    if (loose && !before) point(slack.x[i > 0 ? i - 1 : 0], bar);  // so that a moment of it can be seen
    point(slack.x[i], loose ? bar : std::numeric_limits<double>::quiet_NaN());
  }
  chart.areas.push_back(std::move(area));
  return chart;
}

}  // namespace

Scene comparison_figure(const Simulation& simulation, units::System system) {
  const auto count = std::min(simulation.runs.size(), most_strips);
  double top = 0;
  double end = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const auto& run = simulation.runs[i];
    top = std::max(top, top_of(run, simulation.tension));
    end = std::max(end, run.trace.time.empty() ? 0 : run.trace.time.back());
  }
  std::vector<Footnote> notes;
  std::vector<Chart> strips;
  std::string words = units::fill(simulation.best, system);
  for (std::size_t i = 0; i < count; ++i) {
    const auto& run = simulation.runs[i];
    strips.push_back(comparison_strip(run, simulation.tension, top, system));
    strips.back().x.low = 0;
    if (end > 0) strips.back().x.high = end;
    strips.back().x.kind = time_kind(end);
    add_peak(strips.back(), notes, run, top, system);
    fault_note(notes, run, system);
    words += (words.empty() ? "" : " ") + in_words(run, system);
  }
  if (strips.empty()) strips.push_back(time_strip({}, "tension", Quantity::force, 30, 5));
  show_time(strips);
  if (!simulation.best.text.empty()) notes.push_back({units::fill(simulation.best, system), MarkRole::text});
  if (count > 0) window_note(notes, simulation.runs.front().trace);
  notes.push_back(
      {"All strips have one scale. A bar along the bottom: the web hangs slack. Light band: lowest to highest "
       "tension between two points of the line.",
       MarkRole::muted});
  if (count < simulation.runs.size())
    notes.push_back({fmt::format("{} more are left out.", simulation.runs.size() - count), MarkRole::muted});
  auto out = page("Controls side by side: tension over time", under_of(simulation), height_of(strips), notes);
  add_panels(out.scene, strips, out.room, system);
  out.scene.description = words.empty() ? "No runs." : words;
  return out.scene;
}

}  // namespace holdback::draw
