// What control loops hold over the roll, and how a roll that is out of round shakes the tension.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "holdback/draw/figure_parts.hpp"
#include "holdback/draw/figures.hpp"
#include "holdback/draw/loop_words.hpp"
#include "holdback/draw/ticks.hpp"

namespace holdback::draw {

namespace {

constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
constexpr std::size_t most_curves = 5;  // diameters of the picture of runout
constexpr double most_of_asked = 4;     // a margin beyond so many times the asked one leaves the picture

Style style_of(std::size_t curve) {
  constexpr std::array<Pattern, 3> patterns{Pattern::solid, Pattern::dashed, Pattern::dotted};
  return {MarkRole::curve, patterns[curve % patterns.size()], static_cast<int>(curve % series_count)};
}

/// A number of each point of a loop, from the core to the full roll.
template <typename Get>
Curve over_roll(const std::string& name, const LoopTuning& loop, Style style, const Get& get) {
  Curve curve{name, style, {}, {}};
  auto points = loop.points;
  std::stable_sort(points.begin(), points.end(),
                   [](const TunePoint& a, const TunePoint& b) { return a.diameter < b.diameter; });
  for (const auto& point : points) {
    curve.x.push_back(point.diameter);
    curve.y.push_back(get(point));
  }
  return curve;
}

double gain_of(const TunePoint& point) {
  return point.stable && point.gain_margin > 0 ? decibels(point.gain_margin) : nothing;
}

double phase_of(const TunePoint& point) {
  return point.stable && point.phase_margin > 0 ? point.phase_margin : nothing;
}

/// Where the loop is not stable, along the bottom.
double unstable_of(const TunePoint& point) { return point.stable ? nothing : 0; }

double highest(const Curve& curve) {
  double most = 0;
  for (const double value : curve.y) most = showable(value) ? std::max(most, value) : most;
  return most;
}

Chart margin_chart(const Tuning& tuning, const std::string& heading, const ChartAxis& axis, double asked,
                   const std::string& asked_name, double (*get)(const TunePoint&)) {
  Chart chart;
  chart.heading = heading;
  chart.x = {"roll diameter", Quantity::short_length, {}, {}, false};
  chart.y = axis;
  double most = asked;
  for (std::size_t i = 0; i < tuning.loops.size(); ++i) {
    const auto& loop = tuning.loops[i];
    chart.curves.push_back(over_roll(name_of_loop(tuning, i), loop, style_of(i), get));
    most = std::max(most, highest(chart.curves.back()));
    const auto bad = over_roll("", loop, {MarkRole::bad, Pattern::solid, 0}, unstable_of);
    chart.curves.push_back(bad);
    const bool any = std::any_of(bad.y.begin(), bad.y.end(), showable);
    if (any)
      chart.captions.push_back(
          {name_of_loop(tuning, i) + ": unstable", {MarkRole::bad}, bad.x, bad.y, false, false, false});
  }
  if (asked > 0) {
    chart.limits = {{asked_name, {}, {asked}, false}};
    chart.y.high = std::min(1.08 * most, most_of_asked * asked);
  }
  return chart;
}

/// What a curve cannot show of a loop.
void loop_notes(std::vector<Footnote>& notes, const Tuning& tuning) {
  for (std::size_t i = 0; i < tuning.loops.size(); ++i) {
    const auto& points = tuning.loops[i].points;
    const auto name = name_of_loop(tuning, i);
    const auto count = [&](auto is) { return std::count_if(points.begin(), points.end(), is); };
    const auto unstable = count([](const TunePoint& point) { return !point.stable; });
    const auto no_gain = count([](const TunePoint& point) { return point.stable && !(point.gain_margin > 0); });
    const auto no_phase = count([](const TunePoint& point) { return point.stable && !(point.phase_margin > 0); });
    if (unstable > 0)
      notes.push_back(
          {fmt::format("Loop {}: unstable at {} of {} diameters.", name, unstable, points.size()), MarkRole::bad});
    if (no_gain > 0) {
      notes.push_back({fmt::format("Loop {}: no gain in reach makes it unstable at {} of {} diameters; no curve there.",
                                   name, no_gain, points.size()),
                       MarkRole::muted});
    }
    if (no_phase > 0) {
      notes.push_back({fmt::format("Loop {}: no crossover at {} of {} diameters, so no phase margin.", name, no_phase,
                                   points.size()),
                       MarkRole::muted});
    }
  }
}

std::string under_of(const Tuning& tuning) {
  return fmt::format("{} · {}; {} on; control by {}", tuning.job, fit_text(tuning.fit), tuning.pairs, tuning.control);
}

/// Some of so many, evenly, the first and the last among them.
std::vector<std::size_t> some_of(std::size_t count) {
  std::vector<std::size_t> out;
  const auto most = std::min(count, most_curves);
  for (std::size_t i = 0; i < most; ++i) out.push_back(most > 1 ? i * (count - 1) / (most - 1) : 0);
  return out;
}

/// The share over speed at one diameter.
Curve share_curve(const RunoutMap& runout, std::size_t column, Style style, units::System system) {
  Curve curve{"Ø " + shown(runout.diameter[column], Quantity::short_length, system), style, {}, {}};
  for (std::size_t row = 0; row < runout.speed.size(); ++row) {
    const auto at = row * runout.diameter.size() + column;
    curve.x.push_back(runout.speed[row]);
    curve.y.push_back(at < runout.share.size() ? runout.share[at] : nothing);
  }
  return curve;
}

/// The value of a curve between its points; not a number outside of them.
double value_at(const Curve& curve, double x) {
  for (std::size_t i = 1; i < curve.x.size(); ++i) {
    const double step = curve.x[i] - curve.x[i - 1];
    if (x < curve.x[i - 1] || x > curve.x[i] || !(step > 0)) continue;
    return std::lerp(curve.y[i - 1], curve.y[i], (x - curve.x[i - 1]) / step);
  }
  return nothing;
}

/// Half of the window as a share of the setpoint, the narrower side; 0 without a window.
double half_window(const TensionTarget& tension) {
  if (!(tension.setpoint > 0)) return 0;
  return std::max(std::min(tension.high - tension.setpoint, tension.setpoint - tension.low) / tension.setpoint, 0.0);
}

std::vector<Footnote> runout_notes(const RunoutMap& runout, const std::string& met, units::System system) {
  std::vector<Footnote> notes;
  notes.push_back(
      {fmt::format("Worst: ±{} of the setpoint at {} with Ø {}.", shown(runout.worst_share, Quantity::ratio, system),
                   shown(runout.worst_speed, Quantity::speed, system),
                   shown(runout.worst_diameter, Quantity::short_length, system)),
       MarkRole::text});
  notes.push_back({met.empty()
                       ? "The runout does not meet the mode of roll and web within these speeds."
                       : "Dots: one turn of the roll takes as long as one swing of roll against web: " + met + ".",
                   MarkRole::muted});
  return notes;
}

}  // namespace

Scene tuning_figure(const Tuning& tuning, units::System system) {
  const auto gain = margin_chart(tuning, "Gain margin", {"gain margin [dB]", Quantity::number, {}, {}, true},
                                 decibels(tuning.asked_gain_margin),
                                 fmt::format("asked {:.1f}\u00A0dB", decibels(tuning.asked_gain_margin)), gain_of);
  const auto phase =
      margin_chart(tuning, "Phase margin", {"phase margin", Quantity::angle, {}, {}, true}, tuning.asked_phase_margin,
                   "asked " + shown(tuning.asked_phase_margin, Quantity::angle, system), phase_of);
  std::vector<Footnote> notes;
  loop_notes(notes, tuning);
  notes.push_back({"Below a hatched line the loop is nearer to swinging than asked.", MarkRole::muted});
  auto out = page("Margins of the loop over the roll", under_of(tuning), 146, notes);
  add_panels(out.scene, {gain, phase}, out.room, system);
  out.scene.description = in_words(gain, system) + " " + in_words(phase, system);
  for (const auto& note : notes) out.scene.description += " " + note.text;
  return out.scene;
}

Scene runout_figure(const Tuning& tuning, units::System system) {
  const auto& runout = tuning.runout;
  Chart chart;
  chart.x = {"web speed", Quantity::speed, {}, {}, false};
  chart.y = {"amplitude over setpoint", Quantity::ratio, {}, {}, true};
  const double window = half_window(tuning.tension);
  if (window > 0) chart.limits = {{"window ±" + shown(window, Quantity::ratio, system), {}, {window}, true}};
  std::string met;
  const auto chosen = some_of(runout.diameter.size());
  for (std::size_t i = 0; i < chosen.size(); ++i) {
    chart.curves.push_back(share_curve(runout, chosen[i], style_of(i), system));
    const double meets = chosen[i] < runout.meets.size() ? runout.meets[chosen[i]] : 0;
    const double share = meets > 0 ? value_at(chart.curves.back(), meets) : nothing;
    if (!showable(share)) continue;
    chart.captions.push_back({"", {MarkRole::text}, {meets}, {share}, true, false, false});
    met += fmt::format("{}Ø {} at {}", met.empty() ? "" : ", ",
                       shown(runout.diameter[chosen[i]], Quantity::short_length, system),
                       shown(meets, Quantity::speed, system));
  }
  const auto notes = runout_notes(runout, met, system);
  auto out = page("Tension shaken by a roll that is out of round", under_of(tuning), 92, notes);
  add_chart(out.scene, chart, out.room, system);
  out.scene.description = in_words(chart, system);
  for (const auto& note : notes) out.scene.description += " " + note.text;
  return out.scene;
}

}  // namespace holdback::draw
