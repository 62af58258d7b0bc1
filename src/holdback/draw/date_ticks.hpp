// Round dates along an axis: days, months, quarters and years, whichever fit.
#pragma once

#include <string>
#include <vector>

namespace holdback::draw {

/// Places on an axis of days (model/date.hpp), rising, with what is written there: "2026-05-03" for days, "May 2026"
/// for months, "2026" for years.
struct DateTicks {
  std::vector<double> days{};
  std::vector<std::string> texts{};
};

/// At most `most` + 1 ticks between two days; none when the ends are not rising or not showable.
DateTicks date_ticks(double from, double to, int most);

}  // namespace holdback::draw
