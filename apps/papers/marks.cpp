#include "marks.hpp"

#include <numbers>

#include "holdback/draw/figure_parts.hpp"
#include "scene_on_cairo.hpp"

namespace holdback::pdf {

namespace {

void set_ink(cairo_t* cr, Ink ink) { cairo_set_source_rgb(cr, ink.red, ink.green, ink.blue); }

}  // namespace

void draw_panel(cairo_t* cr, double x, double y, double width, double height, Ink ink) {
  set_ink(cr, ink);
  cairo_rectangle(cr, x, y, width, height);
  cairo_fill(cr);
}

void draw_rule(cairo_t* cr, double x, double y, double width, double thick, Ink ink) {
  draw_panel(cr, x, y - thick / 2, width, thick, ink);
}

void draw_upright(cairo_t* cr, double x, double y, double height, double thick, Ink ink) {
  draw_panel(cr, x - thick / 2, y, thick, height, ink);
}

void draw_sign(cairo_t* cr, Typesetter& type, double x, double y, double side, State state) {
  constexpr double square = 2.1;  // [mm] that draw_state() needs, with half a line
  draw::Scene scene{square, square, {}, {}, {}};
  draw::draw_state(scene, {square / 2, square / 2}, state);
  draw_scene(cr, type, scene, x, y, side);
}

void draw_alert(cairo_t* cr, double x, double y, double height) {
  const double width = alert_width * height;
  const double line = 0.09 * height;
  const double middle = x + width / 2;
  cairo_new_path(cr);
  cairo_move_to(cr, middle, y + line);
  cairo_line_to(cr, x + width - line, y + height - line / 2);
  cairo_line_to(cr, x + line, y + height - line / 2);
  cairo_close_path(cr);
  set_ink(cr, white);
  cairo_fill_preserve(cr);
  set_ink(cr, black);
  cairo_set_dash(cr, nullptr, 0, 0);
  cairo_set_line_width(cr, line);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke(cr);
  const double half = 0.055 * height;  // of the mark's width at its top
  cairo_move_to(cr, middle - half, y + 0.36 * height);
  cairo_line_to(cr, middle + half, y + 0.36 * height);
  cairo_line_to(cr, middle + 0.6 * half, y + 0.68 * height);
  cairo_line_to(cr, middle - 0.6 * half, y + 0.68 * height);
  cairo_close_path(cr);
  cairo_fill(cr);
  cairo_arc(cr, middle, y + 0.79 * height, 1.05 * half, 0, 2 * std::numbers::pi);
  cairo_fill(cr);
}

}  // namespace holdback::pdf
