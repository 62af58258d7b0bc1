#include "holdback/draw/chart.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "holdback/draw/chart_layout.hpp"
#include "holdback/draw/clip.hpp"
#include "holdback/draw/placer.hpp"
#include "holdback/draw/spread.hpp"

namespace holdback::draw {

namespace {

class Painter {
 public:
  Painter(Scene& scene, const Chart& chart, const Layout& layout)
      : scene_(scene), chart_(chart), layout_(layout), plot_(layout.plot()), placer_(layout.plot()) {}

  void paint() {
    spans();
    grid();
    for (const auto& area : chart_.areas) fill(area);
    for (const auto& limit : chart_.limits) hatch(limit);
    for (const auto& limit : chart_.limits) line(layout_.runs(limit), {MarkRole::limit});
    for (const auto& curve : chart_.curves) line(layout_.runs(curve.x, curve.y), curve.style);
    marks();
    axes();
    titles();
    names();
    span_names();
    for (const auto& caption : chart_.captions) place(caption);
    if (layout_.empty()) no_values();
  }

 private:
  void write(Point at, std::string text, Style style, Anchor anchor, double size, Weight weight = Weight::normal) {
    Label label{at, std::move(text), anchor, size, weight, 0};
    placer_.taken(bounds(label));
    add(scene_, std::move(label), style);
  }

  /// The stretch on the page; none when its ends cannot be shown.
  std::optional<Box> span_box(const ChartSpan& span) const {
    if (!showable(span.from) || !showable(span.to)) return {};
    const double from = std::clamp(layout_.at(span.from, 0).x, plot_.left, plot_.right);
    const double to = std::clamp(layout_.at(span.to, 0).x, plot_.left, plot_.right);
    return Box{std::min(from, to), plot_.top, std::max(from, to), plot_.bottom};
  }

  void spans() {
    for (const auto& span : chart_.spans) {
      if (const auto box = span_box(span)) add(scene_, Rectangle{*box, true}, {MarkRole::grid});
    }
  }

  /// The name of a stretch above it, as near to its middle as the plot allows.
  void span_names() {
    for (const auto& span : chart_.spans) {
      const auto box = span_box(span);
      if (!box) continue;
      const auto text = fitted(span.name, (plot_.right - plot_.left) / 2, measure::number);
      const double half = text_width(text, measure::number) / 2;
      const double middle = std::clamp((box->left + box->right) / 2, plot_.left + half, plot_.right - half);
      write({middle, plot_.top - 1.2}, text, {MarkRole::muted}, Anchor::middle, measure::number);
    }
  }

  void grid() {
    for (const double tick : layout_.y().ticks) {
      const double y = layout_.row(tick);
      add(scene_, Segment{{plot_.left, y}, {plot_.right, y}}, {MarkRole::grid});
    }
  }

  void fill(const ChartArea& area) {
    const auto low = layout_.runs(area.x, area.low);
    const auto high = layout_.runs(area.x, area.high);
    for (std::size_t i = 0; i < std::min(low.size(), high.size()); ++i) {
      auto points = low[i];
      points.insert(points.end(), high[i].rbegin(), high[i].rend());
      auto kept = clipped_area(points, plot_);
      if (kept.size() > 2) add(scene_, Polygon{std::move(kept)}, area.style);
    }
  }

  void line(const std::vector<std::vector<Point>>& runs, const Style& style) {
    for (const auto& run : runs) {
      if (run.size() == 1 && clipped({run[0], run[0]}, plot_)) {
        add(scene_, Circle{run[0], 0.8, true}, style.role == MarkRole::limit ? Style{MarkRole::limit} : style);
      }
      for (auto& part : clipped_line(run, plot_)) {
        placer_.taken(part);
        add(scene_, Polyline{std::move(part)}, style);
      }
    }
  }

  /// Short slanted lines on the forbidden side, at even distances along the limit.
  void hatch(const ChartLimit& limit) {
    for (const auto& run : layout_.runs(limit)) {
      for (const auto& part : clipped_line(run, plot_)) hatch(part, limit.above);
    }
  }
  void hatch(const std::vector<Point>& points, bool above) {
    double next = measure::hatch_gap / 2;  // along the line, from the start of the piece at hand
    for (std::size_t i = 1; i < points.size(); ++i) {
      const auto& a = points[i - 1];
      const double dx = points[i].x - a.x;
      const double dy = points[i].y - a.y;
      const double length = std::hypot(dx, dy);
      for (; next <= length; next += measure::hatch_gap) {
        const double side = (above ? 1 : -1) * (dx < 0 ? -1 : 1);
        const double reach = measure::hatch / std::sqrt(2.0) / length;
        const Point from{a.x + dx * next / length, a.y + dy * next / length};
        const Point to{from.x + reach * side * (dx + dy), from.y + reach * side * (dy - dx)};
        const auto kept = clipped({from, to}, plot_);
        if (kept) add(scene_, *kept, {MarkRole::axis});
      }
      next -= length;
    }
  }

