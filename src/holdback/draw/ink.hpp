// Colour for a terminal: always beside a word or a shape, never instead of it.
#pragma once

#include <string>
#include <string_view>

namespace holdback::draw {

/// How a piece of text is set.
enum class Ink { plain, strong, faint, good, warning, bad, first, second, third, fourth };

/// The text between the codes that set its ink; as it is when `colour` is off.
std::string inked(std::string_view text, Ink ink, bool colour);

}  // namespace holdback::draw
