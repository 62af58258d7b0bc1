// What the tests of model/ share: a sound stand to break, and a search in the problems found.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "holdback/model/stand.hpp"

namespace holdback::testing {

inline Web sound_web() {
  Web web;
  web.name = "film";
  web.width = 1.2;
  web.caliper = 25e-6;
  web.density = 1390;
  web.basis_weight = 25e-6 * 1390;
  web.modulus = 4e9;
  web.yield_strength = 90e6;
  web.wound_tension = 250;
  return web;
}

inline Roll sound_roll() {
  Roll roll;
  roll.name = "large";
  roll.core_diameter = 0.1524;
  roll.full_diameter = 1;
  roll.runout = 0.002;
  return roll;
}

inline Job sound_job() {
  Job job;
  job.name = "film on large";
  job.web = sound_web();
  job.roll = sound_roll();
  job.speed = 5;
  job.tension = 200;
  job.stop_time = 8;
  job.emergency_stop_time = 3;
  return job;
}

inline Line sound_line() {
  Line line;
  line.top_speed = 6;
  line.lowest_speed = 0.2;
  line.stop_time = 10;
  line.emergency_stop_time = 4;
  return line;
}

inline Grade sound_grade() {
  Grade grade;
  grade.name = "medium";
  grade.friction = 0.35;
  grade.torque_per_pair = 40;
  grade.fade_start = 450;
  grade.temperature_limit = 500;
  grade.wear_knee = 430;
  return grade;
}

inline Brake sound_brake() {
  Brake brake;
  brake.name = "D300";
  brake.pad = SectorPad{0.2, 0.3, 0.6};
  brake.pairs = 4;
  brake.piston_area = 2e-3;
  brake.threshold_pressure = 2e4;
  brake.pad_area = 0.3 * (0.15 * 0.15 - 0.1 * 0.1);
  brake.cooling = {{10, 900}, {60, 3000}};
  brake.cooling_rise = 150;
  brake.rated_pressure = 6e5;
  brake.rated_temperature = 520;
  brake.grades = {sound_grade()};
  return brake;
}

inline AirSupply sound_air() { return {6e5, 3e4, 6e5, 1e3, 2e3}; }

inline Stand sound_stand() {
  Stand stand;
  stand.ambient = 293.15;
  stand.air = sound_air();
  stand.line = sound_line();
  stand.webs = {sound_web()};
  stand.rolls = {sound_roll()};
  stand.jobs = {sound_job()};
  stand.brakes = {sound_brake()};
  return stand;
}

/// Exactly one problem, of this severity, at this field, whose every place {n} has its amount.
inline ::testing::AssertionResult only(const Problems& problems, Severity severity, const std::string& field) {
  if (problems.size() != 1) {
    auto result = ::testing::AssertionFailure() << problems.size() << " problems:";
    for (const Problem& problem : problems) result << "\n  " << problem.field << ": " << problem.what.text;
    return result;
  }
  const Problem& problem = problems.front();
  if (problem.severity != severity) return ::testing::AssertionFailure() << "wrong severity: " << problem.what.text;
  if (problem.field != field) return ::testing::AssertionFailure() << "at " << problem.field;
  for (const Note* note : {&problem.what, &problem.accepted}) {
    const auto places = std::count(note->text.begin(), note->text.end(), '{');
    if (places != static_cast<std::ptrdiff_t>(note->amounts.size())) {
      return ::testing::AssertionFailure() << note->amounts.size() << " amounts in: " << note->text;
    }
  }
  if (problem.what.text.back() != '.') return ::testing::AssertionFailure() << "no sentence: " << problem.what.text;
  return ::testing::AssertionSuccess();
}

inline ::testing::AssertionResult one_error(const Problems& problems, const std::string& field) {
  return only(problems, Severity::error, field);
}

inline ::testing::AssertionResult one_warning(const Problems& problems, const std::string& field) {
  return only(problems, Severity::warning, field);
}

}  // namespace holdback::testing
