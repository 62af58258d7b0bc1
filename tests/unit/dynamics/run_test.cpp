#include "holdback/dynamics/run.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "unit/dynamics/plants.hpp"

namespace holdback::dynamics {
namespace {

using testing::any_pressure;
using testing::known;
using testing::rig_setup;

Event event(EventKind kind, std::optional<double> duration = {}) {
  Event made;
  made.kind = kind;
  made.duration = duration;
  return made;
}

RunRequest request(std::vector<Event> events) {
  RunRequest made;
  made.rig = rig_setup();
  made.kind = ControlKind::diameter;
  Believed believed = known(made.rig.plant);
  believed.inertia_compensation = 1;
  made.controller = [believed] { return std::make_unique<DiameterFollower>(believed, any_pressure); };
  made.habits = {5, 20, 20, 4, 0.40};
  made.bounds.low = 0.9;
  made.bounds.high = 1.1;
  made.scenario.events = std::move(events);
  return made;
}

TEST(run, goes_from_event_to_event) {
  const MotionRun done = run(request({event(EventKind::hold, 5), event(EventKind::stop), event(EventKind::hold, 5),
                                      event(EventKind::ramp), event(EventKind::hold, 10)}));
  ASSERT_EQ(done.end, RunEnd::done);
  std::vector<std::string> whats;
  for (const PhaseFacts& phase : done.phases) whats.push_back(phase.what);
  EXPECT_EQ(whats, (std::vector<std::string>{"hold", "stop", "hold", "ramp", "hold", "run"}));
  // By hand: 5 + 20 + 5 + 20 + 10 s, and three more to look.
  EXPECT_NEAR(done.line_time, 63, 0.011);
  EXPECT_NEAR(done.phases[1].begin, 5, 1e-6);
  EXPECT_NEAR(done.phases[1].end, 25, 1e-6);
  // By hand: 25 m, 50 m in the stop, none, 50 m, 50 m and 15 m.
  EXPECT_NEAR(done.web_run, 190, 0.1);
  EXPECT_EQ(done.control, "diameter");
}

// Every entry of the trace has all its columns, at the period asked for, from the first moment on.
TEST(run, keeps_a_trace) {
  RunRequest asked = request({event(EventKind::hold, 5)});
  asked.trace_period = 0.5;
  const RunTrace trace = run(asked).trace;
  ASSERT_EQ(trace.time.size(), 17U);  // 8 s
  for (std::size_t i = 0; i < trace.time.size(); ++i) EXPECT_NEAR(trace.time[i], 0.5 * static_cast<double>(i), 1e-9);
  for (const auto* column :
       {&trace.line_speed, &trace.rim_speed, &trace.tension, &trace.lowest_tension, &trace.highest_tension,
        &trace.measured_tension, &trace.setpoint, &trace.slack, &trace.pressure, &trace.set_pressure, &trace.pairs,
        &trace.diameter, &trace.torque, &trace.slip_power, &trace.disc, &trace.pads, &trace.dancer})
    EXPECT_EQ(column->size(), trace.time.size());
}

TEST(run, keeps_no_more_of_a_long_run_than_it_may) {
  RunRequest asked = request({});
  asked.trace_period = 1e-3;
  asked.scenario.end = 600;
  asked.rig.plant.roll.caliper = 5e-5;
  const MotionRun done = run(asked);
  EXPECT_LE(done.trace.time.size(), most_trace + 1);
  EXPECT_GT(done.trace.time.size(), most_trace / 2);
}

// What goes into the brake in steady running is T v (published check P-2 says so of every diameter).
TEST(run, keeps_the_books) {
  const MotionRun done = run(request({event(EventKind::hold, 57)}));
  EXPECT_NEAR(done.energy.slipped / (150 * 5 * 60), 1, 0.01);
  EXPECT_NEAR(done.energy.residual, 0, 1e-4 * done.energy.slipped);
  EXPECT_NEAR(done.energy.residual, done.energy.pulled - done.energy.slipped - done.energy.stored, 1e-9);
}

TEST(run, stops_when_the_core_is_reached) {
  RunRequest asked = request({event(EventKind::hold, 1000), event(EventKind::stop)});
  asked.rig.radius = 0.085;
  const MotionRun done = run(asked);
  EXPECT_EQ(done.end, RunEnd::core);
  EXPECT_EQ(done.phases.size(), 1U);
  EXPECT_NEAR(done.trace.diameter.back(), 0.16, 1e-3);
  // By hand: π (0.085² − 0.080²)/0.2 mm of web at 5 m/s.
  EXPECT_NEAR(done.line_time, testing::pi * (0.085 * 0.085 - 0.08 * 0.08) / 2e-4 / 5, 0.02);
}

TEST(run, waits_for_a_diameter) {
  Event stop = event(EventKind::stop, 10);
  stop.at_diameter = 0.79;
  const MotionRun done = run(request({stop}));
  ASSERT_GE(done.phases.size(), 2U);
  EXPECT_EQ(done.phases[0].what, "run");
  EXPECT_EQ(done.phases[1].what, "stop");
  EXPECT_NEAR(done.phases[1].diameter, 0.79, 1e-4);
}

TEST(run, waits_for_a_time_and_ends_at_its_end) {
  Event setpoint = event(EventKind::setpoint);
  setpoint.at = 4;
  setpoint.tension = 200;
  RunRequest asked = request({setpoint});
  asked.scenario.end = 12;
  const MotionRun done = run(asked);
  EXPECT_NEAR(done.line_time, 12, 1e-6);
  EXPECT_NEAR(done.trace.setpoint.front(), 150, 1e-12);
  EXPECT_NEAR(done.trace.setpoint.back(), 200, 1e-12);
  EXPECT_NEAR(done.trace.tension.back(), 200, 4);
}

// A line that stands never comes to a diameter: the run must end all the same.
TEST(run, does_not_wait_at_standstill_for_a_diameter) {
  Event stop = event(EventKind::stop);
  stop.at_diameter = 0.5;
  const MotionRun done = run(request({event(EventKind::stop, 5), stop}));
  EXPECT_EQ(done.end, RunEnd::done);
  EXPECT_LT(done.line_time, 20);
}

// By hand: window of ±10 %, a stop at 0.25 m/s² without compensation lowers the tension by J a/R² = 51 N, for the 20 s
// that it lasts.
TEST(run, counts_the_time_outside_of_the_window) {
  RunRequest asked = request({event(EventKind::hold, 10), event(EventKind::stop)});
  const Believed believed = known(asked.rig.plant);
  asked.controller = [believed] { return std::make_unique<DiameterFollower>(believed, any_pressure); };
  const MotionRun done = run(asked);
  EXPECT_EQ(done.phases[0].outside, 0);
  EXPECT_EQ(done.phases[1].what, "stop");
  EXPECT_NEAR(done.phases[1].outside, 20, 0.5);
  EXPECT_NEAR(done.phases[1].mean_tension, 150 - 51, 5);
  EXPECT_NEAR(done.outside, done.phases[1].outside, 0.05);
  EXPECT_EQ(done.steady_outside, 0);
  EXPECT_EQ(done.state, State::tight);
}

// An emergency stop that the brake cannot follow: 60 N·m on 32.618 kg·m² slow the rim by 0.736 m/s². Five seconds after
// its beginning, by hand, the line has drawn 5 m and the roll given 25 m − 0.736 · 5²/2 m.
TEST(run, finds_the_slack_of_a_stop_that_is_too_hard) {
  RunRequest asked = request({event(EventKind::hold, 2), event(EventKind::emergency_stop, 2)});
  asked.controller = [] {
    return std::make_unique<HandRegulator>(std::vector<HandLine>{{1, 1e4 + 58.5e3}}, any_pressure);
  };
  const MotionRun done = run(asked);
  EXPECT_EQ(done.state, State::fails);
  EXPECT_NEAR(done.slack, 25 - 0.7358 * 12.5 - 5, 0.1);
  EXPECT_NE(done.verdict.text.find("slack"), std::string::npos);
}

TEST(run, calls_a_web_break_an_accident) {
  RunRequest asked = request({event(EventKind::hold, 2), event(EventKind::web_break)});
  asked.scenario.end = 20;
  const MotionRun done = run(asked);
  EXPECT_TRUE(done.accident);
  EXPECT_EQ(done.trace.tension.back(), 0);
  EXPECT_GT(done.trace.slack.back(), 10);
}

// A regulator that is told to set what is no number: the run ends there, says where, and keeps what it has.
class Broken : public Controller {
 public:
  double pressure(const Sample& sample) override {
    return sample.time < 2 ? 6e4 : std::numeric_limits<double>::quiet_NaN();
  }
};

TEST(run, stops_at_what_is_no_number_and_keeps_its_trace) {
  RunRequest asked = request({event(EventKind::hold, 20)});
  asked.controller = [] { return std::make_unique<Broken>(); };
  const MotionRun done = run(asked);
  EXPECT_EQ(done.end, RunEnd::failed);
  EXPECT_EQ(done.fault, "brake pressure is no longer a number");
  EXPECT_NEAR(done.fault_time, 2, 0.011);
  EXPECT_GE(done.trace.time.size(), 20U);
  EXPECT_NEAR(done.trace.time.front(), 0, 1e-12);
  for (const auto* column : {&done.trace.tension, &done.trace.pressure, &done.trace.torque, &done.trace.slip_power})
    for (const double value : *column) EXPECT_TRUE(std::isfinite(value));
  EXPECT_TRUE(std::isfinite(done.phases.back().mean_tension));
  EXPECT_TRUE(std::isfinite(done.energy.residual));
  EXPECT_EQ(done.state, State::fails);
}

// Friction that grows without bound under a web that feeds it: whatever happens, the run must come back.
TEST(run, comes_back_from_a_plant_that_blows_up) {
  RunRequest asked = request({event(EventKind::hold, 20)});
  asked.rig.plant.brake.friction_slope = 1e300;
  const MotionRun done = run(asked);
  EXPECT_EQ(done.end, RunEnd::failed);
  EXPECT_FALSE(done.fault.empty());
  EXPECT_NE(done.fault, "none");
  EXPECT_GE(done.trace.time.size(), 1U);
}

TEST(run, tells_how_far_it_is) {
  RunRequest asked = request({});
  asked.scenario.end = 500;
  double last = -1;
  int told = 0;
  asked.progress = [&](double share) {
    EXPECT_GT(share, last);
    EXPECT_LE(share, 1);
    last = share;
    ++told;
  };
  run(asked);
  EXPECT_GT(told, 0);
}

TEST(run, is_the_same_every_time) {
  RunRequest asked = request({event(EventKind::hold, 5), event(EventKind::stop)});
  asked.rig.cell.noise = 2;
  EXPECT_EQ(run(asked).trace.tension, run(asked).trace.tension);
}

}  // namespace
}  // namespace holdback::dynamics
