// Logs as recorders and spreadsheets write them, and as they break them.
#include "holdback/files/read_log.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstring>

#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

using testing::DoubleEq;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

struct Log {
  std::array<std::vector<double>, log_channels> channel{};
  std::vector<std::size_t> blocks{};
  Problems problems{};
  LogReading reading{};
  std::vector<ColumnRead> columns{};

  const std::vector<double>& of(LogChannel which) const { return channel[static_cast<std::size_t>(which)]; }
  const std::vector<double>& time() const { return of(LogChannel::time); }
  const std::vector<double>& tension() const { return of(LogChannel::tension); }
  std::string first_problem() const {
    if (problems.empty()) return "";
    return units::fill(problems.front().what, units::System::si);
  }
};

/// Reads `text`, handed over at most `at_once` bytes at a time.
Log read(const std::string& text, const LogOptions& options = {}, std::size_t at_once = 1 << 20) {
  std::size_t at = 0;
  LogReader reader(
      "log.csv",
      [&](char* to, std::size_t most) {
        const std::size_t some = std::min({most, at_once, text.size() - at});
        std::memcpy(to, text.data() + at, some);
        at += some;
        return some;
      },
      options);
  Log log;
  for (LogBlock block; reader.next(block);) {
    log.blocks.push_back(block.rows);
    for (std::size_t i = 0; i < log_channels; ++i)
      log.channel[i].insert(log.channel[i].end(), block.channel[i].begin(), block.channel[i].end());
  }
  log.problems = reader.problems();
  log.reading = reader.reading();
  log.columns = reader.columns();
  return log;
}

LogOptions columns(const std::string& text) {
  LogOptions options;
  options.columns = text;
  return options;
}

TEST(ReadLog, ReadsChannelsInSi) {
  const Log log = read(
      "time [s],speed [m/min],tension [N],pressure [bar],diameter [mm],turns [rev],temperature [degC],pairs\n"
      "10,300,150,2.5,800,4,20,2\n10.5,120,151.5,2.25,799,5,20.5,2\n");
  EXPECT_THAT(log.problems, IsEmpty()) << log.first_problem();
  EXPECT_THAT(log.time(), ElementsAre(0, 0.5));
  EXPECT_THAT(log.of(LogChannel::speed), ElementsAre(DoubleEq(5), DoubleEq(2)));
  EXPECT_THAT(log.tension(), ElementsAre(150, 151.5));
  EXPECT_THAT(log.of(LogChannel::pressure), ElementsAre(DoubleEq(250e3), DoubleEq(225e3)));
  EXPECT_THAT(log.of(LogChannel::diameter), ElementsAre(DoubleEq(0.8), DoubleEq(0.799)));
  EXPECT_THAT(log.of(LogChannel::turns), ElementsAre(DoubleEq(8 * M_PI), DoubleEq(10 * M_PI)));
  EXPECT_THAT(log.of(LogChannel::temperature), ElementsAre(DoubleEq(293.15), DoubleEq(293.65)));
  EXPECT_THAT(log.of(LogChannel::pairs), ElementsAre(2, 2));
  EXPECT_EQ(log.reading.rows, 2);
  EXPECT_EQ(log.reading.lines, 3);
  EXPECT_DOUBLE_EQ(log.reading.interval, 0.5);
}

/// A head, and the SI tension that "100" below it is, with "1" as the time.
struct Head {
  const char* head;
  double tension;
};
class Heads : public testing::TestWithParam<Head> {};

TEST_P(Heads, AreUnderstood) {
  LogOptions options;
  options.width = 0.5;
  const Log log = read(std::string(GetParam().head) + "\n1,100\n2,100\n3,100\n", options);
  EXPECT_FALSE(has_errors(log.problems)) << log.first_problem();
  ASSERT_EQ(log.tension().size(), 3U);
  EXPECT_DOUBLE_EQ(log.tension()[0], GetParam().tension);
}

