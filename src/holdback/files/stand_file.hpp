// Reading a stand file: text in, plain SI values out, with every problem at its place and every default named.
#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "holdback/model/problem.hpp"
#include "holdback/model/stand.hpp"
#include "holdback/results/answer.hpp"

namespace holdback::files {

/// Where a field stands and how it was written.
struct FieldPlace {
  std::string file{};
  Position where{};
  std::string value{};  // as written
};

/// A read stand file. When `problems` holds an error the stand is incomplete and must not be computed.
struct StandFile {
  Stand stand{};
  Problems problems{};
  std::vector<DefaultUsed> defaults{};
  std::vector<ColumnRead> columns{};                        // of the table that read_jobs() read
  std::map<std::string, FieldPlace> places{};               // by path, "roll[1].core_diameter"
  std::set<std::string> meant{};                            // paths of keys that an unknown key beside them stands for
  std::map<std::string, std::vector<std::string>> lines{};  // by file name: its lines, for messages
};

/// Reads a stand file in TOML. Collects every problem; never throws on bad input. Cross-field faults of
/// model's problems_of() are included, located.
StandFile read_stand(std::string_view text, const std::string& file_name);

/// Adds the jobs of a table (CSV with a header row that carries units) to a read stand. Columns are job fields
/// ("speed [m/min]"), and fields of the row's own web and roll ("web.caliper [um]", "roll.core_diameter [mm]"), by
/// their keys or by names of the trade. A `sheet` is a worksheet written as CSV, one line a row: commas, no decimal
/// comma, rows that may be short; its problems name cells.
void read_jobs(std::string_view text, const std::string& file_name, StandFile& into, bool sheet = false);

/// Gives problems that carry only a field path their file, position, source line and value.
void locate(Problems& problems, const StandFile& file);

/// Adds problems that carry only a field path, located and sorted in with those that the reading found; problems of
/// `jobs_file` (the table that read_jobs() read; may be empty) stay behind those of the stand file.
void add_problems(const Problems& found, const std::string& jobs_file, StandFile& file);

}  // namespace holdback::files
