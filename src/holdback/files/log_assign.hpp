// The columns of a log given their channels, units and forms, from the head,
// the user's words and the first rows.
#pragma once

#include <string>
#include <vector>

#include "holdback/files/csv.hpp"
#include "holdback/files/log_columns.hpp"
#include "holdback/files/log_header.hpp"
#include "holdback/files/log_plan.hpp"

namespace holdback::files {

/// What is known, and where the answer goes.
struct LogAssignment {
  LogHead& out;
  const std::string& file;
  const HeadOptions& options;
  const std::vector<ColumnAsked>& asked;
  const std::vector<std::vector<Cell>>& rows;  // the first ones, at least one
  std::vector<Cell> head{};                    // empty texts when the log has none
  std::string head_line{};
  std::vector<std::string> units{};  // of a row below the head; may be empty
};

/// Whether the user means the cell by that entry of --columns.
bool names_cell(const ColumnAsked& asked, const std::string& cell);

/// Fills the plan, the columns, the assumptions and the problems of `work.out`.
void assign_columns(LogAssignment& work);

}  // namespace holdback::files
