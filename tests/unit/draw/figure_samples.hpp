// Results as an answer would hold them, with invented numbers of a plausible size. Not computed by the project: the
// figures only have to show what they are given.
#pragma once

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "holdback/results/answer.hpp"

namespace holdback::samples {

inline constexpr double core = 0.09;  // [m] diameters of the invented roll
inline constexpr double full = 0.6;

/// An envelope of 64 diameters; `capacity` [N·m] below 40 leaves the emergency stop uncovered near the full roll.
inline Envelope envelope(double capacity = 34) {
  Envelope e;
  e.job = "paper labels";
  for (int i = 0; i < 64; ++i) {
    const double d = core + (full - core) * i / 63;
    const double inertia = 0.02 + 40 * std::pow(d, 4);
    e.diameter.push_back(d);
    e.run.push_back(37.5 * d - 0.6);
    e.ramp.push_back(std::max(37.5 * d - 0.6 - 0.6 * inertia / d, 0.0));
    e.stop.push_back(37.5 * d - 0.6 + 0.9 * inertia / d);
    e.emergency_stop.push_back(9.4 * d - 0.6 + 2.2 * inertia / d);
    e.hold.push_back(30 * d);
    const double fade = 1 - 0.1 * d;
    e.capacity_nominal.push_back(1.3 * capacity * fade);
    e.capacity_low.push_back(capacity * fade);
    e.floor.push_back(0.8);
    e.pressure.push_back(1e5 * (0.25 + 4.4 * d));
    e.temperature.push_back(298 + 60 * std::sqrt(d / full));
    e.rotational_speed.push_back(2 * 3.3 / d);
  }
  return e;
}

inline Limit limit(LimitId id, double value, double bound, double margin) {
  return {id, value, bound, margin, 0.1, full, LoadCase::run, Known::rating, state_of(margin, 0.1)};
}

/// Temperatures over a roll of half an hour and a change-over of five minutes.
inline ThermalFacts thermal() {
  ThermalFacts t;
  const double run = 1800;
  t.changeover = 300;
  for (int i = 0; i <= 140; ++i) {
    const double time = 15 * i;
    const bool running = time <= run;
    const double share = std::min(time / run, 1.0);
    const double d = std::sqrt(full * full - share * (full * full - core * core));
    const double heat = running ? 1 - std::exp(-time / 240) : std::exp(-(time - run) / 500);
    t.time.push_back(time);
    t.diameter.push_back(d);
    t.disc.push_back(318 + (running ? 45 : 44) * heat - (running ? 12 * share : 12 * heat));
    t.pads.push_back(316 + 36 * heat - 8 * share * heat);
    t.calipers.push_back(309 + 9 * std::sin(0.5 + 2.2 * share));
    t.hub.push_back(307 + 5 * std::sin(0.2 + 2.4 * share));
    t.steady.push_back(running ? 298 + 64 * std::sqrt(d / full) : 298);
  }
  const auto hottest = std::max_element(t.disc.begin(), t.disc.end()) - t.disc.begin();
  t.disc_highest = t.disc[static_cast<std::size_t>(hottest)];
  t.highest_diameter = t.diameter[static_cast<std::size_t>(hottest)];
  t.time_to_hot = 2600;
  t.time_to_open = 540;
  return t;
}

inline Likelihood likelihood() {
  Likelihood l;
  l.samples = 4096;
  l.probability = 0.931;
  l.middle_margin = 1.14;
  l.low_margin = 0.97;
  l.limits = {{LimitId::stop_torque, 0.944}, {LimitId::pad_life, 0.987}, {LimitId::tension_resolution, 0.998}};
  l.drivers = {{Input::friction, 0.58, 0.66}, {Input::cooling, 0.14, 0.2},  {Input::pressure, 0.08, 0.12},
               {Input::tension, 0.05, 0.06},  {Input::ambient, 0.03, 0.04}, {Input::caliper, 0.0, 0.01},
               {Input::drag, -0.001, 0.002}};
  return l;
}

inline TensionTarget tension() {
  TensionTarget t;
  t.setpoint = 75;
  t.low = 67.5;
  t.high = 82.5;
  t.asked = true;
  return t;
}

inline TensionWindow window() {
  TensionWindow w;
  for (int i = 0; i <= 40; ++i) {
    const double v = 0.3 + 3.0 * i / 40;
    const double air = 9 * std::pow(v, 1.6);
    w.over_speed.push_back(
        {v, 0, std::max(35.0, air), air > 35 ? BoundId::traction : BoundId::usual_least, 118.0, BoundId::strain});
    const double d = core + (full - core) * i / 40;
    const double slip = 70 + 160 * d;
    w.over_roll.push_back(
        {3.3, d, 60.8, BoundId::traction, std::min(118.0, slip), slip < 118 ? BoundId::cinching : BoundId::strain});
  }
  return w;
}

/// A job whose least margin is the one given, with limits of every kind.
inline JobFit job(const std::string& name, double margin) {
  JobFit j;
  j.job = name;
  j.pairs = 2;
  j.margin = margin;
  j.state = state_of(margin, 0.1);
  j.binding = LimitId::stop_torque;
  for (int i = 0; i < limit_count; ++i) {
    const auto id = static_cast<LimitId>(i);
    if (id == LimitId::whirl_speed) continue;
    const double more = id == j.binding ? 0 : 0.07 * ((i * 7) % 11 + 1);
    j.limits.push_back(limit(id, 1, 1, margin + more));
  }
  for (auto& each : j.limits) {
    if (each.id == LimitId::disc_temperature) each.bound = 523.15;
    if (each.id == LimitId::pad_temperature) each.bound = 473.15;
    if (each.id == LimitId::highest_pressure) each.bound = 5.5e5;
    if (each.id == LimitId::lowest_pressure) each.bound = 0.2e5;
  }
  j.tension = tension();
  j.window = window();
  j.thermal = thermal();
  j.likelihood = likelihood();
  return j;
}

inline FitResult fit(const std::string& brake, int pairs, const std::string& grade, int jobs, double worst) {
  FitResult f;
  f.fit = {brake, grade, 1, pairs};
  const std::vector<std::string> names{"paper labels", "wide paper labels", "clear labels",
                                       "overlaminate", "tickets",           "tickets, gentle"};
  for (int i = 0; i < jobs; ++i) {
    const auto at = static_cast<std::size_t>(i);
    f.jobs.push_back(job(at < names.size() ? names[at] : "trial " + std::to_string(i), worst + 0.11 * ((i * 5) % 7)));
    f.covered += f.jobs.back().state != State::fails ? 1 : 0;
    f.tight += f.jobs.back().state == State::tight ? 1 : 0;
  }
  return f;
}

/// The answer to `size` for so many jobs, `fits` of them with jobs.
inline Answer choice(int jobs = 6, int fits = 0) {
  Answer answer;
  answer.command = "size";
  auto& c = answer.choice.emplace();
  c.title = "Label slitter, unwind A (invented)";
  c.recommended = fit("disc 330", 4, "low", jobs, 0.94);
  c.envelope = envelope();
  for (int i = 0; i < fits; ++i)
    c.all.push_back(
        fit("disc " + std::to_string(330 - 20 * i), 4 - i % 4, i % 2 == 0 ? "low" : "middle", jobs, 0.94 - 0.05 * i));
  return answer;
}

/// A plan with a hand card of twelve settings.
inline JobPlan job_plan(const std::string& name = "paper labels") {
  JobPlan p;
  p.job = name;
  p.fit = {"disc 330", "low", 1, 4};
  p.pairs = 2;
  p.tension = tension();
  p.tolerance = 0.08;
  for (int i = 0; i < 10; ++i) {
    const double d = full - (full - core) * i / 9;
    p.automatic.push_back({d, 1e5 * (0.05 + 4.7 * d), 37 * d, 75});
  }
  const double ratio = std::pow(full / core, 1.0 / 12);
  for (int i = 0; i < 12; ++i) {
    const double from = full / std::pow(ratio, i);
    const double mean = from * 2 / (1 + ratio);
    p.by_hand.push_back(
        {from, from / ratio, 1e3 * std::round(100 * (0.05 + 4.7 * mean)), 75 * mean / from, 75 * mean / from * ratio});
  }
  return p;
}

inline Answer plan(int jobs = 2) {
  Answer answer;
  answer.command = "plan";
  auto& p = answer.plan.emplace();
  for (int i = 0; i < jobs; ++i) p.jobs.push_back(job_plan(i == 0 ? "paper labels" : "trial " + std::to_string(i)));
  return answer;
}

}  // namespace holdback::samples
