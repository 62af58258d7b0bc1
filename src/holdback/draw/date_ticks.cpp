#include "holdback/draw/date_ticks.hpp"

#include <array>
#include <cmath>

#include "holdback/draw/ticks.hpp"
#include "holdback/model/date.hpp"

namespace holdback::draw {

namespace {

constexpr double month = 30.4;  // [days] about

std::string month_text(const CivilDate& date) {
  constexpr std::array<const char*, 12> names{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                              "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  return std::string(names[static_cast<std::size_t>(date.month - 1)]) + " " + std::to_string(date.year);
}

/// Every so many months from January on.
DateTicks by_months(double from, double to, int step) {
  DateTicks out;
  CivilDate at = date_of(static_cast<int>(std::floor(from)));
  int count = 12 * at.year + (at.month - 1) / step * step;
  for (;; count += step) {
    const CivilDate date{count / 12, count % 12 + 1, 1};
    const auto day = day_of(date);
    if (!day || *day > to) break;
    if (*day < from) continue;
    out.days.push_back(*day);
    out.texts.push_back(step % 12 == 0 ? std::to_string(date.year) : month_text(date));
  }
  return out;
}

DateTicks by_years(double from, double to, int step) {
  DateTicks out;
  int year = date_of(static_cast<int>(std::floor(from))).year / step * step;
  for (;; year += step) {
    const auto day = day_of(CivilDate{year, 1, 1});
    if (year > last_year || (day && *day > to)) break;
    if (!day || *day < from) continue;
    out.days.push_back(*day);
    out.texts.push_back(std::to_string(year));
  }
  return out;
}

DateTicks by_days(double from, double to, int step) {
  DateTicks out;
  for (double day = std::ceil(from); day <= to; day += step) {
    out.days.push_back(day);
    out.texts.push_back(date_text(static_cast<int>(day)));
  }
  return out;
}

}  // namespace

DateTicks date_ticks(double from, double to, int most) {
  constexpr double widest = 1e6;  // [days] dates do not go further
  if (!showable(from) || !showable(to) || !(to > from) || most < 1) return {};
  if (std::abs(from) > widest || std::abs(to) > widest) return {};
  const double length = to - from;
  for (const int step : {1, 2, 7, 14})
    if (length <= step * most && length < 3 * month) return by_days(from, to, step);
  for (const int step : {1, 2, 3, 6})
    if (length <= step * month * most) return by_months(from, to, step);
  for (const int step : {1, 2, 5, 10, 20})
    if (length <= step * 12 * month * most) return by_years(from, to, step);
  return by_years(from, to, 50);
}

}  // namespace holdback::draw
