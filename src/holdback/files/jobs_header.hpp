// The header row of a table of jobs: which field each column holds, and in which unit.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/files/csv.hpp"
#include "holdback/files/field.hpp"
#include "holdback/files/reading.hpp"
#include "holdback/files/value.hpp"

namespace holdback::files {

/// Whose field a column holds: the job's, or that of the row's own web or roll ("web.caliper [um]").
enum class ColumnOf { job, web, roll };

struct Column {
  ColumnOf of{ColumnOf::job};
  const FieldInfo* field{};  // null for a column that is not read, because its header is wrong
  std::string meant{};       // name of the column that an unreadable header is nearest to
  std::string unit{};        // of its cells; empty: each cell carries its own
  Cell header{};
  bool unit_missed{};  // already told that bare numbers stand under a header without a unit

  /// "speed", "web.caliper".
  std::string name() const;
};

/// Reads the header; its faults are told to `reading`, with `table` ("jobs.csv") naming the field.
std::vector<Column> columns_of(const Row& header, const std::string& table, Reading& reading);

/// Names of the columns that may stand in the header, as in "speed" and "web.caliper".
std::vector<std::string> column_names();

}  // namespace holdback::files
