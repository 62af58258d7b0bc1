#include "holdback/draw/placer.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace holdback::draw {

namespace {

constexpr double gap = 1.1;  // [mm] between a line and the words at it

Box grown(const Box& box, double by) { return {box.left - by, box.top - by, box.right + by, box.bottom + by}; }

bool within(const Point& point, const Box& box) {
  return point.x >= box.left && point.x <= box.right && point.y >= box.top && point.y <= box.bottom;
}

bool within(const Box& inner, const Box& outer) {
  return inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top &&
         inner.bottom <= outer.bottom;
}

/// The point at a share of the way along a line of one point or more.
Point along(const std::vector<Point>& line, double share) {
  double length = 0;
  for (std::size_t i = 1; i < line.size(); ++i)
    length += std::hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y);
  double left = share * length;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const double piece = std::hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y);
    if (left <= piece && piece > 0) {
      return {std::lerp(line[i - 1].x, line[i].x, left / piece), std::lerp(line[i - 1].y, line[i].y, left / piece)};
    }
    left -= piece;
  }
  return line.back();
}

}  // namespace

void Placer::taken(const std::vector<Point>& line) {
  for (std::size_t i = 1; i < line.size(); ++i) {
    const auto& a = line[i - 1];
    const auto& b = line[i];
    const int steps = std::clamp(static_cast<int>(2 * std::hypot(b.x - a.x, b.y - a.y)) + 1, 1, 1000);
    for (int k = 0; k <= steps; ++k) {
      const double share = static_cast<double>(k) / steps;
      lines_.push_back({std::lerp(a.x, b.x, share), std::lerp(a.y, b.y, share)});
    }
  }
}

bool Placer::on_words(const Box& box) const {
  return std::any_of(words_.begin(), words_.end(), [&](const Box& each) { return overlap(each, box); });
}

int Placer::crossings(const Box& box) const {
  return static_cast<int>(
      std::count_if(lines_.begin(), lines_.end(), [&](const Point& point) { return within(point, box); }));
}

std::optional<Point> Placer::spot(const std::vector<Point>& points, std::string_view words, double size,
                                  bool clear) const {
  std::optional<Point> best;
  if (points.empty()) return best;
  int fewest = 0;
  const double half = text_width(words, size) / 2;
  const double least = box_.left + half + gap;
  const double most = std::max(box_.right - half - gap, least);
  for (const double off : {0.0, 1.3 * size, 2.6 * size}) {
    for (const double share : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0.0, 1.0}) {
      const auto point = along(points, share);
      for (const double aside : {0.0, -half, half}) {
        for (const double y : {point.y - gap - 0.22 * size - off, point.y + gap + 0.78 * size + off}) {
          const Point at{std::clamp(point.x + aside, least, most), y};
          const auto box = grown(bounds({at, std::string(words), Anchor::middle, size, Weight::normal, 0}), 0.5);
          if (!within(box, box_) || on_words(box)) continue;
          const int crossed = crossings(box);
          if ((clear && crossed > 0) || (best && crossed >= fewest)) continue;
          best = at;
          fewest = crossed;
          if (crossed == 0) return best;
        }
      }
    }
  }
  return best;
}

Point Placer::meets(const Box& box, Point anchor) {
  return {std::clamp(anchor.x, box.left, box.right), std::clamp(anchor.y, box.top, box.bottom)};
}

std::optional<int> Placer::crossings(Point a, Point b) const {
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  const int steps = 1 + static_cast<int>(2 * length);
  for (int i = 0; i <= steps; ++i) {
    const Point at{std::lerp(a.x, b.x, 1.0 * i / steps), std::lerp(a.y, b.y, 1.0 * i / steps)};
    // What the leader points at may itself be kept clear of words.
    if (std::any_of(words_.begin(), words_.end(),
                    [&](const Box& each) { return within(at, each) && !within(a, each); }))
      return std::nullopt;
  }
  if (!(length > 0)) return 0;
  const double dx = (b.x - a.x) / length;
  const double dy = (b.y - a.y) / length;
  return static_cast<int>(std::count_if(lines_.begin(), lines_.end(), [&](const Point& point) {
    const double along = (point.x - a.x) * dx + (point.y - a.y) * dy;
    return along > 0.6 && along < length && std::abs((point.x - a.x) * dy - (point.y - a.y) * dx) < 0.25;
  }));
}

std::optional<Box> Placer::beside(Point anchor, double width, double height, double prefer) const {
  constexpr int turns = 24;
  // What a person minds, against a millimetre of leader: a line through the words, a line over the leader, a direction
  // that is 15° from the one asked for.
  constexpr double through = 3.5;
  constexpr double over = 1.2;
  constexpr double turned = 0.9;
  std::optional<Box> best;
  double least = 0;
  for (const double far : {3.0, 5.0, 8.0, 12.0, 17.0, 23.0, 30.0, 38.0, 47.0}) {
    if (best && far > least) break;
    for (int k = 0; k < turns; ++k) {
      const int step = (k + 1) / 2;
      const double angle = prefer + (k % 2 == 1 ? 1 : -1) * step * 2 * std::numbers::pi / turns;
      const double reach = far + (std::abs(std::cos(angle)) * width + std::abs(std::sin(angle)) * height) / 2;
      const Point middle{anchor.x + reach * std::cos(angle), anchor.y - reach * std::sin(angle)};
      const Box box{middle.x - width / 2, middle.y - height / 2, middle.x + width / 2, middle.y + height / 2};
      const double cheap = far + turned * step;
      if ((best && cheap >= least) || !within(box, box_) || on_words(box)) continue;
      const auto crossed = crossings(anchor, meets(box, anchor));
      if (!crossed) continue;
      const double cost = cheap + over * *crossed + through * crossings(grown(box, 0.3));
      if (best && cost >= least) continue;
      best = box;
      least = cost;
    }
  }
  return best;
}

}  // namespace holdback::draw
