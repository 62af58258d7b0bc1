// The cells of the first lines of a log, looked at one by one before it is
// known how the rest is to be read.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "holdback/files/csv.hpp"

namespace holdback::files {

/// One line of the beginning of a log.
struct HeadLine {
  int number{};         // counted from one
  std::size_t begin{};  // its first byte
  std::string_view text{};
};

/// The whole lines of `text`, at most `most` of them; the last one counts only
/// when `ends` or when a line end follows.
std::vector<HeadLine> first_lines(std::string_view text, std::size_t most, bool ends);

/// UTF-8 of a text that is not: its bytes taken as ISO 8859-1 ("°C" of an older
/// recorder).
std::string as_utf8(std::string_view text);

/// The cells of a line, without quotes and blanks; of a comment ("# time,
/// tension") those behind its sign.
std::vector<Cell> cells_of(const HeadLine& line, char delimiter);

/// True for a word that stands where there is no reading: nothing, "NaN",
/// "---", "#N/A", "null".
bool is_no_reading(std::string_view cell);

/// True for a number with `point` as its decimal sign, whole cell.
bool is_number(std::string_view cell, char point);

}  // namespace holdback::files
