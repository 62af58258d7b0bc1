// Curves over two linear axes, as marks of a scene: axes with round numbers and units, curves named where they end,
// limits as limits.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/draw/scene.hpp"
#include "holdback/model/quantity.hpp"
#include "holdback/units/units.hpp"

namespace holdback::draw {

/// An axis. Its ends come from what is drawn unless they are given.
struct ChartAxis {
  std::string name{};
  Quantity kind{Quantity::number};
  std::optional<double> low{};   // [SI of the kind]
  std::optional<double> high{};  // [SI of the kind]
  bool from_zero{};              // zero is on the axis
  bool bare{};                   // without numbers and name: the chart below shows them (x only)
  bool dates{};                  // its values are days of model/date.hpp, written as dates (x only)
};

/// A curve through points [SI]; a value that cannot be shown (see showable()) leaves a gap.
struct Curve {
  std::string name{};  // written where it ends; empty: not named
  Style style{MarkRole::curve, Pattern::solid, 0};
  std::vector<double> x{};
  std::vector<double> y{};
};

/// A line that must not be crossed [SI]: thick, hatched on the forbidden side. Without x it goes right across at y[0].
struct ChartLimit {
  std::string name{};
  std::vector<double> x{};
  std::vector<double> y{};
  bool above{true};  // what lies above is forbidden; else what lies below
};

/// What lies between two curves [SI], filled.
struct ChartArea {
  std::string name{};
  Style style{MarkRole::area, Pattern::solid, 0};
  std::vector<double> x{};
  std::vector<double> low{};
  std::vector<double> high{};
};

/// A stretch of the x axis that is set apart, named at its top [SI].
struct ChartSpan {
  std::string name{};
  double from{};
  double to{};
};

/// A thin upright line at a place of the x axis [SI], through the whole plot. Names stand in rows above the plot, each
/// beside its line; one that has no room is left out.
struct ChartMark {
  std::string name{};
  double x{};
  Style style{MarkRole::muted, Pattern::dotted, 0};
};

/// Words at a line, placed where there is room along its points [SI]; left out where there is none.
struct ChartCaption {
  std::string text{};
  Style style{MarkRole::text, Pattern::solid, 0};
  std::vector<double> x{};
  std::vector<double> y{};
  bool dot{};     // mark the middle point with a dot
  bool narrow{};  // left out when the words are wider than the line
  bool clear{};   // left out when they would stand on a line
};

/// What is drawn over one pair of axes.
struct Chart {
  std::string heading{};  // above it; empty: none
  ChartAxis x{};
  ChartAxis y{};
  std::vector<ChartSpan> spans{};
  std::vector<ChartArea> areas{};
  std::vector<Curve> curves{};
  std::vector<ChartLimit> limits{};
  std::vector<ChartCaption> captions{};
  std::vector<ChartMark> marks{};
  double label_room{46};  // [mm] at most for the names at the right
  int rows{7};            // at most so many steps on the y axis
  double share{1};        // of the height that panels have together
};

/// Where the values of an axis of a chart run from and to, in display units, with everything drawn and the round ends.
struct ChartRange {
  double low{};
  double high{};
};
ChartRange x_range(const Chart& chart, units::System system);
ChartRange y_range(const Chart& chart, units::System system);

/// Adds the chart within the box: heading, names of the axes, numbers, names of curves and all. A curve that ends above
/// or below the box is named there with its value and an arrow. Nothing leaves the box; names that have no room are cut
/// with "…" or, when even the lines have no room below each other, left out. A chart without a value that can be shown
/// has axes from 0 to 1 and the words "no values".
void add_chart(Scene& scene, const Chart& chart, const Box& box, units::System system);

/// Adds charts below each other, each as high as its share of the room, with their plots as wide as each other.
void add_panels(Scene& scene, const std::vector<Chart>& charts, const Box& room, units::System system);

/// What the curves and limits say, in words: "steady run: 2.8 to 21.9 N·m. …"
std::string in_words(const Chart& chart, units::System system);

}  // namespace holdback::draw
