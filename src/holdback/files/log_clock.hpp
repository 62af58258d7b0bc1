// The times of a log made to rise: rows in the order of their stamps, without repeats, steps back and midnights.
#pragma once

#include <array>
#include <cstddef>
#include <deque>
#include <limits>
#include <span>
#include <vector>

#include "holdback/files/log_plan.hpp"
#include "holdback/files/log_rows.hpp"
#include "holdback/model/log.hpp"

namespace holdback::files {

/// Intervals between rows, thinned evenly, so that their percentiles need little memory.
class Intervals {
 public:
  void add(const double* times, std::size_t count);
  /// The interval that `share` of all are below; 0 when there is none.
  double percentile(double share) const;

 private:
  static constexpr std::size_t most = 32'768;
  std::vector<double> kept_{};
  std::size_t stride_{1};
  std::size_t next_{};  // index, in what follows, of the next interval to keep
  double last_{std::numeric_limits<double>::quiet_NaN()};
};

/// What happened to the stamps.
struct ClockFacts {
  double repeated{};       // rows with the stamp of the row above
  double repeated_line{};  // of the first
  double before{};         // rows left out because their stamp lies before that of the row above
  double before_line{};
  double set_back{};  // times that the clock was set back
  double set_back_line{};
};

/// Takes the rows of one piece after the other and hands on blocks of rows whose times rise strictly from 0.
class LogClock {
 public:
  /// Rows before `from` [s] and behind `to` are not handed on. Blocks have `block_rows` rows.
  LogClock(const LogPlan& plan, double from, double to, std::size_t block_rows);

  /// `lines` were before the piece.
  void take(LogRows& piece, double lines);
  /// Hands on what is left.
  void finish();

  /// Takes the memory of a block that is no longer wanted.
  void recycle(LogBlock&& block);

  std::deque<LogBlock>& blocks() { return blocks_; }
  const ClockFacts& facts() const { return facts_; }
  const Intervals& intervals() const { return intervals_; }
  double rows() const { return rows_; }
  double first() const { return first_; }
  double last() const { return last_handed_; }
  /// True once a row behind `to` has been seen: nothing more is wanted.
  bool is_behind() const { return behind_; }

 private:
  struct Held {
    double time{};
    std::array<double, log_channels> reading{};
    double line{};
  };

  void count_times(LogRows& piece);
  void unwrap_days(std::span<double> times);
  bool all_rise(std::span<const double> times) const;
  void take_one_by_one(LogRows& piece, double lines);
  void repeat(const LogRows& piece, std::size_t row, double line);
  void step_back(const LogRows& piece, std::size_t row, double line);
  void set_back();
  void drop_held();
  void hand_on(const LogRows& piece, std::size_t begin, std::size_t end);
  void hand_on(const Held& row);
  void append(const LogRows& piece, std::size_t begin, std::size_t end);

  const LogPlan& plan_;
  double from_;
  double to_;
  std::size_t block_rows_;
  bool begun_{};
  double origin_{};   // stamp of the first row
  double shift_{};    // [s] added to the stamps since the clock was set back
  double days_{};     // [s] counted over midnights
  double stamp_{};    // the last time of day
  double counted_{};  // rows counted so far, when there are no stamps
  double last_{-1};   // [s] of the last row
  std::vector<Held> held_{};
  LogBlock open_{};
  std::deque<LogBlock> blocks_{};
  std::vector<LogBlock> spare_{};
  ClockFacts facts_{};
  Intervals intervals_{};
  double rows_{};
  double first_{};
  double last_handed_{};
  bool behind_{};
};

}  // namespace holdback::files
