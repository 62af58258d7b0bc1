#include "holdback/model/stand.hpp"

#include "unit/model/faults_of.hpp"

namespace holdback {
namespace {

using testing::one_error;
using testing::one_warning;
using testing::sound_air;
using testing::sound_stand;

Problems problems_after(void (*change)(Stand&)) {
  Stand stand = sound_stand();
  change(stand);
  return problems_of(stand);
}

TEST(problems_of_air_supply, finds_nothing_in_a_sound_supply) { EXPECT_TRUE(problems_of(sound_air()).empty()); }

TEST(problems_of_air_supply, wants_a_range_of_pressure) {
  AirSupply air = sound_air();
  air.lowest_pressure = air.highest_pressure;
  EXPECT_TRUE(one_error(problems_of(air), "air.lowest_pressure"));
}

TEST(problems_of_air_supply, wants_a_supply_that_reaches_the_range_and_no_more) {
  AirSupply air = sound_air();
  air.supply_pressure = 2e4;
  EXPECT_TRUE(one_error(problems_of(air), "air.supply_pressure"));
  air.supply_pressure = 4e5;
  EXPECT_TRUE(problems_of(air).empty());
}

TEST(problems_of_air_supply, refuses_a_step_as_large_as_the_range) {
  AirSupply air = sound_air();
  air.resolution = 5.7e5;
  EXPECT_TRUE(one_error(problems_of(air), "air.resolution"));
  air = sound_air();
  air.hysteresis = 6e5;
  EXPECT_TRUE(one_error(problems_of(air), "air.hysteresis"));
}

TEST(problems_of_stand, finds_nothing_in_a_sound_stand) { EXPECT_TRUE(problems_of(sound_stand()).empty()); }

TEST(problems_of_stand, wants_jobs_and_brakes) {
  EXPECT_TRUE(one_error(problems_after([](Stand& s) { s.jobs.clear(); }), "job"));
  EXPECT_TRUE(one_error(problems_after([](Stand& s) { s.brakes.clear(); }), "brake"));
}

TEST(problems_of_stand, wants_a_share_for_one_job_at_least) {
  EXPECT_TRUE(one_error(problems_after([](Stand& s) { s.jobs[0].share = 0; }), "job[0].share"));
}

TEST(problems_of_stand, wants_names_that_lead_to_one_thing) {
  EXPECT_TRUE(one_error(problems_after([](Stand& s) { s.webs.push_back(s.webs[0]); }), "web[1].name"));
  EXPECT_TRUE(one_error(problems_after([](Stand& s) { s.rolls.push_back(s.rolls[0]); }), "roll[1].name"));
  EXPECT_TRUE(one_error(problems_after([](Stand& s) { s.jobs.push_back(s.jobs[0]); }), "job[1].name"));
  EXPECT_TRUE(one_error(problems_after([](Stand& s) { s.brakes.push_back(s.brakes[0]); }), "brake[1].name"));
}

TEST(problems_of_stand, compares_job_speeds_with_the_line) {
  EXPECT_TRUE(one_error(problems_after([](Stand& s) { s.jobs[0].speed = 6.1; }), "job[0].speed"));
  EXPECT_TRUE(one_warning(problems_after([](Stand& s) { s.jobs[0].speed = 0.1; }), "job[0].speed"));
}

TEST(problems_of_stand, wants_temperature_limits_above_ambient) {
  EXPECT_TRUE(one_error(problems_after([](Stand& s) { s.brakes[0].rated_temperature = s.ambient; }),
                        "brake[0].rated_temperature"));
  EXPECT_TRUE(one_error(problems_after([](Stand& s) {
                          Grade& grade = s.brakes[0].grades[0];
                          grade.fade_start.reset();
                          grade.wear_knee.reset();
                          grade.temperature_limit = 290;
                        }),
                        "brake[0].grade[0].temperature_limit"));
}

TEST(problems_of_stand, doubts_a_brake_that_the_air_cannot_make_grip) {
  EXPECT_TRUE(one_warning(problems_after([](Stand& s) {
                            s.brakes[0].rated_pressure = 9e5;
                            s.brakes[0].threshold_pressure = 6e5;
                          }),
                          "brake[0].threshold_pressure"));
}

TEST(problems_of_stand, includes_the_faults_of_every_part) {
  EXPECT_TRUE(
      one_warning(problems_after([](Stand& s) { s.line.emergency_stop_time = 20; }), "line.emergency_stop_time"));
  EXPECT_TRUE(one_error(problems_after([](Stand& s) { s.rolls[0].core_diameter = 3; }), "roll[0].core_diameter"));
  EXPECT_TRUE(one_error(problems_after([](Stand& s) { s.webs[0].yield_strength = 5e9; }), "web[0].yield_strength"));
  EXPECT_TRUE(one_error(problems_after([](Stand& s) { s.jobs[0].tension = 1e6; }), "job[0].tension"));
  EXPECT_TRUE(one_error(problems_after([](Stand& s) { s.brakes[0].piston_area = 0; }), "brake[0].piston_area"));
  EXPECT_TRUE(one_error(problems_after([](Stand& s) { s.air.resolution = 6e5; }), "air.resolution"));
}

}  // namespace
}  // namespace holdback
