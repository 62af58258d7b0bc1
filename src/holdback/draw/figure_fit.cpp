// A brake fitted to readings: torque over pressure.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "holdback/draw/chart_layout.hpp"
#include "holdback/draw/figure_parts.hpp"
#include "holdback/draw/figures.hpp"

namespace holdback::draw {

namespace {

constexpr double size = 1.15;  // [mm] of a reading's mark, half

using Q = Quantity;

std::string pairs_text(int pairs) { return fmt::format("{} pair{}", pairs, pairs == 1 ? "" : "s"); }

/// Readings that one line joins: the same pairs, the pressure moved the same way.
using Groups = std::map<std::pair<int, PressureCourse>, std::vector<const FittedReading*>>;

Groups groups_of(const BrakeFit& fit) {
  Groups groups;
  for (const auto& reading : fit.readings) groups[{reading.pairs, reading.course}].push_back(&reading);
  for (auto& [key, all] : groups)
    std::stable_sort(all.begin(), all.end(), [](const auto* a, const auto* b) { return a->pressure < b->pressure; });
  return groups;
}

/// What the fitted brake gives at the readings of a group, from the threshold on.
Curve line_of(const BrakeFit& fit, const Groups::value_type& group, int series, bool named) {
  const auto& [key, readings] = group;
  const bool falling = key.second == PressureCourse::falling;
  Curve curve{named ? "fitted, " + pairs_text(key.first) : "",
              {MarkRole::curve, falling ? Pattern::dashed : Pattern::solid, series},
              {},
              {}};
  const double gap = fit.hysteresis ? fit.hysteresis->value / 2 : 0;
  const double bite = fit.threshold.value + (key.second == PressureCourse::unknown ? 0 : falling ? -gap : gap);
  const bool below =
      std::any_of(readings.begin(), readings.end(), [&](const auto* each) { return each->pressure <= bite; });
  if (below && readings.size() == 1) return curve;  // a released reading alone is no line
  if (bite >= 0 && !below) {
    curve.x.push_back(bite);
    curve.y.push_back(fit.drag.value);
  }
  bool met = !below;
  for (const auto* reading : readings) {
    if (!met && reading->pressure > bite) {
      curve.x.push_back(bite);
      curve.y.push_back(fit.drag.value);
      met = true;
    }
    curve.x.push_back(reading->pressure);
    curve.y.push_back(reading->fitted);
  }
  return curve;
}

/// What the grade's band would give with so many pairs, by the file.
ChartArea band_of(const BrakeFit& fit, int pairs, double top, bool named) {
  const double per = fit.torque_per_pressure.in_file * pairs * fit.fit.brakes * (top - fit.threshold.in_file);
  return {named ? "band of grade " + fit.fit.grade : "",
          {MarkRole::area},
          {fit.threshold.in_file, top},
          {fit.drag.in_file, fit.drag.in_file + per * fit.band_low},
          {fit.drag.in_file, fit.drag.in_file + per * fit.band_high}};
}

void triangle(Scene& scene, Point at, double up, const Style& style) {
  add(scene, Polygon{{{at.x - size, at.y + up * size}, {at.x + size, at.y + up * size}, {at.x, at.y - up * size}}},
      style);
}

void cross(Scene& scene, Point at) {
  const Style style{MarkRole::bad};
  add(scene, Segment{{at.x - size, at.y - size}, {at.x + size, at.y + size}}, style);
  add(scene, Segment{{at.x - size, at.y + size}, {at.x + size, at.y - size}}, style);
}

void draw_reading(Scene& scene, Point at, const FittedReading& reading, const Layout& layout) {
  const Style style{MarkRole::text};
  if (reading.outlier) {
    cross(scene, at);
    const bool right = at.x < (layout.plot().left + layout.plot().right) / 2;
    add(scene,
        Label{{at.x + (right ? 2 : -2), at.y + 1},
              fmt::format("row {}, left out", reading.row),
              right ? Anchor::start : Anchor::end,
              measure::number,
              Weight::normal,
              0},
        {MarkRole::bad});
  } else if (reading.course == PressureCourse::unknown) {
    add(scene, Circle{at, size, true}, style);
  } else {
    triangle(scene, at, reading.course == PressureCourse::rising ? 1 : -1, style);
  }
}

std::string key_text(const BrakeFit& fit) {
  bool rising = false;
  bool falling = false;
  bool unknown = false;
  for (const auto& each : fit.readings) {
    rising = rising || each.course == PressureCourse::rising;
    falling = falling || each.course == PressureCourse::falling;
    unknown = unknown || each.course == PressureCourse::unknown;
  }
  std::string text = "Readings:";
  if (rising) text += " triangle up, pressure rising (solid line);";
  if (falling) text += " triangle down, falling (dashed line);";
  if (unknown) text += " dot, not known;";
  if (fit.outliers > 0) text += " cross, left out;";
  text.back() = '.';
  return text;
}

Chart chart_of(const BrakeFit& fit) {
  double most_pressure = 0;
  double most_torque = 0;
  for (const auto& each : fit.readings) {
    most_pressure = std::max(most_pressure, each.pressure);
    most_torque = std::max({most_torque, each.torque, each.fitted});
  }
  Chart chart;
  chart.x = {"pressure", Q::pressure, {}, 1.04 * most_pressure, true};
  chart.y = {"torque at the shaft", Q::torque, {}, 1.08 * most_torque, true};
  if (!(fit.torque_per_pressure.value > 0)) return chart;
  const auto groups = groups_of(fit);
  std::map<int, const Groups::value_type*> longest;  // of each number of pairs: the line that carries the name
  for (const auto& group : groups) {
    auto& best = longest[group.first.first];
    if (best == nullptr || best->second.back()->pressure < group.second.back()->pressure) best = &group;
  }
  int series = 0;
  for (auto each = longest.rbegin(); each != longest.rend(); ++each, series = (series + 1) % series_count) {
    const double top = each->second->second.back()->pressure;
    if (top > fit.threshold.in_file) chart.areas.push_back(band_of(fit, each->first, top, each == longest.rbegin()));
    for (const auto& group : groups) {
      if (group.first.first != each->first) continue;
      auto curve = line_of(fit, group, series, &group == each->second);
      if (!curve.x.empty()) chart.curves.push_back(std::move(curve));
    }
  }
  return chart;
}

}  // namespace

Scene fit_figure(const BrakeFit& fit, units::System system) {
  std::vector<Footnote> notes{{key_text(fit), MarkRole::muted}};
  if (!fit.verdicts.empty())
    notes.insert(notes.begin(),
                 {units::fill(fit.verdicts.front().what, system),
                  fit.verdicts.front().cause == BrakeCause::as_expected ? MarkRole::good : MarkRole::bad});
  std::string under = fmt::format("{} × {}, grade {}", fit.fit.brakes, fit.fit.brake, fit.fit.grade);
  if (!fit.title.empty()) under = fit.title + " · " + under;
  auto out = page("The brake as read", under, 92, notes);
  const Chart chart = chart_of(fit);
  add_chart(out.scene, chart, out.room, system);
  const Layout layout(chart, out.room, system);
  for (const auto& reading : fit.readings)
    draw_reading(out.scene, layout.at(reading.pressure, reading.torque), reading, layout);
  out.scene.description =
      in_words(chart, system) + fmt::format(" {} readings, {} left out.", fit.readings.size(), fit.outliers);
  for (const auto& note : notes) out.scene.description += " " + note.text;
  return out.scene;
}

}  // namespace holdback::draw
