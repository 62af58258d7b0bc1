#include "holdback/draw/sketch.hpp"

#include <algorithm>
#include <cmath>

namespace holdback::draw {

namespace {

constexpr double letters = 3.2;  // [mm]
constexpr double head = 2.6;     // [mm] length of an arrow's head

void draw_head(Scene& scene, Point tip, double dx, double dy, Style style) {
  const double wide = 0.33 * head;
  const Point back{tip.x - head * dx, tip.y - head * dy};
  add(scene, Polygon{{tip, {back.x - wide * dy, back.y + wide * dx}, {back.x + wide * dy, back.y - wide * dx}}}, style);
}

}  // namespace

void draw_roller(Scene& scene, Point centre, double radius) {
  add(scene, Circle{centre, radius, false}, machine_style);
  const double arm = std::min(1.2, radius / 2);
  add(scene, Segment{{centre.x - arm, centre.y}, {centre.x + arm, centre.y}}, machine_style);
  add(scene, Segment{{centre.x, centre.y - arm}, {centre.x, centre.y + arm}}, machine_style);
}

void draw_arrow(Scene& scene, Point from, Point to, Style style, bool both) {
  const double length = std::hypot(to.x - from.x, to.y - from.y);
  if (!(length > 0)) return;
  const double dx = (to.x - from.x) / length;
  const double dy = (to.y - from.y) / length;
  const double inset = std::min(head / 2, length / 2);
  const Point start = both ? Point{from.x + inset * dx, from.y + inset * dy} : from;
  add(scene, Segment{start, {to.x - inset * dx, to.y - inset * dy}}, style);
  Style solid = style;
  solid.pattern = Pattern::solid;
  if (solid.role == MarkRole::muted) solid.role = MarkRole::axis;  // a filled head of muted ink is too pale
  draw_head(scene, to, dx, dy, solid);
  if (both) draw_head(scene, from, -dx, -dy, solid);
}

void draw_dimension(Scene& scene, Point from, Point to, double away, const std::string& words) {
  const bool upright = std::abs(to.y - from.y) > std::abs(to.x - from.x);
  const double past = away < 0 ? -1.2 : 1.2;
  Point a = from;
  Point b = to;
  if (upright) {
    a.x = b.x = (away < 0 ? std::min(from.x, to.x) : std::max(from.x, to.x)) + away;
    add(scene, Segment{from, {a.x + past, from.y}}, measure_style);
    add(scene, Segment{to, {b.x + past, to.y}}, measure_style);
  } else {
    a.y = b.y = (away < 0 ? std::min(from.y, to.y) : std::max(from.y, to.y)) + away;
    add(scene, Segment{from, {from.x, a.y + past}}, measure_style);
    add(scene, Segment{to, {to.x, b.y + past}}, measure_style);
  }
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  if (length > 2.5 * head) {
    draw_arrow(scene, a, b, measure_style, true);
  } else {  // too short for two heads: they come from outside
    const double dx = (b.x - a.x) / length;
    const double dy = (b.y - a.y) / length;
    draw_arrow(scene, {a.x - 6 * dx, a.y - 6 * dy}, a, measure_style);
    draw_arrow(scene, {b.x + 6 * dx, b.y + 6 * dy}, b, measure_style);
  }
  const Point middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
  if (upright)
    draw_words(scene, {middle.x + (away < 0 ? -2 : 2), middle.y + letters / 3}, words,
               away < 0 ? Anchor::end : Anchor::start);
  else
    draw_words(scene, {middle.x, middle.y - 1.2}, words, Anchor::middle);
}

std::vector<Point> arc(Point centre, double radius, double from, double to) {
  constexpr int steps = 48;
  std::vector<Point> points;
  for (int i = 0; i <= steps; ++i) {
    const double angle = from + (to - from) * i / steps;
    points.push_back({centre.x + radius * std::cos(angle), centre.y + radius * std::sin(angle)});
  }
  return points;
}

void draw_words(Scene& scene, Point at, const std::string& words, Anchor anchor, Weight weight, MarkRole role) {
  if (words.empty()) return;
  add(scene, Label{at, words, anchor, letters, weight, 0}, {role});
}

}  // namespace holdback::draw
