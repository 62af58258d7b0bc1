// What is known of the columns of a log while they are given their channels, shared by readings and time.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "holdback/files/log_assign.hpp"
#include "holdback/files/log_names.hpp"

namespace holdback::files {

/// A column chosen for a channel.
struct Chosen {
  std::size_t column{};
  LogMeaning meaning{};
};

class AssignedColumns {
 public:
  explicit AssignedColumns(LogAssignment& assignment);

  /// A problem at a cell of the head; at the first row when the log has no head, or for a column behind the last.
  Problem problem_at(std::size_t column, std::string what, std::string accepted) const;
  void tell(std::size_t column, std::string what, std::string accepted);
  void warn(std::size_t column, std::string what, std::string accepted);
  /// The same where something is missing: at the head as a whole.
  void tell_missing(std::string what, std::string accepted);

  /// The cells of the head; all empty when there is none.
  std::vector<std::string> head_texts() const;
  /// The first text of the column that is a value or a stamp; empty when there is none.
  std::string first_value(std::size_t column) const;
  /// The first column of that meaning that no channel has taken.
  std::optional<std::size_t> column_of_what(LogMeaning::What what) const;

  LogAssignment& work;
  LogPlan& plan;
  std::vector<std::optional<LogMeaning>> meanings{};  // by column
  std::vector<bool> taken{};                          // by column
  std::array<bool, log_channels> declined{};          // the user wants none
  std::array<bool, log_channels> told{};              // its fault is told already
  std::optional<Chosen> time{};                       // as the user says
  std::map<std::size_t, LogMeaning> read_as{};        // by column
};

/// What else could be written for a column of the channel.
std::string ways_of(LogChannel channel);

/// Finds the times: numbers, stamps, row numbers, or rows counted by the rate.
void assign_time(AssignedColumns& columns);

}  // namespace holdback::files
