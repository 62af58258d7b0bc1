#include "holdback/field/orders.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace holdback::field {
namespace {

using std::numbers::pi;

// The roll of published check F-3: 5 m/s, 0.40 m, 0.2 mm, a minute at 500 Hz.
LogStand stand_of_check() {
  LogStand stand;
  stand.core_radius = 0.05;
  stand.full_radius = 0.4;
  stand.caliper = 0.2e-3;
  stand.speed = 5;
  stand.tension.setpoint = 100;
  return stand;
}

double radius_at(double t) { return std::sqrt(0.4 * 0.4 - 0.2e-3 * 5 * t / pi); }
double angle_at(double t) { return (0.4 - radius_at(t)) * 2 * pi / 0.2e-3; }

double uneven(int i) { return std::sin(12.9898 * i * i) + std::sin(78.233 * i); }  // ± 2, no pattern in time

/// Buckets of a quarter of a second with what `fill` puts in each row.
template <class Fill>
void run(DiameterTrack& track, Fill fill) {
  for (int k = 0; k < 240; ++k) {
    LogBucket bucket;
    for (int i = 0; i < 25; ++i) {
      LogRow row;
      row.value.fill(no_reading);
      const double t = 0.25 * k + 0.01 * (i + 1);
      row[LogChannel::time] = t;
      row[LogChannel::speed] = 5;
      row.step = 0.01;
      fill(row, t, 25 * k + i);
      bucket.rows.push_back(row);
    }
    for (const LogRow& row : bucket.rows)
      for (std::size_t c = 1; c < log_channels; ++c) bucket.mean[c].add(row.value[c]);
    track.put(bucket, 0.25 * 5);
  }
}

TEST(DiameterTrack, smooths_a_noisy_sensor_without_lagging_behind) {
  const LogStand stand = stand_of_check();
  DiameterTrack track(stand, true, false);
  run(track, [](LogRow& row, double t, int i) { row[LogChannel::diameter] = 2 * radius_at(t) + 0.002 * uneven(i); });
  EXPECT_EQ(track.source(), DiameterSource::logged);
  EXPECT_NEAR(track.radius(), radius_at(60), 2e-4);
}

TEST(DiameterTrack, estimates_from_speed_and_turns) {
  const LogStand stand = stand_of_check();
  DiameterTrack track(stand, false, true);
  run(track, [](LogRow& row, double t, int /*unused*/) { row[LogChannel::turns] = angle_at(t); });
  EXPECT_EQ(track.source(), DiameterSource::turns);
  EXPECT_NEAR(track.radius(), radius_at(60), 2e-3);
}

TEST(DiameterTrack, takes_the_roll_for_full_where_nothing_else_is_logged) {
  const LogStand stand = stand_of_check();
  DiameterTrack track(stand, false, false);
  run(track, [](LogRow& /*unused*/, double /*unused*/, int /*unused*/) {});
  EXPECT_EQ(track.source(), DiameterSource::web_run);
  EXPECT_NEAR(track.radius(), radius_at(60), 1e-6);
}

TEST(DiameterTrack, sees_a_new_roll_but_not_a_reading_that_is_far_off) {
  const LogStand stand = stand_of_check();
  DiameterTrack track(stand, true, false);
  bool changed = false;
  run(track, [&](LogRow& row, double t, int i) {
    const double full = t < 30 ? 0.5 : 0.78, run = 5 * (t < 30 ? t : t - 30);
    const double there = std::sqrt(full * full - 4 * 0.2e-3 * run / pi);
    row[LogChannel::diameter] = i > 500 && i < 520 ? 0.11 : there;
    changed = changed || (t < 29 && track.new_roll());
  });
  EXPECT_FALSE(changed);
  EXPECT_NEAR(2 * track.radius(), std::sqrt(0.78 * 0.78 - 4 * 0.2e-3 * 150 / pi), 0.003);
}

/// Amplitude of the line next to a place: from the density summed over its lobe.
double amplitude_at(const numerics::Spectrum& density, double place) {
  const auto k = static_cast<std::size_t>(std::lround(place / density.step));
  double power = 0;
  for (std::size_t i = k - 3; i <= k + 3; ++i) power += density.value.at(i) * density.step;
  return std::sqrt(2 * power);
}

// The signal of F-3 through the judge's own streams: amplitudes by order as put in, 0.6 at 8 Hz by time.
TEST(LogSpectra, finds_orders_of_a_roll_that_shrinks_and_lines_that_keep_their_time) {
  const LogStand stand = stand_of_check();
  LogSpectra spectra(stand, 500);
  for (int i = 0; i < 30000; ++i) {
    const double t = i / 500.0, theta = angle_at(t);
    spectra.put(t, 100 + std::sin(theta) + 0.4 * std::sin(3 * theta + 0.5) + 0.6 * std::sin(2 * pi * 8 * t), theta,
                5 * t, 2e5);
  }
  const numerics::Spectrum order = spectra.by_order(), time = spectra.by_time();
  ASSERT_FALSE(order.value.empty());
  ASSERT_FALSE(time.value.empty());
  EXPECT_NEAR(amplitude_at(order, 1), 1, 0.01);
  EXPECT_NEAR(amplitude_at(order, 3), 0.4, 0.02);  // the smeared line at 8 Hz passes near order 4
  EXPECT_NEAR(amplitude_at(time, 8), 0.6, 0.01);
}

TEST(LogSpectra, brings_uneven_rows_onto_even_times) {
  const LogStand stand = stand_of_check();
  LogSpectra spectra(stand, 100);
  for (int i = 0; i < 20000; ++i) {
    const double t = i / 100.0 + 0.002 * std::sin(1.7 * i);
    spectra.put(t, 100 + std::sin(2 * pi * 3 * t), no_reading, 5 * t, no_reading);
  }
  EXPECT_NEAR(amplitude_at(spectra.by_time(), 3), 1, 0.01);
  EXPECT_TRUE(spectra.by_order().value.empty());
}

TEST(LogSpectra, decimates_fast_logs_and_keeps_what_is_slow) {
  const LogStand stand = stand_of_check();
  LogSpectra spectra(stand, 5000);
  EXPECT_NEAR(spectra.rate(), 5000.0 / 19, 1e-9);
  for (int i = 0; i < 500000; ++i) {
    const double t = i / 5000.0;
    spectra.put(t, std::sin(2 * pi * 7 * t) + std::sin(2 * pi * (5000.0 / 19 + 4) * t), angle_at(t / 2), 2.5 * t,
                no_reading);
  }
  EXPECT_NEAR(amplitude_at(spectra.by_time(), 7), 1, 0.01);
  EXPECT_LT(amplitude_at(spectra.by_time(), 4), 0.01);  // where the fast one would fold to
}

}  // namespace
}  // namespace holdback::field
