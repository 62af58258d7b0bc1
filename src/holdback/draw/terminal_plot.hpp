// A plot as lines of text: curves of braille dots, each with its own stroke and its name at its end.
#pragma once

#include <string>
#include <vector>

#include "holdback/draw/plot.hpp"
#include "holdback/units/units.hpp"

namespace holdback::draw {

/// The room and the manner of a picture.
struct Frame {
  int width{100};  // columns, all told; at least 60 are used
  int height{14};  // rows of dots, without axis and names
  units::System system{units::System::si};
  bool colour{false};
};

/// The plot as lines; none when no series has two points.
std::vector<std::string> terminal_plot(const Plot& plot, const Frame& frame);

}  // namespace holdback::draw
