#include "holdback/draw/braille.hpp"

#include <array>

namespace holdback::draw {

namespace {

// The bit of each dot in the characters from U+2800 on: the upper three rows were numbered first, the fourth came
// later.
constexpr std::array<std::array<std::uint8_t, 2>, 4> bits{{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}};

// UTF-8 of U+2800 + dots.
std::string character(std::uint8_t dots) {
  return {static_cast<char>(0xE2), static_cast<char>(0xA0 | (dots >> 6)), static_cast<char>(0x80 | (dots & 0x3F))};
}

}  // namespace

Braille::Braille(int cells_wide, int cells_high)
    : wide_(cells_wide),
      high_(cells_high),
      cells_(static_cast<std::size_t>(cells_wide) * static_cast<std::size_t>(cells_high)) {}

std::size_t Braille::index(int column, int row) const {
  return static_cast<std::size_t>(row) * static_cast<std::size_t>(wide_) + static_cast<std::size_t>(column);
}

void Braille::dot(int x, int y, Ink ink) {
  if (x < 0 || y < 0 || x >= dots_wide() || y >= dots_high()) return;
  auto& cell = cells_[index(x / 2, y / 4)];
  const auto bit = bits[static_cast<std::size_t>(y % 4)][static_cast<std::size_t>(x % 2)];
  cell.dots = static_cast<std::uint8_t>(cell.dots | bit);
  cell.ink = ink;
}

std::string Braille::row(int cell_row, bool colour) const {
  std::string out;
  for (int i = 0; i < wide_; ++i) {
    const auto& cell = cells_[index(i, cell_row)];
    out += cell.dots == 0 ? " " : inked(character(cell.dots), cell.ink, colour);
  }
  return out;
}

}  // namespace holdback::draw
