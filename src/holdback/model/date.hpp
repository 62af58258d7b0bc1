// Civil dates as whole days, without clock or time zone: 0 is 1970-01-01 of the Gregorian calendar.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace holdback {

inline constexpr double seconds_a_day = 86400;  // [s]

/// A date by its parts, as a person writes it.
struct CivilDate {
  int year{};
  int month{};  // 1 … 12
  int day{};    // 1 … 31
  bool operator==(const CivilDate&) const = default;
};

/// Years that a date may have: typing errors lie outside, and nothing here lives longer.
inline constexpr int first_year = 1950;
inline constexpr int last_year = 2199;

/// The day of a date; none when there is no such day or its year lies outside of first_year … last_year.
std::optional<int> day_of(const CivilDate& date);

/// The day of "2026-05-03" (ISO 8601, extended form, nothing before or behind it); none when it is no such date.
std::optional<int> day_of(std::string_view text);

/// The date of a day; days before first_year or behind last_year are held at the first and the last day of them.
CivilDate date_of(int day);

/// "2026-05-03".
std::string date_text(int day);

}  // namespace holdback
