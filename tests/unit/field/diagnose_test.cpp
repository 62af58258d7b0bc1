// Logs written down as formulas, each with one thing wrong that a person put in.
#include "holdback/field/diagnose.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>
#include <limits>
#include <numbers>
#include <stdexcept>

namespace holdback::field {
namespace {

using std::numbers::pi;

constexpr double full = 0.4, caliper = 0.15e-3;  // [m] of the roll

/// A hand-set stand of four pairs: 1 N·m for 10 kPa over 10 kPa, drag 0.5 N·m, no inertia worth a name.
LogStand stand() {
  LogStand made;
  made.title = "stand of formulas (invented)";
  made.log = "log";
  made.tension = {100, 88, 112, true, 0, 0, 0, "", 0};
  made.control = ControlKind::diameter;
  made.core_radius = 0.05;
  made.full_radius = full;
  made.caliper = caliper;
  made.pairs = 4;
  made.brakes = 1;
  made.torque_per_pressure = 1e-4;
  made.threshold = 1e4;
  made.drag = 0.5;
  made.friction_band = 0.06;
  made.resolution = 500;
  made.hysteresis = 500;
  made.top_speed = made.speed = 4;
  made.ramp_rate = 0.2;
  made.stop_rate = 0.4;
  made.emergency_rate = 1.2;
  made.stop_share = 0.7;
  made.emergency_share = 0.25;
  made.idlers = {{"guide", 0.12}};
  made.loop = {{full, 12, 0, 0, 0, 0, 0, 0, 1}, {0.05, 40, 0, 0, 0, 0, 0, 0, 1}};
  return made;
}

/// What a row is made of.
struct Moment {
  double time, speed, radius, angle, run;
};

/// Noise that is the same everywhere: SplitMix64 (Steele, Lea, Flood), even between -1 and 1.
class Noise {
 public:
  double next() {
    state_ += 0x9e3779b97f4a7c15U;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
    z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
    return static_cast<double>((z ^ (z >> 31U)) >> 11U) * 0x1p-52 - 1;
  }

 private:
  std::uint64_t state_{7};
};

struct Log {
  double lasts{300};
  double rate{100};
  std::function<double(double)> speed{[](double /*unused*/) { return 4.0; }};
  std::function<double(const Moment&)> tension{[](const Moment& /*unused*/) { return 100.0; }};
  std::function<double(const Moment&, double)> pressure{
      [](const Moment& m, double force) { return 1e4 + (force * m.radius - 0.5) / 1e-4; }};
  std::function<double(const Moment&)> temperature{};

