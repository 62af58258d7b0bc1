// What `history show` answers: the dated readings, pad changes and fits of a stand, and when its pads are due.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "holdback/model/history.hpp"
#include "holdback/model/problem.hpp"

namespace holdback {

/// What the wear of the pads is counted by: the best that was logged.
enum class UseBasis { energy, running_time, rolls, calendar };
inline constexpr UseBasis last_use_basis = UseBasis::calendar;

std::string_view key_of(UseBasis basis);    // "running_time"
std::string_view words_of(UseBasis basis);  // "running time"
Quantity kind_of(UseBasis basis);           // of amounts of use; rolls are a plain number

/// Ends of a 90 % interval and its middle: quantiles of 5, 50 and 95 %. What is not there lies beyond all bounds.
struct Interval {
  double low{};
  std::optional<double> middle{};
  std::optional<double> high{};
};

/// The same in days, see model/date.hpp.
struct DayInterval {
  int low{};
  int middle{};
  std::optional<int> high{};
};

/// A depth that was measured, or that of new pads.
struct CoursePoint {
  int day{};
  double use{};    // [SI of the basis] since the pads were new, or since the first measurement of this set
  double depth{};  // [m] left above the maker's limit
  bool fresh{};    // of new pads
};

/// One pad from new to change, or to today.
struct PadCourse {
  std::string pad{};             // "brake front, pair 2"; empty: all pads, or the thinnest
  bool hottest{};                // it was called so
  int since{};                   // day on which it was fitted, or first measured
  bool fitted{};                 // the day it was fitted is known
  std::optional<int> until;      // day on which it was changed; none: it is in use
  double use{};                  // [SI of the basis] up to then, or up to the end of the log
  std::optional<double> rate{};  // [m/SI of the basis] worn depth over use, by regression; none with too few points
  std::vector<CoursePoint> points{};
};

/// What is expected of one pad in use.
struct PadForecast {
  std::string pad{};
  int measured{};                       // depths that were measured on this set
  double rate{};                        // [m/SI of the basis] middle
  double rate_uncertainty{};            // [m/SI of the basis] standard
  double rate_from_prior{};             // [1] weight of what was known beforehand in the rate, 0 … 1
  double depth_now{};                   // [m] left at the end of the log, middle
  std::optional<Interval> remaining{};  // [SI of the basis] until it is worn; none: no end is to be seen
  double first{};                       // [1] how likely it is the first one worn
};

/// The depth of the governing pad over the days to come, its 90 % interval day by day.
struct DepthBand {
  std::vector<double> day{};
  std::vector<double> low{};     // [m]
  std::vector<double> middle{};  // [m]
  std::vector<double> high{};    // [m]
};

/// When the next change of pads is due: when the first pad is worn to the maker's limit.
struct Forecast {
  UseBasis basis{};
  int from{};                    // day from which it looks ahead: the end of the log
  double per_day{};              // [SI of the basis a day] use, mean of the log
  double per_day_uncertainty{};  // [SI of the basis a day] standard
  std::vector<PadForecast> pads{};
  std::string governs{};              // the pad that is most likely worn first
  Interval remaining{};               // [SI of the basis] until the first pad is worn
  std::optional<Interval> running{};  // [s] the same as running time, when that was logged too
  DayInterval date{};                 // of that moment
  bool beyond_calendar{};             // the middle lies further away than dates go
  double wear_share{};                // [1] of the spread of the date that comes from the wear, not from the work
  int samples{};                      // of the Monte Carlo
  int seed{};                         // of its generator
  int measure_by{};                   // day by which the pads are best measured again
  DepthBand band{};
};

/// What was expected before anything was measured, from the stand file.
struct ExpectedWear {
  double life{};    // [s] running time of a set of pads, the mix by its shares
  double energy{};  // [J] friction energy of the stand in that time
};

/// One of the fitted constants over the dates of its fits: a straight line by least squares.
struct FrictionTrend {
  std::string key{};  // "torque_per_pressure", "friction", "threshold", "drag"
  Quantity kind{Quantity::number};
  std::string brake{};
  int count{};
  int from{};
  int until{};
  double first{};     // [SI] fitted line at the first date
  double last{};      // [SI] and at the last
  double per_year{};  // [SI a year]
  double low{};       // [SI a year] ends of the 90 % interval of the slope
  double high{};
  bool seen{};  // the interval leaves out zero
};

/// What is kept of one stand over the years.
struct History {
  std::string stand{};  // name under which it is kept
  std::string title{};  // of the stand file, when one was given
  std::vector<HistoryEntry> entries{};
  std::vector<PadCourse> courses{};
  std::optional<ExpectedWear> expected{};
  std::optional<Forecast> forecast{};
  std::vector<Note> measure_next{};  // what is missing for a forecast, or would make it sharper
  std::vector<FrictionTrend> trends{};
  std::vector<Note> assumptions{};
  std::vector<Note> cautions{};
};

}  // namespace holdback
