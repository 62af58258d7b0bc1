// The fit of a brake: constants, what cannot be told apart, verdicts, where to read next. Readings are made by hand
// from M = N n K (p − p_0 ∓ g/2)⁺ + M_d; shares named right over many cases stand in tests/property.
#include "holdback/field/fit_brake.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>

#include "support/stands.hpp"

namespace holdback::field {
namespace {

FitSetup setup() {
  FitSetup made;
  made.brake = test::disc_brake();
  made.grade = made.brake.grades.front();
  made.shaft_drag = 1;
  made.drag_band = 0.3;
  made.pressure_step = 2e3;
  made.highest_pressure = 5.5e5;
  return made;
}

// 2·0.35·1e-3 m²·0.95·r_e; r_e = 0.1625 m · δ(0.06/0.325) = 0.1625 · 0.971432 (table of [bhandari], linear between 0.1
// and 0.2): 1.049776e-4 N·m/Pa, by hand.
constexpr double nominal = 1.049776e-4;

BrakeReading at(double bar, int pairs, double torque, PressureCourse course = PressureCourse::unknown) {
  static int row = 2;
  return {row++, bar * 1e5, torque, pairs, course, std::nullopt};
}

/// n K (p − p0) + drag for K of the file's brake, threshold 0.1 bar.
double torque(double bar, int pairs, double drag = 1.2, double shift_bar = 0) {
  return drag + pairs * nominal * std::max(0.0, bar - 0.1 - shift_bar) * 1e5;
}

TEST(fit_brake, finds_constants_and_drag_from_two_numbers_of_pairs) {
  std::vector<BrakeReading> readings;
  for (const int pairs : {2, 4})
    for (const double bar : {1.0, 2.0, 3.0, 4.0}) readings.push_back(at(bar, pairs, torque(bar, pairs)));
  const BrakeFit fit = fit_brake(readings, setup());
  EXPECT_TRUE(fit.sufficient);
  EXPECT_TRUE(fit.drag_read);
  EXPECT_NEAR(fit.torque_per_pressure.value, nominal, 1e-9);
  EXPECT_NEAR(fit.torque_per_pressure.in_file, nominal, 1e-9);
  EXPECT_NEAR(fit.threshold.value, 1e4, 1);
  EXPECT_NEAR(fit.drag.value, 1.2, 1e-3);
  EXPECT_NEAR(fit.friction->value, 0.35, 1e-5);
  EXPECT_NEAR(fit.median_torque_per_pressure, nominal, 1e-8);
  EXPECT_EQ(fit.verdicts.front().cause, BrakeCause::as_expected);
  EXPECT_EQ(fit.outliers, 0);
}

TEST(fit_brake, says_that_one_number_of_pairs_hides_drag_and_dead_pairs) {
  std::vector<BrakeReading> readings;
  for (const double bar : {1.0, 2.0, 3.0, 4.0}) readings.push_back(at(bar, 4, torque(bar, 4)));
  const BrakeFit fit = fit_brake(readings, setup());
  EXPECT_FALSE(fit.drag_read);
  EXPECT_DOUBLE_EQ(fit.drag.value, 1.2);  // shaft 1 and brake 0.2, of the file
  ASSERT_EQ(fit.not_told.size(), 3U);     // drag, dead pair, hysteresis
  ASSERT_FALSE(fit.next.empty());
  EXPECT_EQ(fit.next.front().pressure, 0);  // the brake released tells the drag
}

TEST(fit_brake, reads_drag_from_a_released_brake) {
  std::vector<BrakeReading> readings{at(0, 4, 1.9)};
  for (const double bar : {1.0, 2.0, 3.0, 4.0}) readings.push_back(at(bar, 4, torque(bar, 4, 1.9)));
  const BrakeFit fit = fit_brake(readings, setup());
  EXPECT_TRUE(fit.drag_read);
  EXPECT_NEAR(fit.drag.value, 1.9, 1e-3);
  EXPECT_NEAR(fit.threshold.value, 1e4, 2);
}

TEST(fit_brake, measures_hysteresis) {
  std::vector<BrakeReading> readings;
  for (const double bar : {1.0, 2.0, 3.0, 4.0}) {
    readings.push_back(at(bar, 4, torque(bar, 4, 1.2, 0.05), PressureCourse::rising));
    readings.push_back(at(bar, 4, torque(bar, 4, 1.2, -0.05), PressureCourse::falling));
  }
  const BrakeFit fit = fit_brake(readings, setup());
  ASSERT_TRUE(fit.hysteresis);
  EXPECT_NEAR(fit.hysteresis->value, 1e4, 5);
  EXPECT_NEAR(fit.hysteresis_share, 0.1 / 2.4, 1e-4);  // gap over the pressing pressure in the middle, 2.5 − 0.1 bar
}

TEST(fit_brake, names_the_reading_that_does_not_fit) {
  std::vector<BrakeReading> readings;
  for (const int pairs : {2, 4})
    for (const double bar : {1.0, 1.5, 2.0, 2.5, 3.0}) readings.push_back(at(bar, pairs, torque(bar, pairs)));
  readings[7].torque += 30;
  const BrakeFit fit = fit_brake(readings, setup());
  EXPECT_EQ(fit.outliers, 1);
  EXPECT_TRUE(fit.readings[7].outlier);
  EXPECT_NEAR(fit.readings[7].residual, 30, 0.1);
  EXPECT_NEAR(fit.torque_per_pressure.value, nominal, 1e-8);
  EXPECT_NE(fit.cautions.front().text.find("row " + std::to_string(readings[7].row)), std::string::npos);
}

TEST(fit_brake, a_line_through_two_readings_tells_nothing_of_itself) {
  const BrakeFit fit = fit_brake({at(1, 4, torque(1, 4)), at(3, 4, torque(3, 4))}, setup());
  EXPECT_FALSE(fit.sufficient);
  EXPECT_EQ(fit.verdicts.front().cause, BrakeCause::readings);
  EXPECT_FALSE(fit.next.empty());
  EXPECT_TRUE(fitted_brake(fit, setup()).refusal);
}

TEST(fit_brake, torque_that_falls_is_no_line) {
  const BrakeFit fit = fit_brake({at(1, 4, 50), at(2, 4, 40), at(3, 4, 30)}, setup());
  EXPECT_FALSE(fit.sufficient);
  EXPECT_EQ(fit.verdicts.front().cause, BrakeCause::readings);
  EXPECT_EQ(fit.readings.size(), 3U);
  EXPECT_FALSE(fit.next.empty());
}

TEST(fit_brake, needs_two_pressures) {
  EXPECT_THROW(fit_brake({at(1, 4, 50), at(1, 2, 25)}, setup()), std::invalid_argument);
}

TEST(fit_brake, next_readings_stay_within_the_ratings_and_shrink_the_intervals) {
  FitSetup on = setup();
  std::vector<BrakeReading> readings;
  for (const double bar : {1.0, 1.1, 1.2, 1.3})
    readings.push_back(at(bar, 4, torque(bar, 4) * (bar > 1.15 ? 1.02 : 0.98)));
  const BrakeFit fit = fit_brake(readings, on);
  ASSERT_GE(fit.next.size(), 2U);
  for (const NextReading& next : fit.next) {
    EXPECT_LE(next.pressure, on.highest_pressure);
    EXPECT_LE(next.torque, on.brake.rated_torque + fit.drag.value);
    EXPECT_LE(next.slope_then, next.slope_now);
  }
  // Student's t for 3 degrees of freedom instead of 2, and a long lever: much better than half.
  EXPECT_LT(fit.next[1].slope_then, 0.5 * fit.next[1].slope_now);
}

TEST(fitted_brake, puts_the_fit_into_the_model) {
  std::vector<BrakeReading> readings;
  for (const int pairs : {2, 4})
    for (const double bar : {1.0, 2.0, 3.0, 4.0})
      readings.push_back(at(bar, pairs, 1.5 + 0.9 * (torque(bar, pairs) - 1.2)));
  const FittedBrake fitted = fitted_brake(fit_brake(readings, setup()), setup());
  ASSERT_FALSE(fitted.refusal);
  EXPECT_NEAR(*fitted.grade.friction, 0.9 * 0.35, 1e-4);
  EXPECT_NEAR(fitted.brake.drag, 0.5, 1e-2);  // 1.5 less the shaft's 1
  EXPECT_NEAR(fitted.brake.threshold_pressure, 1e4, 20);
  EXPECT_EQ(fitted.brake.grades.front(), fitted.grade);
}

TEST(fitted_brake, states_a_data_sheet_brake_at_its_pressure) {
  FitSetup on = setup();
  on.brake.pad = DataSheetPad{4e5, 0.3};
  on.brake.grades.front().friction.reset();
  on.brake.grades.front().torque_per_pair = 40;
  on.grade = on.brake.grades.front();
  std::vector<BrakeReading> readings;  // 11 N·m/bar a pair above 0.1 bar
  for (const int pairs : {2, 4})
    for (const double bar : {1.0, 2.0, 3.0, 4.0}) readings.push_back(at(bar, pairs, 1.2 + pairs * 11 * (bar - 0.1)));
  const BrakeFit fit = fit_brake(readings, on);
  EXPECT_FALSE(fit.friction);
  EXPECT_NEAR(fit.friction_share.value, 11 / (40 / 3.9), 1e-4);
  const FittedBrake fitted = fitted_brake(fit, on);
  ASSERT_FALSE(fitted.refusal);
  EXPECT_NEAR(*fitted.grade.torque_per_pair, 11 * 3.9, 1e-2);
}

TEST(fitted_brake, does_not_write_a_fault_into_the_file) {
  std::vector<BrakeReading> dead;
  for (const int pairs : {1, 2, 3})
    for (const double bar : {1.0, 2.0, 3.0, 4.0})
      dead.push_back(at(bar, pairs, torque(bar, pairs >= 2 ? pairs - 1 : pairs)));
  const BrakeFit fit = fit_brake(dead, setup());
  ASSERT_EQ(fit.verdicts.front().cause, BrakeCause::dead_pair);
  EXPECT_EQ(fit.verdicts.front().pair, 2);
  EXPECT_TRUE(fitted_brake(fit, setup()).refusal);

  std::vector<BrakeReading> shifted;
  for (const int pairs : {2, 4})
    for (const double bar : {1.0, 2.0, 3.0, 4.0}) shifted.push_back(at(bar, pairs, torque(bar, pairs, 1.2, -0.5)));
  const BrakeFit off = fit_brake(shifted, setup());
  ASSERT_EQ(off.verdicts.front().cause, BrakeCause::gauge_offset);
  EXPECT_LT(off.threshold.value, 0);
  EXPECT_TRUE(fitted_brake(off, setup()).refusal);
}

}  // namespace
}  // namespace holdback::field
