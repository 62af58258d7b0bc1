// A canvas of dots for a terminal: each cell is one braille character, two dots wide and four high.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "holdback/draw/ink.hpp"

namespace holdback::draw {

/// Dots in cells. Dot (0, 0) is at the top left; dots outside the canvas are left out.
class Braille {
 public:
  /// An empty canvas of so many cells.
  Braille(int cells_wide, int cells_high);

  /// Sets a dot; its cell takes the ink.
  void dot(int x, int y, Ink ink);

  /// One row of cells as UTF-8; cells without a dot are blanks.
  std::string row(int cell_row, bool colour) const;

  /// Dots across and down.
  int dots_wide() const { return 2 * wide_; }
  int dots_high() const { return 4 * high_; }

 private:
  struct Cell {
    std::uint8_t dots{};
    Ink ink{Ink::plain};
  };
  std::size_t index(int column, int row) const;
  int wide_;
  int high_;
  std::vector<Cell> cells_;
};

}  // namespace holdback::draw
