// How each way to find the tension is done, as a drawing that is not to scale; with what was read where it was.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "holdback/draw/figure_parts.hpp"
#include "holdback/draw/figures.hpp"
#include "holdback/draw/sketch.hpp"

namespace holdback::draw {

namespace {

constexpr double pi = std::numbers::pi;
constexpr double roller_size = 6;  // [mm] radius

/// "span 1200 mm" where it was read, "span" where not.
class Words {
 public:
  Words(const Measurement& found, units::System system) : found_(found), system_(system) {}
  std::string of(const std::string& key, const std::string& name) const {
    for (const BudgetLine& line : found_.budget)
      if (line.key == key) return name + " " + kept_together(units::show(line.value, system_));
    return name;
  }
  bool has(const std::string& key) const {
    return std::any_of(found_.budget.begin(), found_.budget.end(),
                       [&](const BudgetLine& line) { return line.key == key; });
  }
  std::string tension() const {
    return found_.tension ? "tension " + kept_together(units::show(*found_.tension, Quantity::force, system_))
                          : "tension";
  }
  double value(const std::string& key, double otherwise) const {
    for (const BudgetLine& line : found_.budget)
      if (line.key == key) return line.value.value;
    return otherwise;
  }

 private:
  const Measurement& found_;
  units::System system_;
};

/// Two rollers with the web over their tops, and where it leaves them.
struct Span {
  Point left;
  Point right;
};

Span draw_span(Scene& scene, const Box& room, double top) {
  const Span span{{room.left + 26, top}, {room.right - 26, top}};
  draw_roller(scene, {span.left.x, top + roller_size}, roller_size);
  draw_roller(scene, {span.right.x, top + roller_size}, roller_size);
  const double far = 16;
  auto in = arc({span.left.x, top + roller_size}, roller_size, -pi, -pi / 2);
  in.insert(in.begin(), Point{span.left.x - roller_size, top + roller_size + far});
  auto out = arc({span.right.x, top + roller_size}, roller_size, -pi / 2, 0);
  out.push_back({span.right.x + roller_size, top + roller_size + far});
  add(scene, Polyline{in}, web_style);
  add(scene, Polyline{out}, web_style);
  return span;
}

Point between(const Point& a, const Point& b, double share) {
  return {a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
}

void draw_push(Scene& scene, const Box& room, const Words& words) {
  const Span span = draw_span(scene, room, room.top + 20);
  const double share =
      words.has("place") ? std::clamp(words.value("place", 0.5) / words.value("span", 1), 0.15, 0.85) : 0.5;
  const Point rest = between(span.left, span.right, share);
  const Point tip{rest.x, rest.y + 14};
  add(scene, Segment{span.left, span.right}, ghost_style);
  add(scene, Polyline{{span.left, tip, span.right}}, web_style);
  add(scene, Circle{{tip.x, tip.y - 1.6}, 1.6, true}, {MarkRole::axis});
  draw_arrow(scene, {tip.x, room.top + 3}, {tip.x, tip.y - 3.4}, force_style);
  draw_words(scene, {tip.x + 3, room.top + 7}, words.of("force", "force"), Anchor::start, Weight::bold);
  draw_words(scene, {tip.x + 3, room.top + 11.5}, "on a bar over the whole width", Anchor::start, Weight::normal,
             MarkRole::muted);
  draw_dimension(scene, rest, tip, 10, "");
  draw_words(scene, {tip.x + 12, tip.y + 4}, words.of("push", "push"));
  draw_dimension(scene, span.left, span.right, 28, words.of("span", "span"));
  if (words.has("place")) draw_dimension(scene, span.left, {tip.x, span.left.y}, -6, words.of("place", "place"));
  draw_words(scene, {span.left.x + 6, span.left.y - 2}, words.tension());
  draw_words(scene, {span.left.x - 9, span.left.y + 20}, "held", Anchor::end, Weight::normal, MarkRole::muted);
  draw_words(scene, {span.right.x + 9, span.right.y + 20}, "held", Anchor::start, Weight::normal, MarkRole::muted);
}

void draw_sag(Scene& scene, const Box& room, const Words& words) {
  const Span span = draw_span(scene, room, room.top + 14);
  std::vector<Point> web;
  for (int i = 0; i <= 40; ++i) {
    const double at = i / 40.0;
    const Point chord = between(span.left, span.right, at);
    web.push_back({chord.x, chord.y + 4 * 13 * at * (1 - at)});
  }
  add(scene, Segment{span.left, span.right}, ghost_style);
  add(scene, Polyline{web}, web_style);
  const Point middle = between(span.left, span.right, 0.5);
  draw_dimension(scene, middle, {middle.x, middle.y + 13}, 8, words.of("sag", "sag"));
  draw_dimension(scene, span.left, span.right, 26, words.of("span", "span"));
  draw_words(scene, {middle.x - 6, middle.y - 2.2}, "a thin line from roller to roller, level", Anchor::middle,
             Weight::normal, MarkRole::muted);
  draw_words(scene, {span.left.x + 12, span.left.y + 16}, words.of("basis_weight", "basis weight"));
  draw_words(scene, {span.right.x + 2, span.right.y - 3}, words.tension(), Anchor::middle);
}

void draw_pluck(Scene& scene, const Box& room, const Words& words) {
  const Span span = draw_span(scene, room, room.top + 22);
  for (const double swing : {-7.0, 7.0}) {
    std::vector<Point> web;
    for (int i = 0; i <= 40; ++i) {
      const Point chord = between(span.left, span.right, i / 40.0);
      web.push_back({chord.x, chord.y + swing * std::sin(pi * i / 40.0)});
    }
    add(scene, Polyline{web}, swing > 0 ? ghost_style : web_style);
  }
  const Point middle = between(span.left, span.right, 0.5);
  draw_arrow(scene, {middle.x, room.top + 2}, {middle.x, middle.y - 8.6}, force_style);
  draw_words(scene, {middle.x + 3, room.top + 5}, "tap once, flat hand, in the middle", Anchor::start, Weight::normal,
             MarkRole::muted);
  draw_words(scene, {middle.x + 3, middle.y + 2}, words.of("frequency", "frequency"), Anchor::start, Weight::bold);
  const Point microphone{middle.x - 22, middle.y + 14};
  add(scene, Circle{microphone, 2.2, false}, machine_style);
  add(scene, Segment{{microphone.x, microphone.y + 2.2}, {microphone.x, microphone.y + 7}}, machine_style);
  draw_words(scene, {microphone.x + 4, microphone.y + 4}, "microphone, not touching", Anchor::start, Weight::normal,
             MarkRole::muted);
  draw_dimension(scene, span.left, span.right, 29, words.of("span", "span"));
  draw_words(scene, {span.left.x + 6, span.left.y - 6}, words.tension());
}

void draw_pull(Scene& scene, const Box& room, const Words& words) {
  const Point centre{room.left + 62, room.top + 33};
  constexpr double roll = 24;
  add(scene, Circle{centre, roll, true}, {MarkRole::area});
  draw_roller(scene, centre, roll);
  add(scene, Circle{centre, 7, false}, machine_style);  // the core
  add(scene, Circle{centre, 14, false}, ghost_style);   // the disc behind
  const Box pad{centre.x - 4, centre.y + 11, centre.x + 4, centre.y + 17};
  add(scene, Rectangle{pad, true}, {MarkRole::axis});
  draw_words(scene, {centre.x, centre.y + roll + 5}, "brake on, then released", Anchor::middle, Weight::normal,
             MarkRole::muted);
  const double top = centre.y - roll;
  const Point scale{room.right - 46, top};
  add(scene, Segment{{centre.x, top}, scale}, web_style);
  add(scene, Rectangle{{scale.x, top - 2.6, scale.x + 16, top + 2.6}, false}, machine_style);
  draw_words(scene, {scale.x + 8, top + 1.1}, "scale", Anchor::middle);
  draw_arrow(scene, {scale.x + 16, top}, {scale.x + 30, top}, force_style);
  draw_words(scene, {scale.x + 8, top + 9}, words.of("pull", "pull"), Anchor::middle, Weight::bold);
  if (words.has("released"))
    draw_words(scene, {scale.x + 8, top + 13.5}, words.of("released", "released"), Anchor::middle);
  add(scene, Segment{{centre.x, top}, {room.left + 18, top}}, ghost_style);
  draw_arrow(scene, {room.left + 18, top}, {room.left + 6, top}, ghost_style);
  draw_words(scene, {room.left + 6, top - 3}, words.of("back", "back"), Anchor::start);
  draw_words(scene, {room.left + 6, top + 6}, "strap, the other way", Anchor::start, Weight::normal, MarkRole::muted);
  draw_dimension(scene, {centre.x, top}, {centre.x, centre.y + roll}, roll + 6, words.of("diameter", "diameter"));
  // Pulled away at its top to the right, the roll turns clockwise.
  const double stop = 0.16 * pi;
  const auto way = arc(centre, roll - 5, -0.16 * pi, stop);
  add(scene, Polyline{way}, force_style);
  const Point end = way.back();
  draw_arrow(scene, end, {end.x - 2.2 * std::sin(stop), end.y + 2.2 * std::cos(stop)}, force_style);
}

void draw_cell(Scene& scene, const Box& room, const Words& words) {
  const Point centre{(room.left + room.right) / 2, room.top + 20};
  constexpr double radius = 11;
  const double wrap = std::clamp(words.value("wrap", pi / 2), 0.15 * pi, 1.1 * pi);
  // The web runs over the top; the force of both runs points straight down.
  const double half = wrap / 2;
  const auto touching = arc(centre, radius, -pi / 2 - half, -pi / 2 + half);
  constexpr double run = 46;
  const Point left{touching.front().x - run * std::cos(half), touching.front().y + run * std::sin(half)};
  const Point right{touching.back().x + run * std::cos(half), touching.back().y + run * std::sin(half)};
  std::vector<Point> web{left};
  web.insert(web.end(), touching.begin(), touching.end());
  web.push_back(right);
  draw_roller(scene, centre, radius);
  add(scene, Polyline{web}, web_style);
  for (const Point& edge : {touching.front(), touching.back()})
    add(scene, Segment{centre, {centre.x + 1.5 * (edge.x - centre.x), centre.y + 1.5 * (edge.y - centre.y)}},
        ghost_style);
  add(scene, Polyline{arc(centre, 1.35 * radius, -pi / 2 - half, -pi / 2 + half)}, measure_style);
  draw_words(scene, {centre.x, centre.y - 1.35 * radius - 1.5}, words.of("wrap", "wrap"), Anchor::middle);
  const Point tip{centre.x, centre.y + radius + 20};
  draw_arrow(scene, {centre.x, centre.y + 2}, tip, force_style);
  // Between arrow and web where there is room, else beside the web.
  constexpr double room_of_words = 34;
  const double beside = touching.back().x - centre.x + (tip.y - touching.back().y) * std::cos(half) / std::sin(half);
  const double start = centre.x + (beside > room_of_words ? 3 : std::max(beside, radius) + 3);
  draw_words(scene, {start, tip.y - 6.5}, words.of("reading", "reading"), Anchor::start, Weight::bold);
  draw_words(scene, {start, tip.y - 2}, "of it " + words.of("tare", "tare"), Anchor::start, Weight::normal,
             MarkRole::muted);
  add(scene, Rectangle{{centre.x - 9, tip.y + 0.6, centre.x + 9, tip.y + 6}, false}, machine_style);
  draw_words(scene, {centre.x, tip.y + 4.4}, "load cell", Anchor::middle);
  const Point on_left = between(left, touching.front(), 0.7);
  const Point on_right = between(right, touching.back(), 0.7);
  const double clear = radius + 3;  // of the roller, however steep the runs are
  draw_words(scene, {std::min(on_left.x - 2, centre.x - clear), on_left.y - 1}, words.tension(), Anchor::end);
  draw_words(scene, {std::max(on_right.x + 2, centre.x + clear), on_right.y - 1}, words.tension());
}

std::vector<Footnote> notes_of(const Measurement& found, units::System system) {
  std::vector<Footnote> notes{{found.instruction.idea + " Not to scale.", MarkRole::muted}};
  for (const Note& note : found.instruction.expected)
    notes.push_back({"Expect: " + units::fill(note, system) + ".", MarkRole::text});
  for (std::size_t i = 0; i < std::min<std::size_t>(2, found.instruction.cautions.size()); ++i)
    notes.push_back({"Caution: " + units::fill(found.instruction.cautions[i], system), MarkRole::text});
  return notes;
}

}  // namespace

Scene measure_figure(const Measurement& found, units::System system) {
  constexpr double height = 64;
  auto out = page(found.instruction.title, found.job, height, notes_of(found, system));
  const Words words(found, system);
  if (found.method == "push")
    draw_push(out.scene, out.room, words);
  else if (found.method == "sag")
    draw_sag(out.scene, out.room, words);
  else if (found.method == "pluck")
    draw_pluck(out.scene, out.room, words);
  else if (found.method == "pull")
    draw_pull(out.scene, out.room, words);
  else
    draw_cell(out.scene, out.room, words);
  out.scene.description = found.instruction.title + ". " + found.instruction.idea;
  for (const BudgetLine& line : found.budget)
    out.scene.description += fmt::format(" {}: {}.", line.name, units::show(line.value, system));
  if (found.tension)
    out.scene.description += fmt::format(" Tension: {}.", units::show(*found.tension, Quantity::force, system));
  return out.scene;
}

}  // namespace holdback::draw
