// A log in time: the tension with its band against the window, with stops and ramps, above speed, pressure and
// diameter.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/draw/figures.hpp"
#include "holdback/draw/holes.hpp"
#include "holdback/draw/motion_parts.hpp"
#include "holdback/draw/thin.hpp"
#include "holdback/draw/ticks.hpp"

namespace holdback::draw {

namespace {

constexpr std::size_t most_marks = 16;  // more could not be told apart

/// The log as the strips of a run take it.
MotionRun run_of(const Diagnosis& found, const LogTrace& log) {
  MotionRun run;
  auto& trace = run.trace;
  trace.time = log.time;
  trace.tension = log.tension;
  trace.lowest_tension = log.lowest_tension;
  trace.highest_tension = log.highest_tension;
  trace.setpoint.assign(trace.time.size(), found.tension.setpoint);
  return run;
}

/// An entry without a reading in the middle of each hole, so that no line is drawn across it.
LogTrace parted(const LogTrace& log) {
  LogTrace out;
  const auto holes = holes_in(log.time);
  out.time = with_holes(log.time, holes, true);
  for (auto values : {&LogTrace::speed, &LogTrace::tension, &LogTrace::lowest_tension, &LogTrace::highest_tension,
                      &LogTrace::pressure, &LogTrace::diameter})
    out.*values = with_holes(log.*values, holes, false);
  return out;
}

/// The band, a part for each stretch without a hole.
std::vector<ChartArea> bands_of(const LogTrace& log) {
  std::vector<ChartArea> bands;
  for (std::size_t from = 0; from < log.time.size();) {
    std::size_t to = from;
    while (to < log.time.size() && showable(log.lowest_tension[to])) ++to;
    const auto part = [&](const std::vector<double>& values) {
      return std::vector<double>(values.begin() + static_cast<std::ptrdiff_t>(from),
                                 values.begin() + static_cast<std::ptrdiff_t>(to));
    };
    if (to > from) {
      auto band = thinned_band(part(log.time), part(log.lowest_tension), part(log.highest_tension), strip_columns);
      bands.push_back({"", {MarkRole::area}, std::move(band.x), std::move(band.low), std::move(band.high)});
    }
    from = to + 1;
  }
  return bands;
}

Chart line_strip(const RunTrace& trace, const std::string& name, Quantity kind, const std::vector<double>& values) {
  auto chart = time_strip(trace, name, kind, 17, 4);
  chart.curves = {trace_curve("", trace, values, {MarkRole::curve, Pattern::solid, 0})};
  return chart;
}

std::vector<Chart> strips_of(const Diagnosis& found, units::System system) {
  const LogTrace log = parted(found.trace);
  const MotionRun run = run_of(found, log);
  std::vector<Chart> strips{tension_strip(run, found.tension, 48, system)};
  strips.front().areas = bands_of(log);
  const double top = top_of(run, found.tension);
  if (top > 0) strips.front().y.high = top;
  if (!log.speed.empty()) strips.push_back(line_strip(run.trace, "speed", Quantity::speed, log.speed));
  if (!log.pressure.empty()) strips.push_back(line_strip(run.trace, "pressure", Quantity::pressure, log.pressure));
  if (!log.diameter.empty()) {
    strips.push_back(line_strip(run.trace, "diameter", Quantity::short_length, log.diameter));
    strips.back().y.from_zero = false;
  }
  return strips;
}

/// Stops and ramps, named in the uppermost strip alone; of many, those that do not hold.
std::size_t add_changes(std::vector<Chart>& strips, const Diagnosis& found) {
  std::vector<const LogChange*> marked;
  const bool all = found.changes.size() <= most_marks;
  for (const auto& change : found.changes)
    if ((all || change.state != State::holds) && marked.size() < most_marks) marked.push_back(&change);
  for (auto& chart : strips)
    for (const auto* change : marked) {
      const bool named = &chart == &strips.front();
      const bool fails = change->state == State::fails;
      chart.marks.push_back({named ? std::string(key_of(change->phase)) : "",
                             change->begin,
                             {fails ? MarkRole::bad : MarkRole::muted, fails ? Pattern::dashed : Pattern::dotted, 0}});
    }
  if (!marked.empty()) strips.front().share += 7;
  return marked.size();
}

std::vector<Footnote> notes_of(const Diagnosis& found, std::size_t marked, units::System system) {
  std::vector<Footnote> notes{
      {units::fill(found.verdict, system), MarkRole::text},
      {"Light band: lowest to highest tension of each stretch; line: its mean.", MarkRole::muted}};
  if (marked < found.changes.size())
    notes.push_back({fmt::format("{} of {:.0f} stops and ramps are marked: those that leave the window.", marked,
                                 found.changes_found),
                     MarkRole::muted});
  return notes;
}

std::string in_words(const Diagnosis& found, units::System system) {
  std::string text = units::fill(found.verdict, system) + ".";
  for (const auto& phase : found.phases)
    text += fmt::format(" {}: tension {} to {}, mean {}, {} of the time inside the window.", key_of(phase.phase),
                        shown(phase.lowest, Quantity::force, system), shown(phase.highest, Quantity::force, system),
                        shown(phase.mean, Quantity::force, system), share_text(phase.inside));
  return text;
}

}  // namespace

Scene log_figure(const Diagnosis& found, units::System system) {
  auto strips = strips_of(found, system);
  const std::size_t marked = add_changes(strips, found);
  show_time(strips);
  auto out = page("Log: the tension against its window", found.log + " · " + found.job, height_of(strips),
                  notes_of(found, marked, system));
  add_panels(out.scene, strips, out.room, system);
  out.scene.description = in_words(found, system);
  return out.scene;
}

}  // namespace holdback::draw
