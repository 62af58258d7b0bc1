// Tables of jobs as people keep them: trade names, title rows, a row of units, remarks, sheets with gaps.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "texts.hpp"

namespace holdback::files::test {
namespace {

using testing::HasSubstr;

StandFile read_sheet(const std::string& csv) {
  StandFile file = read(least_stand());
  read_jobs(csv, "mix.xlsx", file, true);
  return file;
}

/// "B speed [m/min]", one a column.
std::string mapping(const StandFile& file) {
  std::string all;
  for (const ColumnRead& column : file.columns)
    all += (all.empty() ? "" : ", ") + column.column + " " + (column.field.empty() ? "-" : column.field) +
           (column.unit.empty() ? "" : " [" + column.unit + "]");
  return all;
}

TEST(JobSheets, ReadTradeNamesAndSayWhatTheyWereReadAs) {
  const StandFile file = read_with_jobs(
      "Job,Line speed (m/min),Tension (N),Material,Gauge (mil),Density (kg/m³),Width [mm],Core OD (mm),Full dia (in)\n"
      "a,120,90,PET,0.5,1400,600,152,32\n");
  EXPECT_EQ(told(file.problems), "");
  EXPECT_EQ(mapping(file),
            "1 name, 2 speed [m/min], 3 tension [N], 4 web.material, 5 web.caliper [mil], 6 web.density [kg/m³], "
            "7 width [mm], 8 roll.core_diameter [mm], 9 roll.full_diameter [in]");
  const Job& job = file.stand.jobs.back();
  EXPECT_DOUBLE_EQ(job.speed, 2);
  EXPECT_EQ(job.web.material, Material::polyester);
  EXPECT_DOUBLE_EQ(job.web.caliper, 12.7e-6) << "1 mil is 25.4 µm, by definition of the inch";
  EXPECT_DOUBLE_EQ(job.web.width, 0.6) << "the width of a web of its own";
  EXPECT_DOUBLE_EQ(job.roll.core_diameter, 0.152);
  EXPECT_DOUBLE_EQ(job.roll.full_diameter, 32 * 0.0254);
}

TEST(JobSheets, SayOfKeysThatTheyAreKeys) {
  const StandFile file = read_with_jobs("name,web,roll,Web speed [m/s]\na,film,jumbo,2\n");
  ASSERT_EQ(file.columns.size(), 4U);
  EXPECT_TRUE(file.columns[0].key);
  EXPECT_FALSE(file.columns[3].key);
  EXPECT_EQ(file.columns[3].file, "jobs.csv");
  EXPECT_EQ(file.columns[3].header, "Web speed [m/s]");
}

TEST(JobSheets, LeaveOutColumnsOfRemarksAndSaySo) {
  const StandFile file = read_with_jobs("name,web,roll,speed [m/s],Operator,Remarks\na,film,jumbo,2,night shift,\n");
  EXPECT_FALSE(has_errors(file.problems)) << told(file.problems);
  ASSERT_EQ(file.problems.size(), 2U);
  EXPECT_EQ(file.problems[0].severity, Severity::warning);
  EXPECT_THAT(told(file.problems[0].what), HasSubstr("\"Operator\""));
  EXPECT_EQ(file.stand.jobs.back().name, "a");
  EXPECT_EQ(mapping(file), "1 name, 2 web, 3 roll, 4 speed [m/s], 5 -, 6 -");
}

TEST(JobSheets, TakeAColumnNearToOneThatIsThereForARemark) {
  const StandFile file = read_with_jobs("name,web,roll,speed [m/s],speed limit [m/s]\na,film,jumbo,2,9\n");
  ASSERT_EQ(file.problems.size(), 1U);
  EXPECT_EQ(file.problems[0].severity, Severity::warning) << told(file.problems);
}

TEST(JobSheets, DoNotMindAColumnWithoutNameAndCells) {
  EXPECT_EQ(told(read_with_jobs("name,web,roll,speed [m/s],\na,film,jumbo,2,\n").problems), "");
}

TEST(JobSheets, TellAnAmbiguousColumnOnceAndNothingThatFollowsFromIt) {
  const StandFile file =
      read_with_jobs("Job,Web,Speed (m/s),Diameter [mm],Core OD [mm]\na,film,2,800,152\nb,film,2,700,152\n");
  ASSERT_EQ(file.problems.size(), 1U) << told(file.problems);
  EXPECT_THAT(told(file.problems[0].accepted), HasSubstr(R"("roll.core_diameter", "roll.full_diameter")"));
}

TEST(JobSheets, ReadUnitsFromARowBelowTheHeader) {
  const StandFile file = read_with_jobs("Job,Web,Roll,Speed,Tension\n,,,[m/min],N/m\na,film,jumbo,120,150\n");
  EXPECT_EQ(told(file.problems), "");
  EXPECT_EQ(mapping(file), "1 name, 2 web, 3 roll, 4 speed [m/min], 5 tension_per_width [N/m]");
  EXPECT_DOUBLE_EQ(file.stand.jobs.back().speed, 2);
  EXPECT_EQ(file.stand.jobs.size(), 2U);
}

TEST(JobSheets, PassOverTitlesAboveTheHeader) {
  const StandFile file = read_with_jobs("Mix of the slitter\n\n;;;\nJob;Web;Roll;Speed (m/min)\na;film;jumbo;120,5\n");
  EXPECT_EQ(told(file.problems), "");
  EXPECT_DOUBLE_EQ(file.stand.jobs.back().speed, 120.5 / 60);
  EXPECT_THAT(told(read_with_jobs("Mix of the slitter\n").problems), HasSubstr("a header and no job"));
}

TEST(JobSheets, TakeSharesInPerCentAsWeights) {
  const StandFile file =
      read_with_jobs("name,web,roll,speed [m/s],Shift share %\na,film,jumbo,2,35\nb,film,jumbo,2,65 %\n");
  EXPECT_EQ(told(file.problems), "");
  ASSERT_EQ(file.stand.jobs.size(), 3U);
  EXPECT_DOUBLE_EQ(file.stand.jobs[1].share, 0.35);
  EXPECT_DOUBLE_EQ(file.stand.jobs[2].share, 0.65);
}

TEST(JobSheets, NameCellsOfASheet) {
  const StandFile file = read_sheet("\n\nJob,Web,Roll,Speed [m/min]\na,film,jumbo,fast\nb,film,jumbo,120\n");
  ASSERT_EQ(file.problems.size(), 1U) << told(file.problems);
  EXPECT_EQ(file.problems[0].where, (Position{4, 4, true}));
  EXPECT_EQ(cell_name(file.problems[0].where), "D4");
  EXPECT_EQ(file.problems[0].field, "mix.xlsx row 4, speed");
  EXPECT_EQ(file.problems[0].source_line, "") << "the sheet has no lines to show";
  EXPECT_EQ(mapping(file), "A name, B web, C roll, D speed [m/min]");
}

TEST(JobSheets, LocateWhatTwoFieldsShowTogether) {
  const StandFile file = read_sheet("name,web,roll,speed [m/min]\na,film,jumbo,900\n");
  ASSERT_EQ(file.problems.size(), 1U) << told(file.problems);
  EXPECT_EQ(cell_name(file.problems[0].where), "D2");
}

TEST(JobSheets, MayHaveShortAndLongRowsAndEmptyColumns) {
  const StandFile file =
      read_sheet(",Job,Web,Roll,Speed [m/min],,Share\n,a,film,jumbo,120\n,b,film,jumbo,120,,2,,a note\n");
  EXPECT_FALSE(has_errors(file.problems)) << told(file.problems);
  ASSERT_EQ(file.problems.size(), 1U) << told(file.problems);
  EXPECT_EQ(cell_name(file.problems[0].where), "I1") << "where its header would stand";
  EXPECT_THAT(told(file.problems[0].what), HasSubstr("a note"));
  EXPECT_DOUBLE_EQ(file.stand.jobs.back().share, 2);
}

TEST(JobSheets, KeepLinesOfACellTogetherAndCountRowsAsTheSheetDoes) {
  const StandFile file = read_sheet("Job,Web,Roll,\"Speed\n[m/min]\"\na,film,jumbo,120\nb,film,jumbo,x\n");
  ASSERT_EQ(file.problems.size(), 1U) << told(file.problems);
  EXPECT_EQ(cell_name(file.problems[0].where), "D3");
  EXPECT_EQ(file.columns[3].header, "Speed [m/min]");
}

TEST(JobSheets, RefuseCellsThatShowAnErrorOrHaveNoValue) {
  const StandFile file =
      read_sheet("Job,Web,Roll,Speed [m/min]\n#N/A,film,jumbo,120\nb,film,jumbo,=D2*2\nc,film,jumbo,120\n");
  ASSERT_EQ(file.problems.size(), 2U) << told(file.problems);
  EXPECT_EQ(cell_name(file.problems[0].where), "A2");
  EXPECT_EQ(file.problems[0].value, "#N/A");
  EXPECT_EQ(cell_name(file.problems[1].where), "D3");
  EXPECT_THAT(told(file.problems[1].what), HasSubstr("formula"));
}

TEST(JobSheets, ReadNoDecimalCommaInASheet) {
  EXPECT_THAT(told(read_sheet("Job,Web,Roll,Speed [m/min]\na,film,jumbo,\"1,200\"\n").problems), HasSubstr("comma"));
}

TEST(JobSheets, RefuseAHeaderOfTooManyCells) {
  std::string header = "name,web,roll,speed [m/s]";
  for (int i = 0; i < 2000; ++i) header += ",x";
  const StandFile file = read_with_jobs(header + "\na,film,jumbo,2\n");
  EXPECT_THAT(told(file.problems), HasSubstr("more than 1000 cells"));
}

TEST(JobSheets, MayCallTheirMaterialsAsTheTradeDoes) {
  const StandFile file =
      read_with_jobs("name,web,roll,speed [m/s],Material\na,film,jumbo,2,BOPP\nb,film,jumbo,2,slate\n");
  EXPECT_EQ(file.stand.jobs[1].web.material, Material::polypropylene);
  ASSERT_EQ(file.problems.size(), 1U) << told(file.problems);
  EXPECT_EQ(file.problems[0].value, "slate");
}

}  // namespace
}  // namespace holdback::files::test
