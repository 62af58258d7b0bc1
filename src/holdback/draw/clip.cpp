#include "holdback/draw/clip.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace holdback::draw {

namespace {

constexpr double closest = 0.05;  // [mm] what no eye tells apart

Point between(const Point& a, const Point& b, double share) {
  return {a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
}

double distance(const Point& a, const Point& b) { return std::hypot(b.x - a.x, b.y - a.y); }

/// An edge of a box as the line where a·x + b·y = c, inside where it is at most that.
struct Edge {
  double a, b, c;
  double outside(const Point& point) const { return a * point.x + b * point.y - c; }
};

std::array<Edge, 4> edges(const Box& box) {
  return {{{-1, 0, -box.left}, {1, 0, box.right}, {0, -1, -box.top}, {0, 1, box.bottom}}};
}

std::vector<Point> cut(const std::vector<Point>& points, const Edge& edge) {
  std::vector<Point> kept;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const auto& here = points[i];
    const auto& before = points[(i + points.size() - 1) % points.size()];
    const double now = edge.outside(here);
    const double then = edge.outside(before);
    if ((now > 0) != (then > 0)) kept.push_back(between(before, here, then / (then - now)));
    if (now <= 0) kept.push_back(here);
  }
  return kept;
}

}  // namespace

std::optional<Segment> clipped(const Segment& line, const Box& box) {
  double from = 0;
  double to = 1;
  for (const auto& edge : edges(box)) {
    const double a = edge.outside(line.from);
    const double b = edge.outside(line.to);
    if (a > 0 && b > 0) return {};
    if (a > 0) from = std::max(from, a / (a - b));
    if (b > 0) to = std::min(to, a / (a - b));
  }
  if (from > to) return {};
  return Segment{from > 0 ? between(line.from, line.to, from) : line.from,
                 to < 1 ? between(line.from, line.to, to) : line.to};
}

std::vector<std::vector<Point>> clipped_line(const std::vector<Point>& points, const Box& box) {
  std::vector<std::vector<Point>> parts;
  bool open = false;  // the last part goes on
  Point last{};       // where it has got to, kept or left out
  const auto close = [&] {
    if (open && !(parts.back().back() == last)) parts.back().push_back(last);
    if (open && parts.back().size() < 2) parts.pop_back();
    open = false;
  };
  for (std::size_t i = 1; i < points.size(); ++i) {
    const auto piece = clipped({points[i - 1], points[i]}, box);
    if (!piece || (open && distance(last, piece->from) > 1e-9)) close();
    if (!piece) continue;
    if (!open) parts.push_back({piece->from});
    open = true;
    last = piece->to;
    if (distance(parts.back().back(), last) >= closest) parts.back().push_back(last);
  }
  close();
  return parts;
}

std::vector<Point> clipped_area(const std::vector<Point>& points, const Box& box) {
  auto kept = points;
  for (const auto& edge : edges(box)) kept = cut(kept, edge);
  return kept;
}

}  // namespace holdback::draw
