#include "holdback/physics/brake.hpp"

#include <numbers>

#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using std::numbers::pi;
using testing::infinity;
using testing::near;

Grade grade_with_friction(double friction) {
  Grade grade;
  grade.friction = friction;
  return grade;
}

Brake sector_brake() {
  Brake brake;
  brake.pad = SectorPad{0.2, 0.3, 0.5};
  brake.piston_area = 2e-3;
  brake.actuator_efficiency = 0.95;
  brake.threshold_pressure = 2e4;
  brake.pad_area = 3e-3;
  return brake;
}

/// Mean of r^n over a ring from `inner` to `outer`, weighted by area, by midpoint sums.
double ring_mean(double inner, double outer, int n) {
  double sum = 0, area = 0;
  const int rings = 20000;
  for (int i = 0; i < rings; ++i) {
    const double r = inner + (outer - inner) * (i + 0.5) / rings;
    sum += std::pow(r, n) * r;
    area += r;
  }
  return sum / area;
}

/// Mean distance from the axis over a disc of radius `ratio` whose centre is at distance 1, by midpoint sums.
double disc_mean(double ratio) {
  double sum = 0, area = 0;
  const int rings = 200, angles = 400;
  for (int i = 0; i < rings; ++i) {
    const double rho = ratio * (i + 0.5) / rings;
    for (int j = 0; j < angles; ++j) {
      sum += std::sqrt(1 + rho * rho + 2 * rho * std::cos(2 * pi * (j + 0.5) / angles)) * rho;
      area += rho;
    }
  }
  return sum / area;
}

TEST(sector_radius_uniform_wear, is_the_mean_under_pressure_that_falls_with_radius) {
  EXPECT_TRUE(near(sector_radius_uniform_wear(0.05, 0.1), 1 / ring_mean(0.05, 0.1, -1), 1e-8));
}

TEST(sector_radius_uniform_pressure, is_the_mean_radius_of_the_face) {
  EXPECT_TRUE(near(sector_radius_uniform_pressure(0.05, 0.1), ring_mean(0.05, 0.1, 1), 1e-8));
}

TEST(sector_radius_uniform_pressure, is_the_higher_estimate_and_meets_the_lower_for_a_narrow_ring) {
  for (const double inner : {0.0, 0.03, 0.06, 0.09}) {
    EXPECT_GT(sector_radius_uniform_pressure(inner, 0.1), sector_radius_uniform_wear(inner, 0.1));
  }
  EXPECT_TRUE(near(sector_radius_uniform_pressure(0.1, 0.1), 0.1));
}

TEST(round_pad_factor, gives_the_table_at_its_points_and_its_chord_between) {
  EXPECT_EQ(round_pad_factor(0), 1.0);
  EXPECT_TRUE(near(round_pad_factor(0.3), 0.9572));
  EXPECT_TRUE(near(round_pad_factor(0.25), (0.9693 + 0.9572) / 2));
}

TEST(round_pad_factor, falls_with_the_pad_and_stays_beyond_the_table) {
  for (double ratio = 0; ratio < 0.49; ratio += 0.01) {
    EXPECT_GT(round_pad_factor(ratio), round_pad_factor(ratio + 0.01)) << ratio;
  }
  EXPECT_EQ(round_pad_factor(0.8), round_pad_factor(0.5));
}

TEST(round_pad_factor_uniform_pressure, is_the_mean_distance_of_the_disc_from_the_axis) {
  for (const double ratio : {0.1, 0.3, 0.5, 0.8, 1.0}) {
    EXPECT_TRUE(near(round_pad_factor_uniform_pressure(ratio), disc_mean(ratio), 2e-5)) << ratio;
  }
}

TEST(round_pad_factor_uniform_pressure, starts_with_the_first_terms_of_the_series) {
  const double x = 0.05;
  EXPECT_NEAR(round_pad_factor_uniform_pressure(x), 1 + x * x / 8 + std::pow(x, 4) / 192, 2e-11);
}

TEST(round_pad_factor_uniform_pressure, is_never_below_the_capacity_factor) {
  for (double ratio = 0; ratio <= 1; ratio += 0.05) {
    EXPECT_GE(round_pad_factor_uniform_pressure(ratio), round_pad_factor(ratio)) << ratio;
  }
}

TEST(friction_radius, takes_both_estimates_of_each_kind_of_pad) {
  const FrictionRadius sector = friction_radius(SectorPad{0.2, 0.3, 0.5});
  EXPECT_EQ(sector.capacity, sector_radius_uniform_wear(0.1, 0.15));
  EXPECT_EQ(sector.highest, sector_radius_uniform_pressure(0.1, 0.15));
  const FrictionRadius round = friction_radius(RoundPad{0.06, 0.2});
  EXPECT_EQ(round.capacity, 0.1 * round_pad_factor(0.3));
  EXPECT_EQ(round.highest, 0.1 * round_pad_factor_uniform_pressure(0.3));
  const FrictionRadius sheet = friction_radius(DataSheetPad{5e5, 0.25});
  EXPECT_EQ(sheet.capacity, 0.125);
  EXPECT_EQ(sheet.highest, 0.125);
}

