// Stamps against the C library: days and seconds by timegm() of <ctime>, which follows POSIX.
#include "holdback/files/log_stamp.hpp"

#include <gtest/gtest.h>

#include <ctime>

namespace holdback::files {
namespace {

double seconds_of(const char* text, DateOrder order = DateOrder::unknown) {
  const auto stamp = read_stamp(text, order);
  EXPECT_TRUE(stamp) << text;
  return stamp ? 86'400.0 * static_cast<double>(stamp->day.value_or(0)) + stamp->seconds : -1;
}

double by_library(int year, int month, int day, int hour, int minute, int second) {
  std::tm parts{};
  parts.tm_year = year - 1900;
  parts.tm_mon = month - 1;
  parts.tm_mday = day;
  parts.tm_hour = hour;
  parts.tm_min = minute;
  parts.tm_sec = second;
  return static_cast<double>(timegm(&parts));
}

TEST(LogStamp, ReadsDatesAndTimesAsRecordersWriteThem) {
  const double expected = by_library(2026, 3, 1, 18, 5, 7);
  for (const char* text : {"2026-03-01T18:05:07", "2026-03-01 18:05:07Z", "2026/03/01 18:05:07", "01.03.2026 18:05:07",
                           "2026-03-01T19:05:07+01:00", "2026-03-01T12:35:07-0530", "1.3.2026  18:05:07 UTC"})
    EXPECT_EQ(seconds_of(text), expected) << text;
  EXPECT_EQ(seconds_of("3/1/2026 6:05:07 PM", DateOrder::month_first), expected);
  EXPECT_EQ(seconds_of("01/03/2026 18:05:07", DateOrder::day_first), expected);
  EXPECT_EQ(seconds_of("01-03-26 18:05:07", DateOrder::day_first), expected);
}

TEST(LogStamp, ReadsFractionsBehindAPointACommaOrAColon) {
  for (const char* text : {"06:00:00.250", "06:00:00,250", "06:00:00:250", "6:00:00.25"})
    EXPECT_DOUBLE_EQ(seconds_of(text), 21'600.25) << text;
}

TEST(LogStamp, KnowsNoonAndMidnightByTwelve) {
  EXPECT_EQ(seconds_of("12:00:00 AM"), 0);
  EXPECT_EQ(seconds_of("12:00:00 PM"), 43'200);
  EXPECT_EQ(seconds_of("11:59:59 pm"), 86'399);
}

TEST(LogStamp, CountsDaysOverLeapYears) {
  EXPECT_EQ(seconds_of("2024-02-29") - seconds_of("2024-02-28"), 86'400);
  EXPECT_EQ(seconds_of("2024-03-01") - seconds_of("2024-02-28"), 2 * 86'400);
  EXPECT_EQ(seconds_of("2025-03-01") - seconds_of("2025-02-28"), 86'400);
}

TEST(LogStamp, RefusesWhatIsNoStamp) {
  for (const char* text : {"", "12", "12.5", "abc", "25:00:00", "12:61", "2026-13-01", "2026-02-30", "12:00:00 XM",
                           "2026-03-01T", "12:00:00+99:00", "2026-03-01 12:00:00 x", "1-2", "1:2:3"})
    EXPECT_FALSE(read_stamp(text, DateOrder::day_first)) << text;
}

TEST(LogStamp, DoesNotGuessWhetherTheDayOrTheMonthStandsFirst) {
  EXPECT_FALSE(read_stamp("03/04/2026 06:00:00", DateOrder::unknown));
  EXPECT_EQ(order_shown("03/04/2026 06:00:00"), DateOrder::unknown);
  EXPECT_EQ(order_shown("13/04/2026 06:00:00"), DateOrder::day_first);
  EXPECT_EQ(order_shown("03/14/2026 06:00:00"), DateOrder::month_first);
}

}  // namespace
}  // namespace holdback::files