  LogBlock block() const {
    LogBlock made;
    Noise noise;
    Moment m{0, 0, full, 0, 0};
    const auto rows = static_cast<std::size_t>(lasts * rate);
    for (std::size_t i = 0; i < rows; ++i) {
      m.time = static_cast<double>(i) / rate;
      m.speed = speed(m.time);
      m.radius = std::sqrt(full * full - caliper * m.run / pi);
      const double clean = tension(m);
      made.of(LogChannel::time).push_back(m.time);
      made.of(LogChannel::speed).push_back(m.speed + 0.004 * noise.next());
      made.of(LogChannel::tension).push_back(clean + 0.5 * noise.next());
      made.of(LogChannel::pressure).push_back(pressure(m, std::clamp(clean, 80.0, 130.0)) + 200 * noise.next());
      made.of(LogChannel::diameter).push_back(2 * m.radius + 0.0005 * noise.next());
      if (temperature) made.of(LogChannel::temperature).push_back(temperature(m) + 0.2 * noise.next());
      m.run += m.speed / rate;
      m.angle += m.speed / rate / m.radius;
    }
    made.rows = rows;
    return made;
  }
};

Diagnosis judged(const LogBlock& block, const LogStand& known = stand()) {
  LogJudge judge(known);
  judge.put(block);
  return judge.finish();
}

CauseKind first(const Diagnosis& diagnosis) { return diagnosis.causes.front().kind; }

double two_speeds(double t) { return t < 150 ? 4 : t < 156 ? 4 - (t - 150) / 3 : 2; }

TEST(LogJudge, finds_nothing_wrong_with_a_quiet_log) {
  const Diagnosis found = judged(Log{}.block());
  EXPECT_EQ(first(found), CauseKind::none);
  EXPECT_EQ(found.state, State::holds);
  EXPECT_EQ(found.rows, 30000);
  EXPECT_NEAR(found.interval, 0.01, 1e-9);
  EXPECT_EQ(found.gaps, 0);
  ASSERT_EQ(found.phases.size(), 1U);
  EXPECT_EQ(found.phases[0].phase, LogPhase::steady);
  EXPECT_NEAR(found.phases[0].inside, 1, 1e-9);
  EXPECT_NEAR(found.phases[0].mean, 100, 0.05);
  EXPECT_NEAR(found.phases[0].deviation, 0.5 / std::sqrt(3.0), 0.02);  // of the noise put in
  EXPECT_NEAR(found.friction.level, 1, 0.01);
  EXPECT_NEAR(found.web_run, 1200, 1);
  EXPECT_NEAR(found.last_diameter, 2 * std::sqrt(full * full - caliper * 1200 / pi), 1e-3);
  EXPECT_LE(found.trace.time.size(), 1200U);
  EXPECT_LE(found.by_frequency.place.size(), 2000U);
  EXPECT_FALSE(found.assumptions.empty());
  EXPECT_FALSE(found.cautions.empty());
}

TEST(LogJudge, names_a_roll_out_of_round) {
  Log log;
  log.tension = [](const Moment& m) { return 100 + 5 * std::sin(m.angle) + 2 * std::sin(2 * m.angle + 1); };
  const Diagnosis found = judged(log.block());
  EXPECT_EQ(first(found), CauseKind::runout);
  ASSERT_GE(found.peaks.size(), 2U);
  EXPECT_EQ(found.peaks[0].source, PeakSource::roll);
  EXPECT_NEAR(found.peaks[0].amplitude, 5, 0.15);
  EXPECT_NEAR(found.peaks[0].order, 1, 0.01);
  EXPECT_EQ(found.peaks[1].harmonic, 2);
  EXPECT_NEAR(found.peaks[1].amplitude, 2, 0.15);
}

TEST(LogJudge, takes_a_declared_runout_for_no_fault) {
  Log log;
  log.tension = [](const Moment& m) { return 100 + 3 * std::sin(m.angle); };
  LogStand known = stand();
  for (LoopPoint& point : known.loop) point.runout_tension = 3;
  EXPECT_EQ(first(judged(log.block(), known)), CauseKind::none);
}

TEST(LogJudge, names_the_idler_whose_turns_the_tension_keeps) {
  Log log;
  log.speed = two_speeds;
  log.tension = [](const Moment& m) { return 100 + 4 * std::sin(m.run / 0.06); };
  const Diagnosis found = judged(log.block());
  EXPECT_EQ(first(found), CauseKind::idler);
  EXPECT_EQ(found.peaks[0].idler, "guide");
  EXPECT_NEAR(found.peaks[0].diameter, 0.12, 1e-9);
}

TEST(LogJudge, gives_the_diameter_of_a_roller_that_the_stand_file_does_not_have) {
  Log log;
  log.speed = two_speeds;
  log.tension = [](const Moment& m) { return 100 + 4 * std::sin(m.run / 0.045); };
  const Diagnosis found = judged(log.block());
  EXPECT_EQ(first(found), CauseKind::idler);
  EXPECT_TRUE(found.peaks[0].idler.empty());
  EXPECT_NEAR(found.peaks[0].diameter, 0.09, 0.001);
}

TEST(LogJudge, names_hum_and_where_sampling_puts_it) {
  Log log;
  log.rate = 128;  // 50 Hz as it is; 60 Hz too
  log.tension = [](const Moment& m) { return 100 + 3 * std::sin(2 * pi * 50 * m.time); };
  EXPECT_EQ(first(judged(log.block())), CauseKind::hum);
  log.rate = 80;  // 50 Hz comes as 30 Hz
  EXPECT_EQ(first(judged(log.block())), CauseKind::hum);
}

TEST(LogJudge, names_a_dead_pair_by_the_level_of_friction) {
  Log log;
  log.pressure = [](const Moment& m, double tension) { return 1e4 + (tension * m.radius - 0.5) / 0.75e-4; };
  const Diagnosis found = judged(log.block());
  EXPECT_EQ(first(found), CauseKind::dead_pair);
  EXPECT_NEAR(found.friction.level, 0.75, 0.01);
  EXPECT_FALSE(found.causes[0].to_tell_apart.text.empty());  // low friction looks the same
}

TEST(LogJudge, sees_the_moment_at_which_a_pair_stops) {
  Log log;
  log.pressure = [](const Moment& m, double tension) {
    return 1e4 + (tension * m.radius - 0.5) / (m.time < 140 ? 1e-4 : 0.75e-4);
  };
  const Diagnosis found = judged(log.block());
  EXPECT_EQ(first(found), CauseKind::dead_pair);
  ASSERT_EQ(found.causes[0].what.amounts.size(), 3U);
  EXPECT_NEAR(found.causes[0].what.amounts[2].value, 140, 5);
}

TEST(LogJudge, tells_glaze_from_fade_by_the_temperature) {
  Log log;
  const auto falls = [](double share) {
    return [share](const Moment& m, double tension) {
      return 1e4 + (tension * m.radius - 0.5) / (1e-4 * (1 - share * m.time / 300));
    };
  };
  log.pressure = falls(0.25);
  const Diagnosis glaze = judged(log.block());
  EXPECT_EQ(first(glaze), CauseKind::glazing);
  EXPECT_NEAR(glaze.friction.change, -0.25, 0.02);
  EXPECT_FALSE(glaze.causes[0].to_tell_apart.text.empty());  // without temperature heat does the same
  // Heat that comes and goes, and friction with it.
  const auto warm = [](const Moment& m) { return 350 + 60 * std::pow(std::sin(pi * m.time / 420), 2); };
  log.temperature = warm;
  log.pressure = [warm](const Moment& m, double tension) {
    return 1e4 + (tension * m.radius - 0.5) / (1e-4 * (1 - 0.005 * (warm(m) - 350)));
  };
  EXPECT_EQ(first(judged(log.block())), CauseKind::fade);
}

TEST(LogJudge, names_a_gauge_that_is_off_by_the_same_everywhere) {
  Log log;
  log.lasts = 600;
  log.pressure = [](const Moment& m, double tension) { return 4.5e4 + 1e4 + (tension * m.radius - 0.5) / 1e-4; };
  const Diagnosis found = judged(log.block());
  EXPECT_EQ(first(found), CauseKind::pressure_gauge);
  EXPECT_NEAR(found.causes[0].what.amounts.at(0).value, 4.5e4, 4e3);
}

TEST(LogJudge, names_a_card_that_nobody_followed) {
  LogStand known = stand();
  known.control = ControlKind::hand;
  Log log;
  log.lasts = 500;
  log.tension = [](const Moment& m) { return 90 * full / m.radius; };
  log.pressure = [](const Moment& /*unused*/, double /*unused*/) { return 1e4 + (90 * full - 0.5) / 1e-4; };
  const Diagnosis found = judged(log.block(), known);
  EXPECT_EQ(first(found), CauseKind::hand_card);
  EXPECT_EQ(found.state, State::fails);
}

TEST(LogJudge, finds_the_turns_of_a_hand) {
  LogStand known = stand();
  known.control = ControlKind::hand;
  Log log;
  const auto setting = [](double t) { return t < 100 ? 4e5 : t < 200 ? 3.8e5 : 3.5e5; };
  log.pressure = [=](const Moment& m, double /*unused*/) { return setting(m.time); };
  log.tension = [=](const Moment& m) { return (0.5 + 1e-4 * (setting(m.time) - 1e4)) / m.radius; };
  const Diagnosis found = judged(log.block(), known);
  ASSERT_EQ(found.hand_turns.size(), 2U);
  EXPECT_NEAR(found.hand_turns[0].time, 100, 1);
  EXPECT_NEAR(found.hand_turns[0].pressure_before, 4e5, 500);
  EXPECT_NEAR(found.hand_turns[1].pressure_after, 3.5e5, 500);
}

TEST(LogJudge, names_a_regulator_that_moves_in_jumps) {
  Log log;
  const auto stepped = [](const Moment& m) {
    return 2.5e4 * std::round((1e4 + (100 * m.radius - 0.5) / 1e-4) / 2.5e4);
  };
  log.lasts = 700;
  log.pressure = [=](const Moment& m, double /*unused*/) { return stepped(m); };
  log.tension = [=](const Moment& m) { return (0.5 + 1e-4 * (stepped(m) - 1e4)) / m.radius; };
  EXPECT_EQ(first(judged(log.block())), CauseKind::regulator);
}

TEST(LogJudge, names_a_sensor_that_drops_out_and_leaves_its_rows_out) {
  LogBlock block = Log{}.block();
  for (std::size_t i = 1000; i < block.rows; i += 1500)
    for (std::size_t k = i; k < i + 4; ++k) block.of(LogChannel::tension)[k] = 0;
  const Diagnosis found = judged(block);
  EXPECT_EQ(first(found), CauseKind::sensor);
  const auto tension = std::find_if(found.channels.begin(), found.channels.end(),
                                    [](const ChannelFacts& c) { return c.channel == LogChannel::tension; });
  EXPECT_EQ(tension->dropouts, 20);
  EXPECT_EQ(tension->missing, 80);
  EXPECT_GT(tension->lowest, 99);
}

TEST(LogJudge, names_a_sensor_that_stands_still) {
  LogBlock block = Log{}.block();
  for (std::size_t k = 9000; k < 11000; ++k) block.of(LogChannel::tension)[k] = block.of(LogChannel::tension)[9000];
  const Diagnosis found = judged(block);
  EXPECT_EQ(first(found), CauseKind::sensor);
}

TEST(LogJudge, tells_of_holes_and_does_not_reach_over_them) {
  LogBlock block = Log{}.block();
  for (std::size_t k = 12000; k < block.rows; ++k) block.of(LogChannel::time)[k] += 30;
  const Diagnosis found = judged(block);
  EXPECT_EQ(found.gaps, 1);
  ASSERT_EQ(found.longest_gaps.size(), 1U);
  EXPECT_NEAR(found.longest_gaps[0].begin, 119.99, 1e-6);
  EXPECT_NEAR(found.longest_gaps[0].end, 150, 1e-6);
  EXPECT_EQ(first(found), CauseKind::none);
}

TEST(LogJudge, says_the_same_whatever_the_blocks) {
  Log log;
  log.tension = [](const Moment& m) { return 100 + 5 * std::sin(m.angle); };
  const LogBlock whole = log.block();
  const Diagnosis at_once = judged(whole);
  LogJudge judge(stand());
  for (std::size_t begin = 0; begin < whole.rows; begin += 777) {
    LogBlock part;
    part.rows = std::min<std::size_t>(777, whole.rows - begin);
    for (std::size_t c = 0; c < log_channels; ++c)
      if (!whole.channel[c].empty())
        part.channel[c].assign(whole.channel[c].begin() + static_cast<std::ptrdiff_t>(begin),
                               whole.channel[c].begin() + static_cast<std::ptrdiff_t>(begin + part.rows));
    judge.put(part);
  }
  const Diagnosis bit_by_bit = judge.finish();
  EXPECT_EQ(bit_by_bit.by_order.amplitude, at_once.by_order.amplitude);
  EXPECT_EQ(bit_by_bit.trace.tension, at_once.trace.tension);
  EXPECT_EQ(bit_by_bit.causes.front().confidence, at_once.causes.front().confidence);
}

TEST(LogJudge, does_not_call_a_log_sound_that_is_never_inside_its_window) {
  LogBlock block;
  block.rows = 6000;
  for (std::size_t i = 0; i < block.rows; ++i) {
    block.of(LogChannel::time).push_back(0.01 * static_cast<double>(i));
    block.of(LogChannel::tension).push_back(3 * stand().tension.high);
  }
  LogJudge judge(stand());
  judge.put(block);
  const Diagnosis found = judge.finish();
  EXPECT_EQ(found.causes.front().kind, CauseKind::none);
  EXPECT_THAT(found.causes.front().what.text, testing::HasSubstr("outside of its window"));
  EXPECT_LT(found.causes.front().confidence, 0.7) << "one minute tells little";
  EXPECT_EQ(found.state, State::fails);
}

TEST(LogJudge, bears_logs_with_next_to_nothing_in_them) {
  EXPECT_FALSE(LogJudge(stand()).finish().causes.empty());
  for (const std::size_t rows : {1U, 2U, 3U, 30U}) {
    LogBlock block;
    block.rows = rows;
    for (std::size_t i = 0; i < rows; ++i) {
      block.of(LogChannel::time).push_back(static_cast<double>(i));
      block.of(LogChannel::tension).push_back(i % 2 == 0 ? std::numeric_limits<double>::quiet_NaN() : 100);
    }
    const Diagnosis found = judged(block);
    EXPECT_FALSE(found.causes.empty());
    EXPECT_EQ(found.rows, static_cast<double>(rows));
  }
}

TEST(LogJudge, bears_a_log_of_no_readings_at_all) {
  LogBlock block = Log{}.block();
  for (std::size_t c = 1; c < log_channels; ++c)
    std::fill(block.channel[c].begin(), block.channel[c].end(), std::numeric_limits<double>::quiet_NaN());
  EXPECT_FALSE(judged(block).causes.empty());
}

TEST(LogJudge, refuses_blocks_without_times_or_of_another_shape) {
  LogBlock block;
  block.rows = 1;
  block.of(LogChannel::tension) = {1};
  LogJudge judge(stand());
  EXPECT_THROW(judge.put(block), std::invalid_argument);
  block.of(LogChannel::time) = {1};
  judge.put(block);
  block.of(LogChannel::time) = {2, 3};
  EXPECT_THROW(judge.put(block), std::invalid_argument);
}

}  // namespace
}  // namespace holdback::field
