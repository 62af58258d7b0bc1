// Worksheets as tables of jobs: an .xlsx becomes the text that the core reads. Native only.
#pragma once

#include <string>
#include <variant>

#include "holdback/api/answer.hpp"

namespace holdback::cli {

/// The table of jobs that a read file holds. A text is handed on as it is. Of a workbook, the first visible worksheet,
/// or the one that `sheet` names (also a hidden one), becomes CSV: one line for each row of the sheet, so that row and
/// column of a cell stay what they are there. Numbers keep all their digits, those shown in per cent have "%" behind
/// them, formulas give their stored value, and dates stay serial numbers. What cannot be read is a Problem that names
/// the file; nothing is thrown.
std::variant<api::Source, Problem> jobs_table(api::Source file, const std::string& sheet);

}  // namespace holdback::cli
