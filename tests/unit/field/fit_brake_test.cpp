// The fit of a brake: constants, what cannot be told apart, verdicts, where to read next. Readings are made by hand
// from M = N n K (p − p_0 ∓ g/2)⁺ + M_d; shares named right over many cases stand in tests/property.
#include "holdback/field/fit_brake.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

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

/// The same with another grade to choose from, of a friction of 0.55.
FitSetup setup_with_hard_grade() {
  FitSetup made = setup();
  Grade hard = test::middle_grade();
  hard.name = "hard";
  hard.friction = 0.55;
  made.brake.grades.push_back(hard);
  return made;
}

// 2·0.35·1e-3 m²·0.95·r_e; r_e = 0.1625 m · δ(0.06/0.325) = 0.1625 · 0.971432 (table of [bhandari], linear between 0.1
// and 0.2): 1.049776e-4 N·m/Pa, by hand.
constexpr double nominal = 1.049776e-4;

BrakeReading at(double bar, int pairs, double torque, PressureCourse course = PressureCourse::unknown) {
  static int row = 2;
  return {row++, bar * 1e5, torque, pairs, course, std::nullopt};
}

std::string text_of(const Note& note) { return note.text; }

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

/// A gauge that reads 0.5 bar too low: the line meets zero at −0.4 bar, the vented brake still shows nothing but drag.
TEST(fit_brake, a_released_brake_gives_drag_alone_whatever_the_gauge_shows) {
  for (const std::vector<int>& counts : {std::vector<int>{2, 4}, std::vector<int>{4}}) {
    std::vector<BrakeReading> readings{at(0, 4, 1.9)};
    for (const int pairs : counts)
      for (const double bar : {0.5, 1.5, 2.5, 3.5}) readings.push_back(at(bar, pairs, torque(bar, pairs, 1.9, -0.5)));
    const BrakeFit fit = fit_brake(readings, setup());
    EXPECT_EQ(fit.outliers, 0) << counts.size();
    EXPECT_TRUE(fit.drag_read);
    EXPECT_NEAR(fit.drag.value, 1.9, 1e-3);
    EXPECT_NEAR(fit.threshold.value, -4e4, 10);
    EXPECT_NEAR(fit.readings.front().fitted, 1.9, 1e-3);
    EXPECT_EQ(fit.verdicts.front().cause, BrakeCause::gauge_offset);
  }
}

/// However many grades share the likelihood, there is a verdict, and it is another grade.
TEST(fit_brake, tells_the_likeliest_cause_of_a_brake_with_many_grades) {
  FitSetup on = setup();
  on.brake.grades.clear();
  for (int i = 0; i < 30; ++i) {
    Grade grade = test::middle_grade();
    grade.name = i == 0 ? "middle" : "hard " + std::to_string(i);
    if (i > 0) grade.friction = 0.545 + 0.0005 * i;  // all alike
    on.brake.grades.push_back(grade);
  }
  on.grade = on.brake.grades.front();
  std::vector<BrakeReading> readings;
  for (const int pairs : {2, 4})
    for (const double bar : {1.0, 2.0, 3.0})
      readings.push_back(at(bar, pairs, 1.2 + 0.55 / 0.35 * (torque(bar, pairs) - 1.2)));
  const BrakeFit fit = fit_brake(readings, on);
  ASSERT_FALSE(fit.verdicts.empty());
  EXPECT_EQ(fit.verdicts.front().cause, BrakeCause::wrong_grade);
  EXPECT_GT(fit.verdicts.front().share.value_or(0), 0.9);  // alike grades count together
  EXPECT_NE(text_of(fit.verdicts.front().evidence).find("28 more"), std::string::npos)
      << text_of(fit.verdicts.front().evidence);
  EXPECT_TRUE(fitted_brake(fit, on).refusal);
}

/// Torque that stays where it is: no constants, and the evidence in numbers.
TEST(fit_brake, torque_that_stays_the_same_is_no_line) {
  const auto rows = [](const std::vector<double>& torques) {
    std::vector<BrakeReading> readings;
    for (std::size_t i = 0; i < torques.size(); ++i)
      readings.push_back(at(1.0 + static_cast<double>(i), 4, torques[i]));
    return readings;
  };
  for (const std::vector<double>& torques :
       {std::vector<double>{0, 0, 0}, std::vector<double>{5, 5, 5}, std::vector<double>{5, 5.02, 5.01, 5.03},
        std::vector<double>{0, 0}, std::vector<double>{30, 52, 25, 50, 33}}) {
    const BrakeFit fit = fit_brake(rows(torques), setup());
    EXPECT_FALSE(fit.sufficient);
    EXPECT_EQ(fit.torque_per_pressure.value, 0);
    EXPECT_EQ(fit.threshold.value, 0);
    ASSERT_EQ(fit.verdicts.size(), 1U);
    const BrakeVerdict& verdict = fit.verdicts.front();
    EXPECT_EQ(verdict.cause, BrakeCause::readings);
    EXPECT_EQ(text_of(verdict.what).rfind("Torque does not rise", 0), 0U) << text_of(verdict.what);
    ASSERT_GE(verdict.evidence.amounts.size(), 4U);
    EXPECT_DOUBLE_EQ(verdict.evidence.amounts[0].value, 1e5);
    EXPECT_DOUBLE_EQ(verdict.evidence.amounts[2].value, torques.front());
    EXPECT_DOUBLE_EQ(verdict.evidence.amounts[3].value, torques.back());
    EXPECT_FALSE(fit.cautions.empty());
    const auto refusal = fitted_brake(fit, setup()).refusal;
    ASSERT_TRUE(refusal);
    EXPECT_NE(refusal->text.find("does not rise"), std::string::npos);
  }
}

