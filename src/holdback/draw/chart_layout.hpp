// Where everything of a chart stands on the page: ranges of the axes, the room for numbers and names, and from values
// to millimetres.
#pragma once

#include <string>
#include <vector>

#include "holdback/draw/chart.hpp"
#include "holdback/draw/ticks.hpp"

namespace holdback::draw {

/// Sizes of letters and gaps [mm].
namespace measure {
inline constexpr double title = 4.4;
inline constexpr double heading = 3.3;
inline constexpr double text = 2.9;
inline constexpr double number = 2.7;
inline constexpr double line = 3.7;       // from one line of text to the next
inline constexpr double tick = 1.2;       // length of a mark at an axis
inline constexpr double leader = 6;       // from the plot to the names of the curves
inline constexpr double drop = 0.36;      // of the size: from the middle of a letter to its base line
inline constexpr double flag = 3.4;       // from one row of names above the plot to the next
inline constexpr double flag_gap = 0.7;   // from an upright line to its name
inline constexpr double hatch = 2.1;      // length of a hatch line
inline constexpr double hatch_gap = 2.2;  // from one hatch line to the next
}  // namespace measure

/// A name at the end of a curve, in lines, with the place where the curve ends.
struct EndName {
  std::vector<std::string> lines{};
  Style style{};
  Point end{};         // of the curve, in the plot
  bool has_end{true};  // false: the curve lies outside of the plot as a whole, so no line leads to the name
  double middle{};     // [mm] where the name wants to stand
};

/// The name of a mark, beside the line, in a row above the plot counted from the top; row −1: there is no room for it.
struct Flag {
  std::string text{};
  double x{};
  int row{-1};
  bool left{};  // it stands left of the line
};

/// Names of upright lines at rising places [mm], in at most so many rows between `left` and `right`: none on
/// another, and no line that rises to its name through another one.
std::vector<Flag> flags(const std::vector<Flag>& wanted, double left, double right, int rows);

/// An axis ready to draw.
struct Scale {
  Range range{};  // in display units
  std::vector<double> ticks{};
  TickText text{};
  std::string title{};  // "brake torque [N·m]"
};

/// Room that is kept at the sides of the plot [mm], at least.
struct Sides {
  double left{};
  double right{};
};

/// The chart laid out.
class Layout {
 public:
  Layout(const Chart& chart, const Box& box, units::System system, const Sides& sides = {});

  const Box& box() const { return box_; }
  const Box& plot() const { return plot_; }
  const Scale& x() const { return x_; }
  const Scale& y() const { return y_; }
  const std::vector<EndName>& names() const { return names_; }
  const std::vector<Flag>& flags() const { return flags_; }
  double flag_room() const { return flag_room_; }  // [mm] above the plot
  bool empty() const { return empty_; }
  Sides sides() const { return {plot_.left - box_.left, box_.right - plot_.right}; }

  /// On the page; values far outside are held within a million millimetres.
  Point at(double x_si, double y_si) const;
  double column(double x_shown) const;
  double row(double y_shown) const;

  /// The points that can be shown, in runs without gaps.
  std::vector<std::vector<Point>> runs(const std::vector<double>& x, const std::vector<double>& y) const;
  /// The same for a limit, which may go right across.
  std::vector<std::vector<Point>> runs(const ChartLimit& limit) const;

 private:
  double shown_x(double si) const { return units::in_display_unit(si, chart_.x.kind, system_); }
  double shown_y(double si) const { return units::in_display_unit(si, chart_.y.kind, system_); }
  void name(const std::string& text, const Style& style, const std::vector<std::vector<Point>>& runs,
            const std::string& last);
  void name_all();
  void place_flags();

  const Chart& chart_;
  Box box_;
  units::System system_;
  Box plot_{};
  Scale x_{};
  Scale y_{};
  std::vector<EndName> names_{};
  std::vector<Flag> flags_{};
  double flag_room_{};
  bool empty_{};
};

}  // namespace holdback::draw
