// Runs and tunings as an answer would hold them, with invented numbers of a plausible size. Not computed by the
// project: pictures and texts only have to show what they are given.
#pragma once

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "holdback/results/answer.hpp"

namespace holdback::samples {

/// Up in 12 s, 28 s of running, down in 8 s, at rest to the 60th second. `swing` [N] shakes the tension, `loose` [m]
/// hangs slack in the stop.
inline RunTrace run_trace(double swing = 3, double loose = 0, int count = 600) {
  RunTrace t;
  for (int i = 0; i <= count; ++i) {
    const double time = 60.0 * i / count;
    const double speed = 3.3 * std::clamp(std::min(time / 12, (48 - time) / 8), 0.0, 1.0);
    const double shake = swing * std::sin(1.9 * time) * std::exp(-std::fmod(time, 20) / 8);
    const double slack = time > 41 && time < 46 ? loose * std::sin((time - 41) * 0.628) : 0;
    const double tension = slack > 0 ? 0 : std::max(75 + shake - (time < 12 ? 6 : 0) + (time > 40 ? 4 : 0), 0.0);
    t.time.push_back(time);
    t.line_speed.push_back(speed);
    t.rim_speed.push_back(speed * (1 + 0.004 * std::sin(1.9 * time)) + (slack > 0 ? 0.2 : 0));
    t.tension.push_back(tension);
    t.lowest_tension.push_back(std::max(tension - 2.2, 0.0));
    t.highest_tension.push_back(tension + 2.4);
    t.measured_tension.push_back(tension + 0.2);
    t.setpoint.push_back(75);
    t.slack.push_back(slack);
    t.set_pressure.push_back(1e5 * (2.1 - 0.01 * time + (time > 40 ? 1.2 : 0)));
    t.pressure.push_back(1e5 * (2.1 - 0.01 * time + (time > 40 ? 1.2 * (1 - std::exp(-(time - 40) / 0.6)) : 0)));
    t.pairs.push_back(2);
    t.diameter.push_back(0.6 - 1e-5 * time);
    t.torque.push_back(0.3 * tension);
    t.slip_power.push_back(tension * speed);
    t.disc.push_back(298 + 12 * (1 - std::exp(-time / 40)));
    t.pads.push_back(298 + 17 * (1 - std::exp(-time / 25)));
    t.dancer.push_back(0);
  }
  return t;
}

inline std::vector<PhaseFacts> phases(double loose = 0) {
  return {{"ramp", 0, 12, 0.6, 66.1, 76.4, 74.0, 0.4, 0, 1.3, true},
          {"run", 12, 40, 0.5999, 71.8, 78.3, 75.0, 0, 0, 0, true},
          {"stop", 40, 48, 0.5996, loose > 0 ? 0 : 70.2, 86.0, 78.0, 5.1, loose, 8, loose <= 0},
          {"standstill", 48, 60, 0.5995, 74.1, 79.9, 78.7, 0, 0, 0, true}};
}

inline MotionRun motion_run(const std::string& control = "load cell", double swing = 3, double loose = 0) {
  MotionRun r;
  r.control = control;
  r.state = loose > 0 ? State::fails : swing > 6 ? State::tight : State::holds;
  r.verdict = loose > 0 ? Note{"the web hangs slack by up to {0} in the stop", {{loose, Quantity::short_length}}}
                        : Note{"the tension stays within {0} of its setpoint", {{swing, Quantity::force}}};
  r.phases = phases(loose);
  r.trace = run_trace(swing, loose);
  r.run_lowest = 75 - swing;
  r.run_highest = 75 + swing;
  const auto most = std::max_element(r.trace.highest_tension.begin(), r.trace.highest_tension.end());
  r.peak = *most;
  r.peak_time = r.trace.time[static_cast<std::size_t>(most - r.trace.highest_tension.begin())];
  r.outside = 5.5;
  r.moving = 48;
  r.slack = loose;
  r.slack_time = loose > 0 ? 43.5 : 0;
  r.settling = 1.3;
  r.disc_highest = 307.3;
  r.pads_highest = 313.4;
  r.highest_pressure = 3.1e5;
  r.highest_torque = 24.1;
  r.pad_wear = 1.7e-5;
  r.sticks = 1;
  r.line_time = 60;
  r.web_run = 125;
  r.energy = {9200, 9350, -151, 1};
  r.end = RunEnd::done;
  r.steps = 4210;
  return r;
}

/// One run, or the four controls side by side.
inline Simulation simulation(bool several = false) {
  Simulation s;
  s.title = "Label slitter, unwind A (invented)";
  s.job = "paper labels";
  s.scenario = "usual";
  s.fit = {"disc 330", "low", 1, 4};
  s.pairs = 2;
  s.tension = {75, 67.5, 82.5, true, 0, 0, 0, "", 0};
  s.full_diameter = 0.6;
  s.core_diameter = 0.09;
  s.speed = 3.3;
  s.runs = {motion_run()};
  if (several) {
    s.runs.push_back(motion_run("dancer", 7));
    s.runs.push_back(motion_run("diameter", 9, 0.012));
    s.runs.push_back(motion_run("hand", 16, 0.31));
    for (std::size_t i = 0; i < s.runs[1].trace.dancer.size(); ++i)
      s.runs[1].trace.dancer[i] = 0.6 * std::sin(s.runs[1].trace.time[i] / 3);
    s.runs[1].dancer_stops = 2;
    s.best = {"load cell: it stays within {0} of the setpoint and throws no slack", {{3, Quantity::force}}};
  }
  s.assumptions = {{"air in the brake line follows with {0}", {{0.2, Quantity::duration}}}};
  s.cautions = {{"Keep clear of the in-running nip.", {}}};
  return s;
}

inline LoopTuning loop_tuning(GainSchedule schedule, double gain) {
  LoopTuning l;
  l.schedule = schedule;
  l.gain = gain;
  l.integral_time = 1.4;
  l.real_gain = 2800 * gain;
  for (int i = 0; i <= 24; ++i) {
    const double d = 0.6 - 0.51 * i / 24;
    const double rise = schedule == GainSchedule::fixed ? 0.6 / d : 1.0;
    TunePoint p;
    p.diameter = d;
    p.mode_frequency = 9 + 30 * (0.6 - d);
    p.mode_damping = 0.31 - 0.2 * d;
    p.stick_slip_onset = 0.05;
    p.runout_tension = 1 + 3 * d;
    p.runout_frequency = 6.6 / d;
    p.gain_margin = 3.2 / (gain / 0.8 * std::sqrt(rise));
    p.stable = p.gain_margin > 1;
    p.phase_margin = std::max(1.05 - 0.09 * rise * gain / 0.8, 0.0);
    p.delay_margin = 0.3 / rise;
    p.sensitivity = 1.2 + 0.1 * rise;
    p.crossover = 2.6 * rise;
    l.points.push_back(p);
  }
  const auto worst = std::min_element(l.points.begin(), l.points.end(), [](const TunePoint& a, const TunePoint& b) {
    return a.gain_margin < b.gain_margin;
  });
  l.least_gain_margin = worst->gain_margin;
  l.least_phase_margin = worst->phase_margin;
  l.worst_diameter = worst->diameter;
  l.slowest_crossover = 2.6;
  l.state = l.least_gain_margin >= 2 ? State::holds : State::fails;
  return l;
}

inline RunoutMap runout_map() {
  RunoutMap r;
  for (int i = 0; i <= 8; ++i) r.diameter.push_back(0.6 - 0.51 * i / 8);
  for (const double d : r.diameter)
    r.meets.push_back((9 + 30 * (0.6 - d)) * d / 2 < 3.3 ? (9 + 30 * (0.6 - d)) * d / 2 : 0);
  for (int k = 1; k <= 40; ++k) {
    const double v = 3.3 * k / 40;
    r.speed.push_back(v);
    for (const double d : r.diameter) {
      const double ratio = 2 * v / d / (9 + 30 * (0.6 - d));
      const double share = 0.02 * ratio / std::hypot(1 - ratio * ratio, 0.5 * ratio);
      r.share.push_back(share);
      if (share > r.worst_share) {
        r.worst_share = share;
        r.worst_speed = v;
        r.worst_diameter = d;
      }
    }
  }
  return r;
}

inline Tuning tuning() {
  Tuning t;
  t.title = "Label slitter, unwind A (invented)";
  t.job = "paper labels";
  t.control = "load cell";
  t.fit = {"disc 330", "low", 1, 4};
  t.pairs = 2;
  t.tension = {75, 67.5, 82.5, true, 0, 0, 0, "", 0};
  t.asked_gain_margin = 2;
  t.asked_phase_margin = 0.7854;
  t.dead_time = 0.13;
  t.lag = 0.25;
  t.loops = {loop_tuning(GainSchedule::diameter, 0.8), loop_tuning(GainSchedule::fixed, 0.5),
             loop_tuning(GainSchedule::fixed, 1.4)};
  t.from_file = true;
  t.advice = {"take the scheduled gain of {0}", {{0.8, Quantity::number}}};
  t.runout = runout_map();
  t.stick_slip_onset = 0.05;
  t.run = motion_run();
  t.run.trace = {};
  t.holds = true;
  t.others = {{"dancer", true, {"it keeps within {0}", {{6, Quantity::force}}}},
              {"hand", false, {"slack in the stop", {}}}};
  t.assumptions = {{"the loop is linear near its setpoint", {}}};
  t.cautions = {{"Keep clear of the in-running nip.", {}}};
  return t;
}

inline Answer simulate(bool several = false) {
  Answer answer;
  answer.command = "simulate";
  answer.simulation = simulation(several);
  return answer;
}

inline Answer tune() {
  Answer answer;
  answer.command = "tune";
  answer.tuning = tuning();
  return answer;
}

}  // namespace holdback::samples
