#include "holdback/model/problem.hpp"

#include <gtest/gtest.h>

namespace holdback {
namespace {

TEST(has_errors, tells_errors_from_warnings) {
  Problem warning;
  warning.severity = Severity::warning;
  Problem error;
  EXPECT_FALSE(has_errors({}));
  EXPECT_FALSE(has_errors({warning, warning}));
  EXPECT_TRUE(has_errors({warning, error}));
}

TEST(column_letters, count_as_a_sheet_does) {
  // The last column of a sheet, 16384, is XFD by the file format (ECMA-376).
  const std::pair<int, const char*> columns[] = {{1, "A"},    {26, "Z"},    {27, "AA"},
                                                 {702, "ZZ"}, {703, "AAA"}, {16384, "XFD"}};
  for (const auto& [number, letters] : columns) EXPECT_EQ(column_letters(number), letters);
  EXPECT_EQ(column_letters(0), "");
  EXPECT_EQ(column_letters(-3), "");
}

TEST(cell_name, is_for_places_in_a_sheet_alone) {
  EXPECT_EQ(cell_name({7, 2, true}), "B7");
  EXPECT_EQ(cell_name({7, 2}), "");
  EXPECT_EQ(cell_name({}), "");
}

}  // namespace
}  // namespace holdback
