// The text of --columns: which column of a log is which channel, told by the
// user.
#pragma once

#include <string>
#include <vector>

#include "holdback/model/log.hpp"
#include "holdback/model/problem.hpp"

namespace holdback::files {

/// One entry: "tension=F1 [N]".
struct ColumnAsked {
  LogChannel channel{};
  std::string header{};  // "F1 [N]" as written; empty: the channel is not to be read
  std::string name{};    // "F1"
  std::string unit{};    // "N"; empty when none is given
  int number{};          // of the column, counted from one, when the name is a number;
                         // else 0
};

/// Reads the list; what is wrong with it is added to `problems`.
std::vector<ColumnAsked> read_columns_option(const std::string& text, Problems& problems);

/// A problem of an option of the command.
Problem option_problem(const std::string& option, const std::string& value, std::string what, std::string accepted);

}  // namespace holdback::files