// Exact by definition: 1 lbf = 4.4482216152605 N, 1 kgf = 9.80665 N; 1 lbf/in over 0.5 m is 4.448… N · 0.5/0.0254.
INSTANTIATE_TEST_SUITE_P(
    Names, Heads,
    testing::Values(Head{"time [s],tension [N]", 100}, Head{"t (s),F (kN)", 1e5}, Head{"t / s,F / N", 100},
                    Head{"t_s,F_N", 100}, Head{"Elapsed time [s],Web tension [lbf]", 444.82216152605},
                    Head{"TIME (SEC),TENSION (LBF)", 444.82216152605}, Head{"seconds,Load cell N", 100},
                    Head{"Time, Tension [daN]", 1000}, Head{"t[s],T[N]", 100},
                    Head{"Timestamp (s),UnwindTension_N", 100}, Head{"time [s],AI3 Tension actual (N)", 100},
                    Head{"time [s],tension [N/m]", 50}, Head{"time [s],tension (pli)", 444.82216152605 * 0.5 / 0.0254},
                    Head{"# time [s],tension [kgf]", 980.665}, Head{"\xEF\xBB\xBFtime [s],tension [N]", 100},
                    Head{"\"time [s]\",\"tension, web [N]\"", 100}, Head{"time [s],tension\n[s],[N]", 100},
                    Head{"Time,Tension\ns,kN", 1e5}, Head{"Time,Tension\nhh:mm:ss,N", 100},
                    Head{"Recorder 7,\nTrial of a tension, invented\n\ntime [s],tension [N]", 100}));

TEST(ReadLog, ReadsSemicolonsWithDecimalCommas) {
  const Log log = read("Zeit;x\n\nTime [s];Tension [N];note\n0,0;150,5;a\n0,1;151,25;b\n");
  EXPECT_THAT(log.problems, IsEmpty()) << log.first_problem();
  EXPECT_THAT(log.tension(), ElementsAre(150.5, 151.25));
  EXPECT_THAT(log.time(), ElementsAre(0, 0.1));
}

TEST(ReadLog, ReadsTabsQuotesBlanksAndCrlf) {
  const Log log = read("time [s]\ttension [N]\r\n 0 \t\"150\"\r\n1\t 151 \r\n\r\n2\t\" 152\"\t\r\n");
  EXPECT_THAT(log.problems, IsEmpty()) << log.first_problem();
  EXPECT_THAT(log.tension(), ElementsAre(150, 151, 152));
}

TEST(ReadLog, TakesWordsForNoReading) {
  const Log log = read("time [s],tension [N]\n0,\n1,NaN\n2,---\n3,#N/A\n4,null\n5,150\n");
  EXPECT_THAT(log.problems, IsEmpty()) << log.first_problem();
  ASSERT_EQ(log.tension().size(), 6U);
  for (std::size_t i = 0; i < 5; ++i) EXPECT_TRUE(std::isnan(log.tension()[i])) << i;
  EXPECT_EQ(log.tension()[5], 150);
}

TEST(ReadLog, ReadsHeadsOfOlderRecorders) {
  const Log log = read(
      "time [s],tension [N],temperature [\xB0"
      "C]\n0,150,20\n1,150,21\n");
  EXPECT_THAT(log.problems, IsEmpty()) << log.first_problem();
  EXPECT_THAT(log.of(LogChannel::temperature), ElementsAre(DoubleEq(293.15), DoubleEq(294.15)));
}

TEST(ReadLog, ReadsARadiusAsHalfADiameter) {
  const Log log = read("time [s],tension [N],radius [mm]\n0,150,400\n1,150,399\n");
  EXPECT_THAT(log.of(LogChannel::diameter), ElementsAre(DoubleEq(0.8), DoubleEq(0.798)));
}

TEST(ReadLog, ReadsCellsThatCarryTheirUnit) {
  const Log log = read("time [s],tension\n0,150 N\n1,0.2 kN\n");
  EXPECT_THAT(log.problems, IsEmpty()) << log.first_problem();
  EXPECT_THAT(log.tension(), ElementsAre(DoubleEq(150), DoubleEq(200)));
}

