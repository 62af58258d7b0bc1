#include "holdback/draw/elevation_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "holdback/draw/chart_layout.hpp"
#include "holdback/draw/figure_parts.hpp"
#include "holdback/draw/sketch.hpp"

namespace holdback::draw {

namespace {

constexpr double pi = std::numbers::pi;
constexpr double letters = measure::number;
constexpr double line_pitch = 3.3;  // [mm]
constexpr Style thin{MarkRole::muted};
constexpr Style pipe{MarkRole::curve, Pattern::solid, 0};
constexpr Style hidden_line{MarkRole::axis, Pattern::dashed, 0};

/// So far from a page's place in a direction that grows upwards.
Point moved(Point from, double angle, double by) {
  return {from.x + by * std::cos(angle), from.y - by * std::sin(angle)};
}

std::vector<Point> outline(const Box& box) {
  return {
      {box.left, box.top}, {box.right, box.top}, {box.right, box.bottom}, {box.left, box.bottom}, {box.left, box.top}};
}

/// A pad or caliper, given along the radius and across it [mm], on the arm at that angle.
std::vector<Point> block(Point centre, double angle, double from, double to, double half) {
  std::vector<Point> out;
  for (const auto& [r, side] : {std::pair{from, -half}, {to, -half}, {to, half}, {from, half}, {from, -half}})
    out.push_back(moved(moved(centre, angle, r), angle + pi / 2, side));
  return out;
}

std::vector<Point> pad_outline(const DrawnDisc& disc, Point centre, double angle, double scale) {
  const double inner = scale * (disc.radius - disc.size / 2);
  const double outer = scale * (disc.radius + disc.size / 2);
  if (disc.shape == DrawnDisc::Shape::square) return block(centre, angle, inner, outer, (outer - inner) / 2);
  if (disc.shape == DrawnDisc::Shape::round)
    return arc(moved(centre, angle, scale * disc.radius), scale * disc.size / 2, 0, 2 * pi);
  // A pad that goes round further than its share is drawn within it, so that pads stay apart.
  const double half = std::min(disc.angle, 0.9 * 2 * pi / disc.pairs) / 2;
  auto out = arc(centre, outer, -angle - half, -angle + half);
  const auto back = arc(centre, inner, -angle + half, -angle - half);
  out.insert(out.end(), back.begin(), back.end());
  out.push_back(out.front());
  return out;
}

/// Windings of the roll: a spiral that ends where the web leaves.
std::vector<Point> windings(const View& view, double core, double full, double leaves) {
  const int turns = std::clamp(static_cast<int>(view.scale * (full - core) / 2.4), 2, 12);
  std::vector<Point> points;
  const int steps = 40 * turns;
  for (int i = 0; i <= steps; ++i) {
    const double share = 1.0 * i / steps;
    points.push_back(view.polar(std::lerp(core, full, share), leaves + 2 * pi * turns * (1 - share)));
  }
  return points;
}

}  // namespace

double within_or(double value, double usual, double least, double most) {
  return std::isfinite(value) ? std::clamp(value, least, most) : usual;
}

void Pen::line(std::vector<Point> points, Style style) {
  placer_.taken(points);
  if (points.size() == 2)
    add(scene_, Segment{points[0], points[1]}, style);
  else
    add(scene_, Polyline{std::move(points)}, style);
}

void Pen::ring(Point centre, double radius, Style style) {
  placer_.taken(arc(centre, radius, 0, 2 * pi));
  add(scene_, Circle{centre, radius, false}, style);
}

void Pen::disc(Point centre, double radius, Style style, bool clear) {
  add(scene_, Circle{centre, radius, true}, style);
  if (clear) keep_clear({centre.x - radius, centre.y - radius, centre.x + radius, centre.y + radius});
}

void Pen::area(std::vector<Point> points, Style style) {
  placer_.taken(points);
  add(scene_, Polygon{std::move(points)}, style);
}

void Pen::arrow(Point from, Point to, Style style, bool both) {
  placer_.taken(std::vector<Point>{from, to});
  draw_arrow(scene_, from, to, style, both);
}

void Pen::words(Point at, const std::string& text, Anchor anchor, Weight weight, MarkRole role, double rotation) {
  if (text.empty()) return;
  const Label label{at, text, anchor, letters, weight, rotation};
  placer_.taken(bounds(label));
  add(scene_, label, {role});
}

void Pen::roller(Point centre, double radius) {
  if (radius < 0.6) {
    disc(centre, 0.6, machine_style, true);
    return;
  }
  disc(centre, radius, {MarkRole::area}, true);
  draw_roller(scene_, centre, radius);
}

std::vector<std::pair<std::string, Weight>> Pen::cut(const std::vector<std::string>& lines) {
  std::vector<std::pair<std::string, Weight>> set;
  for (const auto& line : lines) {
    if (line.empty()) continue;
    const Weight weight = set.empty() ? Weight::bold : Weight::normal;
    set.emplace_back(fitted(line, 40, letters, weight), weight);
  }
  return set;
}

std::optional<Box> Pen::room_for(Point anchor, const std::vector<std::pair<std::string, Weight>>& set,
                                 double prefer) const {
  double width = 0;
  for (const auto& [text, weight] : set) width = std::max(width, text_width(text, letters, weight));
  return placer_.beside(anchor, width + 1, line_pitch * static_cast<double>(set.size()) + 0.6, prefer);
}

bool Pen::note(Point anchor, const std::vector<std::string>& lines, double prefer) {
  auto set = cut(lines);
  if (set.empty()) return true;
  auto box = room_for(anchor, set, prefer);
  if (set.size() > 1 && (!box || placer_.crossings(*box) > 0)) {  // the weighty line alone may stand clear
    const std::vector<std::pair<std::string, Weight>> first{set.front()};
    const auto small = room_for(anchor, first, prefer);
    if (small && (!box || placer_.crossings(*small) < placer_.crossings(*box))) {
      box = small;
      set = first;
    }
  }
  if (!box) return false;
  const Point end = Placer::meets(*box, anchor);
  disc(anchor, 0.45, {MarkRole::axis});
  line({anchor, end}, thin);
  const bool to_right = anchor.x < box->left;
  const bool to_left = anchor.x > box->right;
  const double x = to_right ? box->left + 0.5 : to_left ? box->right - 0.5 : (box->left + box->right) / 2;
  const Anchor side = to_right ? Anchor::start : to_left ? Anchor::end : Anchor::middle;
  for (std::size_t i = 0; i < set.size(); ++i)
    add(scene_,
        Label{{x, box->top + 0.3 + 0.8 * letters + line_pitch * static_cast<double>(i)},
              set[i].first,
              side,
              letters,
              set[i].second,
              0},
        {i == 0 ? MarkRole::text : MarkRole::muted});
  keep_clear(*box);
  return true;
}

bool Pen::caption(const std::vector<Point>& along, const std::string& text) {
  if (const auto at = placer_.spot(along, text, letters, true)) {
    words(*at, text, Anchor::middle, Weight::normal, MarkRole::text);
    return true;
  }
  const Point a = along.front();
  const Point b = along.back();
  const Point middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
  const auto box = placer_.beside(middle, text_width(text, letters) + 1, letters + 0.6, pi / 2);
  if (!box) return false;
  line({middle, Placer::meets(*box, middle)}, thin);
  words({(box->left + box->right) / 2, box->top + 0.3 + 0.8 * letters}, text, Anchor::middle, Weight::normal,
        MarkRole::text);
  return true;
}

DrawnDisc drawn_disc(const Brake& brake, int pairs) {
  constexpr double edge = 1.03;  // of the disc outside of its pads, where the stand gives no diameter
  DrawnDisc disc;
  disc.pairs = std::clamp(pairs, 1, 24);
  if (const auto* sector = std::get_if<SectorPad>(&brake.pad)) {
    const double inner = within_or(sector->inner_diameter, 0.16, 0.005, 5) / 2;
    const double outer = std::max(within_or(sector->outer_diameter, 0.24, 0.005, 5) / 2, 1.02 * inner);
    disc.radius = (inner + outer) / 2;
    disc.size = outer - inner;
    disc.angle = within_or(sector->angle, 0.6, 0.02, 2 * pi);
    disc.shape = DrawnDisc::Shape::sector;
  } else if (const auto* round = std::get_if<RoundPad>(&brake.pad)) {
    disc.radius = within_or(round->centre_diameter, 0.24, 0.005, 5) / 2;
    disc.size = std::min(within_or(round->pad_diameter, 0.04, 0.002, 1), 1.9 * disc.radius);
    disc.shape = DrawnDisc::Shape::round;
  } else {  // a data sheet gives a face without its outline
    disc.radius = within_or(std::get<DataSheetPad>(brake.pad).effective_diameter, 0.24, 0.01, 10) / 2;
    disc.size = std::min(std::sqrt(within_or(brake.pad_area, 0.0016, 1e-5, 1)), disc.radius);
    disc.shape = DrawnDisc::Shape::square;
  }
  const double outside = 2 * disc.radius + disc.size;
  disc.diameter = std::max(within_or(brake.disc_diameter.value_or(edge * outside), edge * outside, 0.02, 5), outside);
  const double inside = 2 * disc.radius - disc.size;
  disc.bore = std::min(within_or(brake.disc_bore.value_or(inside), inside, 0.005, 5), 0.9 * disc.diameter);
  return disc;
}

void draw_disc(Pen& pen, const DrawnDisc& disc, Point centre, double scale, bool numbered) {
  const double edge = scale * disc.diameter / 2;
  pen.disc(centre, edge, {MarkRole::area});
  pen.ring(centre, edge, machine_style);
  pen.ring(centre, scale * disc.bore / 2, thin);
  const double inner = scale * (disc.radius + 0.1 * disc.size);
  const double high = std::min({1.1 * scale * disc.size, edge / 2, 2 * pi * edge / disc.pairs - 0.8});
  for (int i = 0; i < disc.pairs; ++i) {
    const double angle = pi / 2 + (0.5 + i) * 2 * pi / disc.pairs;  // the first just left of the top
    if (scale * disc.size > 0.5) pen.line(pad_outline(disc, centre, angle, scale), machine_style);
    if (high < 0.6) continue;
    auto caliper = block(centre, angle, inner, 1.1 * edge, high / 2);
    auto face = caliper;
    face.pop_back();
    add(pen.scene(), Polygon{std::move(face)}, {MarkRole::grid});
    pen.line(std::move(caliper), machine_style);
    if (!numbered || high < 3.4) continue;
    const Point middle = moved(centre, angle, (inner + 1.1 * edge) / 2);
    pen.words({middle.x, middle.y + measure::drop * letters}, fmt::format("{}", i + 1), Anchor::middle, Weight::bold,
              MarkRole::text);
  }
}

void draw_ground(Pen& pen, const View& view, double floor, double left, double right, double roll, double core) {
  const double foot = std::max(0.21 * view.scale * roll, 3.0);
  const double head = std::min(std::max(0.35 * view.scale * core, 1.0), 0.9 * foot);
  const Point& axis = view.origin;
  pen.line({{axis.x - head, axis.y}, {axis.x - foot, floor}, {axis.x + foot, floor}, {axis.x + head, axis.y}},
           machine_style);
  pen.line({{left, floor}, {right, floor}}, {MarkRole::text});
  for (double x = left + 1.6; x <= right; x += 2.2) add(pen.scene(), Segment{{x, floor}, {x - 1.6, floor + 1.6}}, thin);
}

void draw_roll(Pen& pen, const View& view, double radius, double core, double leaves, double disc) {
  const double full = view.scale * radius;
  pen.disc(view.origin, full, {MarkRole::grid});
  pen.line(windings(view, core, radius, leaves), {MarkRole::grid});
  pen.ring(view.origin, full, {MarkRole::text});
  for (const double angle : {0.0, pi / 2})
    pen.line({moved(view.origin, angle, full + 3), moved(view.origin, angle + pi, full + 3)}, ghost_style);
  if (core > disc) draw_core(pen, view, core, 0, false);
  const auto turn = arc(view.origin, full + 2.4, 0.45, 0.95);
  pen.line(turn, machine_style);
  pen.arrow(turn[turn.size() - 4], turn.back(), machine_style);
}

void draw_core(Pen& pen, const View& view, double core, double shaft, bool hidden) {
  pen.ring(view.origin, view.scale * core, hidden ? hidden_line : machine_style);
  if (!(shaft > 0)) return;
  pen.disc(view.origin, view.scale * shaft, {MarkRole::muted});
  pen.ring(view.origin, view.scale * shaft, {MarkRole::text});
}

void draw_guard(Pen& pen, const View& view, Guard guard, double half) {
  if (guard == Guard::none) return;
  const double h = view.scale * half;
  const Point& at = view.origin;
  const Pattern pattern = guard == Guard::closed          ? Pattern::solid
                          : guard == Guard::partly_closed ? Pattern::dashed
                                                          : Pattern::dotted;
  pen.line(outline({at.x - h, at.y - h, at.x + h, at.y + h}), {MarkRole::text, pattern});
}

void draw_web(Pen& pen, const View& view, const Route& route) {
  std::vector<Point> points;
  for (const Place& place : line_of(route)) points.push_back(view.at(place));
  pen.line(std::move(points), web_style);
  for (const Leg& leg : route.legs) {
    if (!leg.shortened) continue;
    const Point a = view.at(leg.from);
    const Point b = view.at(leg.to);
    const Point middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
    for (const double by : {-0.6, 0.6}) {
      const Point at = moved(middle, leg.heading, by);
      pen.line({moved(at, leg.heading + 1.2, 1.8), moved(at, leg.heading + 1.2 + pi, 1.8)}, {MarkRole::text});
    }
  }
}

void draw_nip(Pen& pen, const View& view, const Leg& end) {
  const Point at = view.at(end.to);
  for (const double side : {pi / 2, -pi / 2}) pen.roller(moved(at, end.heading + side, nip_size), nip_size);
  pen.arrow(moved(at, end.heading, 0.6), moved(at, end.heading, nip_size + 5), web_style);
}

Point draw_load_cell(Pen& pen, const View& view, const Bend& bend) {
  const double to_side = bend.left ? 1 : -1;
  const double inward = bend.heading + to_side * (bend.turn.wrap / 2 + pi / 2);
  const Point rim = moved(view.at(bend.centre), inward, std::max(view.scale * bend.turn.radius, 0.6));
  const Point foot = moved(rim, inward, 2.4);
  const Point left = moved(foot, inward + pi / 2, 1.6);
  const Point right = moved(foot, inward - pi / 2, 1.6);
  pen.area({rim, left, right}, {MarkRole::text});
  pen.line({moved(foot, inward + pi / 2, 2.4), moved(foot, inward - pi / 2, 2.4)}, {MarkRole::text});
  return foot;
}

void draw_travel(Pen& pen, const View& view, const Bend& bend, double travel) {
  const double half = std::max(view.scale * travel / 2, 1.5);
  const double along = bend.heading + (bend.left ? 1 : -1) * (bend.turn.wrap - pi) / 2;
  const Point centre = view.at(bend.centre);
  const Point beside = moved(centre, along, view.scale * bend.turn.radius + half + 1.4);
  pen.arrow(moved(beside, along, -half), moved(beside, along, half), machine_style, true);
}

Point draw_sensor(Pen& pen, const View& view, DiameterMethod method, double roll, double shaft) {
  if (method == DiameterMethod::turns) {
    const Point at = moved(view.origin, 200 * pi / 180, view.scale * shaft + 1.1);
    pen.area({{at.x - 0.9, at.y - 0.9}, {at.x + 0.9, at.y - 0.9}, {at.x + 0.9, at.y + 0.9}, {at.x - 0.9, at.y + 0.9}},
             {MarkRole::text});
    return at;
  }
  constexpr double angle = 118 * pi / 180;
  const Point at = moved(view.origin, angle, view.scale * roll + 7.5);
  auto body = block(at, angle, -1.2, 1.8, 1.5);
  pen.line(body, {MarkRole::text});
  for (const double reach : {2.6, 4.0, 5.4}) pen.line(arc(at, reach, pi - angle - 0.5, pi - angle + 0.5), thin);
  return moved(at, angle, 1.8);
}

void draw_air(Pen& pen, double left, double y, Point disc, double disc_radius) {
  constexpr double half = 3.2;
  const Box box{left + 8, y - half, left + 8 + 2 * half, y + half};
  add(pen.scene(), Polygon{{{left, y - 1.6}, {left + 2.6, y}, {left, y + 1.6}}}, {MarkRole::text});
  pen.line({{left + 2.6, y}, {box.left, y}}, pipe);
  pen.line(outline(box), {MarkRole::text});
  pen.arrow({box.left + 0.8, y + 1}, {box.right - 0.8, y + 1}, machine_style);
  std::vector<Point> spring;
  const double middle = (box.left + box.right) / 2;
  for (int i = 0; i <= 5; ++i)
    spring.push_back({middle + (i == 0 || i == 5 ? 0 : i % 2 ? 1.2 : -1.2), box.top - 0.8 * i});
  pen.line(std::move(spring), machine_style);
  pen.arrow({middle - 2.6, box.top - 0.6}, {middle + 2.4, box.top - 4.6}, machine_style);  // it is adjusted
  const double tee = box.right + 5;
  const Point gauge{tee, y - 6.6};
  pen.ring(gauge, 2.6, machine_style);
  pen.line({gauge, {gauge.x - 1.2, gauge.y - 1.4}}, {MarkRole::text});
  pen.line({{tee, y}, {tee, gauge.y + 2.6}}, pipe);
  const double up = disc.x - 0.5 * disc_radius;
  pen.line({{box.right, y}, {up, y}, {up, disc.y + 0.87 * disc_radius}}, pipe);
  pen.disc({up, disc.y + 0.87 * disc_radius}, 0.6, pipe);
  pen.keep_clear({left, y - 9.4, tee + 3, y + half + 0.4});
}

void draw_scale_bar(Pen& pen, Point right_end, double scale, double wanted, units::System system) {
  const double unit = system == units::System::si ? 1 : 0.3048;
  const double raw = wanted / scale / unit;
  const double power = std::pow(10, std::floor(std::log10(raw)));
  double step = 1;
  for (const double each : {2.0, 5.0, 10.0})
    if (std::abs(each * power - raw) < std::abs(step * power - raw)) step = each;
  const double length = step * power * unit;
  const double shown_length = scale * length;
  const double left = right_end.x - shown_length;
  for (int i = 0; i < 4; ++i) {
    const double from = left + shown_length * i / 4;
    add(pen.scene(), Rectangle{{from, right_end.y - 1.1, from + shown_length / 4, right_end.y}, i % 2 == 0},
        {MarkRole::text});
  }
  const auto kind = step * power < 1 ? Quantity::short_length : Quantity::web_length;
  pen.words({left - 2, right_end.y}, kept_together(units::show(length, kind, system, step * power < 1 ? 3 : 1)),
            Anchor::end, Weight::normal, MarkRole::text);
}

bool draw_span(Pen& pen, const View& view, const Leg& leg, double away, const std::string& words) {
  const double aside = leg.heading + pi / 2;
  const Point a = moved(view.at(leg.from), aside, away);
  const Point b = moved(view.at(leg.to), aside, away);
  const double past = away < 0 ? -1 : 1;
  if (std::hypot(b.x - a.x, b.y - a.y) < 3) return pen.caption({a, b}, words);
  pen.line({moved(view.at(leg.from), aside, 0.8 * past), moved(a, aside, past)}, measure_style);
  pen.line({moved(view.at(leg.to), aside, 0.8 * past), moved(b, aside, past)}, measure_style);
  pen.arrow(a, b, measure_style, std::hypot(b.x - a.x, b.y - a.y) > 6);
  return pen.caption({a, b}, words);
}

void draw_upright(Pen& pen, Point top, Point bottom, double x, const std::string& words) {
  const double past = x < top.x ? -1 : 1;
  for (const Point& end : {top, bottom}) pen.line({{end.x + past, end.y}, {x + past, end.y}}, measure_style);
  pen.arrow({x, top.y}, {x, bottom.y}, measure_style, true);
  pen.words({x - 1, (top.y + bottom.y) / 2}, words, Anchor::middle, Weight::normal, MarkRole::text, -90);
}

}  // namespace holdback::draw
