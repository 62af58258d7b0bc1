// The verdict on a run: runs made by hand, one fault each.
#include <gtest/gtest.h>

#include "holdback/dynamics/run.hpp"

namespace holdback::dynamics {
namespace {

RunBounds bounds() {
  RunBounds made;
  made.low = 0.9;
  made.high = 1.1;
  made.stop_share = 0.5;
  made.emergency_stop_share = 0.1;
  made.web_strength = 400;
  made.torque = 100;
  made.pressure = 5e5;
  made.disc = 600;
  made.pads = 550;
  return made;
}

MotionRun good_run() {
  MotionRun run;
  run.run_lowest = 145;
  run.run_highest = 155;
  run.peak = 170;
  run.highest_torque = 65;
  run.highest_pressure = 3e5;
  run.disc_highest = 400;
  run.pads_highest = 390;
  PhaseFacts stop;
  stop.what = "stop";
  stop.lowest_tension = 120;
  run.phases.push_back(stop);
  return run;
}

State judged(MotionRun run, const RunBounds& by = bounds()) {
  judge(run, by, 150);
  EXPECT_FALSE(run.verdict.text.empty());
  return run.state;
}

TEST(judge, lets_a_good_run_hold) { EXPECT_EQ(judged(good_run()), State::holds); }

TEST(judge, calls_a_run_tight_that_leaves_its_window_for_a_while) {
  MotionRun run = good_run();
  run.outside = 3;
  EXPECT_EQ(judged(run), State::tight);
}

TEST(judge, fails_what_a_rating_does_not_bear) {
  for (double MotionRun::*part : {&MotionRun::peak, &MotionRun::highest_torque, &MotionRun::highest_pressure,
                                  &MotionRun::disc_highest, &MotionRun::pads_highest}) {
    MotionRun run = good_run();
    run.*part = 1e6;
    EXPECT_EQ(judged(run), State::fails);
    EXPECT_EQ(judged(run, RunBounds{}), State::holds);  // a bound of zero is none
  }
}

TEST(judge, fails_slack_and_long_times_outside) {
  MotionRun run = good_run();
  run.slack = 0.02;
  EXPECT_EQ(judged(run), State::fails);
  run.slack = 1e-4;  // a tenth of a millimetre is none
  EXPECT_EQ(judged(run), State::holds);
  run.steady_outside = 0.02;
  EXPECT_EQ(judged(run), State::fails);
}

// By hand, of the low end of the window, 135 N: half must stay in a stop, a tenth in an emergency stop.
TEST(judge, fails_a_stop_that_keeps_too_little) {
  MotionRun run = good_run();
  run.phases[0].lowest_tension = 67;
  EXPECT_EQ(judged(run), State::fails);
  run.phases[0].what = "emergency stop";
  EXPECT_EQ(judged(run), State::holds);
  run.phases[0].lowest_tension = 13;
  EXPECT_EQ(judged(run), State::fails);
  run.phases[0].what = "ramp";
  EXPECT_EQ(judged(run), State::holds);
}

// By hand: a setpoint lowered to 100 N before the stop leaves 0.5 · 0.9 · 100 = 45 N to be kept, not 67.5 N.
TEST(judge, goes_by_the_setpoint_that_held_in_the_stop) {
  MotionRun run = good_run();
  run.phases[0].lowest_tension = 50;
  EXPECT_EQ(judged(run), State::fails);
  run.trace.time = {0, run.phases[0].end};
  run.trace.setpoint = {150, 100};
  EXPECT_EQ(judged(run), State::holds);
  run.phases[0].lowest_tension = 44;
  EXPECT_EQ(judged(run), State::fails);
}

TEST(judge, names_the_fault_of_a_run_that_broke_off) {
  MotionRun run = good_run();
  run.end = RunEnd::failed;
  run.fault = "roll speed";
  run.peak = 1e6;  // what was reached on the way there says nothing
  judge(run, bounds(), 150);
  EXPECT_EQ(run.state, State::fails);
  EXPECT_NE(run.verdict.text.find("roll speed"), std::string::npos);
}

}  // namespace
}  // namespace holdback::dynamics
