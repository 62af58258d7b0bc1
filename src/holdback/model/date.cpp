#include "holdback/model/date.hpp"

#include <algorithm>
#include <array>
#include <chrono>

namespace holdback {

namespace {

namespace chrono = std::chrono;

int count_of(const chrono::year_month_day& date) {
  return static_cast<int>(chrono::sys_days(date).time_since_epoch().count());
}

/// Digits alone as a number; none when something else stands there.
std::optional<int> digits(std::string_view text) {
  int value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    value = 10 * value + (c - '0');
  }
  return value;
}

void add_digits(std::string& to, int value, int places) {
  std::string part(static_cast<std::size_t>(places), '0');
  for (auto at = part.rbegin(); at != part.rend(); ++at, value /= 10) *at = static_cast<char>('0' + value % 10);
  to += part;
}

}  // namespace

std::optional<int> day_of(const CivilDate& date) {
  if (date.year < first_year || date.year > last_year || date.month < 1 || date.day < 1) return std::nullopt;
  const chrono::year_month_day civil{chrono::year(date.year), chrono::month(static_cast<unsigned>(date.month)),
                                     chrono::day(static_cast<unsigned>(date.day))};
  if (!civil.ok()) return std::nullopt;
  return count_of(civil);
}

std::optional<int> day_of(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = digits(text.substr(0, 4));
  const auto month = digits(text.substr(5, 2));
  const auto day = digits(text.substr(8, 2));
  if (!year || !month || !day) return std::nullopt;
  return day_of(CivilDate{*year, *month, *day});
}

CivilDate date_of(int day) {
  static const int first = count_of({chrono::year(first_year), chrono::January, chrono::day(1)});
  static const int last = count_of({chrono::year(last_year), chrono::December, chrono::day(31)});
  const chrono::year_month_day civil(chrono::sys_days(chrono::days(std::clamp(day, first, last))));
  return {static_cast<int>(civil.year()), static_cast<int>(static_cast<unsigned>(civil.month())),
          static_cast<int>(static_cast<unsigned>(civil.day()))};
}

std::string date_text(int day) {
  const CivilDate date = date_of(day);
  std::string text;
  add_digits(text, date.year, 4);
  text += '-';
  add_digits(text, date.month, 2);
  text += '-';
  add_digits(text, date.day, 2);
  return text;
}

}  // namespace holdback
