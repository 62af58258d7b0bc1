// What the reading of a log tells beside its rows: how much it was, what was left out and why.
#pragma once

#include <string>
#include <vector>

#include "holdback/model/problem.hpp"

namespace holdback {

/// Rows of a log that were left out for one reason.
struct LogLeftOut {
  std::string why{};    // "the stamp lies before that of the row above"
  double rows{};        // [1]
  double first_line{};  // [1] line of the first of them, counted from one
};

/// A log as it was read.
struct LogReading {
  std::string name{};
  double bytes{};             // [1]
  double lines{};             // [1] all lines of the file
  double rows{};              // [1] handed on
  std::string first_stamp{};  // as written; empty when rows are counted
  double span{};              // [s] from the first row handed on to the last
  double interval{};          // [s] median from row to row; 0 with fewer than two rows
  double interval_spread{};   // [s] between the 5th and the 95th percentile of the same
  double repeated{};          // [1] rows whose stamp was that of the row above; their readings filled its gaps
  double clock_set_back{};    // [1] how often the clock was set back; the times go on without the step
  std::vector<LogLeftOut> left_out{};
  std::vector<Note> assumptions{};  // how the log was understood where it does not say so itself
};

}  // namespace holdback