/// No reading is proposed beyond what brake and web are good for: with the true constants of the brake read, torque
/// and pressure stay below the ratings.
TEST(fit_brake, next_readings_stay_below_every_rating) {
  struct Case {
    double share;
    double shift_bar;
    int dead;
  };
  for (const Case& each : {Case{1, 0, 0}, Case{1, -0.8, 0}, Case{0.8, -0.8, 0}, Case{1.6, 0, 0}, Case{1, 0.6, 0},
                           Case{1, 0, 1}, Case{1, -0.8, 3}})
    for (const double web : {1e9, 60.0, 8.0, 1e3})
      for (const std::size_t count : {std::size_t{2}, std::size_t{3}, std::size_t{12}}) {
        FitSetup on = setup();
        on.brake.rated_torque = web == 1e3 ? 1e3 : 120;
        if (web < 1e9) on.highest_torque = web;
        const auto true_torque = [&](double pressure, int pairs, bool whole) {
          const int biting = pairs - (!whole && each.dead > 0 && pairs >= each.dead ? 1 : 0);
          const double pressing = std::max(0.0, pressure - 1e4 - each.shift_bar * 1e5);
          return 1.2 + (pressure > 0 ? biting * each.share * nominal * pressing : 0);
        };
        std::vector<BrakeReading> readings;
        for (const int pairs : {4, 2, 3})
          for (const double bar : {0.8, 1.1, 1.4, 1.7})
            if (readings.size() < count) readings.push_back(at(bar, pairs, true_torque(bar * 1e5, pairs, false)));
        const BrakeFit fit = fit_brake(readings, on);
        for (const NextReading& next : fit.next) {
          const std::string where = std::to_string(each.share) + " " + std::to_string(each.shift_bar) + " " +
                                    std::to_string(each.dead) + " web " + std::to_string(web) + " of " +
                                    std::to_string(count) + " at " + std::to_string(next.pressure) + " Pa";
          // A gauge that reads too low shows less than acts.
          const double low_by = next.pressure > 0 ? std::max(0.0, -each.shift_bar) * 1e5 : 0;
          EXPECT_LE(next.pressure + low_by, on.highest_pressure + 1) << where;
          EXPECT_LE(next.torque, std::min(on.brake.rated_torque, web)) << where;
          // With few readings only the file's brake and the fitted one can be minded.
          if (count < 12 && each.dead > 0) continue;
          EXPECT_LE(true_torque(next.pressure, next.pairs, true), std::min(on.brake.rated_torque, web)) << where;
        }
        if (count == 12) continue;
        EXPECT_TRUE(!fit.next.empty() || web < 10) << each.share;
      }
}

