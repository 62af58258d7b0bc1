// Finds room for words beside a line, clear of what is there already.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "holdback/draw/scene.hpp"

namespace holdback::draw {

/// Keeps what is drawn within a box and finds places for words in it.
class Placer {
 public:
  explicit Placer(const Box& box) : box_(box) {}

  /// Words stand here.
  void taken(const Box& words) { words_.push_back(words); }
  /// A line runs here.
  void taken(const std::vector<Point>& line);

  /// Where the middle of the words' base line may stand: within the box, above or below the line through the points,
  /// its middle first; on no other words, and on no line when that can be had. None when every place is taken by words,
  /// or by lines as well when it has to be `clear` of them.
  std::optional<Point> spot(const std::vector<Point>& points, std::string_view words, double size, bool clear) const;

  /// Room of that size [mm] at the end of a leader from `anchor`: within the box, on no other words and with no words
  /// under the leader; near the anchor, in the direction `prefer` [rad, 0 to the right, growing upwards] and clear of
  /// lines as far as that can be had. None when every place is taken by words.
  std::optional<Box> beside(Point anchor, double width, double height, double prefer) const;

  /// How much of the lines lies in that room: their points, half a millimetre apart.
  int crossings(const Box& box) const;

  /// Where the leader from `anchor` meets that room: the place of its edge that is nearest.
  static Point meets(const Box& box, Point anchor);

 private:
  bool on_words(const Box& box) const;
  /// How many points of the lines lie on a straight line from a to b; none when words lie there.
  std::optional<int> crossings(Point a, Point b) const;

  Box box_;
  std::vector<Box> words_{};
  std::vector<Point> lines_{};  // the lines as points half a millimetre apart
};

}  // namespace holdback::draw
