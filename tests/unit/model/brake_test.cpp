#include "holdback/model/brake.hpp"

#include <numbers>

#include "unit/model/faults_of.hpp"

namespace holdback {
namespace {

using testing::one_error;
using testing::one_warning;
using testing::sound_brake;

Problems problems_after(void (*change)(Brake&)) {
  Brake brake = sound_brake();
  change(brake);
  return problems_of(brake, "brake[1]");
}

Brake round_brake(double pad_diameter, double centre_diameter) {
  Brake brake = sound_brake();
  brake.pad = RoundPad{pad_diameter, centre_diameter};
  brake.pairs = 1;
  brake.pad_area = std::numbers::pi / 4 * pad_diameter * pad_diameter;
  return brake;
}

Brake sheet_brake() {
  Brake brake = sound_brake();
  brake.pad = DataSheetPad{5.5e5, 0.25};
  return brake;
}

TEST(problems_of_brake, finds_nothing_in_sound_brakes_of_each_kind) {
  EXPECT_TRUE(problems_of(sound_brake(), "brake[1]").empty());
  EXPECT_TRUE(problems_of(round_brake(0.05, 0.2), "brake[1]").empty());
  EXPECT_TRUE(problems_of(sheet_brake(), "brake[1]").empty());
}

TEST(problems_of_brake, refuses_a_sector_without_a_face) {
  EXPECT_TRUE(one_error(problems_after([](Brake& b) {
                          b.pad = SectorPad{0.3, 0.3, 0.6};
                        }),
                        "brake[1].pad_inner_diameter"));
  EXPECT_TRUE(one_error(problems_after([](Brake& b) { b.pad = SectorPad{0.2, 0.3, 6.3}; }), "brake[1].pad_angle"));
}

TEST(problems_of_brake, refuses_pads_that_do_not_fit_side_by_side) {
  EXPECT_TRUE(one_error(problems_after([](Brake& b) { b.pairs = 11; }), "brake[1].pad_angle"));
  Brake brake = round_brake(0.1, 0.2);  // each takes 60 degrees
  brake.pairs = 6;
  EXPECT_TRUE(problems_of(brake, "brake[1]").empty());
  brake.pairs = 7;
  EXPECT_TRUE(one_error(problems_of(brake, "brake[1]"), "brake[1].pad_diameter"));
}

TEST(problems_of_brake, refuses_a_round_pad_over_the_shaft_and_doubts_one_beyond_the_table) {
  EXPECT_TRUE(one_error(problems_of(round_brake(0.2, 0.2), "brake[1]"), "brake[1].pad_diameter"));
  EXPECT_TRUE(one_warning(problems_of(round_brake(0.11, 0.2), "brake[1]"), "brake[1].pad_diameter"));
  EXPECT_TRUE(problems_of(round_brake(0.1, 0.2), "brake[1]").empty());
}

TEST(problems_of_brake, doubts_a_pad_area_that_its_dimensions_do_not_make) {
  EXPECT_TRUE(one_warning(problems_after([](Brake& b) { b.pad_area *= 1.1; }), "brake[1].pad_area"));
  EXPECT_TRUE(one_warning(problems_after([](Brake& b) { b.pad_area *= 0.4; }), "brake[1].pad_area"));
  EXPECT_TRUE(problems_after([](Brake& b) { b.pad_area *= 0.8; }).empty());
}

TEST(problems_of_brake, needs_a_piston_for_a_pad_given_by_dimensions) {
  EXPECT_TRUE(one_error(problems_after([](Brake& b) { b.piston_area = 0; }), "brake[1].piston_area"));
  Brake brake = sheet_brake();
  brake.piston_area = 0;
  EXPECT_TRUE(problems_of(brake, "brake[1]").empty());
}

TEST(problems_of_brake, compares_the_pressures_with_each_other) {
  EXPECT_TRUE(one_error(problems_after([](Brake& b) { b.threshold_pressure = 6e5; }), "brake[1].threshold_pressure"));
  Brake brake = sheet_brake();
  brake.threshold_pressure = 5.5e5;
  EXPECT_TRUE(one_error(problems_of(brake, "brake[1]"), "brake[1].torque_pressure"));
  brake = sheet_brake();
  brake.rated_pressure = 5e5;
  EXPECT_TRUE(one_warning(problems_of(brake, "brake[1]"), "brake[1].torque_pressure"));
}

TEST(problems_of_brake, wants_a_cooling_map_by_rising_speed_and_doubts_falling_power) {
  EXPECT_TRUE(one_error(problems_after([](Brake& b) { b.cooling = {{60, 900}, {60, 3000}}; }), "brake[1].cooling"));
  EXPECT_TRUE(one_error(problems_after([](Brake& b) { b.cooling = {{60, 3000}, {10, 900}}; }), "brake[1].cooling"));
  EXPECT_TRUE(one_warning(problems_after([](Brake& b) { b.cooling = {{10, 900}, {60, 800}}; }), "brake[1].cooling"));
}

TEST(problems_of_brake, wants_the_number_of_its_own_route_from_each_grade) {
  EXPECT_TRUE(one_error(problems_after([](Brake& b) { b.grades[0].friction.reset(); }), "brake[1].grade[0].friction"));
  EXPECT_TRUE(problems_after([](Brake& b) { b.grades[0].torque_per_pair.reset(); }).empty());
  Brake brake = sheet_brake();
  brake.grades[0].friction.reset();
  EXPECT_TRUE(problems_of(brake, "brake[1]").empty());
  brake.grades[0].torque_per_pair.reset();
  EXPECT_TRUE(one_error(problems_of(brake, "brake[1]"), "brake[1].grade[0].torque_per_pair"));
}

TEST(problems_of_brake, doubts_a_friction_outside_the_published_ranges) {
  for (const double friction : {0.09, 0.71}) {
    Brake brake = sound_brake();
    brake.grades[0].friction = friction;
    EXPECT_TRUE(one_warning(problems_of(brake, "brake[1]"), "brake[1].grade[0].friction")) << friction;
  }
}

TEST(problems_of_brake, doubts_a_change_with_temperature_that_never_shows) {
  EXPECT_TRUE(
      one_warning(problems_after([](Brake& b) { b.grades[0].fade_start = 501; }), "brake[1].grade[0].fade_start"));
  EXPECT_TRUE(
      one_warning(problems_after([](Brake& b) { b.grades[0].wear_knee = 501; }), "brake[1].grade[0].wear_knee"));
}

TEST(problems_of_brake, wants_grades_with_names_of_their_own) {
  EXPECT_TRUE(one_error(problems_after([](Brake& b) { b.grades.push_back(b.grades[0]); }), "brake[1].grade[1].name"));
  EXPECT_TRUE(one_error(problems_after([](Brake& b) { b.grades.clear(); }), "brake[1].grade"));
}

TEST(problems_of_brake, needs_a_cooling_map_or_the_size_of_the_disc) {
  Brake brake = sound_brake();
  brake.cooling.clear();
  EXPECT_TRUE(one_error(problems_of(brake, "brake[0]"), "brake[0].cooling"));
  brake.disc_diameter = 0.32;
  EXPECT_TRUE(problems_of(brake, "brake[0]").empty());
}

TEST(problems_of_brake, needs_the_rise_at_which_a_map_was_taken) {
  Brake brake = sound_brake();
  brake.cooling_rise = 0;
  EXPECT_TRUE(one_error(problems_of(brake, "brake[0]"), "brake[0].cooling_rise"));
}

TEST(problems_of_brake, refuses_a_disc_without_face_or_without_metal) {
  Brake brake = sound_brake();
  brake.disc_diameter = 0.32;
  brake.disc_bore = 0.32;
  EXPECT_TRUE(one_error(problems_of(brake, "brake[0]"), "brake[0].disc_bore"));
  brake.disc_bore = 0.2;
  brake.disc_thickness = 0.02;
  brake.vent_gap = 0.02;
  EXPECT_TRUE(one_error(problems_of(brake, "brake[0]"), "brake[0].vent_gap"));
}

}  // namespace
}  // namespace holdback