  /// Upright lines, each up to its name.
  void marks() {
    for (const auto& mark : chart_.marks) {
      if (!showable(mark.x)) continue;
      const double x = layout_.at(mark.x, 0).x;
      if (x < plot_.left - 0.05 || x > plot_.right + 0.05) continue;
      upright(x, plot_.top, mark.style);
    }
    for (const auto& flag : layout_.flags()) {
      if (flag.row < 0) continue;
      const double top = plot_.top - layout_.flag_room() + flag.row * measure::flag;
      add(scene_, Segment{{flag.x, top}, {flag.x, plot_.top}}, {MarkRole::muted, Pattern::dotted, 0});
      const double x = flag.left ? flag.x - measure::flag_gap : flag.x + measure::flag_gap;
      write({x, top + 2.5}, flag.text, {MarkRole::muted}, flag.left ? Anchor::end : Anchor::start, measure::number);
    }
  }
  void upright(double x, double top, const Style& style) {
    add(scene_, Segment{{x, top}, {x, plot_.bottom}}, style);
    placer_.taken(std::vector<Point>{{x, top}, {x, plot_.bottom}});
  }

  void axes() {
    const Style style{MarkRole::axis};
    const double tick = measure::tick;
    add(scene_, Segment{{plot_.left, plot_.top}, {plot_.left, plot_.bottom}}, style);
    add(scene_, Segment{{plot_.left, plot_.bottom}, {plot_.right, plot_.bottom}}, style);
    const auto& y = layout_.y();
    for (std::size_t i = 0; i < y.ticks.size(); ++i) {
      const double row = layout_.row(y.ticks[i]);
      add(scene_, Segment{{plot_.left - tick, row}, {plot_.left, row}}, style);
      const double base = row + measure::drop * measure::number;
      const auto text = fitted(y.text.texts[i], plot_.left - tick - 0.8 - layout_.box().left, measure::number);
      write({plot_.left - tick - 0.8, base}, text, {MarkRole::text}, Anchor::end, measure::number);
    }
    if (chart_.x.bare) return;
    double free = layout_.box().left;  // where the next number may start
    const auto& x = layout_.x();
    for (std::size_t i = 0; i < x.ticks.size(); ++i) {
      const double column = layout_.column(x.ticks[i]);
      add(scene_, Segment{{column, plot_.bottom}, {column, plot_.bottom + tick}}, style);
      const double half = text_width(x.text.texts[i], measure::number) / 2;
      if (column - half < free || column + half > layout_.box().right) continue;
      free = column + half + 1.5;
      write({column, plot_.bottom + tick + 3}, x.text.texts[i], {MarkRole::text}, Anchor::middle, measure::number);
    }
  }

  void titles() {
    const auto& box = layout_.box();
    const double across = box.right - box.left;
    if (!chart_.heading.empty()) {
      write({box.left, box.top + measure::heading}, fitted(chart_.heading, across, measure::heading, Weight::bold),
            {MarkRole::text}, Anchor::start, measure::heading, Weight::bold);
    }
    write({box.left, plot_.top - layout_.flag_room() - 3.2}, fitted(layout_.y().title, across / 2, measure::text),
          {MarkRole::text}, Anchor::start, measure::text);
    if (chart_.x.bare) return;
    // At the right end of its axis; a plot narrower than the title lets it start at the left of the box.
    const auto text = fitted(layout_.x().title, across, measure::text);
    const double end = std::max(plot_.right, box.left + text_width(text, measure::text));
    write({end, plot_.bottom + 9}, text, {MarkRole::text}, Anchor::end, measure::text);
  }

  void names() {
    std::vector<Wish> wishes;
    const double top = plot_.top - 2;
    const double room = layout_.box().bottom - 1 - top;
    double used = 0;
    for (const auto& name : layout_.names()) {
      const double height = measure::line * static_cast<double>(name.lines.size());
      if ((used += height) > room) break;
      wishes.push_back({name.middle, height});
    }
    const auto middles = spread(wishes, top, top + room);
    for (std::size_t i = 0; i < middles.size(); ++i) name(layout_.names()[i], middles[i], wishes[i].height);
  }

