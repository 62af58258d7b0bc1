// Text as cells of a terminal: one code point takes one column. UTF-8 is never split, and control characters never
// reach the terminal: a name in a file must not be able to move the cursor or change a colour.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace holdback::draw {

/// Columns that `text` takes: its code points. The codes that inked() sets take none.
int columns(std::string_view text);

/// The text without anything that a terminal would act on: tabs become blanks, control characters and bytes that are no
/// UTF-8 become U+FFFD.
std::string plain(std::string_view text);

/// At most `width` columns; what is longer ends in "…". Width 0 or less gives nothing.
std::string cut(std::string_view text, int width);

/// Filled with blanks up to `width` columns, at the right or at the left of the text; longer text stays as it is.
std::string pad_right(std::string_view text, int width);
std::string pad_left(std::string_view text, int width);

/// Lines of at most `width` columns, broken at blanks. A word that is longer than a line is cut with "…".
std::vector<std::string> wrapped(std::string_view text, int width);

}  // namespace holdback::draw
