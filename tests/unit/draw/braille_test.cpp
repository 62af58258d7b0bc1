// Dots and characters as the Unicode chart of braille patterns numbers them: dots 1 2 3 7 down the left, 4 5 6 8 down
// the right, the character is U+2800 plus 2^(dot - 1) for each.
#include "holdback/draw/braille.hpp"

#include <gtest/gtest.h>

namespace holdback::draw {
namespace {

TEST(braille, each_dot_is_its_character) {
  const std::string expected[4][2] = {{"⠁", "⠈"}, {"⠂", "⠐"}, {"⠄", "⠠"}, {"⡀", "⢀"}};
  for (int y = 0; y < 4; ++y) {
    for (int x = 0; x < 2; ++x) {
      Braille canvas(1, 1);
      canvas.dot(x, y, Ink::plain);
      EXPECT_EQ(canvas.row(0, false), expected[y][x]);
    }
  }
}

TEST(braille, dots_of_one_cell_add_up_and_empty_cells_are_blanks) {
  Braille canvas(3, 1);
  for (int y = 0; y < 4; ++y) {
    for (int x = 2; x < 4; ++x) canvas.dot(x, y, Ink::plain);
  }
  EXPECT_EQ(canvas.row(0, false), " ⣿ ");
}

TEST(braille, a_dot_outside_is_left_out) {
  Braille canvas(1, 1);
  canvas.dot(-1, 0, Ink::plain);
  canvas.dot(2, 0, Ink::plain);
  canvas.dot(0, 4, Ink::plain);
  EXPECT_EQ(canvas.row(0, false), " ");
}

}  // namespace
}  // namespace holdback::draw