  void name(const EndName& name, double middle, double height) {
    const double left = plot_.right + measure::leader;
    if (name.has_end) add(scene_, Segment{name.end, {left - 0.8, middle}}, leader_style(name));
    double base = middle - height / 2 + measure::line / 2 + measure::drop * measure::text;
    for (const auto& text : name.lines) {
      write({left, base}, text, name.style, Anchor::start, measure::text);
      base += measure::line;
    }
  }

  /// A curve that ends before the plot does is led to its name by a thin line, so that nothing looks like a value.
  Style leader_style(const EndName& name) const {
    return name.end.x > plot_.right - 0.5 ? name.style : Style{MarkRole::muted, Pattern::dotted, 0};
  }

  void place(const ChartCaption& caption) {
    std::vector<Point> points;
    for (const auto& run : layout_.runs(caption.x, caption.y)) {
      for (const auto& part : clipped_line(run, plot_)) points.insert(points.end(), part.begin(), part.end());
      if (run.size() == 1 && clipped({run[0], run[0]}, plot_)) points.push_back(run[0]);
    }
    if (points.empty()) return;
    if (caption.dot) add(scene_, Circle{points[points.size() / 2], 0.9, true}, caption.style);
    if (caption.text.empty()) return;
    const double width = std::abs(points.back().x - points.front().x);
    if (caption.narrow && text_width(caption.text, measure::number) > width) return;
    const auto spot = placer_.spot(points, caption.text, measure::number, caption.clear);
    if (spot) write(*spot, caption.text, caption.style, Anchor::middle, measure::number);
  }

  void no_values() {
    write({(plot_.left + plot_.right) / 2, (plot_.top + plot_.bottom) / 2}, "no values", {MarkRole::muted},
          Anchor::middle, measure::text);
  }

  Scene& scene_;
  const Chart& chart_;
  const Layout& layout_;
  const Box plot_;
  Placer placer_;
};

/// "2.80 to 21.9 N·m", or one value.
std::string span_in_words(const std::vector<double>& values, Quantity kind, units::System system) {
  double low = std::numeric_limits<double>::max();
  double high = std::numeric_limits<double>::lowest();
  for (const double value : values) {
    if (!showable(value)) continue;
    low = std::min(low, value);
    high = std::max(high, value);
  }
  if (low > high) return "no values";
  const auto first = units::show_number(low, kind, system);
  return (units::show_number(high, kind, system) == first ? "" : first + " to ") + units::show(high, kind, system);
}

}  // namespace

void add_chart(Scene& scene, const Chart& chart, const Box& box, units::System system) {
  const Layout layout(chart, box, system);
  Painter(scene, chart, layout).paint();
}

void add_panels(Scene& scene, const std::vector<Chart>& charts, const Box& room, units::System system) {
  double shares = 0;
  for (const auto& chart : charts) shares += std::max(chart.share, 0.0);
  Sides sides;
  std::vector<Box> boxes;
  double top = room.top;
  for (const auto& chart : charts) {
    const double gap = boxes.size() + 1 == charts.size() ? 0 : chart.x.bare ? 1 : 4;  // [mm] to the next chart
    const double height = shares > 0 ? (room.bottom - room.top) * std::max(chart.share, 0.0) / shares : 0;
    boxes.push_back({room.left, top, room.right, top + height - gap});
    top += height;
    const auto own = Layout(chart, boxes.back(), system).sides();
    sides = {std::max(sides.left, own.left), std::max(sides.right, own.right)};
  }
  for (std::size_t i = 0; i < charts.size(); ++i) {
    const Layout layout(charts[i], boxes[i], system, sides);
    Painter(scene, charts[i], layout).paint();
  }
}

std::string in_words(const Chart& chart, units::System system) {
  std::string out = chart.heading.empty() ? "" : chart.heading + ": ";
  out += chart.y.name + " over " + chart.x.name + ".";
  for (const auto& limit : chart.limits) {
    if (limit.name.empty()) continue;
    out += fmt::format(" Limit, {}: {} {}.", limit.name, limit.above ? "at most" : "at least",
                       span_in_words(limit.y, chart.y.kind, system));
  }
  for (const auto& curve : chart.curves) {
    if (!curve.name.empty()) out += fmt::format(" {}: {}.", curve.name, span_in_words(curve.y, chart.y.kind, system));
  }
  return out;
}

}  // namespace holdback::draw