TEST(pair_torque_per_pressure, counts_both_faces_of_a_pair) {
  const Brake brake = sector_brake();
  const double pressure = 3e5;
  const double face_force = contact_pressure(brake, pressure) * brake.pad_area;
  const double torque = pad_torque(pair_torque_per_pressure(brake, grade_with_friction(0.4)).capacity, pressure,
                                   brake.threshold_pressure);
  EXPECT_TRUE(near(torque, 2 * 0.4 * face_force * friction_radius(brake.pad).capacity));
}

TEST(pair_torque_per_pressure, gives_the_data_sheet_its_own_torque_back) {
  Brake brake = sector_brake();
  brake.pad = DataSheetPad{5.5e5, 0.25};
  Grade grade;
  grade.torque_per_pair = 42;
  const TorquePerPressure slope = pair_torque_per_pressure(brake, grade);
  EXPECT_TRUE(near(pad_torque(slope.capacity, 5.5e5, brake.threshold_pressure), 42));
  EXPECT_EQ(slope.capacity, slope.highest);
}

TEST(pair_torque_per_pressure, by_geometry_and_by_its_data_sheet_is_one_record) {
  const Brake brake = sector_brake();
  const double slope = pair_torque_per_pressure(brake, grade_with_friction(0.4)).capacity;
  Brake sheet = brake;
  sheet.pad = DataSheetPad{5e5, 2 * friction_radius(brake.pad).capacity};
  Grade grade;
  grade.torque_per_pair = pad_torque(slope, 5e5, brake.threshold_pressure);
  EXPECT_TRUE(near(pair_torque_per_pressure(sheet, grade).capacity, slope));
}

TEST(pair_torque_per_pressure, is_zero_where_its_number_is_missing) {
  Brake brake = sector_brake();
  EXPECT_EQ(pair_torque_per_pressure(brake, Grade{}).capacity, 0);
  brake.pad = DataSheetPad{2e4, 0.25};  // stated at the threshold
  Grade grade;
  grade.torque_per_pair = 42;
  EXPECT_EQ(pair_torque_per_pressure(brake, grade).highest, 0);
  EXPECT_EQ(pair_torque_per_pressure(brake, Grade{}).highest, 0);
}

TEST(pad_torque, starts_at_the_threshold_and_rises_in_proportion) {
  EXPECT_EQ(pad_torque(1e-4, 2e4, 2e4), 0);
  EXPECT_EQ(pad_torque(1e-4, 1e4, 2e4), 0);
  EXPECT_TRUE(near(pad_torque(1e-4, 6e4, 2e4), 2 * pad_torque(1e-4, 4e4, 2e4)));
}

TEST(pad_pressure_for, undoes_pad_torque) {
  EXPECT_TRUE(near(pad_torque(1e-4, pad_pressure_for(1e-4, 30, 2e4), 2e4), 30));
}

TEST(pad_pressure_for, releases_at_no_torque_and_never_gets_there_without_slope) {
  EXPECT_EQ(pad_pressure_for(1e-4, 0, 2e4), 2e4);
  EXPECT_EQ(pad_pressure_for(1e-4, -5, 2e4), 2e4);
  EXPECT_EQ(pad_pressure_for(0, 5, 2e4), infinity);
  EXPECT_EQ(pad_pressure_for(0, 0, 2e4), 2e4);
}

TEST(fade_factor, falls_from_its_start_by_its_rate_and_stops_at_a_tenth) {
  Grade grade;
  EXPECT_EQ(fade_factor(grade, 900), 1);
  grade.fade_start = 450;
  grade.fade_rate = 0.002;
  EXPECT_EQ(fade_factor(grade, 450), 1);
  EXPECT_EQ(fade_factor(grade, 300), 1);
  EXPECT_TRUE(near(fade_factor(grade, 550), 0.8));
  EXPECT_EQ(fade_factor(grade, 1e6), 0.1);
  EXPECT_EQ(fade_factor(grade, infinity), 0.1);
}

TEST(friction_left, falls_in_proportion_above_its_start_and_never_below_a_tenth) {
  EXPECT_EQ(friction_left(450, 0.002, 400), 1);
  EXPECT_TRUE(near(friction_left(450, 0.002, 500), 0.9));
  EXPECT_EQ(friction_left(450, 0.002, 5000), 0.1);
}

TEST(contact_pressure, spreads_the_piston_s_force_over_the_pad) {
  const Brake brake = sector_brake();
  EXPECT_TRUE(near(contact_pressure(brake, 3.2e5) * brake.pad_area, 0.95 * 2e-3 * 3e5));
  EXPECT_EQ(contact_pressure(brake, 1e4), 0);
}

TEST(contact_pressure, is_zero_where_the_piston_is_not_known) {
  Brake brake = sector_brake();
  brake.piston_area = 0;
  brake.pad_area = 0;
  EXPECT_EQ(contact_pressure(brake, 3e5), 0);
}

TEST(sliding_speed, covers_the_circumference_once_a_turn) {
  const double omega = 7;
  EXPECT_TRUE(near(sliding_speed(0.125, omega) * (2 * pi / omega), 2 * pi * 0.125));
}

}  // namespace
}  // namespace holdback::physics
