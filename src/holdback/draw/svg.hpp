// A scene as SVG 1.1: text that any browser, drawing program or word processor opens. No scripts, no fonts from
// elsewhere; light and dark by the reader's own wish, always light on paper.
#pragma once

#include <string>
#include <string_view>

#include "holdback/draw/scene.hpp"

namespace holdback::draw {

/// The scene as one SVG document, UTF-8, the same text for the same scene. Lengths are millimetres. A mark with a place
/// that is not finite is left out. Colours differ for eyes that see no red or green; on paper without colour the line's
/// pattern and weight tell the curves apart.
std::string svg(const Scene& scene);

/// Text that may stand between tags or in an attribute. Control characters, characters that turn the writing direction,
/// bytes that are no UTF-8 and what XML does not allow become U+FFFD.
std::string xml_text(std::string_view text);

}  // namespace holdback::draw
