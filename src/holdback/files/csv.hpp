// Cells of a CSV text by RFC 4180, with positions: quotes, doubled quotes, line ends inside quotes, LF or CRLF.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "holdback/model/problem.hpp"

namespace holdback::files {

struct Cell {
  std::string text{};  // without quotes and without blanks around it
  Position where{};    // of its first character
};

/// Why a row is not well formed; at most one is told for each row.
enum class RowFault { none, text_after_quote, open_quote };

struct Row {
  int number{};  // counted from one, the header included, as a spreadsheet counts
  std::vector<Cell> cells{};
  RowFault fault{RowFault::none};
  Position fault_where{};

  /// How many cells hold anything.
  std::size_t filled() const;
  /// True when none does.
  bool blank() const { return filled() == 0; }
};

/// Reads row by row; UTF-8 without a byte order mark. The cells of a `sheet` that was written as CSV have their row and
/// column there as their place.
class CsvReader {
 public:
  CsvReader(std::string_view text, char delimiter, bool sheet = false)
      : text_(text), delimiter_(delimiter), sheet_(sheet) {}

  /// The next row; false at the end of the text.
  bool next(Row& row);

 private:
  Cell cell(Row& row);
  Cell quoted_cell(Row& row);
  bool at_end_of_cell() const;
  char take();

  std::string_view text_;
  char delimiter_;
  bool sheet_;
  std::size_t at_{};
  Position where_{1, 1};
  int rows_{};
};

/// The delimiter of the first line that has one: comma, semicolon or tab, whichever stands there most often outside
/// quotes; a comma when there is none.
char delimiter_of(std::string_view text);

}  // namespace holdback::files
