// From the entries of a history to the courses of its pads: which pad was measured when, after how much work.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/field/forecast.hpp"
#include "holdback/model/history.hpp"

namespace holdback::field {

/// What the stand file adds: the depth of new pads, and how long a set is expected to last.
struct StandWear {
  double usable_depth{};  // [m] > 0
  ExpectedWear expected{};
};

/// Work over the days, from the log. Days without a log, before its beginning and behind its end count at its mean.
class UseLog {
 public:
  UseLog(const std::vector<HistoryEntry>& held, UseBasis basis);

  const std::vector<UsePeriod>& periods() const { return periods_; }
  bool empty() const { return periods_.empty(); }
  int first() const { return first_; }
  int last() const { return last_; }
  /// Work from the first day of the log up to a day; negative before it.
  double until(int day) const;
  /// Days between two days that no entry covers.
  double uncovered(int from, int to) const;

 private:
  struct Stretch {
    int from;
    int to;
    double use;
  };
  double covered(int from, int to) const;
  std::vector<Stretch> stretches_{};
  std::vector<UsePeriod> periods_{};
  double mean_{};
  int first_{};
  int last_{};
};

/// What the wear is best counted by: what the log covers most days with, the energy when in doubt; the calendar
/// without a log.
UseBasis basis_of(const std::vector<HistoryEntry>& held);

/// The courses of all pads, set after set, and what a forecast needs of those in use.
struct Courses {
  std::vector<PadCourse> all{};  // by pad, then by date
  std::vector<PadCase> in_use{};
  double resolution{1e-4};              // [m] coarsest of the gauges
  int from{};                           // last day of log, measurement or change
  std::vector<std::string> no_limit{};  // entries whose thickness cannot be made a depth
  bool usable_depth_taken{};            // new pads were given the depth of the stand file
  bool prior_from_sets{};
  bool prior_from_stand{};
};

/// `held`: entries in force, of one stand.
Courses courses_of(const std::vector<HistoryEntry>& held, const UseLog& log, UseBasis basis,
                   const std::optional<StandWear>& stand);

/// Standard uncertainty of wear rates known beforehand, as a share: from the grade's data sheet (a factor of two either
/// way nine times out of ten), and from one set of pads to the next. Common practice, no source.
inline constexpr double data_sheet_share = 0.42;
inline constexpr double set_share = 0.25;

}  // namespace holdback::field
