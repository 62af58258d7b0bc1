#include "holdback/draw/chart_layout.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "holdback/draw/clip.hpp"
#include "holdback/draw/date_ticks.hpp"

namespace holdback::draw {

namespace {

constexpr int columns_of_numbers = 9;
constexpr int rows_of_flags = 3;

/// The lowest and the highest of all values that can be shown.
class Extent {
 public:
  void take(double value) {
    if (!showable(value)) return;
    low_ = std::min(low_, value);
    high_ = std::max(high_, value);
  }
  void take(const std::vector<double>& values) {
    for (const double value : values) take(value);
  }
  bool any() const { return low_ <= high_; }
  Range range() const { return any() ? Range{low_, high_} : Range{0, 1}; }

 private:
  double low_{std::numeric_limits<double>::max()};
  double high_{std::numeric_limits<double>::lowest()};
};

Extent extent_x(const Chart& chart) {
  Extent extent;
  for (const auto& curve : chart.curves) extent.take(curve.x);
  for (const auto& area : chart.areas) extent.take(area.x);
  for (const auto& limit : chart.limits) extent.take(limit.x);
  for (const auto& span : chart.spans) extent.take({span.from, span.to});
  return extent;
}

Extent extent_y(const Chart& chart) {
  Extent extent;
  for (const auto& curve : chart.curves) extent.take(curve.y);
  for (const auto& area : chart.areas) {
    extent.take(area.low);
    extent.take(area.high);
  }
  for (const auto& limit : chart.limits) extent.take(limit.y);
  return extent;
}

Range shown_range(const ChartAxis& axis, const Extent& extent, units::System system) {
  Range range = extent.range();
  if (axis.low && showable(*axis.low)) range.low = *axis.low;
  if (axis.high && showable(*axis.high)) range.high = *axis.high;
  const auto shown = [&](double si) { return units::in_display_unit(si, axis.kind, system); };
  range = {shown(range.low), shown(range.high)};
  if (axis.from_zero) range = {std::min(range.low, 0.0), std::max(range.high, 0.0)};
  return opened(range);
}

/// Numbers, title and ticks of an axis; `round` moves its ends to ticks.
Scale scale_of(const ChartAxis& axis, const Range& range, units::System system, int most, bool round) {
  Scale scale;
  scale.range = round ? rounded_out(range, most) : range;
  if (axis.dates) {
    auto dates = date_ticks(scale.range.low, scale.range.high, most);
    scale.ticks = std::move(dates.days);
    scale.text = {std::move(dates.texts), 0};
    scale.title = axis.name;
    return scale;
  }
  scale.ticks = nice_ticks(scale.range, most);
  scale.text = tick_text(scale.ticks);
  const auto unit = unit_text(units::unit_of(axis.kind, system), scale.text.exponent);
  scale.title = axis.name + (unit.empty() ? "" : " [" + unit + "]");
  return scale;
}

double widest(const std::vector<std::string>& texts, double size) {
  double most = 0;
  for (const auto& text : texts) most = std::max(most, text_width(text, size));
  return most;
}

double held(double millimetres) { return std::clamp(millimetres, -1e6, 1e6); }

/// What is taken of one row of names.
class FlagRow {
 public:
  bool free(double from, double to) const {
    return std::none_of(taken_.begin(), taken_.end(),
                        [&](const std::pair<double, double>& each) { return from < each.second && each.first < to; });
  }
  void take(double from, double to) { taken_.emplace_back(from, to); }

