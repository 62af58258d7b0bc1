// Jobs from a table: units in the header or in the cells, three dialects, and the row's own web and roll.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "texts.hpp"

namespace holdback::files::test {
namespace {

using testing::DoubleEq;
using testing::HasSubstr;
using testing::Optional;

/// The last job of a table that must be without a fault.
Job last_job(const std::string& csv) {
  const StandFile file = read_with_jobs(csv);
  EXPECT_EQ(told(file.problems), "");
  return file.stand.jobs.back();
}

TEST(ReadJobs, AddsTheRowsToTheJobsOfTheStand) {
  const StandFile file = read_with_jobs("name,web,roll,speed [m/min],share\na,film,jumbo,120,3\nb,film,jumbo,60,4\n");
  EXPECT_EQ(told(file.problems), "");
  ASSERT_EQ(file.stand.jobs.size(), 3U);
  EXPECT_EQ(file.stand.jobs[1].name, "a");
  EXPECT_DOUBLE_EQ(file.stand.jobs[1].speed, 2);
  EXPECT_DOUBLE_EQ(file.stand.jobs[2].share, 4);
  EXPECT_EQ(file.stand.jobs[2].roll, file.stand.rolls[0]);
}

TEST(ReadJobs, ReadsTheUnitFromTheHeaderOrFromTheCell) {
  const std::string row = "a,film,jumbo,";
  const double in_brackets = last_job("name,web,roll,speed [m/min]\n" + row + "120\n").speed;
  EXPECT_DOUBLE_EQ(in_brackets, 2);
  EXPECT_DOUBLE_EQ(last_job("name,web,roll,speed (m/min)\n" + row + "120\n").speed, in_brackets);
  EXPECT_DOUBLE_EQ(last_job("name,web,roll,speed\n" + row + "120 m/min\n").speed, in_brackets);
  EXPECT_DOUBLE_EQ(last_job("name,web,roll,speed [ft/min]\n" + row + "120 m/min\n").speed, in_brackets)
      << "a cell's own unit counts before the header's";
}

TEST(ReadJobs, ReadsThreeDialectsToTheSameJobs) {
  const Job comma = last_job("name,web,roll,speed [m/s],tension [N]\na,film,jumbo,2.5,100.5\n");
  EXPECT_THAT(comma.tension, Optional(DoubleEq(100.5)));
  EXPECT_EQ(last_job("name;web;roll;speed [m/s];tension [N]\na;film;jumbo;2,5;100,5\n"), comma);
  EXPECT_EQ(last_job("name;web;roll;speed [m/s];tension [N]\na;film;jumbo;2.5;100.5\n"), comma);
  EXPECT_EQ(last_job("name\tweb\troll\tspeed [m/s]\ttension [N]\na\tfilm\tjumbo\t2.5\t100.5\n"), comma);
  EXPECT_EQ(last_job("\xEF\xBB\xBFname,web,roll,speed [m/s],tension [N]\r\n\r\na,film,jumbo,2.5,100.5\r\n"), comma);
}

TEST(ReadJobs, DoesNotMindCaseAndBlanksInAHeader) {
  EXPECT_THAT(last_job("Name,Web,ROLL,Speed [m/s],Tension per width [N/m]\na,film,jumbo,2,100\n").tension,
              Optional(DoubleEq(100)));
}

TEST(ReadJobs, ReadsQuotedCells) {
  EXPECT_EQ(last_job("name,web,roll,speed\n\"a, \"\"b\"\"\",film,jumbo,2 m/s\n").name, "a, \"b\"");
}

TEST(ReadJobs, ReplacesSingleValuesOfANamedWebAndRoll) {
  const Job job =
      last_job("name,web,roll,speed [m/s],web.width [mm],roll.full_diameter [mm]\na,film,jumbo,2,500,600\n");
  EXPECT_EQ(job.web.name, "film");
  EXPECT_DOUBLE_EQ(job.web.width, 0.5);
  EXPECT_DOUBLE_EQ(job.web.caliper, 12e-6);
  EXPECT_DOUBLE_EQ(job.roll.full_diameter, 0.6);
  EXPECT_DOUBLE_EQ(job.roll.core_diameter, 0.152);
}

TEST(ReadJobs, KeepsTheDensityWhenARowChangesTheCaliper) {
  const std::string head = "name,web,roll,speed [m/s],";
  const std::string row = "a,film,jumbo,2,";
  EXPECT_DOUBLE_EQ(last_job(head + "web.caliper [um]\n" + row + "24\n").web.basis_weight, 24e-6 * 1400);
  EXPECT_DOUBLE_EQ(last_job(head + "web.density [kg/m3]\n" + row + "900\n").web.basis_weight, 12e-6 * 900);
  const Web weighed = last_job(head + "web.basis_weight [g/m2]\n" + row + "20\n").web;
  EXPECT_DOUBLE_EQ(weighed.basis_weight, 0.020);
  EXPECT_FALSE(weighed.density) << "the density of the named web no longer holds";
}

TEST(ReadJobs, DescribesANewWebAndRollWithoutAName) {
  const Job job = last_job(
      "name,speed [m/s],web.width [mm],web.caliper [um],web.density [kg/m3],roll.core_diameter [mm],roll.full_diameter "
      "[mm]\n"
      "a,2,400,50,900,90,500\n");
  EXPECT_EQ(job.web.name, "a") << "called like its job";
  EXPECT_DOUBLE_EQ(job.web.basis_weight, 50e-6 * 900);
  EXPECT_DOUBLE_EQ(job.roll.core_diameter, 0.09);
}

TEST(ReadJobs, NamesADefaultOfTheWholeTableOnce) {
  const StandFile file = read_with_jobs("name,web,roll,speed [m/s]\na,film,jumbo,2\nb,film,jumbo,2\n");
  int named = 0;
  for (const DefaultUsed& used : file.defaults) named += used.owner == "every job of jobs.csv" ? 1 : 0;
  EXPECT_EQ(named, 1);
  EXPECT_EQ(file.defaults.size(), read(least_stand()).defaults.size() + 1);
}

TEST(ReadJobs, NamesADefaultOfAnEmptyCellByItsJob) {
  const StandFile file = read_with_jobs("name,web,roll,speed [m/s],share\na,film,jumbo,2,\nb,film,jumbo,2,5\n");
  EXPECT_EQ(file.defaults.back().owner, "job \"a\"");
  EXPECT_EQ(file.defaults.back().text, "1");
}

TEST(ReadJobs, NamesRowColumnAndPlaceOfABadCell) {
  const StandFile file =
      read_with_jobs("name,web,roll,speed [m/min]\na,film,jumbo,120\nb,film,jumbo,12 bar\nc,film,jumbo,-1\n");
  ASSERT_EQ(file.problems.size(), 2U) << told(file.problems);
  const Problem& problem = file.problems[0];
  EXPECT_EQ(problem.file, "jobs.csv");
  EXPECT_EQ(problem.where, (Position{3, 14}));
  EXPECT_EQ(problem.field, "jobs.csv row 3, speed");
  EXPECT_EQ(problem.value, "12 bar");
  EXPECT_EQ(problem.source_line, "b,film,jumbo,12 bar");
  EXPECT_THAT(told(problem.accepted), HasSubstr("300 m/min"));
  EXPECT_EQ(file.problems[1].field, "jobs.csv row 4, speed") << "the rows behind a bad one are read on";
}

TEST(ReadJobs, TellsAMissingUnitOnceForItsColumn) {
  const StandFile file = read_with_jobs("name,web,roll,speed\na,film,jumbo,120\nb,film,jumbo,130\n");
  ASSERT_EQ(file.problems.size(), 1U) << told(file.problems);
  EXPECT_EQ(file.problems[0].where, (Position{1, 15}));
  EXPECT_EQ(told(file.problems[0].what), "speed has no unit, and its cells are bare numbers such as 120");
}

TEST(ReadJobs, TellsAMissingColumnOnce) {
  const StandFile file = read_with_jobs("name,web,roll\na,film,jumbo\nb,film,jumbo\n");
  ASSERT_EQ(file.problems.size(), 1U) << told(file.problems);
  EXPECT_EQ(told(file.problems[0].what), "the table has no column speed");
}

TEST(ReadJobs, SuggestsAColumn) {
  const StandFile file = read_with_jobs("name,web,roll,sped [m/min]\na,film,jumbo,120\n");
  ASSERT_EQ(file.problems.size(), 1U) << told(file.problems);
  EXPECT_EQ(told(file.problems[0].accepted), "did you mean \"speed\"?");
}

TEST(ReadJobs, TellsAWrongUnitOfAColumn) {
  const StandFile file = read_with_jobs("name,web,roll,speed [bar]\na,film,jumbo,120\n");
  ASSERT_EQ(file.problems.size(), 1U) << told(file.problems);
  EXPECT_EQ(told(file.problems[0].what), "'bar' is a pressure, not a speed");
}

TEST(ReadJobs, TellsARowOfAnotherLength) {
  const StandFile file =
      read_with_jobs("name,web,roll,speed [m/min]\na,film,jumbo\nb,film,jumbo,120,3\nc,film,jumbo,120\n");
  ASSERT_EQ(file.problems.size(), 2U) << told(file.problems);
  EXPECT_EQ(told(file.problems[0].what), "the row has 3 cells, and the header has 4");
  EXPECT_EQ(file.problems[1].field, "jobs.csv row 3");
  EXPECT_EQ(file.stand.jobs.back().name, "c");
}

TEST(ReadJobs, ChecksWhatTwoFieldsShowTogether) {
  const StandFile file =
      read_with_jobs("name,web,roll,speed [m/min],roll.full_diameter [mm]\na,film,jumbo,900,\nb,film,jumbo,120,100\n");
  ASSERT_EQ(file.problems.size(), 2U) << told(file.problems);
  EXPECT_EQ(file.problems[0].field, "jobs.csv row 2, speed");
  EXPECT_THAT(told(file.problems[0].what), HasSubstr("top speed"));
  EXPECT_EQ(file.problems[1].field, "jobs.csv row 3, roll.core_diameter");
}

TEST(ReadJobs, GivesJobsToAStandThatHasNone) {
  const std::string text = least_stand();
  const std::size_t job = text.find("[[job]]");
  StandFile file = read(text.substr(0, job) + text.substr(text.find("[[brake]]")));
  ASSERT_EQ(told(file.problems).substr(0, 8), "0:0 job ") << "without a table there is nothing to run";
  read_jobs("name,web,roll,speed [m/s]\na,film,jumbo,2\n", "jobs.csv", file);
  EXPECT_EQ(told(file.problems), "");
}

TEST(ReadJobs, RefusesATableWithoutJobs) {
  EXPECT_THAT(told(read_with_jobs("name,web,roll,speed [m/s]\n\n").problems), HasSubstr("a header and no job"));
  EXPECT_THAT(told(read_with_jobs("").problems), HasSubstr("empty"));
  EXPECT_THAT(told(read_with_jobs(std::string(64'000'001, ',')).problems), HasSubstr("too many"));
}

}  // namespace
}  // namespace holdback::files::test
