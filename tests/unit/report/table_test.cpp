#include "holdback/report/table.hpp"

#include <gtest/gtest.h>

namespace holdback::report {
namespace {

using Lines = std::vector<std::string>;

TEST(table, aligns_names_left_and_numbers_right_under_their_heads) {
  Table table({{"job", false, true, ""}, {"speed\n[m/min]", true, false, ""}});
  table.row({{"µm film"}, {"5"}});
  table.row({{"board"}, {"1234567890"}});
  EXPECT_EQ(table.lines(100, false),
            (Lines{"              speed", "job         [m/min]", "µm film           5", "board    1234567890"}));
}

TEST(table, neighbours_of_one_group_share_the_line_above_their_heads) {
  Table table({{"full", true, false, "pressure"}, {"core", true, false, "pressure"}});
  table.row({{"1"}, {"2"}});
  EXPECT_EQ(table.lines(100, false), (Lines{" pressure", "full  core", "   1     2"}));
}

TEST(table, a_group_stands_right_above_its_heads_however_high_the_others_are) {
  Table table({{"a\nb\nc", true, false, ""}, {"full", true, false, "air"}, {"core", true, false, "air"}});
  EXPECT_EQ(table.lines(100, false), (Lines{"a", "b     air", "c  full  core"}));
}

TEST(table, without_heads_has_no_line_for_them) {
  Table table({{"", false, false, ""}, {"", true, false, ""}});
  table.row({{"torque"}, {"5"}});
  EXPECT_EQ(table.lines(100, false), (Lines{"torque  5"}));
}

TEST(table, a_flexible_column_gives_way_by_wrapping) {
  Table table({{"job", false, true, ""}, {"state", false, false, ""}});
  table.row({{"wide board from mill"}, {"holds"}});
  EXPECT_EQ(table.lines(17, false), (Lines{"job         state", "wide board  holds", "from mill"}));
}

TEST(aligned_numbers, share_their_decimals) {
  EXPECT_EQ(aligned_numbers({320000, 85000, 5000}, Quantity::pressure, units::System::si),
            (Lines{"3.200", "0.850", "0.050"}));
  EXPECT_EQ(aligned_numbers({320000, 85000}, Quantity::pressure, units::System::si), (Lines{"3.20", "0.85"}));
  EXPECT_EQ(aligned_numbers({135, 6.4}, Quantity::force, units::System::si), (Lines{"135.0", "6.4"}));
  EXPECT_EQ(aligned_numbers({1.0, 0.033}, Quantity::short_length, units::System::si), (Lines{"1000", "33"}));
  EXPECT_EQ(aligned_numbers({0, 0}, Quantity::force, units::System::si), (Lines{"0", "0"}));
}

TEST(beside, keeps_the_second_block_in_its_column) {
  EXPECT_EQ(beside({"a", "long"}, {"x", "y", "z"}, 2), (Lines{"a     x", "long  y", "      z"}));
}

}  // namespace
}  // namespace holdback::report
