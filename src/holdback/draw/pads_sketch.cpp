#include "holdback/draw/pads_sketch.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numbers>

#include "holdback/draw/sketch.hpp"

namespace holdback::draw {

namespace {

constexpr int most_discs = 3;
constexpr double disc_radius = 12.5;    // [mm]
constexpr double number_radius = 15.4;  // [mm] on which the middles of the numbers lie
constexpr double cell = 38;             // [mm] room of a disc
constexpr double words_width = 62;      // [mm] room of the words beside the discs
constexpr double sketch_height = 38;    // [mm]
constexpr double inner = 0.56;          // of the disc's radius, where pads begin
constexpr double outer = 0.95;          // … and end
constexpr double widest_pad = 0.6;      // [rad]
constexpr double share_of_pitch = 0.6;  // of the angle between two pairs that a pad takes
constexpr double letters = 3.4;         // [mm]
constexpr Style pad_style{MarkRole::axis, Pattern::solid, 0};

/// A pad as seen along the shaft: a piece of a ring.
std::vector<Point> pad(Point centre, double angle, double half) {
  auto points = arc(centre, outer * disc_radius, angle - half, angle + half);
  const auto back = arc(centre, inner * disc_radius, angle + half, angle - half);
  points.insert(points.end(), back.begin(), back.end());
  points.push_back(points.front());
  return points;
}

void draw_pad(Scene& scene, Point centre, double angle, double half, bool engaged) {
  auto points = pad(centre, angle, half);
  if (engaged)
    add(scene, Polygon{std::move(points)}, pad_style);
  else
    add(scene, Polyline{std::move(points)}, pad_style);
}

void draw_disc(Scene& scene, Point centre, const PadPairs& pairs) {
  add(scene, Circle{centre, disc_radius, false}, machine_style);
  add(scene, Circle{centre, 0.34 * disc_radius, false}, measure_style);
  draw_roller(scene, centre, 0.14 * disc_radius);
  const double pitch = 2 * std::numbers::pi / pairs.fitted;
  const double half = std::min(widest_pad, share_of_pitch * pitch) / 2;
  const double size = pairs.fitted > 12 ? 2.0 : letters;
  for (int i = 0; i < pairs.fitted; ++i) {
    const double angle = i * pitch - std::numbers::pi / 2;
    draw_pad(scene, centre, angle, half, i < pairs.engaged);
    if (i >= pairs.engaged) continue;
    const Point at = arc(centre, number_radius, angle, angle).front();
    add(scene, Label{{at.x, at.y + 0.36 * size}, std::to_string(i + 1), Anchor::middle, size, Weight::bold, 0}, {});
  }
}

/// A sign of the legend with its word.
void draw_sign(Scene& scene, Point at, bool engaged, const std::string& words) {
  const Box box{at.x, at.y - 3, at.x + 5, at.y};
  add(scene, Rectangle{box, engaged}, pad_style);
  draw_words(scene, {at.x + 7, at.y - 0.3}, words);
}

std::string heading(const PadPairs& pairs) {
  if (pairs.engaged == 0) return "Engage no pair";
  return fmt::format("Engage {} of {} pair{}", pairs.engaged, pairs.fitted, pairs.fitted == 1 ? "" : "s");
}

std::string description(const PadPairs& pairs) {
  return fmt::format("{} of {} pad pairs engaged{}", pairs.engaged, pairs.fitted,
                     pairs.brakes > 1 ? fmt::format(" on each of {} brakes", pairs.brakes) : "");
}

void draw_side_words(Scene& scene, double left, const PadPairs& pairs) {
  double y = 9;
  add(scene, Label{{left, y}, heading(pairs), Anchor::start, 4.2, Weight::bold, 0}, {});
  if (pairs.brakes > 1) draw_words(scene, {left, y += 5.5}, fmt::format("on each of the {} brakes", pairs.brakes));
  if (pairs.brakes > most_discs)
    draw_words(scene, {left, y += 5}, fmt::format("drawn: the first {}", most_discs), Anchor::start, Weight::normal,
               MarkRole::muted);
  y += 8;
  if (pairs.engaged > 0) draw_sign(scene, {left, y}, true, "engaged"), y += 6;
  if (pairs.engaged < pairs.fitted) draw_sign(scene, {left, y}, false, "released");
}

}  // namespace

Scene pads_sketch(PadPairs pairs) {
  pairs.brakes = std::max(1, pairs.brakes);
  pairs.fitted = std::max(1, pairs.fitted);
  pairs.engaged = std::clamp(pairs.engaged, 0, pairs.fitted);
  const int discs = std::min(pairs.brakes, most_discs);
  Scene scene;
  scene.width = discs * cell + words_width;
  scene.height = sketch_height;
  scene.title = "Pad pairs to engage";
  scene.description = description(pairs);
  for (int i = 0; i < discs; ++i) {
    const Point centre{(i + 0.5) * cell, sketch_height / 2 + (discs > 1 ? 1.5 : 0)};
    draw_disc(scene, centre, pairs);
    if (discs > 1)
      draw_words(scene, {i * cell + 0.5, 3.6}, fmt::format("brake {}", i + 1), Anchor::start, Weight::normal,
                 MarkRole::muted);
  }
  draw_side_words(scene, discs * cell + 2, pairs);
  return scene;
}

double share_of_width(const Scene& sketch) { return sketch.width / (most_discs * cell + words_width); }

}  // namespace holdback::draw
