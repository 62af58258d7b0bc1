// Pictures of runs and of loops: everything named, nothing on another, gaps and faults said in words.
#include <gtest/gtest.h>

#include <limits>

#include "holdback/draw/figures.hpp"
#include "holdback/draw/svg.hpp"
#include "unit/draw/motion_samples.hpp"
#include "unit/draw/pictures.hpp"
#include "unit/draw/sound.hpp"

namespace holdback::draw {
namespace {

constexpr auto si = units::System::si;
constexpr auto us = units::System::us;
constexpr double undefined = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

TEST(figures_of, one_run_is_one_figure_and_several_are_compared_first) {
  EXPECT_EQ(files(samples::simulate()), (std::vector<std::string>{"run-paper-labels"}));
  EXPECT_EQ(
      files(samples::simulate(true)),
      (std::vector<std::string>{"comparison-paper-labels", "run-load-cell-paper-labels", "run-dancer-paper-labels",
                                "run-diameter-paper-labels", "run-hand-paper-labels"}));
}

TEST(figures_of, a_tuning_is_margins_and_runout) {
  EXPECT_EQ(files(samples::tune()), (std::vector<std::string>{"margins-paper-labels", "runout-paper-labels"}));
  auto answer = samples::tune();
  answer.tuning->runout = {};
  EXPECT_EQ(files(answer), (std::vector<std::string>{"margins-paper-labels"}));
  answer.tuning->loops.clear();
  EXPECT_TRUE(files(answer).empty());
}

TEST(figures_of, runs_without_a_trace_have_none) {
  auto answer = samples::simulate();
  answer.simulation->runs[0].trace = {};
  EXPECT_TRUE(files(answer).empty());
  answer.simulation->runs.clear();
  EXPECT_TRUE(files(answer).empty());
}

TEST(figures_of, runs_and_loops_are_sound_in_both_systems) {
  for (const auto system : {si, us}) {
    for (const auto& answer : {samples::simulate(), samples::simulate(true), samples::tune()}) {
      for (const auto& figure : figures_of(answer, system)) expect_sound(figure.scene);
    }
  }
}

TEST(motion_figure, names_its_curves_its_window_and_its_phases) {
  const auto scene = motion_figure(samples::simulation(), 0, si);
  for (const auto* name : {"tension [N]",
                           "pressure [bar]",
                           "speed [m/min]",
                           "slip power [W]",
                           "temperature [°C]",
                           "time [s]",
                           "setpoint",
                           "window to 82.5\u00A0N",
                           "window from 67.5\u00A0N",
                           "at the brake",
                           "asked for",
                           "line",
                           "roll's surface",
                           "disc",
                           "pads",
                           "ramp",
                           "run",
                           "stop",
                           "standstill",
                           "peak 84.2\u00A0N",
                           "never hangs slack"})
    EXPECT_TRUE(pictures::has_label(scene, name)) << name;
  EXPECT_FALSE(pictures::has_label(scene, "slack ["));
  EXPECT_FALSE(pictures::has_label(scene, "dancer"));
  EXPECT_FALSE(pictures::shapes<Polygon>(scene, MarkRole::area).empty());  // the band
}

TEST(motion_figure, shows_slack_and_dancer_when_there_are_any) {
  auto simulation = samples::simulation(true);
  EXPECT_TRUE(pictures::has_label(motion_figure(simulation, 1, si), "dancer"));
  const auto scene = motion_figure(simulation, 3, si);
  EXPECT_TRUE(pictures::has_label(scene, "slack [mm]"));
  EXPECT_TRUE(pictures::has_label(scene, "slack, most 310\u00A0mm"));
  EXPECT_FALSE(pictures::shapes<Polygon>(scene, MarkRole::bad).empty());
  simulation.runs[3].slack = 40;
  for (auto& slack : simulation.runs[3].trace.slack) slack *= 130;
  EXPECT_TRUE(pictures::has_label(motion_figure(simulation, 3, si), "slack [m]"));
}

TEST(motion_figure, says_where_a_run_failed) {
  auto simulation = samples::simulation();
  auto& run = simulation.runs[0];
  run.end = RunEnd::failed;
  run.fault = "the pressure";
  run.fault_time = 31;
  const auto scene = motion_figure(simulation, 0, si);
  EXPECT_TRUE(pictures::has_label(scene, "stopped by a fault"));
  EXPECT_TRUE(pictures::has_label(scene, "stopped at 31.0\u00A0s: the pressure"));
  EXPECT_TRUE(pictures::has_label(scene, "fault"));
  expect_sound(scene);
}

TEST(motion_figure, moves_the_window_with_the_setpoint) {
  auto simulation = samples::simulation();
  auto& setpoint = simulation.runs[0].trace.setpoint;
  std::fill(setpoint.begin() + 300, setpoint.end(), 60);
  const auto scene = motion_figure(simulation, 0, si);
  EXPECT_TRUE(pictures::has_label(scene, "moves with the setpoint"));
  EXPECT_FALSE(pictures::has_label(scene, "window to 82.5"));
  expect_sound(scene);
}

TEST(motion_figure, a_peak_far_above_the_window_leaves_the_picture_and_is_told) {
  auto simulation = samples::simulation();
  simulation.runs[0].peak = 900;
  simulation.runs[0].trace.highest_tension[410] = 900;
  EXPECT_TRUE(pictures::has_label(motion_figure(simulation, 0, si), "900\u00A0N at 40.5\u00A0s, lies above"));
}

TEST(motion_figure, a_hundred_thousand_points_stay_a_light_file) {
  auto simulation = samples::simulation();
  auto& trace = simulation.runs[0].trace;
  trace = samples::run_trace(9, 0.2, 100'000);
  for (std::size_t i = 0; i < trace.time.size(); ++i) {  // nothing that two points could stand for
    const double shake = static_cast<double>((i * 7919) % 101) / 101;
    for (auto* values : {&trace.tension, &trace.pressure, &trace.set_pressure, &trace.slip_power, &trace.rim_speed,
                         &trace.line_speed, &trace.disc, &trace.pads, &trace.slack, &trace.highest_tension})
      (*values)[i] *= 1 + 0.2 * shake;
  }
  const auto scene = motion_figure(simulation, 0, si);
  EXPECT_LT(svg(scene).size(), 300'000U);
  expect_sound(scene);
}

TEST(motion_figure, phases_without_room_are_left_out) {
  auto simulation = samples::simulation();
  auto& phases = simulation.runs[0].phases;
  for (int i = 0; i < 60; ++i) {
    phases.push_back(phases[2]);
    phases.back().what = "emergency stop";
    phases.back().begin = i;
  }
  expect_sound(motion_figure(simulation, 0, si));
}

TEST(comparison_figure, has_a_strip_for_each_control_on_one_scale_with_slack_marked) {
  const auto scene = comparison_figure(samples::simulation(true), si);
  for (const auto* name : {"load cell: holds", "dancer: tight", "diameter: fails, slack up to 12.0\u00A0mm",
                           "hand: fails, slack up to 310\u00A0mm", "throws no slack"})
    EXPECT_TRUE(pictures::has_label(scene, name)) << name;
  const auto bars = pictures::shapes<Polygon>(scene, MarkRole::bad);
  ASSERT_EQ(bars.size(), 2U);
  const auto height = [](const Polygon& bar) {
    double low = 0;
    double high = 1e9;
    for (const auto& point : bar.points) {
      low = std::max(low, point.y);
      high = std::min(high, point.y);
    }
    return low - high;
  };
  EXPECT_NEAR(height(bars[0]), height(bars[1]), 0.2);
}

TEST(comparison_figure, takes_no_runs_and_many) {
  expect_sound(comparison_figure(Simulation{}, si));
  auto many = samples::simulation();
  many.runs.resize(11, many.runs[0]);
  const auto scene = comparison_figure(many, us);
  EXPECT_TRUE(pictures::has_label(scene, "3 more are left out"));
  expect_sound(scene);
}

TEST(tuning_figure, has_each_loop_what_was_asked_and_where_it_is_unstable) {
  const auto scene = tuning_figure(samples::tuning(), si);
  for (const auto* name :
       {"gain margin [dB]", "phase margin [°]", "scheduled", "fixed", "stand file, fixed", "asked 6.0\u00A0dB",
        "asked 45.0\u00A0°", "stand file, fixed: unstable", "5 of 25 diameters"})
    EXPECT_TRUE(pictures::has_label(scene, name)) << name;
  EXPECT_EQ(pictures::shapes<Polyline>(scene, MarkRole::limit).size(), 2U);
}

TEST(tuning_figure, says_where_a_margin_has_no_number) {
  auto tuning = samples::tuning();
  for (auto& point : tuning.loops[0].points) point.gain_margin = point.phase_margin = 0;
  const auto scene = tuning_figure(tuning, si);
  EXPECT_TRUE(pictures::has_label(scene, "no gain in reach makes it unstable at 25 of 25"));
  EXPECT_TRUE(pictures::has_label(scene, "no crossover at 25 of 25"));
  expect_sound(scene);
}

TEST(runout_figure, names_diameters_and_where_the_mode_is_met) {
  const auto scene = runout_figure(samples::tuning(), si);
  for (const auto* name : {"Ø 600\u00A0mm", "Ø 90.0\u00A0mm", "window ±10.0\u00A0%", "web speed [m/min]",
                           "Worst: ±4.00", "Ø 600\u00A0mm at 162\u00A0m/min"})
    EXPECT_TRUE(pictures::has_label(scene, name)) << name;
  EXPECT_GE(pictures::shapes<Circle>(scene, MarkRole::text).size(), 5U);
  auto far = samples::tuning();
  far.runout.meets.assign(far.runout.meets.size(), 0);
  EXPECT_TRUE(pictures::has_label(runout_figure(far, si), "does not meet the mode"));
}

TEST(figures, of_motion_take_degenerate_results) {
  for (const auto system : {si, us}) {
    Simulation simulation;
    expect_sound(motion_figure(simulation, 7, system));
    simulation = samples::simulation(true);
    simulation.runs[0].trace.tension = {1};
    simulation.runs[1].trace.lowest_tension.assign(601, undefined);
    simulation.runs[1].trace.setpoint.assign(601, infinite);
    simulation.runs[2].trace.time.assign(601, 3);
    simulation.runs[2].trace.slack.assign(601, 1e308);
    simulation.runs[3].trace.pressure = {undefined, 1e300, -1e300};
    simulation.runs[3].peak = simulation.runs[3].slack = infinite;
    simulation.runs[3].phases[1].begin = undefined;
    simulation.tension.setpoint = 0;
    for (std::size_t i = 0; i < 4; ++i) expect_sound(motion_figure(simulation, i, system));
    expect_sound(comparison_figure(simulation, system));
    auto tuning = samples::tuning();
    tuning.asked_gain_margin = tuning.asked_phase_margin = 0;
    tuning.loops[1].points.resize(1);
    tuning.loops[2].points[0].phase_margin = undefined;
    tuning.runout.share.resize(5);
    tuning.runout.meets = {undefined, infinite};
    expect_sound(tuning_figure(tuning, system));
    expect_sound(runout_figure(tuning, system));
    expect_sound(tuning_figure({}, system));
    expect_sound(runout_figure({}, system));
  }
}

TEST(figures, of_motion_keep_names_of_any_length_on_the_page) {
  const std::string name = "多层标签纸 a<b>&\"c\"\x1b[31m " + std::string(200, 'W');
  auto simulation = samples::simulation(true);
  simulation.job = simulation.scenario = simulation.fit.brake = name;
  for (auto& run : simulation.runs) {
    run.control = name;
    for (auto& phase : run.phases) phase.what = name;
    run.verdict = {name, {}};
  }
  simulation.best = {name, {}};
  expect_sound(motion_figure(simulation, 3, us));
  expect_sound(comparison_figure(simulation, us));
  auto tuning = samples::tuning();
  tuning.job = tuning.control = tuning.fit.grade = name;
  expect_sound(tuning_figure(tuning, us));
  expect_sound(runout_figure(tuning, us));
}

}  // namespace
}  // namespace holdback::draw
