// The columns of a table of readings and the names that people give them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/files/csv.hpp"
#include "holdback/files/field.hpp"
#include "holdback/files/reading.hpp"
#include "holdback/results/brake_fit.hpp"

namespace holdback::files {

/// One row before it is checked as a whole.
struct ReadingDraft {
  double pressure{};
  std::optional<double> tension{};
  std::optional<double> torque{};
  std::optional<double> diameter{};
  std::optional<int> pairs{};
  PressureCourse course{};
  std::optional<double> temperature{};
  std::string note{};
};

/// The columns as fields.
const std::vector<Field<ReadingDraft>>& reading_fields();

/// A column of the table as its head gives it.
struct ReadingColumn {
  const FieldInfo* field{};  // null for a column that is not read
  std::string unit{};        // empty: each cell carries its own
  Cell header{};
  bool key{};               // the header is the column's own name
  bool unit_missed{};       // already told that bare numbers stand under a header without a unit
  std::string seen_unit{};  // of the first cell that carries one
  bool mixed{};             // already told that cells carry different units
};

/// Reads the header with the units that a row below it may give. Faults go to `reading`.
std::vector<ReadingColumn> reading_columns(const Row& header, const Row& units, const std::string& table,
                                           Reading& reading);

/// True for a cell that holds a unit of one of the columns and nothing else: "bar", "[N*m]".
bool is_reading_unit(const std::string& cell);

/// True for a text that names a column.
bool names_reading_column(const std::string& header);

}  // namespace holdback::files
