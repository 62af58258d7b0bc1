// What answers say about tables of jobs: columns as they were read, cells of sheets, long lists of problems.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "holdback/report/report.hpp"
#include "sample.hpp"

namespace holdback::report {
namespace {

using Json = nlohmann::json;

Answer check_with(const std::vector<ColumnRead>& columns) {
  Answer answer;
  answer.command = "check";
  answer.check = sample::check();
  answer.columns = columns;
  return answer;
}

TEST(columns_text, is_a_table_when_a_header_is_not_a_key) {
  const std::string said = text(check_with(sample::columns()), {});
  EXPECT_NE(said.find("Columns read from mix.xlsx\n"
                      "  column  header         read as   unit\n"
                      "  A       Job            name\n"
                      "  B       speed [m/min]  speed     m/min\n"
                      "  D       Operator       not read\n"),
            std::string::npos)
      << said;
}

TEST(columns_text, is_one_line_when_every_header_is_a_key) {
  auto columns = sample::columns();
  columns.resize(2);
  columns[0] = {"mix.csv", "1", "name", "name", "", true};
  const std::string said = text(check_with(columns), {});
  EXPECT_NE(said.find("Columns of mix.csv, each by its key: name, speed [m/min]"), std::string::npos) << said;
}

TEST(columns_text, is_nothing_without_a_table) {
  EXPECT_EQ(text(check_with({}), {}).find("olumns"), std::string::npos);
}

TEST(columns_text, is_in_every_answer) {
  auto answer = sample::everything();
  answer.check.reset();
  answer.plan.reset();
  for (int i = 0; i < 2; ++i) {  // one job in depth, then the mix
    EXPECT_NE(text(answer, {}).find("Columns read from"), std::string::npos);
    answer.choice->job.reset();
  }
  answer.choice.reset();
  answer.plan = sample::plan();
  EXPECT_NE(text(answer, {}).find("Columns read from"), std::string::npos);
}

TEST(problems_text, names_the_cell_of_a_sheet) {
  auto problem = sample::problem();
  problem.file = "mix.xlsx";
  problem.where = {7, 28, true};
  problem.source_line.clear();
  EXPECT_EQ(problems_text({problem}, {}).substr(0, 22), "mix.xlsx:AB7: error: t");
  auto answer = sample::everything();
  answer.problems = {problem, sample::problem()};
  const auto told = Json::parse(json(answer))["problems"];
  EXPECT_EQ(told[0]["cell"], "AB7");
  EXPECT_EQ(told[0]["line"], 7);
  EXPECT_EQ(told[1]["cell"], "");
}

TEST(problems_text, shows_the_first_two_hundred_errors_before_warnings) {
  auto warning = sample::problem();
  warning.severity = Severity::warning;
  Problems problems(400, warning);
  for (int i = 0; i < 150; ++i) problems.push_back(sample::problem());
  const std::string said = problems_text(problems, {});
  const auto count = [&](const std::string& word) {
    int times = 0;
    for (auto at = said.find(word); at != std::string::npos; at = said.find(word, at + 1)) ++times;
    return times;
  };
  EXPECT_EQ(count("error: "), 150);
  EXPECT_EQ(count("warning: "), 50);
  EXPECT_NE(said.find("… and 350 more\n150 errors, 400 warnings\n"), std::string::npos);
  EXPECT_NE(problems_text(Problems(100'000, sample::problem()), {}).find("… and 99 800 more\n100 000 errors\n"),
            std::string::npos);
  EXPECT_EQ(problems_text(Problems(200, sample::problem()), {}).find("more\n"), std::string::npos);
}

TEST(json, lists_a_thousand_problems_and_says_how_many_there_are) {
  auto answer = sample::everything();
  answer.problems = Problems(1500, sample::problem());
  const auto read = Json::parse(json(answer));
  EXPECT_EQ(read["problems"].size(), 1000U);
  EXPECT_EQ(read["problems_found"], 1500);
}

}  // namespace
}  // namespace holdback::report