 private:
  std::vector<std::pair<double, double>> taken_{};
};

}  // namespace

std::vector<Flag> flags(const std::vector<Flag>& wanted, double left, double right, int rows) {
  constexpr double apart = 0.5;  // [mm] at least between a name and what is beside it
  std::vector<FlagRow> taken(static_cast<std::size_t>(std::max(rows, 0)));
  auto out = wanted;
  for (auto& flag : out) {
    flag.row = -1;
    if (flag.text.empty()) continue;
    const double width = text_width(flag.text, measure::number) + measure::flag_gap + apart;
    for (const bool on_left : {false, true}) {
      const double from = on_left ? flag.x - width : flag.x - apart;
      const double to = on_left ? flag.x + apart : flag.x + width;
      if (from < left - apart || to > right) continue;
      // The line rises through the rows below, so that they have to be free where it stands.
      for (int row = static_cast<int>(taken.size()); row-- > 0;) {
        const auto at = static_cast<std::size_t>(row);
        if (taken[at].free(from, to)) {
          flag.row = row;
          flag.left = on_left;
        }
        if (!taken[at].free(flag.x - apart, flag.x + apart)) break;
      }
      if (flag.row < 0) continue;
      taken[static_cast<std::size_t>(flag.row)].take(from, to);
      for (auto below = static_cast<std::size_t>(flag.row) + 1; below < taken.size(); ++below)
        taken[below].take(flag.x - apart, flag.x + apart);
      break;
    }
  }
  return out;
}

ChartRange x_range(const Chart& chart, units::System system) {
  const auto range = shown_range(chart.x, extent_x(chart), system);
  return {range.low, range.high};
}

ChartRange y_range(const Chart& chart, units::System system) {
  auto range = shown_range(chart.y, extent_y(chart), system);
  // A line along the top would read as a frame.
  if (!chart.y.high) range.high += 0.06 * (range.high - range.low);
  range = rounded_out(range, chart.rows);
  return {range.low, range.high};
}

Layout::Layout(const Chart& chart, const Box& box, units::System system, const Sides& sides)
    : chart_(chart), box_(box), system_(system) {
  empty_ = !extent_x(chart).any() || !extent_y(chart).any();
  const auto across = x_range(chart, system);
  const auto up = y_range(chart, system);
  x_ = scale_of(chart.x, {across.low, across.high}, system, columns_of_numbers, false);
  y_ = scale_of(chart.y, {up.low, up.high}, system, chart.rows, true);
  const double numbers = widest(y_.text.texts, measure::number) + measure::tick + 1;
  const double heading = chart.heading.empty() ? 0 : 5.2;
  const double most = 0.4 * (box.right - box.left);
  plot_ = {box.left + std::min(std::max(numbers, sides.left), most), box.top + heading + 6.5,
           box.right - std::max(3.0, sides.right), box.bottom - (chart.x.bare ? 2 : 10.5)};
  plot_.bottom = std::max(plot_.bottom, plot_.top + 1);
  if (!empty_) name_all();  // with the plot as wide as can be: only the rows matter yet
  double names = 0;
  for (const auto& each : names_) names = std::max(names, widest(each.lines, measure::text));
  if (names > 0) plot_.right = std::min(box.right - names - measure::leader - 1, box.right - sides.right);
  plot_.right = std::max(plot_.right, plot_.left + 1);
  place_flags();
  names_.clear();
  if (!empty_) name_all();
}

double Layout::column(double x_shown) const {
  const auto& range = x_.range;
  return held(plot_.left + (x_shown - range.low) / (range.high - range.low) * (plot_.right - plot_.left));
}

double Layout::row(double y_shown) const {
  const auto& range = y_.range;
  return held(plot_.bottom - (y_shown - range.low) / (range.high - range.low) * (plot_.bottom - plot_.top));
}

Point Layout::at(double x_si, double y_si) const { return {column(shown_x(x_si)), row(shown_y(y_si))}; }

std::vector<std::vector<Point>> Layout::runs(const std::vector<double>& x, const std::vector<double>& y) const {
  std::vector<std::vector<Point>> out(1);
  for (std::size_t i = 0; i < std::min(x.size(), y.size()); ++i) {
    if (showable(x[i]) && showable(y[i])) {
      out.back().push_back(at(x[i], y[i]));
    } else if (!out.back().empty()) {
      out.emplace_back();
    }
  }
  if (out.back().empty()) out.pop_back();
  return out;
}

std::vector<std::vector<Point>> Layout::runs(const ChartLimit& limit) const {
  if (!limit.x.empty()) return runs(limit.x, limit.y);
  if (limit.y.empty() || !showable(limit.y.front())) return {};
  const double here = row(shown_y(limit.y.front()));
  return {{{plot_.left, here}, {plot_.right, here}}};
}

void Layout::name(const std::string& text, const Style& style, const std::vector<std::vector<Point>>& runs,
                  const std::string& last) {
  if (text.empty() || runs.empty()) return;
  EndName name;
  name.style = style;
  const auto place = runs.back().back();
  const bool above = place.y < plot_.top - 0.05;
  const bool below = place.y > plot_.bottom + 0.05;
  std::vector<Point> visible;
  for (const auto& run : runs) {
    if (run.size() == 1 && run[0].y >= plot_.top && run[0].y <= plot_.bottom) visible = run;
    for (const auto& part : clipped_line(run, plot_)) visible = part;
  }
  name.has_end = !visible.empty();
  name.end = visible.empty() ? Point{plot_.right, std::clamp(place.y, plot_.top, plot_.bottom)} : visible.back();
  name.middle = above || below ? std::clamp(place.y, plot_.top, plot_.bottom) : name.end.y;
  std::string words = text;
  if (above || below) words += (last.empty() ? "" : " " + kept_together(last)) + (above ? "\u00A0↑" : "\u00A0↓");
  name.lines = broken(words, chart_.label_room, measure::text, 3);
  names_.push_back(std::move(name));
}

void Layout::place_flags() {
  std::vector<Flag> wanted;
  for (const auto& mark : chart_.marks) {
    if (!showable(mark.x)) continue;
    const double x = at(mark.x, 0).x;
    if (x >= plot_.left - 0.05 && x <= plot_.right + 0.05) wanted.push_back({mark.name, x, -1, false});
  }
  std::stable_sort(wanted.begin(), wanted.end(), [](const Flag& a, const Flag& b) { return a.x < b.x; });
  flags_ = draw::flags(wanted, plot_.left, box_.right, rows_of_flags);
  int rows = 0;
  for (const auto& flag : flags_) rows = std::max(rows, flag.row + 1);
  flag_room_ = rows * measure::flag;
  plot_.top = std::min(plot_.top + flag_room_, plot_.bottom - 1);
}

void Layout::name_all() {
  const auto last = [this](const std::vector<double>& values) {
    const auto found = std::find_if(values.rbegin(), values.rend(), showable);
    return found == values.rend() ? std::string{} : units::show(*found, chart_.y.kind, system_);
  };
  // A limit that goes right across says its value in its name.
  for (const auto& limit : chart_.limits)
    name(limit.name, {MarkRole::limit}, runs(limit), limit.x.empty() ? std::string{} : last(limit.y));
  for (const auto& curve : chart_.curves) name(curve.name, curve.style, runs(curve.x, curve.y), last(curve.y));
  for (const auto& area : chart_.areas) {
    std::vector<double> middle;
    for (std::size_t i = 0; i < std::min(area.low.size(), area.high.size()); ++i)
      middle.push_back(area.low[i] / 2 + area.high[i] / 2);
    name(area.name, {MarkRole::muted}, runs(area.x, middle), last(middle));
  }
}

}  // namespace holdback::draw
