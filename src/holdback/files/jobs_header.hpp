// The header row of a table of jobs: which field each column holds, and in which unit.
#pragma once

#include <string>
#include <vector>

#include "holdback/files/csv.hpp"
#include "holdback/files/job_columns.hpp"
#include "holdback/files/reading.hpp"
#include "holdback/results/answer.hpp"

namespace holdback::files {

/// A column as the header gives it.
struct Column {
  ColumnOf of{ColumnOf::job};
  const FieldInfo* field{};  // null for a column that is not read
  std::string meant{};       // name of the column that an unreadable header is nearest to
  std::string unit{};        // of its cells; empty: each cell carries its own
  Cell header{};
  bool key{};          // the header is the field's own key
  bool unit_missed{};  // already told that bare numbers stand under a header without a unit
  bool name_missed{};  // already told that cells stand under no header

  /// "speed", "web.caliper".
  std::string name() const;
};

/// Reads the header, with the units that a row below it may give (`units` may be empty). Its faults, and the columns
/// that are not read, are told to `reading`, with `table` ("jobs.csv") naming the field.
std::vector<Column> columns_of(const Row& header, const Row& units, const std::string& table, Reading& reading);

/// How the columns were understood, for the answer; columns without a header are left out.
std::vector<ColumnRead> columns_read(const std::vector<Column>& columns, const std::string& table);

/// True for a row below the header that holds nothing but units.
bool is_row_of_units(const Row& row);

/// True for a row above the header: one cell alone, whose text is no column.
bool is_title(const Row& row);

/// Most columns of a table.
inline constexpr std::size_t most_columns = 1'000;

}  // namespace holdback::files
