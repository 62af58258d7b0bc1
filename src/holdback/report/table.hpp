// Tables for a terminal: aligned columns with their unit in the head, no wider than asked.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "holdback/draw/ink.hpp"
#include "holdback/model/quantity.hpp"
#include "holdback/units/units.hpp"

namespace holdback::report {

/// One cell. Text that gives way to the width takes several lines.
struct Cell {
  std::string text{};
  draw::Ink ink{draw::Ink::plain};
};

/// One column. `head` may hold several lines; a table without any head has no line for it. Neighbours of one `group`,
/// with heads of the same height, share a line above their heads.
struct Column {
  std::string head{};
  bool number{false};    // right-aligned
  bool flexible{false};  // names: the first to be wrapped, then cut, when the table would be too wide
  std::string group{};
};

/// A table that is filled row by row and then set as lines of text.
class Table {
 public:
  /// A table without rows.
  explicit Table(std::vector<Column> columns) : columns_(std::move(columns)) {}

  /// Adds a row; missing cells at its end are empty.
  void row(std::vector<Cell> cells);

  /// The table as lines without trailing blanks, at most `width` columns as long as the numbers fit.
  std::vector<std::string> lines(int width, bool colour) const;

 private:
  std::vector<int> widths(int width) const;
  std::vector<Column> columns_;
  std::vector<std::vector<Cell>> rows_;
};

/// Numbers of one column with the same count of decimals: `digits` significant digits of the largest,
/// one more where the smallest would keep fewer than two.
std::vector<std::string> aligned_numbers(const std::vector<double>& si, Quantity kind, units::System system,
                                         int digits = 3);

/// One number of each entry, set as a column. `get` is a member or a function of the entry.
template <typename Entry, typename Get>
std::vector<std::string> column_of(const std::vector<Entry>& entries, Get get, Quantity kind, units::System system) {
  std::vector<double> values;
  values.reserve(entries.size());
  for (const auto& entry : entries) values.push_back(std::invoke(get, entry));
  return aligned_numbers(values, kind, system);
}

/// The unit as it stands in a head: "[bar]".
std::string unit_head(Quantity kind, units::System system);

/// Two blocks of lines side by side, `space` columns between them.
std::vector<std::string> beside(const std::vector<std::string>& left, const std::vector<std::string>& right, int space);

}  // namespace holdback::report
