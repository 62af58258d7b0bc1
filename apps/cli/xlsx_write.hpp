// Answers as a workbook (.xlsx): for those who go on in a spreadsheet. Native only.
#pragma once

#include <string>

#include "holdback/report/report.hpp"

namespace holdback::cli {

/// The bytes of a workbook with the sheet "Jobs" (the table of report::csv(), numbers as numbers), for `size` also
/// "Limits" (one row for each limit of each job on the recommended fit), and "Answer" (title, fit, why, cautions).
/// Equal answers give equal bytes. Throws Refusal when it has more rows than a sheet takes, or cannot be written.
std::string workbook(const Answer& answer, units::System system);

/// The bytes of a workbook that holds one table alone.
std::string workbook(const report::JobsTable& table, const std::string& name);

}  // namespace holdback::cli
