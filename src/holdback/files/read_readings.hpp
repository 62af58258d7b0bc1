// The table of readings that were taken at a brake: CSV with a head that names columns and units.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "holdback/files/stand_file.hpp"
#include "holdback/results/brake_fit.hpp"

namespace holdback::files {

/// A row as read, in SI.
struct ReadingRow {
  int row{};                            // as a sheet counts
  double pressure{};                    // [Pa] gauge
  std::optional<double> tension{};      // [N] of the whole web; tension or torque is there
  std::optional<double> torque{};       // [N·m] at the shaft
  std::optional<double> diameter{};     // [m] of the roll; always with a tension
  std::optional<int> pairs{};           // engaged on each brake
  PressureCourse course{};              // which way the pressure was moved
  std::optional<double> temperature{};  // [K] of the disc
  std::string note{};
  std::map<std::string, FieldPlace> places{};  // by column: where each cell stands
};

/// A read table. When `problems` holds an error the rows are incomplete.
struct ReadingTable {
  std::vector<ReadingRow> rows{};
  std::vector<ColumnRead> columns{};
  Problems problems{};
  std::vector<std::string> lines{};  // of the text, for messages
};

/// Reads the table. Columns: pressure, tension or torque, diameter (with tension), pairs, direction (rising, falling),
/// temperature, note, by these or other names of the trade, in any order, with the unit in the head, in the row below
/// it, or in each cell; comma, semicolon or tab, a decimal comma with semicolons. Every wrong cell is told with row and
/// column; nothing is thrown. At most 2000 readings.
ReadingTable read_readings(std::string_view text, const std::string& file_name);

/// A problem of one cell of a row, with its place and what stands there.
Problem problem_of_reading(const std::string& file, const ReadingTable& table, const ReadingRow& row,
                           const std::string& column, Note what, Note accepted, Severity severity = Severity::error);

}  // namespace holdback::files
