// The control, its sensors and the scenarios of a stand file become SI values; near misses and unread words are told
// once.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "texts.hpp"

namespace holdback::files::test {
namespace {

using testing::DoubleEq;
using testing::HasSubstr;
using testing::Optional;

const std::string a_day = "[[scenario]]\nname = \"a day\"\n[[scenario.event]]\n";

Problem only(const std::string& text) {
  const StandFile file = read(text);
  EXPECT_EQ(file.problems.size(), 1U) << told(file.problems);
  return file.problems.empty() ? Problem{} : file.problems[0];
}

TEST(ReadControl, ReadsEveryFieldOfTheControl) {
  const Control control = read(full_stand()).stand.control;
  EXPECT_EQ(control.kind, ControlKind::load_cell);
  EXPECT_DOUBLE_EQ(control.sample_time, 0.005);
  EXPECT_THAT(control.gain, Optional(DoubleEq(0.8)));
  EXPECT_THAT(control.integral_time, Optional(DoubleEq(0.5)));
  EXPECT_DOUBLE_EQ(control.derivative_time, 0.02);
  EXPECT_EQ(control.schedule, GainSchedule::fixed);
  EXPECT_DOUBLE_EQ(control.authority, 0.6);
  EXPECT_DOUBLE_EQ(control.inertia_compensation, 0.8);
  EXPECT_DOUBLE_EQ(control.output_step, 1e3);
}

TEST(ReadControl, ReadsEveryFieldOfTheSensors) {
  const Stand stand = read(full_stand()).stand;
  EXPECT_EQ(stand.load_cell, (LoadCell{"first idler", 0.03, 0.5, 0.3}));
  ASSERT_TRUE(stand.dancer);
  EXPECT_EQ(stand.dancer->idler, "first idler");
  EXPECT_DOUBLE_EQ(stand.dancer->mass, 6);
  EXPECT_DOUBLE_EQ(stand.dancer->travel, 0.15);
  EXPECT_DOUBLE_EQ(stand.dancer->damping, 200);
  EXPECT_DOUBLE_EQ(stand.dancer->strands, 1);
  EXPECT_DOUBLE_EQ(stand.dancer->taper, 0.05);
  ASSERT_TRUE(stand.diameter_sensor);
  EXPECT_EQ(stand.diameter_sensor->method, DiameterMethod::turns);
  EXPECT_DOUBLE_EQ(stand.diameter_sensor->lag, 0.4);
  EXPECT_DOUBLE_EQ(stand.diameter_sensor->resolution, 0.002);
  EXPECT_DOUBLE_EQ(stand.diameter_sensor->noise, 0.0005);
}

TEST(ReadControl, ReadsTheFreeSpansOfThePath) {
  const Stand stand = read(full_stand()).stand;
  EXPECT_DOUBLE_EQ(stand.path.first_span, 0.9);
  EXPECT_DOUBLE_EQ(stand.idlers.at(0).span, 0.7);
}

TEST(ReadControl, IsAHandAndNoSensorWhenTheFileSaysNothing) {
  const StandFile file = read(least_stand());
  EXPECT_EQ(told(file.problems), "");
  const Control& control = file.stand.control;
  EXPECT_EQ(control.kind, ControlKind::hand);
  EXPECT_DOUBLE_EQ(control.sample_time, 0.01);
  EXPECT_FALSE(control.gain);
  EXPECT_FALSE(control.integral_time);
  EXPECT_DOUBLE_EQ(control.derivative_time, 0);
  EXPECT_EQ(control.schedule, GainSchedule::diameter);
  EXPECT_DOUBLE_EQ(control.authority, 0.5);
  EXPECT_DOUBLE_EQ(control.inertia_compensation, 0);
  EXPECT_DOUBLE_EQ(control.output_step, 200);
  EXPECT_FALSE(file.stand.load_cell);
  EXPECT_FALSE(file.stand.dancer);
  EXPECT_FALSE(file.stand.diameter_sensor);
  EXPECT_TRUE(file.stand.scenarios.empty());
}

TEST(ReadControl, TakesTheUsualValuesForAnEmptyTable) {
  const StandFile file = read("[load_cell]\n[dancer]\n[diameter_sensor]\n" + least_stand());
  EXPECT_EQ(told(file.problems), "");
  EXPECT_EQ(file.stand.load_cell, (LoadCell{"", 0.02, 0.1, 0}));
  EXPECT_EQ(file.stand.dancer, (Dancer{"", 4, 0.2, 100, 2, 0}));
  EXPECT_EQ(file.stand.diameter_sensor, (DiameterSensor{DiameterMethod::ultrasonic, 0.2, 0.001, 0}));
}

TEST(ReadControl, TakesTheUsualAirSpansAndRoundness) {
  const Stand stand = read(optional_tables() + least_stand()).stand;
  EXPECT_DOUBLE_EQ(stand.air.lag, 0.12);
  EXPECT_DOUBLE_EQ(stand.air.dead_time, 0.03);
  EXPECT_DOUBLE_EQ(stand.path.first_span, 1.5);
  EXPECT_DOUBLE_EQ(stand.idlers.at(0).span, 1);
  EXPECT_EQ(stand.rolls.at(0).lobes, 1);
  EXPECT_DOUBLE_EQ(stand.brakes.at(0).grades.at(0).friction_slope, 0);
}

TEST(ReadControl, SuggestsTheNearestKeyWordAndTable) {
  EXPECT_EQ(told(only(least_stand() + "[control]\nsampletime = \"5 ms\"\n").accepted), "did you mean \"sample_time\"?");
  EXPECT_THAT(told(only(least_stand() + "[control]\nkind = \"load-cell\"\n").what),
              HasSubstr("did you mean \"load cell\"?"));
  EXPECT_EQ(told(only(least_stand() + "[loadcell]\nlag = \"5 ms\"\n").accepted), "did you mean \"load_cell\"?");
  EXPECT_EQ(told(only(least_stand() + "[control]\ntravel = \"5 mm\"\n").accepted), "\"travel\" belongs in [dancer]");
}

TEST(ReadControl, DoesNotMissASensorWhoseHeaderIsMisspelt) {
  EXPECT_EQ(only(least_stand() + "[danser]\nmass = \"4 kg\"\n[control]\nkind = \"dancer\"\n").field, "danser");
  EXPECT_EQ(only(least_stand() + "[control]\nkind = \"dancer\"\n").field, "control.kind");
}

TEST(ReadControl, TellsATableThatIsNone) {
  const Problem cell = only("load_cell = true\n" + least_stand() + "[control]\nkind = \"load cell\"\n");
  EXPECT_EQ(cell.field, "load_cell") << "and not that the control has no load cell";
  EXPECT_EQ(told(cell.accepted), "[load_cell]");
  EXPECT_EQ(only(least_stand() + "[[dancer]]\nmass = \"3 kg\"\n").field, "dancer");
}

TEST(ReadControl, TellsAGainWithoutItsIntegralTimeAtTheGain) {
  const Problem problem = only(least_stand() + "[load_cell]\n[control]\nkind = \"load cell\"\ngain = 0.8\n");
  EXPECT_EQ(problem.severity, Severity::warning);
  EXPECT_EQ(problem.field, "control.gain");
  EXPECT_EQ(problem.value, "0.8");
}

TEST(ReadScenario, ReadsEveryField) {
  const Stand stand = read(full_stand()).stand;
  ASSERT_EQ(stand.scenarios.size(), 1U);
  const Scenario& scenario = stand.scenarios[0];
  EXPECT_EQ(scenario.name, "a day");
  EXPECT_THAT(scenario.start_diameter, Optional(DoubleEq(0.7)));
  EXPECT_THAT(scenario.start_speed, Optional(DoubleEq(1)));
  EXPECT_THAT(scenario.end, Optional(DoubleEq(900)));
  ASSERT_EQ(scenario.events.size(), 4U);
  EXPECT_EQ(scenario.events[0].kind, EventKind::ramp);
  EXPECT_THAT(scenario.events[0].at, Optional(DoubleEq(5)));
  EXPECT_THAT(scenario.events[0].speed, Optional(DoubleEq(4)));
  EXPECT_THAT(scenario.events[0].duration, Optional(DoubleEq(20)));
  EXPECT_THAT(scenario.events[1].at_diameter, Optional(DoubleEq(0.6)));
  EXPECT_THAT(scenario.events[1].tension, Optional(DoubleEq(80)));
  EXPECT_THAT(scenario.events[2].pairs, Optional(2));
  EXPECT_DOUBLE_EQ(scenario.events[3].mismatch, 0.03);
}

TEST(ReadScenario, LeavesOpenWhatTheFileDoesNotSay) {
  const StandFile file = read(least_stand() + a_day + "do = \"stop\"\n");
  EXPECT_EQ(told(file.problems), "");
  Scenario expected;
  expected.name = "a day";
  expected.events.push_back({EventKind::stop, {}, {}, {}, {}, {}, {}, 0});
  EXPECT_EQ(file.stand.scenarios.at(0), expected);
}

TEST(ReadScenario, KnowsEveryWordOfWhatHappens) {
  const std::pair<const char*, EventKind> words[] = {
      {"ramp", EventKind::ramp},          {"hold", EventKind::hold},
      {"stop", EventKind::stop},          {"emergency stop", EventKind::emergency_stop},
      {"splice", EventKind::splice},      {"setpoint", EventKind::setpoint},
      {"pairs", EventKind::pairs},        {"air failure", EventKind::air_failure},
      {"web break", EventKind::web_break}};
  for (const auto& [word, kind] : words)
    EXPECT_EQ(read(a_day + "do = \"" + word + "\"\n").stand.scenarios.at(0).events.at(0).kind, kind) << word;
}

TEST(ReadScenario, TellsOfAMismatchThatWasTakenOnlyForASplice) {
  const StandFile file = read(least_stand() + a_day + "do = \"stop\"\n[[scenario.event]]\ndo = \"splice\"\n");
  EXPECT_EQ(std::count_if(file.defaults.begin(), file.defaults.end(),
                          [](const DefaultUsed& used) { return used.field == "scenario[0].event[1].mismatch"; }),
            1);
  EXPECT_EQ(std::count_if(file.defaults.begin(), file.defaults.end(),
                          [](const DefaultUsed& used) { return used.field == "scenario[0].event[0].mismatch"; }),
            0);
}

TEST(ReadScenario, NamesTheEventByItsScenario) {
  const Problem problem = only(least_stand() + a_day + "at = \"5 s\"\n");
  EXPECT_EQ(problem.field, "scenario[0].event[0].do");
  EXPECT_EQ(told(problem.what), "event 1 of scenario \"a day\" has no do");
}

TEST(ReadScenario, ConcludesNothingFromAnEventThatCouldNotBeRead) {
  EXPECT_EQ(only(least_stand() + a_day + "do = \"rmp\"\nspeed = \"60 m/min\"\n").field, "scenario[0].event[0].do");
  EXPECT_EQ(only(least_stand() + a_day + "doo = \"ramp\"\nspeed = \"60 m/min\"\n").field, "scenario[0].event[0].doo");
  EXPECT_EQ(only(least_stand() + a_day + "do = \"hold\"\nduraton = \"9 s\"\n").field, "scenario[0].event[0].duraton")
      << "and not that the hold has no duration";
  EXPECT_EQ(only(least_stand() + a_day + "do = \"hold\"\nduration = \"9 bar\"\n").field,
            "scenario[0].event[0].duration");
}

TEST(ReadScenario, WantsDoubleBracketsForScenarioAndEvent) {
  EXPECT_EQ(told(only(least_stand() + "[scenario]\nname = \"a\"\n[[scenario.event]]\ndo = \"stop\"\n").accepted),
            "[[scenario]] above each of them");
  EXPECT_EQ(told(only(least_stand() + "[[scenario]]\nname = \"a\"\n[scenario.event]\ndo = \"stop\"\n").accepted),
            "[[scenario.event]] above each of them");
}

TEST(ReadScenario, TellsTimesOutOfOrderAtTheLaterLine) {
  const Problem problem = only(least_stand() + a_day +
                               "do = \"stop\"\nat = \"60 s\"\n[[scenario.event]]\ndo = \"ramp\"\nat = \"0.5 min\"\n");
  EXPECT_EQ(problem.field, "scenario[0].event[1].at");
  EXPECT_EQ(problem.value, "\"0.5 min\"");
  EXPECT_EQ(told(problem.what), "The events are out of order: this one is at 30.0 s, one above it at 60.0 s.");
}

TEST(ReadScenario, TakesAFrictionSlopeInEitherSystem) {
  const auto slope = [](const std::string& text) {
    const std::string band = "friction_band = \"15 %\"\n";
    return read(with(with(full_stand(), "friction_slope = \"-2 %/(m/s)\"\n", ""), band,
                     band + "friction_slope = \"" + text + "\"\n"))
        .stand.brakes.at(0)
        .grades.at(0)
        .friction_slope;
  };
  EXPECT_DOUBLE_EQ(slope("-0.3048 %/(ft/s)"), -0.01);
  EXPECT_DOUBLE_EQ(slope("-0.01 s/m"), -0.01);
}

}  // namespace
}  // namespace holdback::files::test
