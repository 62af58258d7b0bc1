#include "scene_on_cairo.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "holdback/draw/palette.hpp"

namespace holdback::pdf {

namespace {

using draw::Point;

bool finite(double value) { return std::isfinite(value) && std::abs(value) < 1e6; }  // a page is never so large
bool finite(const Point& point) { return finite(point.x) && finite(point.y); }
bool finite(const std::vector<Point>& points) {
  return std::all_of(points.begin(), points.end(), [](const Point& point) { return finite(point); });
}
double page_length(double length) { return finite(length) ? std::max(length, 1.0) : 1.0; }

int digit(char c) { return c >= 'a' ? c - 'a' + 10 : c - '0'; }

/// "#30383f" as an ink.
Ink ink_of(std::string_view hex) {
  const auto part = [&](std::size_t at) { return (16 * digit(hex[at]) + digit(hex[at + 1])) / 255.0; };
  return {part(1), part(3), part(5)};
}

void set_ink(cairo_t* cr, Ink ink) { cairo_set_source_rgb(cr, ink.red, ink.green, ink.blue); }

/// Draws each shape; the context's units are the scene's millimetres.
struct Brush {
  cairo_t* cr;
  Typesetter& type;
  const draw::Style& style;

  void stroke(bool round_joins) const {
    set_ink(cr, ink_of(draw::paint_of(draw::light, style).line));
    cairo_set_line_width(cr, draw::line_width(style));
    cairo_set_line_join(cr, round_joins ? CAIRO_LINE_JOIN_ROUND : CAIRO_LINE_JOIN_MITER);
    const bool dotted = style.pattern == draw::Pattern::dotted;
    cairo_set_line_cap(cr, dotted ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
    const auto& dashes = dotted ? draw::dashes_of_dotted : draw::dashes_of_dashed;
    cairo_set_dash(cr, dashes.data(), style.pattern == draw::Pattern::solid ? 0 : 2, 0);
    cairo_stroke(cr);
  }
  void fill() const {
    set_ink(cr, ink_of(draw::paint_of(draw::light, style).fill));
    cairo_fill(cr);
  }
  void path(const std::vector<Point>& points) const {
    cairo_new_path(cr);
    for (const auto& point : points) cairo_line_to(cr, point.x, point.y);
  }

  void operator()(const draw::Segment& line) const {
    if (!finite(line.from) || !finite(line.to)) return;
    path({line.from, line.to});
    stroke(true);
  }
  void operator()(const draw::Polyline& line) const {
    if (line.points.size() < 2 || !finite(line.points)) return;
    path(line.points);
    stroke(true);
  }
  void operator()(const draw::Polygon& area) const {
    if (area.points.size() < 3 || !finite(area.points)) return;
    path(area.points);
    cairo_close_path(cr);
    fill();
  }
  void operator()(const draw::Rectangle& shape) const {
    const auto& box = shape.box;
    if (!finite(Point{box.left, box.top}) || !finite(Point{box.right, box.bottom})) return;
    cairo_new_path(cr);
    cairo_rectangle(cr, box.left, box.top, std::max(box.right - box.left, 0.0), std::max(box.bottom - box.top, 0.0));
    shape.filled ? fill() : stroke(true);
  }
  void operator()(const draw::Circle& circle) const {
    if (!finite(circle.centre) || !finite(circle.radius) || circle.radius <= 0) return;
    cairo_new_path(cr);
    cairo_arc(cr, circle.centre.x, circle.centre.y, circle.radius, 0, 2 * std::numbers::pi);
    cairo_close_path(cr);
    circle.filled ? fill() : stroke(true);
  }
  void operator()(const draw::Label& label) const {
    if (!finite(label.at) || !finite(label.size) || !finite(label.rotation) || label.size <= 0) return;
    if (label.text.empty()) return;
    const auto text = type.line(label.text, {label.size * mm, label.weight == draw::Weight::bold, 1});
    const double reckoned = draw::text_width(label.text, label.size, label.weight) * mm;
    const double condensed = text->width() > reckoned ? reckoned / text->width() : 1;
    const double start = label.anchor == draw::Anchor::start ? 0 : label.anchor == draw::Anchor::middle ? -0.5 : -1;
    cairo_save(cr);
    cairo_translate(cr, label.at.x, label.at.y);
    cairo_rotate(cr, label.rotation * std::numbers::pi / 180);
    cairo_scale(cr, condensed / mm, 1 / mm);
    text->draw(cr, start * text->width(), -text->base(), ink_of(draw::paint_of(draw::light, style).line));
    cairo_restore(cr);
  }
};

}  // namespace

double height_of(const draw::Scene& scene, double width) {
  return width * page_length(scene.height) / page_length(scene.width);
}

void draw_scene(cairo_t* cr, Typesetter& type, const draw::Scene& scene, double x, double y, double width) {
  cairo_save(cr);
  cairo_rectangle(cr, x, y, width, height_of(scene, width));
  cairo_clip(cr);
  cairo_translate(cr, x, y);
  const double scale = width / page_length(scene.width);
  cairo_scale(cr, scale, scale);
  for (const auto& mark : scene.marks) std::visit(Brush{cr, type, mark.style}, mark.shape);
  cairo_restore(cr);
}

}  // namespace holdback::pdf
