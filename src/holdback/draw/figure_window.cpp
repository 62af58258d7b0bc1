// The tension window over speed and over the roll.
#include <fmt/format.h>

#include <algorithm>
#include <limits>

#include "holdback/draw/figure_parts.hpp"
#include "holdback/draw/figures.hpp"
#include "holdback/draw/ticks.hpp"

namespace holdback::draw {

namespace {

constexpr double headroom = 1.12;       // above the highest bound
constexpr double most_of_demand = 2.5;  // an upper bound beyond so many times the rest leaves the picture

/// One end of the window: which of the two, and what is the x of a panel.
struct End {
  std::optional<double> WindowAt::*tension;
  std::optional<BoundId> WindowAt::*by;
  bool above;
};
constexpr End lower{&WindowAt::low, &WindowAt::low_by, false};
constexpr End upper{&WindowAt::high, &WindowAt::high_by, true};

std::string bound_name(const End& end, const std::optional<BoundId>& by) {
  return (end.above ? "most: " : "least: ") + (by ? std::string(name_of(*by)) : "unknown");
}

/// The end over x as limits, one for each stretch that one bound governs; a stretch starts where the one before ended.
/// Only the last is named at its end; the others by words along it.
void add_end(Chart& chart, const std::vector<WindowAt>& over, double WindowAt::*x, const End& end) {
  std::vector<std::pair<ChartLimit, std::string>> stretches;
  const WindowAt* before = nullptr;
  for (const auto& at : over) {
    const auto& tension = at.*end.tension;
    if (!tension) {
      before = nullptr;
      continue;
    }
    if (before == nullptr || before->*end.by != at.*end.by) {
      stretches.push_back({{"", {}, {}, end.above}, bound_name(end, at.*end.by)});
      if (before != nullptr) {
        stretches.back().first.x.push_back(before->*x);
        stretches.back().first.y.push_back(*(before->*end.tension));
      }
    }
    stretches.back().first.x.push_back(at.*x);
    stretches.back().first.y.push_back(*tension);
    before = &at;
  }
  for (std::size_t i = 0; i < stretches.size(); ++i) {
    auto& [limit, name] = stretches[i];
    if (i + 1 == stretches.size()) {
      limit.name = name;
    } else {
      chart.captions.push_back({name, {MarkRole::limit}, limit.x, limit.y, false, false, false});
    }
    chart.limits.push_back(limit);
  }
}

/// The setpoint and its band, right across.
void add_setpoint(Chart& chart, const std::vector<WindowAt>& over, double WindowAt::*x, const TensionTarget& tension,
                  units::System system) {
  if (over.empty() || !(tension.setpoint > 0)) return;
  const std::vector<double> across{over.front().*x, over.back().*x};
  const auto force = [system](double newton) { return shown(newton, Quantity::force, system); };
  chart.curves.push_back({"setpoint " + force(tension.setpoint),
                          {MarkRole::curve, Pattern::solid, 0},
                          across,
                          {tension.setpoint, tension.setpoint}});
  if (!(tension.high > tension.low)) return;
  chart.areas.push_back(
      {"its band, " + units::show_number(tension.low, Quantity::force, system) + " to " + force(tension.high),
       {MarkRole::area},
       across,
       {tension.low, tension.low},
       {tension.high, tension.high}});
}

double highest(const std::vector<WindowAt>& over, std::optional<double> WindowAt::*tension) {
  double most = 0;
  for (const auto& at : over) {
    if ((at.*tension).has_value() && showable(*(at.*tension))) most = std::max(most, *(at.*tension));
  }
  return most;
}

/// The same for both panels, so that they can be compared.
double top_of(const TensionWindow& window, const TensionTarget& tension) {
  const double demand = std::max({tension.high, tension.setpoint, highest(window.over_speed, &WindowAt::low),
                                  highest(window.over_roll, &WindowAt::low)});
  const double all =
      std::max({demand, highest(window.over_speed, &WindowAt::high), highest(window.over_roll, &WindowAt::high)});
  return headroom * (demand > 0 ? std::min(all, most_of_demand * demand) : all);
}

/// One end of the window over x; what cannot be shown where there is none.
std::vector<double> bound_of(const std::vector<WindowAt>& over, const End& end) {
  std::vector<double> bound;
  for (const auto& at : over) bound.push_back((at.*end.tension).value_or(std::numeric_limits<double>::infinity()));
  return bound;
}

void mark_outside(Chart& chart, std::vector<Footnote>& notes, const std::vector<WindowAt>& over, double WindowAt::*x,
                  const TensionTarget& tension, units::System system) {
  std::vector<double> at;
  for (const auto& each : over) at.push_back(each.*x);
  const auto low = bound_of(over, lower);
  const auto high = bound_of(over, upper);
  const std::vector<double> setpoint(at.size(), tension.setpoint);
  if (tension.setpoint > 0) {
    mark_beyond(chart, notes, beyond(at, setpoint, high, true), "setpoint above the window", system);
    mark_beyond(chart, notes, beyond(at, setpoint, low, false), "setpoint below the window", system);
  }
  Chart words_only;  // that no tension keeps both ends needs no area of its own
  words_only.x = chart.x;
  mark_beyond(words_only, notes, beyond(at, low, high, true), "no window, the least is above the most,", system, false);
}

Chart panel(const std::string& heading, const ChartAxis& axis, const std::vector<WindowAt>& over, double WindowAt::*x,
            const TensionTarget& tension, std::vector<Footnote>& notes, units::System system) {
  Chart chart;
  chart.heading = heading;
  chart.x = axis;
  chart.y = {"tension", Quantity::force, {}, {}, true};
  add_end(chart, over, x, upper);
  add_end(chart, over, x, lower);
  add_setpoint(chart, over, x, tension, system);
  mark_outside(chart, notes, over, x, tension, system);
  return chart;
}

}  // namespace

Scene window_figure(const TensionWindow& window, const TensionTarget& tension, const std::string& under,
                    units::System system) {
  std::vector<Footnote> notes;
  auto speed = panel("Over speed, at the diameter that is hardest", {"web speed", Quantity::speed, {}, {}, false},
                     window.over_speed, &WindowAt::speed, tension, notes, system);
  auto roll = panel("Over the roll, at the job's speed", {"roll diameter", Quantity::short_length, {}, {}, false},
                    window.over_roll, &WindowAt::diameter, tension, notes, system);
  const double top = top_of(window, tension);
  if (top > 0) speed.y.high = roll.y.high = top;
  notes.push_back(
      {"Tensions are for the whole width. Beyond a hatched line the web is not to be run.", MarkRole::muted});
  constexpr double height = 74;
  auto out = page("Tension window", under, 2 * height, notes);
  add_panels(out.scene, {speed, roll}, out.room, system);
  out.scene.description = in_words(speed, system) + " " + in_words(roll, system);
  return out.scene;
}

}  // namespace holdback::draw
