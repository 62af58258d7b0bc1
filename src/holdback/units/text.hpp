// Reading text code point by code point, and quoting it safely in a sentence.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace holdback::units {

/// A Unicode character and how many bytes it takes in UTF-8.
struct CodePoint {
  char32_t value{};
  std::size_t size{};
};

/// The character that starts at byte `at`; bytes that are no UTF-8 read as U+FFFD, one byte each. {0, 0} at the end.
CodePoint code_point_at(std::string_view text, std::size_t at);

/// Blank, tab, line end, and the no-break and thin spaces that spreadsheets and word processors put before a unit.
bool is_space(char32_t c);

/// `text` without spaces at both ends.
std::string_view trimmed(std::string_view text);

/// The text in single quotes, fit for any output: clipped when long, bytes that are no UTF-8 and control characters
/// replaced by U+FFFD.
std::string quoted(std::string_view text);

}  // namespace holdback::units
