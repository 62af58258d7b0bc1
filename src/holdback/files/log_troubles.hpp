// What is told about the rows of a log that could not be read as they stand.
#pragma once

#include <string>

#include "holdback/files/log_clock.hpp"
#include "holdback/files/log_plan.hpp"
#include "holdback/files/log_rows.hpp"
#include "holdback/results/log_reading.hpp"

namespace holdback::files {

/// One warning for each trouble of each column, at its first place; what was left out is listed in `reading`.
Problems told(Troubles& troubles, const LogPlan& plan, const std::string& file, LogReading& reading);

/// The same for stamps that do not rise.
Problems told(const ClockFacts& clock, const std::string& file, LogReading& reading);

/// An error when most of `lines` could not be read, or most cells of a column; nothing when the log is sound enough.
Problems bad_throughout(Troubles& troubles, const LogPlan& plan, double lines, double rows, const std::string& file);

}  // namespace holdback::files
