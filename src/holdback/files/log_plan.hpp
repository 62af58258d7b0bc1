// How the lines of a log are to be read: what the head and the first rows show.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "holdback/files/log_stamp.hpp"
#include "holdback/model/log.hpp"
#include "holdback/model/problem.hpp"
#include "holdback/results/answer.hpp"

namespace holdback::files {

/// What a column of a log holds.
enum class CellRole { skipped, reading, number_of_time, clock, date, date_and_clock };

/// One column.
struct CellPlan {
  CellRole role{CellRole::skipped};
  LogChannel channel{};
  Quantity kind{};   // of a reading whose cells carry their own unit
  double factor{1};  // SI = number · factor + offset
  double offset{};
  double more{1};   // that a reading is larger than its cell says: 2 for a radius, the width for a tension per width;
                    // `factor` includes it
  bool own_unit{};  // every cell carries its unit
  std::string name{};  // as messages name it: "tension"
};

/// All of it.
struct LogPlan {
  char delimiter{','};
  char point{'.'};
  std::vector<CellPlan> cells{};  // one for each cell of the head
  DateOrder order{DateOrder::unknown};
  bool ignores_date{};       // the order of day and month does not show: the date is left aside
  bool has_time{};           // a column of times is read
  bool clock_alone{};        // times of day, without a date that can be read
  double seconds_per_row{};  // [s] of a log whose rows are counted; 0 when it
                             // has times
  std::int64_t first_day{};  // from which days are counted
  std::array<bool, log_channels> has{};
  std::string first_stamp{};
};

/// The beginning of a log, understood or not.
struct LogHead {
  LogPlan plan{};
  std::size_t begin{};  // byte of the first row of numbers
  int line{1};          // and its line, counted from one
  std::vector<ColumnRead> columns{};
  std::vector<Note> assumptions{};
  Problems problems{};  // with an error: the log is not read
};

}  // namespace holdback::files
