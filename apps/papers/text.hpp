// Lines of text, set by Pango: shaping, both writing directions, breaking. Sizes and widths in points.
#pragma once

#include <cairo.h>
#include <pango/pango.h>

#include <memory>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "look.hpp"

namespace holdback::pdf {

/// Text that may be set: characters that turn the writing direction, control characters and bytes that are no UTF-8
/// become U+FFFD, as in every picture.
std::string clean(std::string_view text);

struct Face {
  double size{9.5};
  bool bold{};
  double leading{1.2};  // from line to line, in sizes
};

enum class Side { left, right };

/// A text that has been set. Places are its top left corner.
class Text {
 public:
  Text() = default;
  Text(std::shared_ptr<PangoLayout> layout, const Face& face, double width);

  double width() const { return width_; }  // of the widest line
  double height() const { return height(0, lines()); }
  std::size_t lines() const { return lines_.size(); }
  double height(std::size_t from, std::size_t to) const;  // of some lines
  double base() const { return lines_.empty() ? 0 : lines_.front().base; }

  void draw(cairo_t* cr, double x, double y, Ink ink) const { draw(cr, x, y, ink, Side::left, 0, lines()); }
  /// Lines `from` up to `to`, each at that side of `x`.
  void draw(cairo_t* cr, double x, double y, Ink ink, Side side, std::size_t from, std::size_t to) const;

 private:
  struct Line {
    PangoLayoutLine* line{};
    double width{};
    double base{};  // below the line's top
    double height{};
    double indent{};  // of a paragraph that is written from the right
  };
  std::shared_ptr<PangoLayout> layout_{};
  std::vector<Line> lines_{};
  double width_{};
};

using TextPtr = std::shared_ptr<const Text>;

/// Sets texts in the one typeface, DejaVu Sans. A line that was set once is not set again.
class Typesetter {
 public:
  Typesetter();

  /// One line, as wide as it comes.
  TextPtr line(std::string_view text, const Face& face);
  /// One line, cut with "…" where it is wider than `width`.
  TextPtr shortened(std::string_view text, const Face& face, double width);
  /// Lines of at most `width`, broken at blanks; within a word only where it is wider than a line.
  TextPtr wrapped(std::string_view text, const Face& face, double width);
  double width(std::string_view text, const Face& face) { return line(text, face)->width(); }

 private:
  std::shared_ptr<PangoLayout> layout(const std::string& text, const Face& face);

  std::shared_ptr<PangoContext> context_{};
  std::unordered_map<std::string, TextPtr> lines_{};
};

}  // namespace holdback::pdf
