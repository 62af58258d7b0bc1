// The columns of a table of jobs, and the names that people give them: which column a header cell means.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/files/field.hpp"
#include "holdback/files/header_parts.hpp"

namespace holdback::files {

/// Whose field a column holds: the job's, or that of the row's own web or roll ("web.caliper [um]").
enum class ColumnOf { job, web, roll };

/// A column that a table of jobs may have.
struct JobColumn {
  ColumnOf of{ColumnOf::job};
  const FieldInfo* field{};
  std::string name{};  // its key: "speed", "web.caliper"
};

/// All of them: fields of the job, of its web, of its roll.
const std::vector<JobColumn>& job_columns();

/// The column of that name; null when there is none.
const JobColumn* column_called(const std::string& name);

/// Names of the columns that may stand in the header, as in "speed" and "web.caliper".
std::vector<std::string> column_names();

/// What a header means.
struct HeaderMeaning {
  std::vector<const JobColumn*> columns{};  // one that is sure; several that it could be; none
  std::string unit{};                       // as the column takes it, or as written when it fits none of the columns
  bool unit_fits{true};
  bool key{};             // the name is the column's own key
  std::string refused{};  // why a name that is easily mistaken for a column is none
};
HeaderMeaning meaning_of(const std::string& header);

/// The name of a header without its unit: "speed [m/min]", "Speed (m/min)" and "Speed, m/min" → "speed", "Speed".
std::string name_in(const std::string& header);

/// The column name, or another name of a column, that a header without meaning is nearest to; empty when none is near.
struct NearColumn {
  std::string column{};
  std::string name{};  // the name that is near: the column's own, or another one
};
NearColumn near_column(const std::string& header);

/// The unit as it can stand behind a number of the column: as written, or in small letters ("M/MIN"); "%" also for a
/// plain number. Nothing when the column takes no such unit.
std::optional<std::string> usable_unit(const FieldInfo& field, const std::string& unit);

/// True for a cell that holds a unit alone, such as "m/min", "[m/min]" and "%".
bool is_unit_alone(const std::string& cell);

/// The word of a field for a word of the trade, as "polyester" for "PET"; the text itself when there is none.
std::string word_for(const FieldInfo& field, const std::string& text);

}  // namespace holdback::files
