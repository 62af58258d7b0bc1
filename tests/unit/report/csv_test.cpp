// CSV as RFC 4180 says: one head, as many cells in each row, quotes where a cell needs them.
#include <gtest/gtest.h>

#include <algorithm>

#include "holdback/report/report.hpp"
#include "sample.hpp"

namespace holdback::report {
namespace {

using Rows = std::vector<std::vector<std::string>>;

/// A reader of its own, so that the writer is not asked about itself.
Rows rows_of(const std::string& text) {
  Rows rows;
  std::vector<std::string> row(1);
  bool inside = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (inside && c == '"' && i + 1 < text.size() && text[i + 1] == '"') {
      row.back() += text[++i];
    } else if (c == '"') {
      inside = !inside;
    } else if (!inside && c == ',') {
      row.emplace_back();
    } else if (!inside && c == '\r') {
      rows.push_back(row);
      row.assign(1, "");
      ++i;
    } else {
      row.back() += c;
    }
  }
  return rows;
}

std::string cell(const Rows& rows, std::size_t row, const std::string& head) {
  const auto found = std::find(rows[0].begin(), rows[0].end(), head);
  return found == rows[0].end() ? "no column " + head : rows[row][static_cast<std::size_t>(found - rows[0].begin())];
}

TEST(csv, a_choice_is_one_row_a_job_with_units_in_the_head) {
  const auto rows = rows_of(csv(sample::size(), units::System::si));
  ASSERT_EQ(rows.size(), 3U);
  EXPECT_EQ(cell(rows, 1, "job"), "narrow label");
  EXPECT_EQ(cell(rows, 2, "state"), "fails");
  EXPECT_EQ(cell(rows, 1, "pressure_full [bar]"), "3.2");
  EXPECT_EQ(cell(rows, 1, "pressure_core [bar]"), "0.85");
  EXPECT_EQ(cell(rows, 1, "hottest [°C]"), "143");
  EXPECT_EQ(cell(rows, 2, "stop_slack [mm]"), "1250");
  EXPECT_EQ(cell(rows, 1, "margin_stop_torque"), "1.04");
  EXPECT_EQ(cell(rows, 1, "margin_pad_life"), "");
}

TEST(csv, a_roll_that_nothing_stops_has_no_figure_for_its_slack) {
  auto answer = sample::size();
  answer.choice->recommended->jobs.front().stop.runs_away = true;
  EXPECT_EQ(cell(rows_of(csv(answer, units::System::si)), 1, "stop_slack [mm]"), "");
}

TEST(csv, every_row_has_as_many_cells_as_the_head) {
  Answer check;
  check.check = sample::check();
  Answer plan;
  plan.plan = sample::plan();
  for (const auto& answer : {sample::size(), check, plan}) {
    const auto rows = rows_of(csv(answer, units::System::us));
    ASSERT_GT(rows.size(), 1U);
    for (const auto& row : rows) EXPECT_EQ(row.size(), rows[0].size());
  }
}

TEST(csv, a_name_with_comma_quote_and_line_end_comes_back_whole) {
  auto answer = sample::size();
  const std::string odd = "PET, \"clear\"\r\n12 µm";
  answer.choice->recommended->jobs.front().job = odd;
  EXPECT_EQ(cell(rows_of(csv(answer, units::System::si)), 1, "job"), odd);
}

TEST(csv, a_plan_holds_every_point_and_the_hand_card) {
  Answer answer;
  answer.plan = sample::plan();
  const auto rows = rows_of(csv(answer, units::System::si));
  ASSERT_EQ(rows.size(), 1U + 21U + 2U);
  EXPECT_EQ(cell(rows, 1, "part"), "automatic");
  EXPECT_EQ(cell(rows, 22, "part"), "hand");
  EXPECT_EQ(cell(rows, 22, "until_diameter [mm]"), "700");
}

TEST(csv, one_job_in_depth_is_one_row_and_no_jobs_are_nothing) {
  auto answer = sample::size();
  answer.choice->job = answer.choice->recommended->jobs[1];
  EXPECT_EQ(rows_of(csv(answer, units::System::si)).size(), 2U);
  EXPECT_EQ(csv(Answer{}, units::System::si), "");
}

}  // namespace
}  // namespace holdback::report
