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

  /// True when no cell holds anything.
  bool blank() const;
};

/// Reads row by row; UTF-8 without a byte order mark.
class CsvReader {
 public:
  CsvReader(std::string_view text, char delimiter) : text_(text), delimiter_(delimiter) {}

  /// The next row; false at the end of the text.
  bool next(Row& row);

 private:
  Cell cell(Row& row);
  Cell quoted_cell(Row& row);
  bool at_end_of_cell() const;
  char take();

  std::string_view text_;
  char delimiter_;
  std::size_t at_{};
  Position where_{1, 1};
  int rows_{};
};

/// The delimiter of the first line: comma, semicolon or tab, whichever stands there most often outside quotes; a comma
/// when there is none.
char delimiter_of(std::string_view text);

}  // namespace holdback::files
