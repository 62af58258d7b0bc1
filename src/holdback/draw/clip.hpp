// Lines and areas, cut to a box.
#pragma once

#include <optional>
#include <vector>

#include "holdback/draw/scene.hpp"

namespace holdback::draw {

/// The part of a line that lies in the box; none when it passes by.
std::optional<Segment> clipped(const Segment& line, const Box& box);

/// The parts of a line through points that lie in the box, each with two points at least. Points that lie within a
/// twentieth of a millimetre of the one before are left out, but the last of each part stays.
std::vector<std::vector<Point>> clipped_line(const std::vector<Point>& points, const Box& box);

/// The part of an area that lies in the box; fewer than three points: nothing is left.
std::vector<Point> clipped_area(const std::vector<Point>& points, const Box& box);

}  // namespace holdback::draw