TEST(ReadLog, TakesColumnsAsTheUserSays) {
  const std::string text = "a,b,c [N],v\n0,1,150,5\n1,2,151,5\n";
  const Log by_name = read(text, columns("time=a [ms],tension=c,speed=v [m/s]"));
  EXPECT_THAT(by_name.problems, IsEmpty()) << by_name.first_problem();
  EXPECT_THAT(by_name.time(), ElementsAre(0, 0.001));
  EXPECT_THAT(by_name.tension(), ElementsAre(150, 151));
  const Log by_number = read("0,1,150\n1,2,151\n", columns("time=1 [s],tension=3 [N]"));
  EXPECT_THAT(by_number.problems, IsEmpty()) << by_number.first_problem();
  EXPECT_THAT(by_number.tension(), ElementsAre(150, 151));
  const Log declined = read("time [s],tension [N],pressure [bar]\n0,1,2\n1,1,2\n", columns("pressure="));
  EXPECT_THAT(declined.of(LogChannel::pressure), IsEmpty());
}

TEST(ReadLog, DoesNotTakeASetpointForAReading) {
  const Log log = read("time [s],tension setpoint [N],tension [N]\n0,1,150\n1,1,151\n");
  EXPECT_THAT(log.problems, IsEmpty()) << log.first_problem();
  EXPECT_THAT(log.tension(), ElementsAre(150, 151));
  EXPECT_EQ(log.columns[1].field, "");
}

// ---- times ----------------------------------------------------------------------------------------------------------

TEST(ReadLog, CountsClockTimesOverMidnight) {
  const Log log = read("time,tension [N]\n23:59:59.5,1\n23:59:59.9,2\n00:00:00.4,3\n");
  EXPECT_FALSE(has_errors(log.problems));
  ASSERT_EQ(log.time().size(), 3U);
  EXPECT_NEAR(log.time()[2], 0.9, 1e-9);
}

