#include "holdback/field/log_phases.hpp"

#include <gtest/gtest.h>

#include "holdback/field/log_changes.hpp"

namespace holdback::field {
namespace {

LogStand stand() {
  LogStand made;
  made.tension.setpoint = 100;
  made.tension.low = 90;
  made.tension.high = 110;
  made.top_speed = 5;
  made.speed = 5;
  made.ramp_rate = 0.25;
  made.stop_rate = 0.5;
  made.emergency_rate = 1.5;
  made.stop_share = 0.8;
  made.emergency_share = 0.25;
  return made;
}

TEST(phase_of, tells_stops_from_emergency_stops_by_their_rate) {
  const PhaseBounds bounds = phase_bounds(stand());
  EXPECT_EQ(phase_of(bounds, 0, 0, 0), LogPhase::standstill);
  EXPECT_EQ(phase_of(bounds, 3, 0, 0), LogPhase::steady);
  EXPECT_EQ(phase_of(bounds, 3, 0.25, 0), LogPhase::ramp_up);
  EXPECT_EQ(phase_of(bounds, 3, -0.5, 0), LogPhase::ramp_down);
  EXPECT_EQ(phase_of(bounds, 3, -1.5, 0), LogPhase::emergency_stop);
  EXPECT_EQ(phase_of(bounds, 3, 0.25, 0.1), LogPhase::steady);  // chance makes such a slope
}

/// A day of speeds in pieces of (seconds, speed at the end), each even; tension by time.
struct Day {
  std::vector<std::pair<double, double>> pieces;
  double (*tension)(double);
};

std::vector<LogBucket> judged(const Day& day) {
  const LogStand known = stand();
  PhaseFinder finder(known);
  std::vector<LogBucket> out;
  LogBucket one;
  double begin = 0, speed = 0;
  for (const auto& [lasts, target] : day.pieces) {
    for (double t = 0; t < lasts - 1e-9; t += 0.25) {
      LogBucket bucket;
      bucket.begin = begin + t;
      bucket.end = bucket.begin + 0.25;
      for (int i = 0; i < 10; ++i) {
        LogRow row;
        row.value.fill(no_reading);
        const double at = t + 0.025 * i;
        row[LogChannel::time] = begin + at;
        row[LogChannel::speed] = speed + (target - speed) * at / lasts + 0.002 * ((i * 7) % 5 - 2);
        row[LogChannel::tension] = day.tension(begin + at);
        row.step = 0.025;
        bucket.rows.push_back(row);
        for (std::size_t c = 1; c < log_channels; ++c) bucket.mean[c].add(row.value[c]);
      }
      if (finder.put(std::move(bucket), one)) out.push_back(one);
    }
    begin += lasts;
    speed = target;
  }
  while (finder.finish(one)) out.push_back(one);
  return out;
}

const Day usual{{{5, 0}, {20, 5}, {20, 5}, {10, 0}, {5, 0}}, [](double /*unused*/) { return 100.0; }};

TEST(PhaseFinder, follows_the_line_through_a_day) {
  const auto buckets = judged(usual);
  ASSERT_EQ(buckets.size(), 240U);
  double time[5]{};
  for (const LogBucket& bucket : buckets) time[static_cast<int>(bucket.phase)] += bucket.length();
  EXPECT_NEAR(time[static_cast<int>(LogPhase::standstill)], 10, 1.5);
  EXPECT_NEAR(time[static_cast<int>(LogPhase::ramp_up)], 20, 1.5);
  EXPECT_NEAR(time[static_cast<int>(LogPhase::steady)], 20, 1.5);
  EXPECT_NEAR(time[static_cast<int>(LogPhase::ramp_down)], 10, 1.5);
  EXPECT_EQ(time[static_cast<int>(LogPhase::emergency_stop)], 0);
  for (std::size_t i = 1; i < buckets.size(); ++i) EXPECT_GT(buckets[i].begin, buckets[i - 1].begin);
}

std::vector<LogChange> changes_of(const Day& day) {
  const LogStand known = stand();
  ChangeFinder finder(known);
  for (const LogBucket& bucket : judged(day)) finder.put(bucket);
  finder.finish();
  return finder.changes();
}

TEST(ChangeFinder, finds_each_ramp_and_stop_with_its_speeds_and_rate) {
  const auto changes = changes_of(usual);
  ASSERT_EQ(changes.size(), 2U);
  EXPECT_EQ(changes[0].phase, LogPhase::ramp_up);
  EXPECT_NEAR(changes[0].begin, 5, 0.8);
  EXPECT_NEAR(changes[0].to_speed, 5, 0.15);
  EXPECT_NEAR(changes[0].rate, 0.25, 0.02);
  EXPECT_EQ(changes[1].phase, LogPhase::ramp_down);
  EXPECT_NEAR(changes[1].from_speed, 5, 0.15);
  EXPECT_NEAR(changes[1].rate, -0.5, 0.05);
  for (const LogChange& change : changes) EXPECT_EQ(change.state, State::holds) << change.verdict.text;
}

TEST(ChangeFinder, sees_slack_in_an_emergency_stop) {
  const auto changes =
      changes_of({{{20, 5}, {20, 5}, {3, 0}, {5, 0}}, [](double t) { return t > 40.5 && t < 42.5 ? 0.5 : 100.0; }});
  ASSERT_EQ(changes.size(), 2U);
  EXPECT_EQ(changes[1].phase, LogPhase::emergency_stop);
  EXPECT_EQ(changes[1].state, State::fails);
  EXPECT_NEAR(changes[1].slack, 2, 0.1);
  EXPECT_NEAR(changes[1].lowest_tension, 0.5, 1e-9);
}

TEST(ChangeFinder, tells_how_long_the_tension_stays_outside) {
  const auto changes =
      changes_of({{{20, 5}, {20, 5}, {10, 2}, {20, 2}}, [](double t) { return t > 45 && t < 54 ? 115.0 : 100.0; }});
  ASSERT_EQ(changes.size(), 2U);
  EXPECT_EQ(changes[1].state, State::tight);
  EXPECT_TRUE(changes[1].settles);
  EXPECT_NEAR(changes[1].settling, 4, 0.8);
}

TEST(ChangeFinder, judges_a_stop_by_the_share_that_must_remain) {
  const auto low = [](double t) { return t > 42 && t < 48 ? 70.0 : 100.0; };
  const auto changes = changes_of({{{20, 5}, {20, 5}, {10, 0}, {5, 0}}, low});
  ASSERT_EQ(changes.size(), 2U);
  EXPECT_EQ(changes[1].state, State::fails);
}

}  // namespace
}  // namespace holdback::field
