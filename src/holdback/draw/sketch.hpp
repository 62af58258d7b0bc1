// Pieces of a plain drawing of a machine: rollers, webs, forces, dimensions.
#pragma once

#include <string>
#include <vector>

#include "holdback/draw/scene.hpp"

namespace holdback::draw {

inline constexpr Style web_style{MarkRole::curve, Pattern::solid, 1};      // the web, drawn heavy
inline constexpr Style ghost_style{MarkRole::muted, Pattern::dashed, 0};   // where something was or may be
inline constexpr Style machine_style{MarkRole::axis, Pattern::solid, 0};   // rollers, frames
inline constexpr Style force_style{MarkRole::curve, Pattern::solid, 0};    // what is done or felt
inline constexpr Style measure_style{MarkRole::muted, Pattern::solid, 0};  // dimensions

/// A roller: its rim, and a cross at its axis.
void draw_roller(Scene& scene, Point centre, double radius);

/// A straight arrow with its head at `to`; heads at both ends of a dimension.
void draw_arrow(Scene& scene, Point from, Point to, Style style, bool both = false);

/// A dimension between two places, moved aside by `away` [mm] (down or right where positive), with lines that lead to
/// it and its words in the middle: beside it when it stands upright.
void draw_dimension(Scene& scene, Point from, Point to, double away, const std::string& words);

/// Points on a circle from one angle to another [rad], 0 to the right, growing clockwise as y does.
std::vector<Point> arc(Point centre, double radius, double from, double to);

/// Words at a place.
void draw_words(Scene& scene, Point at, const std::string& words, Anchor anchor = Anchor::start,
                Weight weight = Weight::normal, MarkRole role = MarkRole::text);

}  // namespace holdback::draw
