// A scene drawn by Cairo, with the strokes, dashes and colours that it has as SVG on paper.
#pragma once

#include <cairo.h>

#include "holdback/draw/scene.hpp"
#include "text.hpp"

namespace holdback::pdf {

/// Draws the scene with its top left corner at (x, y) and `width` wide, all in the context's units. Marks with a place
/// that is not finite are left out; what lies beyond the scene's edge is cut off. A text never takes more room than
/// draw::text_width() reckoned: one that would is condensed.
void draw_scene(cairo_t* cr, Typesetter& type, const draw::Scene& scene, double x, double y, double width);

/// How high the scene comes out at that width.
double height_of(const draw::Scene& scene, double width);

}  // namespace holdback::pdf
