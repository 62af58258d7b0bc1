// A wrong file is told where, what, the value and what would be accepted; everything at once, nothing twice.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "texts.hpp"

namespace holdback::files::test {
namespace {

using testing::HasSubstr;

/// The only problem of a text; fails when there are none or several.
Problem only(const std::string& text) {
  const StandFile file = read(text);
  EXPECT_EQ(file.problems.size(), 1U) << told(file.problems);
  return file.problems.empty() ? Problem{} : file.problems[0];
}

TEST(StandProblems, NameFilePlaceFieldValueAndWhatIsAccepted) {
  const Problem problem = only(with(least_stand(), "\"300 m/min\"", "\"300 bar\""));
  EXPECT_EQ(problem.severity, Severity::error);
  EXPECT_EQ(problem.file, "stand.toml");
  EXPECT_EQ(problem.where, (Position{2, 13}));
  EXPECT_EQ(problem.field, "line.top_speed");
  EXPECT_EQ(problem.value, "\"300 bar\"");
  EXPECT_EQ(problem.source_line, "top_speed = \"300 bar\"");
  EXPECT_EQ(told(problem.what), "'300 bar' is a pressure, not a speed");
  EXPECT_THAT(told(problem.accepted), HasSubstr("300 m/min"));
}

TEST(StandProblems, ShowTheUnitsWhereABareNumberStands) {
  const Problem problem = only(with(least_stand(), "\"300 m/min\"", "300"));
  EXPECT_EQ(told(problem.what), "'300' has no unit; a speed needs one");
  EXPECT_THAT(told(problem.accepted), HasSubstr("1000 ft/min"));
}

TEST(StandProblems, AreAllToldAtOnceInFileOrder) {
  std::string text = with(least_stand(), "\"300 m/min\"", "300");
  text = with(text, "\"12 um\"", "true");
  text = with(text, "rated_torque", "rated_torq");
  const Problems problems = read(text).problems;
  ASSERT_EQ(problems.size(), 3U) << told(problems);
  EXPECT_EQ(problems[0].field, "line.top_speed");
  EXPECT_EQ(problems[1].field, "web[0].caliper");
  EXPECT_EQ(problems[2].field, "brake[0].rated_torq") << "and not that rated_torque is missing: it was meant";
}

TEST(StandProblems, SayWhatStandsInsteadOfAValue) {
  const auto what_for = [](const std::string& value) {
    return told(only(with(least_stand(), "\"240 m/min\"", value)).what);
  };
  EXPECT_THAT(what_for("true"), HasSubstr("here stands true"));
  EXPECT_THAT(what_for("[1, 2]"), HasSubstr("here stands a list"));
  EXPECT_THAT(what_for("2020-01-01"), HasSubstr("here stands a date"));
  EXPECT_THAT(what_for("{ a = 1 }"), HasSubstr("here stands a table"));
  EXPECT_THAT(told(only(with(least_stand(), "name = \"film\"", "name = 3")).what),
              HasSubstr("name takes a text in quotes; here stands a number"));
}

TEST(StandProblems, SuggestTheKeyThatWasMeant) {
  const std::string head = "[line]\n";
  EXPECT_EQ(told(only(with(least_stand(), head, head + "ramptime = \"3 s\"\n")).accepted),
            "did you mean \"ramp_time\"?");
  EXPECT_EQ(told(only(with(least_stand(), head, head + "ambient = \"3 degC\"\n")).accepted),
            "\"ambient\" belongs in [stand]");
  EXPECT_THAT(told(only(with(least_stand(), head, head + "xyzzy = 1\n")).accepted),
              HasSubstr("keys of [line]: \"top_speed\""));
}

TEST(StandProblems, StandAtTheHeaderWhenAFieldIsMissing) {
  const Problem problem = only(with(least_stand(), "width = \"1000 mm\"\n", ""));
  EXPECT_EQ(problem.where, (Position{3, 1}));
  EXPECT_EQ(told(problem.what), "web \"film\" has no width");
}

TEST(StandProblems, AreNotToldTwiceWhenAValueCouldNotBeRead) {
  // The full diameter is unknown, so nothing is said of the core; the job that uses roll and web is left alone too.
  EXPECT_EQ(only(with(least_stand(), "\"800 mm\"", "\"800 bar\"")).field, "roll[0].full_diameter");
  EXPECT_EQ(only(with(least_stand(), "density = \"1400 kg/m3\"", "density = 3")).field, "web[0].density");
  EXPECT_EQ(only(with(least_stand(), "pad = \"data sheet\"", "pad = \"dta sheet\"")).field, "brake[0].pad");
}

TEST(StandProblems, TellAValueOutsideItsDomainByItsBounds) {
  const Problem zero = only(with(least_stand(), "\"240 m/min\"", "\"0 m/min\""));
  EXPECT_EQ(told(zero.what), "speed cannot be zero");
  EXPECT_EQ(zero.accepted.amounts.size(), 2U) << "bounds are amounts, so that they are shown in the reader's units";
  EXPECT_EQ(told(only(with(least_stand(), "\"152 mm\"", "\"-152 mm\"")).what), "core_diameter cannot be negative");
  EXPECT_EQ(told(only(with(least_stand(), "\"220 degC\"", "\"-300 degC\"")).what),
            "no temperature is below absolute zero");
  EXPECT_EQ(told(only(with(least_stand(), "[line]\n", "[line]\nuptime = 70\n")).what),
            "uptime is a share of one; 7000 % is more than the whole");
}

TEST(StandProblems, SendATensionPerWidthToItsKey) {
  const std::string speed = "speed = \"240 m/min\"\n";
  const Problem pull = only(with(least_stand(), speed, speed + "tension = \"1.2 lbf/in\"\n"));
  EXPECT_THAT(told(pull.accepted), HasSubstr("tension_per_width = \"1.2 lbf/in\""));
  const Problem width = only(with(least_stand(), speed, speed + "tension_per_width = \"150 N\"\n"));
  EXPECT_THAT(told(width.accepted), HasSubstr("tension = \"150 N\""));
}

TEST(StandProblems, TellTwoTensionsThatDisagreeByMoreThanAPerCent) {
  const std::string speed = "speed = \"240 m/min\"\n";
  const auto both = [&](const std::string& tension) {
    return with(least_stand(), speed, speed + "tension_per_width = \"150 N/m\"\ntension = \"" + tension + "\"\n");
  };
  EXPECT_EQ(told(read(both("151 N")).problems), "");
  EXPECT_EQ(only(both("152 N")).field, "job[0].tension");
}

TEST(StandProblems, ListTheKnownNamesForAnUnknownOne) {
  const Problem problem = only(with(least_stand(), "web = \"film\"", "web = \"flim\""));
  EXPECT_EQ(told(problem.accepted), "did you mean \"film\"? known: \"film\"");
}

TEST(StandProblems, TellKeysOfAnotherPadForm) {
  const Problem problem = only(with(least_stand(), "pairs = 4\n", "pairs = 4\npad_angle = \"40 deg\"\n"));
  EXPECT_EQ(told(problem.what), "pad_angle belongs to pad = \"sector\", and here pad = \"data sheet\"");
}

TEST(StandProblems, OfTheSyntaxDoNotHideTheRest) {
  const std::string text = with(with(least_stand(), "\"300 m/min\"", "300 m/min"), "\"12 um\"", "\"12 bar\"");
  const Problems problems = read(text).problems;
  ASSERT_EQ(problems.size(), 2U) << told(problems);
  EXPECT_EQ(told(problems[0].what), "a quantity with a unit is a text and stands in quotes");
  EXPECT_EQ(told(problems[0].accepted), "top_speed = \"300 m/min\"");
  EXPECT_EQ(problems[1].field, "web[0].caliper");
}

TEST(StandProblems, OfTheSyntaxNameTheTableTheyStandIn) {
  const std::string second = "[[web]]\nname = film\nwidth = \"1 m\"\ncaliper = \"12 um\"\ndensity = \"900 kg/m3\"\n";
  EXPECT_EQ(only(with(least_stand(), "[[roll]]", second + "[[roll]]")).field, "web[1].name");
  EXPECT_EQ(only(with(least_stand(), "\"85 N*m\"", "85 N*m")).field, "brake[0].grade[0].torque_per_pair");
}

TEST(StandProblems, OfTwoFieldsTogetherStandAtTheFieldWithItsValue) {
  const Problem problem = only(with(least_stand(), "\"152 mm\"", "\"900 mm\""));
  EXPECT_EQ(problem.field, "roll[0].core_diameter");
  EXPECT_EQ(problem.where, (Position{10, 17}));
  EXPECT_EQ(problem.value, "\"900 mm\"");
}

TEST(StandProblems, OfADefaultStandAtTheHeaderAndNameTheDefault) {
  const Problem problem = only(with(least_stand(), "[line]\n", "[line]\nstop_time = \"3 s\"\n"));
  EXPECT_EQ(problem.severity, Severity::warning);
  EXPECT_EQ(problem.field, "line.emergency_stop_time");
  EXPECT_EQ(problem.where, (Position{1, 1}));
  EXPECT_EQ(problem.value, "5 s (default)");
}

TEST(Locate, FindsFieldTableAndFile) {
  const StandFile file = read(least_stand());
  Problems problems(3);
  problems[0].field = "roll[0].core_diameter";
  problems[1].field = "roll[0].length";
  problems[2].field = "air.hysteresis";
  locate(problems, file);
  EXPECT_EQ(problems[0].where, (Position{10, 17}));
  EXPECT_EQ(problems[0].source_line, "core_diameter = \"152 mm\"");
  EXPECT_EQ(problems[1].where, (Position{8, 1})) << "an absent field is where its table begins";
  EXPECT_EQ(problems[2].where, Position{}) << "an absent table is nowhere";
  EXPECT_EQ(problems[2].file, "stand.toml");
}

TEST(StandProblems, RefuseWhatIsNoStandFile) {
  EXPECT_THAT(told(only("").what), HasSubstr("empty"));
  EXPECT_THAT(told(only(" \n\t\n").what), HasSubstr("empty"));
  EXPECT_THAT(told(only(std::string(4'000'001, '#')).what), HasSubstr("too many"));
  EXPECT_THAT(told(only("a = \"\xFF\"\n").what), HasSubstr("0xFF"));
  EXPECT_THAT(told(only(std::string("a = 1\0\n", 7)).what), HasSubstr("zero byte"));
  EXPECT_THAT(told(only("\xFF\xFE[\0").what), HasSubstr("UTF-16"));
}

TEST(StandProblems, EndAnOverlongListOfTables) {
  std::string text = least_stand();
  for (int i = 0; i < 51; ++i)
    text += "[[brake.grade]]\nname = \"g" + std::to_string(i) +
            "\"\ntorque_per_pair = \"85 N*m\"\ntemperature_limit = \"220 degC\"\n";
  const Problem problem = only(text);
  EXPECT_EQ(problem.field, "brake[0].grade");
  EXPECT_EQ(told(problem.accepted), "at most 50");
}

}  // namespace
}  // namespace holdback::files::test
