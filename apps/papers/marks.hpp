// Small drawings of our own: rules, the sign of a state, the triangle with an exclamation mark.
#pragma once

#include <cairo.h>

#include "holdback/results/limit.hpp"
#include "text.hpp"

namespace holdback::pdf {

void draw_rule(cairo_t* cr, double x, double y, double width, double thick, Ink ink);
void draw_panel(cairo_t* cr, double x, double y, double width, double height, Ink ink);
void draw_upright(cairo_t* cr, double x, double y, double height, double thick, Ink ink);

/// Ring, triangle or cross, as in the figures, in a square of `side`.
void draw_sign(cairo_t* cr, Typesetter& type, double x, double y, double side, State state);
inline constexpr double sign_side = 0.72;  // of the letters' size
inline constexpr double sign_room = 1.05;  // the same, with the gap after it

/// A triangle with an exclamation mark, `height` high.
void draw_alert(cairo_t* cr, double x, double y, double height);
inline constexpr double alert_width = 1.12;  // of its height

}  // namespace holdback::pdf