TEST(ReadLog, ReadsDatesApartFromTimes) {
  const Log log =
      read("Date,Time,Tension [N]\n2026-02-28,23:59:59.0,1\n2026-03-01,00:00:01.0,2\n2026-03-03,00:00:01.0,3\n");
  EXPECT_THAT(log.problems, IsEmpty()) << log.first_problem();
  EXPECT_THAT(log.time(), ElementsAre(0, 2, 2 + 2 * 86'400));
}

TEST(ReadLog, LeavesAnUnclearDateAsideAndSaysSo) {
  const Log log = read("Timestamp,Tension [N]\n03/04/2026 23:59:59.0,1\n04/04/2026 00:00:01.0,2\n");
  EXPECT_FALSE(has_errors(log.problems));
  EXPECT_THAT(log.time(), ElementsAre(0, 2));
  ASSERT_FALSE(log.reading.assumptions.empty());
  EXPECT_THAT(log.reading.assumptions.front().text, HasSubstr("day or the month"));
}

TEST(ReadLog, CountsRowsByTheRate) {
  LogOptions options;
  options.rate = "200 Hz";
  const Log counted = read("tension [N]\n1\n2\n3\n", options);
  EXPECT_FALSE(has_errors(counted.problems)) << counted.first_problem();
  EXPECT_THAT(counted.time(), ElementsAre(0, DoubleEq(0.005), DoubleEq(0.01)));
  const Log numbered = read("sample,tension [N]\n100,1\n101,2\n105,3\n", options);
  EXPECT_FALSE(has_errors(numbered.problems)) << numbered.first_problem();
  EXPECT_THAT(numbered.time(), ElementsAre(0, testing::DoubleNear(0.005, 1e-12), testing::DoubleNear(0.025, 1e-12)));
}

TEST(ReadLog, LeavesLateRowsOutAndFillsRepeatedOnes) {
  const Log log = read("time [s],tension [N],pressure [bar]\n0,1,\n1,2,\n1,9,3\n0.5,7,\n2,3,\n");
  EXPECT_THAT(log.time(), ElementsAre(0, 1, 2));
  EXPECT_THAT(log.tension(), ElementsAre(1, 2, 3));
  EXPECT_DOUBLE_EQ(log.of(LogChannel::pressure)[1], 3e5) << "the row of the same stamp fills the gap";
  EXPECT_EQ(log.reading.repeated, 1);
  ASSERT_EQ(log.reading.left_out.size(), 1U);
  EXPECT_EQ(log.reading.left_out[0].rows, 1);
  EXPECT_EQ(log.reading.left_out[0].first_line, 5);
  ASSERT_EQ(log.problems.size(), 2U);
  EXPECT_EQ(log.problems[0].where.line, 4);
  EXPECT_EQ(log.problems[1].where.line, 5);
  EXPECT_FALSE(has_errors(log.problems));
}

TEST(ReadLog, GoesOnWhenTheClockIsSetBack) {
  std::string text = "time [s],tension [N]\n";
  for (int i = 0; i < 40; ++i) text += std::to_string(7200 + i) + "," + std::to_string(i) + "\n";
  for (int i = 40; i < 80; ++i) text += std::to_string(3600 + i) + "," + std::to_string(i) + "\n";
  const Log log = read(text);
  ASSERT_EQ(log.time().size(), 80U);
  for (std::size_t i = 0; i < 80; ++i) {
    EXPECT_DOUBLE_EQ(log.time()[i], static_cast<double>(i));
    EXPECT_DOUBLE_EQ(log.tension()[i], static_cast<double>(i));
  }
  EXPECT_EQ(log.reading.clock_set_back, 1);
}

TEST(ReadLog, ReadsAPartOfTheLog) {
  LogOptions options;
  options.from = "2 s";
  options.to = "3 s";
  const Log log = read("time [s],tension [N]\n10,0\n11,1\n12,2\n13,3\n14,4\n", options);
  EXPECT_THAT(log.time(), ElementsAre(2, 3));
  EXPECT_THAT(log.tension(), ElementsAre(2, 3));
}

// ---- what is wrong --------------------------------------------------------------------------------------------------

struct Wrong {
  const char* text;
  const char* told;
  int line;
};
class WrongLogs : public testing::TestWithParam<Wrong> {};

TEST_P(WrongLogs, AreRefusedWithAReason) {
  const Log log = read(GetParam().text);
  EXPECT_TRUE(has_errors(log.problems));
  EXPECT_THAT(log.first_problem(), HasSubstr(GetParam().told));
  EXPECT_EQ(log.problems.front().where.line, GetParam().line);
  EXPECT_EQ(log.problems.front().file, "log.csv");
  EXPECT_NE(log.problems.front().accepted.text, "");
}

INSTANTIATE_TEST_SUITE_P(
    All, WrongLogs,
    testing::Values(Wrong{"", "empty", 0}, Wrong{"\n \n", "empty", 0}, Wrong{"\xFF\xFEt\0", "UTF-16", 0},
                    Wrong{"tension [N],speed [m/min]\n1,2\n1,2\n", "no time", 1},
                    Wrong{"sample,tension [N]\n1,2\n2,2\n", "counts its rows", 1},
                    Wrong{"time [s],speed [m/min]\n1,2\n2,3\n", "no tension", 1},
                    Wrong{"time [s],tension\n1,2\n2,3\n", "no unit", 1},
                    Wrong{"time [s],tension [bar]\n1,2\n2,3\n", "is a pressure", 1},
                    Wrong{"time [s],tension [N/m]\n1,2\n2,3\n", "per width", 1},
                    Wrong{"time [s],F1 [N],tension 2 [N],tension 3 [N]\n1,2,3,4\n2,3,4,5\n", "several columns", 1},
                    Wrong{"1,2\n2,3\n", "no head", 1}, Wrong{"alpha,beta\ngamma,delta\n", "no head", 1},
                    Wrong{"time [s],tension [N]\n0,5,150,0\n0,6,151,0\n", "cells", 2},
                    Wrong{"time [s],tension [N]\n", "no head with rows", 1},
                    Wrong{"time [furlong],tension [N]\n1,2\n2,3\n", "", 1}));

TEST(ReadLog, TellsAWrongCellAndReadsOn) {
  const Log log = read("time [s],tension [N]\n0,150\n1,15O\n2,152\n3,x\n4,153\n5,154\n");
  EXPECT_EQ(log.tension().size(), 6U);
  EXPECT_TRUE(std::isnan(log.tension()[1]));
  ASSERT_EQ(log.problems.size(), 1U);
  const Problem& problem = log.problems.front();
  EXPECT_EQ(problem.severity, Severity::warning);
  EXPECT_EQ(problem.where, (Position{3, 3}));
  EXPECT_EQ(problem.value, "15O");
  EXPECT_EQ(problem.source_line, "1,15O");
  EXPECT_THAT(problem.what.text, HasSubstr("2 cells in all"));
}

TEST(ReadLog, CountsWhatItLeavesOut) {
  const Log log =
      read("time [s],tension [N]\n0,150\n1\n2,151,7\nx,152\n,152\n3,\"153\n4,154\n5,155\n6,156\n7,157\n8,15");
  EXPECT_THAT(log.time(), ElementsAre(0, 4, 5, 6, 7));
  EXPECT_FALSE(has_errors(log.problems)) << log.first_problem();
  std::vector<std::string> why;
  for (const LogLeftOut& each : log.reading.left_out) why.push_back(each.why);
  EXPECT_THAT(why, testing::UnorderedElementsAre("fewer cells than the head", "more cells than the head",
                                                 "the time cannot be read", "the time is missing",
                                                 "a quote that does not close", "the last line has no end"));
}

TEST(ReadLog, GivesUpALogThatIsBadThroughout) {
  std::string text = "time [s],tension [N]\n0,1\n";
  for (int i = 0; i < 300'000; ++i) text += "broken\n";
  const Log log = read(text);
  ASSERT_TRUE(has_errors(log.problems));
  EXPECT_LE(log.problems.size(), 20U);
  EXPECT_THAT(log.first_problem(), HasSubstr("cannot be read"));
}

TEST(ReadLog, TellsWrongOptions) {
  const std::string text = "time [s],tension [N]\n0,1\n1,2\n";
  for (const char* wrong : {"tension", "tenson=b", "tension=c", "tension=9", "tension=2 [bar]", "time=1,time=2"}) {
    const Log log = read(text, columns(wrong));
    EXPECT_TRUE(has_errors(log.problems)) << wrong;
  }
  for (const char* wrong : {"0 Hz", "-1", "fast", "3 bar", "1e99"}) {
    LogOptions options;
    options.rate = wrong;
    EXPECT_TRUE(has_errors(read(text, options).problems)) << wrong;
  }
}

// ---- long logs ------------------------------------------------------------------------------------------------------

TEST(ReadLog, IsTheSameHoweverItIsHandedOver) {
  std::string text = "time [s],tension [N],speed [m/min]\n";
  for (int i = 0; i < 150'000; ++i) {
    text += std::to_string(i / 100) + "." + std::to_string(1000 + 10 * (i % 100)).substr(1) + "," +
            std::to_string(100 + i % 37);
    text += i % 5 == 0 ? ",\n" : "," + std::to_string(i % 11) + ".25\n";
    if (i % 1000 == 7) text += "# a remark\n";
    if (i > 1000 && i % 1000 == 8) text += "0.5,1,1\n";
  }
  const Log all = read(text);
  ASSERT_EQ(all.time().size(), 150'000U);
  EXPECT_THAT(all.blocks,
              ElementsAre(LogReader::block_rows, LogReader::block_rows, 150'000 - 2 * LogReader::block_rows));
  EXPECT_DOUBLE_EQ(all.time().back(), 1499.99);
  for (const std::size_t threads : {1U, 2U, 5U})
    for (const std::size_t at_once : {4'097U, 1'000'000U}) {
      LogOptions options;
      options.threads = threads;
      const Log other = read(text, options, at_once);
      for (std::size_t i = 0; i < log_channels; ++i)
        EXPECT_TRUE(all.channel[i].size() == other.channel[i].size() &&
                    std::memcmp(all.channel[i].data(), other.channel[i].data(), 8 * all.channel[i].size()) == 0);
      EXPECT_EQ(all.blocks, other.blocks);
      EXPECT_EQ(all.reading.left_out.front().rows, other.reading.left_out.front().rows);
      EXPECT_EQ(all.problems.size(), other.problems.size());
    }
}

TEST(ReadLog, RefusesALineWithoutAnEnd) {
  const std::string text = "time [s],tension [N]\n0,1\n1,2\n" + std::string(12'000'000, '7');
  const Log log = read(text);
  EXPECT_TRUE(has_errors(log.problems));
  EXPECT_THAT(log.problems.back().what.text, HasSubstr("a line has no end"));
}

}  // namespace
}  // namespace holdback::files
