#include "holdback/draw/ink.hpp"

#include <array>

namespace holdback::draw {

std::string inked(std::string_view text, Ink ink, bool colour) {
  constexpr std::array<std::string_view, 10> codes{"", "1", "2", "32", "33", "1;31", "34", "36", "35", "31"};
  if (!colour || ink == Ink::plain || text.empty()) return std::string(text);
  return "\x1b[" + std::string(codes[static_cast<std::size_t>(ink)]) + "m" + std::string(text) + "\x1b[0m";
}

}  // namespace holdback::draw