TEST(fit_brake, next_readings_expect_what_a_dead_pair_leaves) {
  std::vector<BrakeReading> readings;
  for (const int pairs : {1, 2, 3})
    for (const double bar : {1.0, 1.2, 1.4}) {
      const double scatter = readings.size() % 2 == 0 ? 1.01 : 0.99;
      readings.push_back(at(bar, pairs, scatter * torque(bar, pairs >= 2 ? pairs - 1 : pairs)));
    }
  const BrakeFit fit = fit_brake(readings, setup());
  ASSERT_EQ(fit.verdicts.front().cause, BrakeCause::dead_pair);
  ASSERT_FALSE(fit.next.empty());
  for (const NextReading& next : fit.next) {
    const int biting = next.pairs >= 2 ? next.pairs - 1 : next.pairs;
    const double expected = next.pressure > 0 ? fit.drag.value + biting * fit.torque_per_pressure.value *
                                                                     std::max(0.0, next.pressure - fit.threshold.value)
                                              : fit.drag.value;
    EXPECT_NEAR(next.torque, expected, 1e-9);
  }
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

/// Readings at two numbers of pairs; every third is 1 % off, so that the intervals are not a point.
std::vector<BrakeReading> sound_readings(double share, double shift_bar = 0, double drag = 1.2) {
  std::vector<BrakeReading> readings;
  for (const int pairs : {2, 4})
    for (const double bar : {1.0, 1.5, 2.0, 2.5, 3.0}) {
      const double scatter = 1 + 0.01 * (static_cast<double>(readings.size() % 3) - 1);
      readings.push_back(at(bar, pairs, drag + scatter * share * (torque(bar, pairs, 0, shift_bar))));
    }
  return readings;
}

/// What is refused, by the fault that was made; the words name the fault and what to do.
TEST(fitted_brake, refuses_every_fault_and_says_what_to_do) {
  struct Case {
    double share;
    double shift_bar;
    BrakeCause cause;
    std::vector<std::string> parts;
  };
  for (const Case& each :
       {Case{0.5, 0, BrakeCause::low_friction, {"glazed or oily", "likely", "run in", "name of its own"}},
        Case{1, 0.6, BrakeCause::worn, {"worn", "likely", "measure", "read again"}},
        Case{1, -0.6, BrakeCause::gauge_offset, {"gauge", "likely", "vent", "read again"}},
        Case{1.6, 0, BrakeCause::unexplained, {"above the band", "name of its own"}},
        Case{0.5, 0.8, BrakeCause::unexplained, {"no single cause", "check"}}}) {
    const BrakeFit fit = fit_brake(sound_readings(each.share, each.shift_bar), setup());
    ASSERT_TRUE(fit.sufficient);
    ASSERT_EQ(fit.verdicts.front().cause, each.cause) << each.share << " " << each.shift_bar;
    const auto refusal = fitted_brake(fit, setup()).refusal;
    ASSERT_TRUE(refusal) << key_of(each.cause);
    for (const std::string& part : each.parts)
      EXPECT_NE(refusal->text.find(part), std::string::npos) << part << " in " << refusal->text;
  }
}

/// The right grade is to be named; it is not written over the one that was named.
TEST(fitted_brake, sends_to_the_grade_that_fits) {
  FitSetup on = setup_with_hard_grade();
  const BrakeFit fit = fit_brake(sound_readings(0.55 / 0.35), on);
  const auto refusal = fitted_brake(fit, on).refusal;
  ASSERT_TRUE(refusal);
  EXPECT_NE(refusal->text.find("\"hard\""), std::string::npos) << refusal->text;
  on.grade = on.brake.grades.back();
  EXPECT_FALSE(fitted_brake(fit_brake(sound_readings(0.55 / 0.35), on), on).refusal);
}

/// A cause that is only the second likeliest still keeps the fit out of the file, from a tenth on.
TEST(fitted_brake, refuses_what_is_in_doubt) {
  const auto with = [](BrakeCause cause, double share) {
    BrakeFit fit = fit_brake(sound_readings(1), setup());
    BrakeVerdict first = fit.verdicts.front();
    first.share = 1 - share;
    BrakeVerdict other;
    other.cause = cause;
    other.share = share;
    other.grade = cause == BrakeCause::wrong_grade ? "hard" : "";
    fit.verdicts = {first, other};
    return fitted_brake(fit, setup()).refusal;
  };
  for (const BrakeCause cause :
       {BrakeCause::low_friction, BrakeCause::worn, BrakeCause::gauge_offset, BrakeCause::unexplained}) {
    ASSERT_TRUE(with(cause, 0.12)) << key_of(cause);
    EXPECT_NE(with(cause, 0.12)->text.find("not ruled out"), std::string::npos) << with(cause, 0.12)->text;
    EXPECT_FALSE(with(cause, 0.08)) << key_of(cause);
  }
  for (const BrakeCause cause : {BrakeCause::wrong_grade, BrakeCause::dead_pair}) {
    EXPECT_TRUE(with(cause, 0.2)) << key_of(cause);
    EXPECT_FALSE(with(cause, 0.08)) << key_of(cause);
  }
}

/// Sound brakes are written, also at one number of pairs and with a second grade whose band overlaps.
TEST(fitted_brake, takes_a_sound_brake) {
  FitSetup on = setup();
  Grade softer = test::middle_grade();
  softer.name = "softer";
  softer.friction = 0.3;
  on.brake.grades.push_back(softer);
  for (const double share : {0.87, 0.95, 1.0, 1.1}) {
    for (const FitSetup& each : {setup(), on}) {
      const BrakeFit fit = fit_brake(sound_readings(share), each);
      EXPECT_EQ(fit.verdicts.front().cause, BrakeCause::as_expected) << share;
      const auto refusal = fitted_brake(fit, each).refusal;
      EXPECT_FALSE(refusal) << share << " " << refusal->text;
    }
    std::vector<BrakeReading> alone{at(0, 4, 1.2)};
    for (const BrakeReading& reading : sound_readings(share))
      if (reading.pairs == 4) alone.push_back(reading);
    EXPECT_FALSE(fitted_brake(fit_brake(alone, setup()), setup()).refusal) << share;
  }
}

/// The words serve a page as well as a command line.
TEST(fit_brake, names_no_option_of_a_command_line) {
  FitSetup on = setup_with_hard_grade();
  const BrakeFit fit = fit_brake(sound_readings(0.55 / 0.35), on);
  ASSERT_EQ(fit.verdicts.front().cause, BrakeCause::wrong_grade);
  EXPECT_EQ(text_of(fit.verdicts.front().remedy).find("--"), std::string::npos);
}

}  // namespace
}  // namespace holdback::field
