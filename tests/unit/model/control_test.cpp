#include "holdback/model/control.hpp"

#include "unit/model/faults_of.hpp"

namespace holdback {
namespace {

using testing::one_error;
using testing::one_warning;
using testing::sound_stand;

Stand with_control(ControlKind kind) {
  Stand stand = sound_stand();
  stand.control.kind = kind;
  return stand;
}

TEST(problems_of_control, finds_nothing_in_a_tuned_or_a_given_loop) {
  Control control;
  control.kind = ControlKind::load_cell;
  EXPECT_TRUE(problems_of(control).empty());
  control.gain = 1;
  control.integral_time = 0.5;
  EXPECT_TRUE(problems_of(control).empty());
}

TEST(problems_of_control, doubts_a_gain_without_its_integral_time_and_the_reverse) {
  for (const ControlKind kind : {ControlKind::load_cell, ControlKind::dancer}) {
    Control control;
    control.kind = kind;
    control.gain = 1;
    EXPECT_TRUE(one_warning(problems_of(control), "control.gain"));
    control.gain.reset();
    control.integral_time = 0.5;
    EXPECT_TRUE(one_warning(problems_of(control), "control.integral_time"));
  }
}

TEST(problems_of_control, says_nothing_of_gains_where_no_loop_is_closed) {
  for (const ControlKind kind : {ControlKind::hand, ControlKind::diameter}) {
    Control control;
    control.kind = kind;
    control.gain = 1;
    EXPECT_TRUE(problems_of(control).empty());
  }
}

TEST(problems_of_stand, wants_the_sensor_that_the_control_goes_by) {
  Stand stand = with_control(ControlKind::load_cell);
  EXPECT_TRUE(one_error(problems_of(stand), "control.kind"));
  EXPECT_EQ(problems_of(stand)[0].accepted.text, "add a [load_cell] table; an empty one takes the usual values");
  stand.load_cell = LoadCell{};
  EXPECT_TRUE(problems_of(stand).empty());
  stand = with_control(ControlKind::dancer);
  EXPECT_TRUE(one_error(problems_of(stand), "control.kind"));
  stand.dancer = Dancer{};
  EXPECT_TRUE(problems_of(stand).empty());
  stand = with_control(ControlKind::diameter);
  EXPECT_TRUE(one_error(problems_of(stand), "control.kind"));
  stand.diameter_sensor = DiameterSensor{};
  EXPECT_TRUE(problems_of(stand).empty());
}

TEST(problems_of_stand, wants_sensors_on_idlers_that_there_are) {
  Stand stand = sound_stand();
  stand.load_cell = LoadCell{};
  stand.dancer = Dancer{};
  EXPECT_TRUE(problems_of(stand).empty()) << "without a name they have their usual place";
  stand.load_cell->idler = "second";
  EXPECT_TRUE(one_error(problems_of(stand), "load_cell.idler"));
  stand.idlers.resize(2);
  stand.idlers[0].name = "first";
  stand.idlers[1].name = "third";
  EXPECT_TRUE(one_error(problems_of(stand), "load_cell.idler"));
  EXPECT_EQ(problems_of(stand)[0].accepted.text, "an idler of the stand: \"first\", \"third\"");
  stand.idlers[1].name = "second";
  EXPECT_TRUE(problems_of(stand).empty());
  stand.dancer->idler = "last";
  EXPECT_TRUE(one_error(problems_of(stand), "dancer.idler"));
}

TEST(problems_of_stand, does_not_list_a_hundred_idlers) {
  Stand stand = sound_stand();
  for (int i = 0; i < 100; ++i) {
    stand.idlers.emplace_back();
    stand.idlers.back().name = "i" + std::to_string(i);
  }
  stand.load_cell = LoadCell{};
  stand.load_cell->idler = "no such";
  const std::string accepted = problems_of(stand).at(0).accepted.text;
  EXPECT_NE(accepted.find("\"i11\" and 88 more"), std::string::npos) << accepted;
}

}  // namespace
}  // namespace holdback
