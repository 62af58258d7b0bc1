// The columns of a table of jobs as they were read, so that a column taken for another one shows.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

namespace {

std::string with_unit(const ColumnRead& column) {
  return column.field + (column.unit.empty() ? "" : " [" + column.unit + "]");
}

void one_line(Sheet& sheet, const std::vector<ColumnRead>& columns) {
  std::string list;
  for (const auto& column : columns) list += (list.empty() ? "" : ", ") + with_unit(column);
  sheet.blank();
  sheet.paragraph(fmt::format("Columns of {}, each by its key: {}", columns.front().file, list), draw::Ink::plain, 0,
                  true);
}

}  // namespace

void columns_text(Sheet& sheet, const std::vector<ColumnRead>& columns) {
  if (columns.empty()) return;
  if (std::all_of(columns.begin(), columns.end(), [](const ColumnRead& column) { return column.key; }))
    return one_line(sheet, columns);
  Table table({{"column", false, false, ""},
               {"header", false, true, ""},
               {"read as", false, true, ""},
               {"unit", false, false, ""}});
  for (const auto& column : columns) {
    const bool read = !column.field.empty();
    table.row({{column.column},
               {column.header},
               read ? Cell{column.field} : Cell{"not read", draw::Ink::warning},
               {column.unit}});
  }
  sheet.section("Columns read from " + columns.front().file);
  sheet.table(table);
}

}  // namespace holdback::report
