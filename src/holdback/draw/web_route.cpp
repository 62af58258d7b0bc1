#include "holdback/draw/web_route.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace holdback::draw {

namespace {

constexpr double pi = std::numbers::pi;
constexpr double degree = pi / 180;
constexpr double most_wrap = 250 * degree;

double distance(const Place& a, const Place& b) { return std::hypot(a.x - b.x, a.y - b.y); }

double distance(const Place& p, const Leg& leg) {
  const double dx = leg.to.x - leg.from.x;
  const double dy = leg.to.y - leg.from.y;
  const double square = dx * dx + dy * dy;
  const double share = square > 0 ? ((p.x - leg.from.x) * dx + (p.y - leg.from.y) * dy) / square : 0;
  return distance(p, ahead(leg.from, leg.heading, std::clamp(share, 0.0, 1.0) * std::sqrt(square)));
}

/// On which side of the line from p to q the place r lies: −1, 0 or 1.
int side(const Place& p, const Place& q, const Place& r) {
  const double area = (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return area > 0 ? 1 : area < 0 ? -1 : 0;
}

bool cross(const Leg& a, const Leg& b) {
  return side(a.from, a.to, b.from) != side(a.from, a.to, b.to) &&
         side(b.from, b.to, a.from) != side(b.from, b.to, a.to);
}

/// A way as far as it is laid.
struct Way {
  Route route{};
  Place at{};
  double heading{};
  double faults{};
  Extent extent{};
};

/// What the search is told.
struct Sheet {
  double radius{};
  double longest{};
  double aspect{};
  double floor() const { return -1.35 * radius; }
};

double short_of(double share) { return std::max(0.0, 1 - share); }

double faults_among(const Route& route, const Leg& leg, const Bend* bend) {
  double faults = 0;
  const auto last_leg = route.legs.empty() ? 0 : route.legs.size() - 1;
  for (std::size_t i = 0; i < last_leg; ++i) {
    if (cross(leg, route.legs[i])) faults += 2;
    if (bend != nullptr) faults += 3 * short_of(distance(bend->centre, route.legs[i]) / (1.5 * bend->turn.radius));
  }
  for (std::size_t i = 0; i < route.bends.size(); ++i) {
    const Bend& other = route.bends[i];
    if (bend != nullptr)
      faults += 4 * short_of(distance(bend->centre, other.centre) / (1.3 * (bend->turn.radius + other.turn.radius)));
    faults += 3 * short_of(distance(other.centre, leg) / (1.5 * other.turn.radius));
  }
  return faults;
}

/// What is wrong with a new leg and the bend before it, in lengths of the roll's radius. `route` is without the two.
double faults_of(const Route& route, const Leg& leg, const Bend* bend, const Sheet& sheet) {
  double faults = faults_among(route, leg, bend);
  if (!route.legs.empty()) faults += 4 * std::max(0.0, 1.25 - distance(Place{}, leg) / sheet.radius);
  faults += 3 * std::max(0.0, sheet.floor() - leg.to.y) / sheet.radius;
  if (bend != nullptr)
    faults += 4 * std::max(0.0, 1.3 - distance(Place{}, bend->centre) / (sheet.radius + bend->turn.radius));
  return faults;
}

void go(Way& way, double length, const Bend* bend, const Sheet& sheet) {
  const double drawn = std::min(length, sheet.longest);
  const Leg leg{way.at, ahead(way.at, way.heading, drawn), way.heading, length, drawn < length};
  way.faults += faults_of(way.route, leg, bend, sheet);
  way.route.legs.push_back(leg);
  way.extent.take(leg.to, 0.02);
  if (bend != nullptr) {
    way.route.bends.push_back(*bend);
    way.extent.take(bend->centre, bend->turn.radius);
  }
  way.at = leg.to;
}

Way begun(double heading, double span, const Sheet& sheet) {
  Way way;
  way.at = ahead({}, heading + pi / 2, sheet.radius);
  way.heading = heading;
  way.extent = {-sheet.radius, -sheet.radius, sheet.radius, sheet.radius};
  go(way, span, nullptr, sheet);
  return way;
}

/// The way on around a turn to one side, and over the span behind it.
Way gone_on(const Way& from, const Turn& turn, bool left, double span, const Sheet& sheet) {
  Way way = from;
  const double to_side = left ? 1 : -1;
  const Bend bend{turn, ahead(way.at, way.heading + to_side * pi / 2, turn.radius), left, way.heading};
  way.heading += to_side * turn.wrap;
  way.at = ahead(bend.centre, way.heading - to_side * pi / 2, turn.radius);
  go(way, span, &bend, sheet);
  return way;
}

/// Less is better: faults, then the scale that the sheet allows, then a web that leaves to the right.
double cost(const Way& way, const Sheet& sheet, bool last) {
  const Extent& room = way.extent;
  const double size = std::max((room.right - room.left) / sheet.aspect, room.high - room.low) / sheet.radius;
  const double away = last ? 0.5 * (1 - std::cos(way.heading)) + 0.35 * (room.right - way.at.x) / sheet.radius : 0;
  return 6 * way.faults + size + away;
}

void keep_best(std::vector<Way>& ways, std::size_t most, const Sheet& sheet, bool last) {
  std::vector<std::pair<double, std::size_t>> order;
  order.reserve(ways.size());
  for (std::size_t i = 0; i < ways.size(); ++i) order.emplace_back(cost(ways[i], sheet, last), i);
  std::sort(order.begin(), order.end());
  order.resize(std::min(order.size(), most));
  std::vector<Way> kept;
  kept.reserve(order.size());
  for (const auto& [price, index] : order) kept.push_back(std::move(ways[index]));
  ways = std::move(kept);
}

}  // namespace

Place ahead(const Place& place, double heading, double by) {
  return {place.x + by * std::cos(heading), place.y + by * std::sin(heading)};
}

Route web_route(double radius, const std::vector<double>& spans, const std::vector<Turn>& turns, double longest,
                double aspect) {
  constexpr std::array<double, 9> starts{0, 10, 20, -10, 35, 50, 70, 90, -25};
  const Sheet sheet{radius, longest, aspect};
  std::vector<Way> ways;
  for (const double start : starts) ways.push_back(begun(start * degree, spans[0], sheet));
  for (std::size_t i = 0; i < turns.size(); ++i) {
    Turn turn = turns[i];
    turn.wrap = std::min(turn.wrap, most_wrap);
    std::vector<Way> next;
    next.reserve(2 * ways.size());
    for (const Way& way : ways)
      for (const bool left : {true, false}) next.push_back(gone_on(way, turn, left, spans[i + 1], sheet));
    // A long way is not worth more time than a short one.
    keep_best(next, turns.size() > 20 ? 10 : 48, sheet, i + 1 == turns.size());
    ways = std::move(next);
  }
  keep_best(ways, 1, sheet, true);
  return std::move(ways.front().route);
}

void Extent::take(const Place& place, double by) {
  left = std::min(left, place.x - by);
  low = std::min(low, place.y - by);
  right = std::max(right, place.x + by);
  high = std::max(high, place.y + by);
}

Extent extent_of(const Route& route, double radius, double nip) {
  Extent extent{-radius, -radius, radius, radius};
  for (const Leg& leg : route.legs) extent.take(leg.to, 0);
  for (const Bend& bend : route.bends) extent.take(bend.centre, bend.turn.radius);
  extent.take(route.legs.back().to, nip);
  return extent;
}

std::vector<Place> line_of(const Route& route) {
  std::vector<Place> line{route.legs.front().from};
  for (std::size_t i = 0; i < route.legs.size(); ++i) {
    line.push_back(route.legs[i].to);
    if (i >= route.bends.size()) continue;
    const Bend& bend = route.bends[i];
    const double to_side = bend.left ? 1 : -1;
    const int steps = 2 + static_cast<int>(bend.turn.wrap / (6 * degree));
    for (int k = 1; k <= steps; ++k) {
      const double heading = bend.heading + to_side * bend.turn.wrap * k / steps;
      line.push_back(ahead(bend.centre, heading - to_side * pi / 2, bend.turn.radius));
    }
  }
  return line;
}

}  // namespace holdback::draw
