// Torque over the roll.
#include <algorithm>

#include "holdback/draw/figure_parts.hpp"
#include "holdback/draw/figures.hpp"
#include "holdback/draw/ticks.hpp"

namespace holdback::draw {

namespace {

constexpr double headroom = 1.1;      // above the highest curve
constexpr double most_of_demand = 2;  // a capacity beyond so many times the demand leaves the picture

double highest(const std::vector<double>& values) {
  double most = 0;
  for (const double value : values) most = showable(value) ? std::max(most, value) : most;
  return most;
}

/// Where the picture ends, so that the demand can be read below a capacity far above it.
double top_of(const Envelope& e) {
  const double demand =
      std::max({highest(e.run), highest(e.ramp), highest(e.stop), highest(e.emergency_stop), highest(e.hold)});
  const double all = std::max({demand, highest(e.capacity_low), highest(e.capacity_nominal), highest(e.floor)});
  return headroom * (demand > 0 ? std::min(all, most_of_demand * demand) : all);
}

std::string holding_note(const JobFit* job) {
  const auto* limit = job == nullptr ? nullptr : find_limit(job->limits, LimitId::holding_torque);
  const std::string out = "Holding at standstill is judged by the static friction, which is not drawn";
  return limit == nullptr ? out
                          : out + ": " + margin_text(limit->margin) + " in hand, " + std::string(key_of(limit->state));
}

}  // namespace

Scene torque_figure(const Envelope& e, const JobFit* job, const std::string& under, units::System system) {
  Chart chart;
  chart.x = {"roll diameter", Quantity::short_length, {}, {}, false};
  chart.y = {"brake torque", Quantity::torque, {}, {}, true};
  if (top_of(e) > 0) chart.y.high = top_of(e);
  const auto& x = e.diameter;
  chart.limits = {{"capacity, lowest friction", x, e.capacity_low, true},
                  {"floor, highest friction", x, e.floor, false}};
  chart.curves = {{"capacity, nominal", {MarkRole::muted, Pattern::dashed, 0}, x, e.capacity_nominal},
                  {"ramp", {MarkRole::curve, Pattern::dotted, 2}, x, e.ramp},
                  {"hold", {MarkRole::curve, Pattern::dotted, 3}, x, e.hold},
                  {"stop", {MarkRole::curve, Pattern::dashed, 4}, x, e.stop},
                  {"emergency stop", {MarkRole::curve, Pattern::dashed, 1}, x, e.emergency_stop},
                  {"run", {MarkRole::curve, Pattern::solid, 0}, x, e.run}};
  std::vector<Footnote> notes;
  mark_beyond(chart, notes, beyond(x, e.run, e.capacity_low, true), "run beyond capacity", system);
  mark_beyond(chart, notes, beyond(x, e.stop, e.capacity_low, true), "stop beyond capacity", system);
  mark_beyond(chart, notes, beyond(x, e.emergency_stop, e.capacity_low, true), "emergency stop beyond capacity",
              system);
  mark_beyond(chart, notes, beyond(x, e.run, e.floor, false), "run below the floor", system);
  if (!beyond(x, e.hold, e.capacity_low, true).empty()) notes.push_back({holding_note(job), MarkRole::muted});
  auto out = page("Torque over the roll", under, 92, notes);
  add_chart(out.scene, chart, out.room, system);
  out.scene.description = in_words(chart, system);
  for (const auto& note : notes) out.scene.description += " " + note.text + ".";
  return out.scene;
}

}  // namespace holdback::draw
