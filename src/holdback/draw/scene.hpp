// A picture before it is written: a page in millimetres and simple marks on it. Every writer of pictures (SVG here; a
// PDF or a page elsewhere) starts from this; there is nothing of any of them in it. A mark says what it stands for, not
// how it looks: the writer picks colours, for paper or for a dark screen.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace holdback::draw {

/// A place on the page [mm], from the top left corner, y down.
struct Point {
  double x{};
  double y{};
  bool operator==(const Point&) const = default;
};

/// An upright rectangle on the page [mm].
struct Box {
  double left{};
  double top{};
  double right{};
  double bottom{};
  bool operator==(const Box&) const = default;
};

/// What a mark stands for.
enum class MarkRole { axis, grid, curve, limit, area, text, muted, good, tight, bad };

/// How a line is broken.
enum class Pattern { solid, dashed, dotted };

/// The first of the series after the last: curves of a picture are numbered 0 … 5.
inline constexpr int series_count = 6;

/// The manner of a mark. `series` sets apart what has the same role: curves of one picture.
struct Style {
  MarkRole role{MarkRole::text};
  Pattern pattern{Pattern::solid};
  int series{};
  bool operator==(const Style&) const = default;
};

/// A straight line.
struct Segment {
  Point from{};
  Point to{};
  bool operator==(const Segment&) const = default;
};

/// A line through points.
struct Polyline {
  std::vector<Point> points{};
  bool operator==(const Polyline&) const = default;
};

/// A filled area within points.
struct Polygon {
  std::vector<Point> points{};
  bool operator==(const Polygon&) const = default;
};

/// An upright rectangle, filled or drawn round.
struct Rectangle {
  Box box{};
  bool filled{true};
  bool operator==(const Rectangle&) const = default;
};

/// A circle, filled or drawn round.
struct Circle {
  Point centre{};
  double radius{};
  bool filled{true};
  bool operator==(const Circle&) const = default;
};

/// Which end of a text stands at its place.
enum class Anchor { start, middle, end };

/// How heavy a text is set.
enum class Weight { normal, bold };

/// A line of text. `at` lies on its base line; `rotation` turns it about that place [°, clockwise].
struct Label {
  Point at{};
  std::string text{};
  Anchor anchor{Anchor::start};
  double size{3};  // [mm] of the letters' body
  Weight weight{Weight::normal};
  double rotation{};
  bool operator==(const Label&) const = default;
};

using Shape = std::variant<Segment, Polyline, Polygon, Rectangle, Circle, Label>;

/// A shape in its manner.
struct Mark {
  Shape shape{};
  Style style{};
  bool operator==(const Mark&) const = default;
};

/// A page. Marks that come later lie on top.
struct Scene {
  double width{180};   // [mm]
  double height{110};  // [mm]
  std::string title{};
  std::string description{};  // in words, for who cannot see the picture
  std::vector<Mark> marks{};
  bool operator==(const Scene&) const = default;
};

/// Adds a mark.
void add(Scene& scene, Shape shape, Style style);

/// How thick a line of this manner is [mm]. Curves of odd series are drawn heavier, so that they differ without colour.
double line_width(const Style& style);

/// How wide a text comes out [mm] at a size [mm], reckoned on the wide side of the usual sans-serif fonts. Never
/// negative; an unknown character counts as a wide one.
double text_width(std::string_view text, double size, Weight weight = Weight::normal);

/// The text as it is when it fits into `width` [mm], else cut and ended with "…"; nothing when not even that fits.
std::string fitted(std::string_view text, double width, double size, Weight weight = Weight::normal);

/// The text with blanks that no line is broken at.
std::string kept_together(std::string text);

/// Lines of at most `width` [mm], broken at blanks; a word that is wider than a line is cut with "…". At most `most`
/// lines, the last one cut.
std::vector<std::string> broken(std::string_view text, double width, double size, int most);

/// The room that a text takes, turned as it is.
Box bounds(const Label& label);

/// Whether two boxes share room.
bool overlap(const Box& a, const Box& b);

}  // namespace holdback::draw
