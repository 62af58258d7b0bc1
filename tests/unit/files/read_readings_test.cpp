// Tables of readings: columns by many names, units wherever they stand, and every wrong cell by row and column.
#include "holdback/files/read_readings.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace holdback::files {
namespace {

ReadingTable read(const std::string& text) { return read_readings(text, "r.csv"); }

/// "2:3 what", one line a problem.
std::string told(const ReadingTable& table) {
  std::string all;
  for (const Problem& each : table.problems)
    all += std::to_string(each.where.line) + ":" + std::to_string(each.where.column) + " " + each.field + ": " +
           each.what.text + "\n";
  return all;
}

TEST(read_readings, reads_units_in_the_head) {
  const auto table =
      read("pressure [bar],tension [N],Ø mm,pairs,direction,note\n2.5,120,600,4,rising,first\n1,60,600,2,down,\n");
  ASSERT_EQ(told(table), "");
  ASSERT_EQ(table.rows.size(), 2U);
  EXPECT_DOUBLE_EQ(table.rows[0].pressure, 2.5e5);
  EXPECT_DOUBLE_EQ(*table.rows[0].tension, 120);
  EXPECT_DOUBLE_EQ(*table.rows[0].diameter, 0.6);
  EXPECT_EQ(table.rows[0].pairs, 4);
  EXPECT_EQ(table.rows[0].course, PressureCourse::rising);
  EXPECT_EQ(table.rows[0].note, "first");
  EXPECT_EQ(table.rows[1].course, PressureCourse::falling);
  EXPECT_EQ(table.rows[1].row, 3);
}

TEST(read_readings, reads_units_in_cells_and_below_the_head_and_titles_above) {
  const auto cells = read("p,torque\n35 psi,10 N*m\n");
  ASSERT_EQ(told(cells), "");
  EXPECT_NEAR(cells.rows[0].pressure, 241316.505, 1e-3);  // 35 psi, NIST SP 811
  const auto below = read("Readings of Tuesday,,\ngauge pressure,pull,dia\npsi,lbf,in\n20,12,24\n");
  ASSERT_EQ(told(below), "");
  EXPECT_NEAR(*below.rows[0].diameter, 0.6096, 1e-12);
  EXPECT_NEAR(*below.rows[0].tension, 12 * 4.4482216152605, 1e-9);  // lbf, NIST SP 811
}

TEST(read_readings, reads_decimal_commas_with_semicolons_and_tabs) {
  const auto table = read("pressure [bar];torque [N*m]\n2,5;10,25\n");
  ASSERT_EQ(told(table), "");
  EXPECT_DOUBLE_EQ(table.rows[0].pressure, 2.5e5);
  EXPECT_DOUBLE_EQ(*table.rows[0].torque, 10.25);
  EXPECT_EQ(told(read("pressure [bar]\ttorque [N*m]\n2.5\t10\n")), "");
}

TEST(read_readings, tells_how_columns_were_understood) {
  const auto table = read("air [bar],moment [N*m],operator\n2,10,A\n");
  ASSERT_EQ(table.columns.size(), 3U);
  EXPECT_EQ(table.columns[0].field, "pressure");
  EXPECT_EQ(table.columns[1].field, "torque");
  EXPECT_EQ(table.columns[2].field, "");
  ASSERT_EQ(table.problems.size(), 1U);
  EXPECT_EQ(table.problems[0].severity, Severity::warning);
}

TEST(read_readings, names_row_and_column_of_every_wrong_cell) {
  const auto table = read(
      "pressure [bar],tension [N],diameter [mm],pairs,direction\n"
      "-1,120,600,4,rising\n"
      "2,-5,600,4,rising\n"
      "x,120,600,4,rising\n"
      "2,120,600,0,rising\n"
      "2,120,600,4,sideways\n"
      "2,120,,4,\n"
      "2,,600,4,\n"
      "2,120,600\n");
  const std::string all = told(table);
  for (const char* part :
       {"2:1 r.csv row 2, pressure: pressure cannot be negative",
        "3:3 r.csv row 3, tension: tension cannot be negative",
        "4:1 r.csv row 4, pressure: ", "5:11 r.csv row 5, pairs: ", "6:13 r.csv row 6, direction: ",
        "row 7, diameter: row 7 has a tension and no diameter", "row 8, tension: row 8 has neither tension nor torque",
        "9:1 r.csv row 9: the row has 3 cells, and the header has 5"})
    EXPECT_NE(all.find(part), std::string::npos) << part << " in\n" << all;
  EXPECT_EQ(table.problems.size(), 8U) << all;
  for (const Problem& each : table.problems) EXPECT_FALSE(each.source_line.empty()) << each.what.text;
}

TEST(read_readings, leaves_out_rows_of_a_form_that_were_not_filled_in_and_tells_them_once) {
  const auto table = read("pressure [bar],torque [N*m],pairs\n1,5,4\n2,,4\n3,,4\n4,20,4\n");
  EXPECT_EQ(table.rows.size(), 2U);
  EXPECT_EQ(table.rows[1].row, 5);
  ASSERT_EQ(table.problems.size(), 1U) << told(table);
  EXPECT_EQ(table.problems[0].severity, Severity::warning);
  EXPECT_EQ(table.problems[0].what.text, "2 rows have neither tension nor torque and are left out");
}

TEST(read_readings, refuses_a_form_in_which_nothing_is_filled_in) {
  const auto table = read("pressure [bar],torque [N*m],pairs\n1,,4\n2,,4\n");
  ASSERT_EQ(table.problems.size(), 1U) << told(table);
  EXPECT_TRUE(has_errors(table.problems));
  EXPECT_EQ(table.problems[0].what.text, "no reading is filled in: no row has tension or torque");
}

TEST(read_readings, tells_mixed_units_once_a_column_and_reads_them) {
  const auto table = read("pressure [bar],torque [N*m]\n1,5\n30 psi,10\n40 psi,14\n");
  ASSERT_EQ(table.problems.size(), 1U) << told(table);
  EXPECT_EQ(table.problems[0].severity, Severity::warning);
  EXPECT_EQ(table.problems[0].where.line, 3);
  EXPECT_NEAR(table.rows[1].pressure, 206842.719, 1e-2);  // 30 psi
}

TEST(read_readings, tells_what_the_head_lacks) {
  const auto error = [](const std::string& text) {
    const auto table = read(text);
    return has_errors(table.problems) ? table.problems.front().what.text : std::string("none");
  };
  EXPECT_EQ(error("torque [N*m]\n3\n"), "the table has no column of pressures");
  EXPECT_EQ(error("pressure [bar]\n3\n"), "the table has neither tension nor torque");
  EXPECT_EQ(error("pressure [bar],tension [N]\n3,5\n"), "tension needs the diameter of the roll at which it was read");
  EXPECT_EQ(error("pressure,torque [N*m]\n3,5\n"), "pressure has no unit, and its cells are bare numbers such as 3");
  EXPECT_EQ(error("pressure [bar],torque [N*m]\n"), "the table has a header and no reading");
  EXPECT_EQ(error("presure [bar],torque [N*m]\n3,5\n"), "\"presure\" is not a column of a table of readings");
  EXPECT_NE(error("pressure [N],torque [N*m]\n3,5\n"), "none");
  EXPECT_NE(error("pressure [bar],p [bar],torque [N*m]\n3,3,5\n"), "none");
  EXPECT_NE(error(""), "none");
  EXPECT_NE(error("\"pressure [bar],torque\n"), "none");
}

/// A pair is two pads: a column of pads is no column of pairs.
TEST(read_readings, does_not_take_pads_for_pairs) {
  for (const char* head : {"pads", "pads engaged", "Number of pads", "pads on"}) {
    const auto table = read(std::string("pressure [bar],torque [N*m],") + head + "\n2,10,8\n3,15,8\n");
    ASSERT_EQ(table.problems.size(), 1U) << head << told(table);
    EXPECT_EQ(table.problems[0].severity, Severity::error);
    EXPECT_NE(table.problems[0].what.text.find("is not a column of a table of readings"), std::string::npos);
    EXPECT_NE(table.problems[0].accepted.text.find("\"pairs\""), std::string::npos);
    EXPECT_NE(table.problems[0].accepted.text.find("two pads"), std::string::npos);
    EXPECT_EQ(table.columns[2].field, "");
  }
  EXPECT_EQ(told(read("pressure [bar],torque [N*m],pad pairs\n2,10,4\n")), "");
}

TEST(read_readings, reads_units_of_torque_below_the_head) {
  const auto table = read("p,torque,temperature,pairs,note\nkPa,in-lbf,°C,-,\n150,100,30,2,a\n250,200,31,2,b\n");
  ASSERT_EQ(told(table), "");
  ASSERT_EQ(table.rows.size(), 2U);
  EXPECT_DOUBLE_EQ(table.rows[0].pressure, 1.5e5);
  EXPECT_NEAR(*table.rows[0].torque, 11.29848290276167, 1e-9);  // 100 in·lbf, NIST SP 811
  EXPECT_NEAR(*table.rows[0].temperature, 303.15, 1e-9);
  const auto wrong = read("pressure,torque\nN*m,bar\n1,2\n2,3\n");
  EXPECT_EQ(wrong.problems.size(), 2U) << told(wrong);  // each column with a unit of something else
}

TEST(read_readings, keeps_to_a_limit) {
  std::string text = "pressure [bar],torque [N*m]\n";
  for (int i = 0; i < 2001; ++i) text += "1,5\n";
  const auto table = read(text);
  EXPECT_EQ(table.rows.size(), 2000U);
  EXPECT_TRUE(has_errors(table.problems));
}

}  // namespace
}  // namespace holdback::files
