#include "holdback/sizing/commissioning.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "holdback/sizing/choose.hpp"
#include "support/stands.hpp"

namespace holdback::sizing {
namespace {

Commissioning commissioning_of(const Stand& stand, double step = 1e4) {
  return commissioning(stand, *choose(stand, {}).recommended, step);
}

/// A stand whose brake is known by its data sheet: 50 N·m a pair at 5.1 bar, threshold 0.1 bar.
Stand data_sheet_stand() {
  Stand stand = test::small_stand();
  Brake& brake = stand.brakes.front();
  brake.pad = DataSheetPad{5.1e5, 0.325};
  brake.grades.front().torque_per_pair = 50;
  brake.most_brakes = 1;
  return stand;
}

// Worked by hand: 10 N·m a bar above 0.1 bar and a pair, 0.8 + 0.2 N·m of drag; friction ±20 %, a setting off by 0.02
// bar, drag ±30 %.
TEST(commissioning, expects_what_the_data_sheet_says) {
  const auto all = commissioning_of(data_sheet_stand());
  ASSERT_FALSE(all.points.empty());
  EXPECT_NEAR(all.band_low, 0.8, 1e-12);
  EXPECT_NEAR(all.band_high, 1.2, 1e-12);
  for (const auto& point : all.points) {
    const double bar = point.pressure / 1e5;
    const bool set = bar > 0;
    EXPECT_NEAR(point.torque, (set ? 10 * point.pairs * (bar - 0.1) : 0) + 1, 1e-9);
    EXPECT_NEAR(point.torque_low, (set ? 8 * point.pairs * std::max(0.0, bar - 0.12) : 0) + 0.7, 1e-9);
    EXPECT_NEAR(point.torque_high, (set ? 12 * point.pairs * (bar - 0.08) : 0) + 1.3, 1e-9);
    EXPECT_NEAR(point.pull, point.torque / 0.5, 1e-9);  // full roll of 1 m
  }
}

/// Nothing that is asked for may hurt, whatever the friction of the grade and however the setting is off.
void expect_within(const Commissioning& all, const Stand& stand) {
  const Brake& brake = stand.brakes.front();
  for (const auto& point : all.points) {
    EXPECT_LE(point.pressure, std::min({stand.air.supply_pressure, stand.air.highest_pressure, brake.rated_pressure}));
    EXPECT_TRUE(point.pressure == 0 || point.pressure >= stand.air.lowest_pressure);
    EXPECT_LE(point.torque_high - all.drag_high, all.fit.brakes * brake.rated_torque * (1 + 1e-9));
    EXPECT_LE(point.torque_high / (all.least_diameter / 2), all.highest_pull * (1 + 1e-9));
    EXPECT_LE(point.torque_low, point.torque);
    EXPECT_LE(point.torque, point.torque_high);
  }
}

TEST(commissioning, never_goes_beyond_ratings_regulator_and_web) {
  const auto vary = [](const auto& change) {
    Stand stand = test::small_stand();
    change(stand);
    expect_within(commissioning_of(stand), stand);
  };
  vary([](Stand&) {});
  vary([](Stand& stand) { stand.brakes.front().rated_torque = 60; });
  vary([](Stand& stand) { stand.brakes.front().rated_pressure = 1e5; });
  vary([](Stand& stand) { stand.air.supply_pressure = 0.7e5; });
  vary([](Stand& stand) { stand.jobs.front().tension = 40; });
  vary([](Stand& stand) { stand.jobs.front().tension = 2000; });
  vary([](Stand& stand) { stand.air.lowest_pressure = 1e5; });
}

TEST(commissioning, reads_up_and_down_with_fewest_and_most_pairs_and_every_number_between) {
  const auto all = commissioning_of(test::small_stand());
  const auto count = [&](int pairs, PressureCourse course) {
    return std::count_if(all.points.begin(), all.points.end(), [&](const CommissioningPoint& point) {
      return point.pairs == pairs && point.course == course;
    });
  };
  ASSERT_EQ(all.fit.pairs, 4);
  EXPECT_EQ(all.points.front().pressure, 0);
  EXPECT_EQ(count(4, PressureCourse::unknown), 1);
  for (const int pairs : {1, 4}) {
    EXPECT_EQ(count(pairs, PressureCourse::rising), 5);
    EXPECT_EQ(count(pairs, PressureCourse::falling), 4);
  }
  for (const int pairs : {2, 3}) EXPECT_GE(count(pairs, PressureCourse::rising), 1);
}

TEST(commissioning, sets_round_pressures) {
  for (const auto& point : commissioning_of(test::small_stand(), 1e4).points)
    EXPECT_NEAR(std::round(point.pressure / 1e4) * 1e4, point.pressure, 1e-6);
}

TEST(commissioning, leaves_out_pairs_that_have_no_room) {
  Stand stand = test::small_stand();
  stand.jobs.front().tension = 30;
  stand.air.lowest_pressure = 0.5e5;
  const auto all = commissioning_of(stand);
  ASSERT_FALSE(all.left_out.empty());
  EXPECT_EQ(all.left_out.back(), 4);
  for (const auto& point : all.points)
    EXPECT_TRUE(point.pressure == 0 || std::count(all.left_out.begin(), all.left_out.end(), point.pairs) == 0);
}

TEST(commissioning, of_a_fit_that_the_stand_has_not_is_empty) {
  FitResult result;
  result.fit.brake = "none";
  EXPECT_TRUE(commissioning(test::small_stand(), result, 1e4).points.empty());
}

}  // namespace
}  // namespace holdback::sizing
