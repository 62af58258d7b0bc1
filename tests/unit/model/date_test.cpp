// Days of the Gregorian calendar. Outside values: Julian day numbers of ISO 8601 and of the astronomical almanac, as
// differences: 2000-01-01 is day 2451545 at noon and 1970-01-01 is day 2440588, so they lie 10957 days apart (the
// number that POSIX calls for 946684800 seconds).
#include "holdback/model/date.hpp"

#include <gtest/gtest.h>

namespace holdback {
namespace {

TEST(day_of, counts_from_1970) {
  EXPECT_EQ(day_of("1970-01-01"), 0);
  EXPECT_EQ(day_of("1970-01-02"), 1);
  EXPECT_EQ(day_of("1969-12-31"), -1);
  EXPECT_EQ(day_of("2000-01-01"), 2451545 - 2440588);
  EXPECT_EQ(day_of("2000-01-01"), 946684800 / 86400);
}

TEST(day_of, knows_leap_years) {
  EXPECT_TRUE(day_of("2024-02-29"));
  EXPECT_TRUE(day_of("2000-02-29"));  // divisible by 400
  EXPECT_FALSE(day_of("2023-02-29"));
  EXPECT_FALSE(day_of("2100-02-29"));  // by 100, not by 400
  EXPECT_EQ(*day_of("2024-03-01") - *day_of("2024-02-28"), 2);
}

TEST(day_of, refuses_what_is_no_date) {
  for (const char* text : {"", "2026", "2026-5-3", "03.05.2026", "2026-13-01", "2026-00-10", "2026-04-31", "2026-01-00",
                           "2026-05-03 ", " 2026-05-03", "2026/05/03", "-026-05-03", "20a6-05-03", "1949-12-31",
                           "2200-01-01", "0000-01-01", "9999-12-31"})
    EXPECT_FALSE(day_of(text)) << text;
}

TEST(date_text, goes_back_to_every_day) {
  for (int day = *day_of("1950-01-01"); day <= *day_of("2199-12-31"); ++day) ASSERT_EQ(day_of(date_text(day)), day);
}

TEST(date_of, holds_what_lies_outside_at_the_ends) {
  EXPECT_EQ(date_of(1'000'000), (CivilDate{2199, 12, 31}));
  EXPECT_EQ(date_of(-1'000'000), (CivilDate{1950, 1, 1}));
}

}  // namespace
}  // namespace holdback
