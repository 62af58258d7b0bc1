// A stand file becomes SI values; what the text says is what the model holds.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <numbers>

#include "texts.hpp"

namespace holdback::files::test {
namespace {

using std::numbers::pi;
using testing::DoubleEq;
using testing::DoubleNear;
using testing::Optional;

constexpr double rpm = 2 * pi / 60;

TEST(ReadStand, ReadsAFullFileWithoutAProblemOrADefault) {
  const StandFile file = read(full_stand());
  EXPECT_EQ(told(file.problems), "");
  EXPECT_TRUE(file.defaults.empty());
}

TEST(ReadStand, ReadsEveryFieldOfTheStand) {
  const Stand stand = read(full_stand()).stand;
  EXPECT_EQ(stand.title, "slitter 2");
  EXPECT_EQ(stand.currency, "EUR");
  EXPECT_DOUBLE_EQ(stand.drag, 1.5);
  EXPECT_DOUBLE_EQ(stand.shaft_inertia, 0.04);
  EXPECT_EQ(stand.guard, Guard::partly_closed);
  EXPECT_THAT(stand.guard_factor, Optional(DoubleEq(0.6)));
  EXPECT_DOUBLE_EQ(stand.ambient, 303.15);
  EXPECT_DOUBLE_EQ(stand.altitude, 500);
}

TEST(ReadStand, ReadsEveryFieldOfTheAir) {
  const AirSupply air = read(full_stand()).stand.air;
  EXPECT_DOUBLE_EQ(air.supply_pressure, 7e5);
  EXPECT_DOUBLE_EQ(air.lowest_pressure, 2e4);
  EXPECT_DOUBLE_EQ(air.highest_pressure, 5e5);
  EXPECT_DOUBLE_EQ(air.resolution, 1e3);
  EXPECT_DOUBLE_EQ(air.hysteresis, 3e3);
  EXPECT_DOUBLE_EQ(air.lag, 0.2);
  EXPECT_DOUBLE_EQ(air.dead_time, 0.05);
}

TEST(ReadStand, ReadsEveryFieldOfTheLine) {
  const Line line = read(full_stand()).stand.line;
  EXPECT_DOUBLE_EQ(line.top_speed, 5);
  EXPECT_DOUBLE_EQ(line.lowest_speed, 0.2);
  EXPECT_DOUBLE_EQ(line.ramp_time, 20);
  EXPECT_DOUBLE_EQ(line.stop_time, 9);
  EXPECT_DOUBLE_EQ(line.emergency_stop_time, 4);
  EXPECT_DOUBLE_EQ(line.hours_per_day, 16);
  EXPECT_DOUBLE_EQ(line.days_per_week, 6);
  EXPECT_DOUBLE_EQ(line.weeks_per_year, 48);
  EXPECT_DOUBLE_EQ(line.uptime, 0.65);
}

TEST(ReadStand, ReadsEveryFieldOfTheLimits) {
  const Limits limits = read(full_stand()).stand.limits;
  EXPECT_DOUBLE_EQ(limits.tension_tolerance, 0.09);
  EXPECT_DOUBLE_EQ(limits.reserve, 0.15);
  EXPECT_DOUBLE_EQ(limits.stop_tension, 0.9);
  EXPECT_DOUBLE_EQ(limits.emergency_stop_tension, 0.2);
  EXPECT_DOUBLE_EQ(limits.hold_tension, 0.8);
  EXPECT_DOUBLE_EQ(limits.least_pad_life, 600 * 3600.0);
  EXPECT_DOUBLE_EQ(limits.yield_share, 0.2);
  EXPECT_DOUBLE_EQ(limits.strain_limit, 0.002);
}

TEST(ReadStand, ReadsEveryFieldOfAWebAndARoll) {
  const Stand stand = read(full_stand()).stand;
  ASSERT_EQ(stand.webs.size(), 1U);
  const Web& web = stand.webs[0];
  EXPECT_EQ(web.name, "film");
  EXPECT_EQ(web.material, Material::polyester);
  EXPECT_DOUBLE_EQ(web.width, 1);
  EXPECT_DOUBLE_EQ(web.caliper, 12e-6);
  EXPECT_DOUBLE_EQ(web.basis_weight, 0.0168);
  EXPECT_THAT(web.density, Optional(DoubleEq(1400)));
  EXPECT_THAT(web.modulus, Optional(DoubleEq(4.5e9)));
  EXPECT_THAT(web.yield_strength, Optional(DoubleEq(100e6)));
  EXPECT_THAT(web.wound_tension, Optional(DoubleEq(150)));
  EXPECT_DOUBLE_EQ(web.loss, 0.03);
  ASSERT_EQ(stand.rolls.size(), 1U);
  const Roll& roll = stand.rolls[0];
  EXPECT_EQ(roll.name, "jumbo");
  EXPECT_DOUBLE_EQ(roll.core_diameter, 0.152);
  EXPECT_DOUBLE_EQ(roll.full_diameter, 0.8);
  EXPECT_DOUBLE_EQ(roll.core_mass, 4);
  EXPECT_DOUBLE_EQ(roll.runout, 0.001);
  EXPECT_EQ(roll.lobes, 2);
  EXPECT_THAT(roll.length, Optional(DoubleEq(40000)));
  EXPECT_THAT(roll.mass, Optional(DoubleEq(680)));
}

TEST(ReadStand, ReadsEveryFieldOfAJob) {
  const Stand stand = read(full_stand()).stand;
  ASSERT_EQ(stand.jobs.size(), 1U);
  const Job& job = stand.jobs[0];
  EXPECT_EQ(job.name, "slit film");
  EXPECT_EQ(job.web.name, "film");
  EXPECT_DOUBLE_EQ(job.web.caliper, 12e-6);
  EXPECT_EQ(job.roll, stand.rolls[0]);
  EXPECT_DOUBLE_EQ(job.speed, 4);
  EXPECT_THAT(job.tension, Optional(DoubleEq(90)));
  EXPECT_THAT(job.tension_tolerance, Optional(DoubleEq(0.08)));
  EXPECT_THAT(job.ramp_time, Optional(DoubleEq(15)));
  EXPECT_THAT(job.stop_time, Optional(DoubleEq(8)));
  EXPECT_THAT(job.emergency_stop_time, Optional(DoubleEq(3)));
  EXPECT_DOUBLE_EQ(job.share, 2.5);
  EXPECT_DOUBLE_EQ(job.web.width, 0.6) << "the job's own width instead of the web's";
}

TEST(ReadStand, ReadsEveryFieldOfASectorBrake) {
  const Stand stand = read(full_stand()).stand;
  ASSERT_EQ(stand.brakes.size(), 1U);
  const Brake& brake = stand.brakes[0];
  EXPECT_EQ(brake.name, "D300");
  const auto& pad = std::get<SectorPad>(brake.pad);
  EXPECT_DOUBLE_EQ(pad.inner_diameter, 0.18);
  EXPECT_DOUBLE_EQ(pad.outer_diameter, 0.29);
  EXPECT_DOUBLE_EQ(pad.angle, 40 * pi / 180);
  EXPECT_EQ(brake.pairs, 4);
  EXPECT_EQ(brake.most_brakes, 2);
  EXPECT_DOUBLE_EQ(brake.piston_area, 20e-4);
  EXPECT_DOUBLE_EQ(brake.actuator_efficiency, 0.9);
  EXPECT_DOUBLE_EQ(brake.threshold_pressure, 1.5e4);
  EXPECT_DOUBLE_EQ(brake.pad_area, 40e-4);
  EXPECT_DOUBLE_EQ(brake.usable_pad_depth, 0.006);
  EXPECT_DOUBLE_EQ(brake.drag, 0.3);
  EXPECT_DOUBLE_EQ(brake.disc_mass, 12);
  EXPECT_DOUBLE_EQ(brake.disc_inertia, 0.15);
  EXPECT_DOUBLE_EQ(brake.specific_heat, 480);
  ASSERT_EQ(brake.cooling.size(), 2U);
  EXPECT_DOUBLE_EQ(brake.cooling[1].speed, 800 * rpm);
  EXPECT_DOUBLE_EQ(brake.cooling[1].power, 2200);
  EXPECT_DOUBLE_EQ(brake.cooling_rise, 150);
  EXPECT_DOUBLE_EQ(brake.rated_pressure, 5.5e5);
  EXPECT_DOUBLE_EQ(brake.rated_torque, 400);
  EXPECT_DOUBLE_EQ(brake.rated_speed, 1800 * rpm);
  EXPECT_DOUBLE_EQ(brake.rated_temperature, 523.15);
  EXPECT_THAT(brake.price, Optional(DoubleEq(2400)));
  EXPECT_THAT(brake.pad_price, Optional(DoubleEq(18.5)));
}

TEST(ReadStand, ReadsEveryFieldOfAGrade) {
  const Stand stand = read(full_stand()).stand;
  ASSERT_EQ(stand.brakes.at(0).grades.size(), 1U);
  const Grade& grade = stand.brakes[0].grades[0];
  EXPECT_EQ(grade.name, "standard");
  EXPECT_THAT(grade.friction, Optional(DoubleEq(0.35)));
  EXPECT_FALSE(grade.torque_per_pair);
  EXPECT_DOUBLE_EQ(grade.friction_band, 0.15);
  EXPECT_DOUBLE_EQ(grade.static_ratio, 1.1);
  EXPECT_DOUBLE_EQ(grade.friction_slope, -0.02);
  EXPECT_THAT(grade.fade_start, Optional(DoubleEq(453.15)));
  EXPECT_DOUBLE_EQ(grade.fade_rate, 0.001);
  EXPECT_DOUBLE_EQ(grade.temperature_limit, 493.15);
  EXPECT_DOUBLE_EQ(grade.wear_rate, 25e-15);
  EXPECT_THAT(grade.wear_knee, Optional(DoubleEq(423.15)));
  EXPECT_DOUBLE_EQ(grade.wear_doubling, 40);
  EXPECT_THAT(grade.pressure_speed_limit, Optional(DoubleEq(3e6)));
}

TEST(ReadStand, ReadsADataSheetBrake) {
  const Brake brake = read(least_stand()).stand.brakes.at(0);
  const auto& pad = std::get<DataSheetPad>(brake.pad);
  EXPECT_DOUBLE_EQ(pad.torque_pressure, 5e5);
  EXPECT_DOUBLE_EQ(pad.effective_diameter, 0.24);
  EXPECT_DOUBLE_EQ(brake.pad_area, 35e-4);
  EXPECT_DOUBLE_EQ(brake.piston_area, 0);
  EXPECT_THAT(brake.grades.at(0).torque_per_pair, Optional(DoubleEq(85)));
}

TEST(ReadStand, TakesThePadFaceFromTheGeometry) {
  const StandFile sector = read(with(full_stand(), "pad_area = \"40 cm2\"\n", ""));
  EXPECT_EQ(told(sector.problems), "");
  EXPECT_DOUBLE_EQ(sector.stand.brakes.at(0).pad_area, pi * (0.145 * 0.145 - 0.09 * 0.09) * 40 / 360);
  const std::string ring = "pad_inner_diameter = \"180 mm\"\npad_outer_diameter = \"290 mm\"\npad_angle = \"40 deg\"\n";
  const std::string button = with(with(with(full_stand(), "pad_area = \"40 cm2\"\n", ""), ring,
                                       "pad_diameter = \"50 mm\"\npad_centre_diameter = \"240 mm\"\n"),
                                  "\"sector\"", "\"round\"");
  const StandFile round = read(button);
  EXPECT_EQ(told(round.problems), "");
  EXPECT_DOUBLE_EQ(round.stand.brakes.at(0).pad_area, pi * 0.025 * 0.025);
}

TEST(ReadStand, DerivesTheBasisWeightFromTheDensity) {
  const Web web = read(least_stand()).stand.webs.at(0);
  EXPECT_DOUBLE_EQ(web.basis_weight, 12e-6 * 1400);
}

TEST(ReadStand, MultipliesATensionPerWidthByTheWidthOfTheJob) {
  const std::string speed = "speed = \"240 m/min\"\n";
  const Stand whole = read(with(least_stand(), speed, speed + "tension_per_width = \"150 N/m\"\n")).stand;
  EXPECT_THAT(whole.jobs.at(0).tension, Optional(DoubleEq(150)));
  const Stand slit =
      read(with(least_stand(), speed, speed + "tension_per_width = \"150 N/m\"\nwidth = \"600 mm\"\n")).stand;
  EXPECT_THAT(slit.jobs.at(0).tension, Optional(DoubleEq(90)));
}

TEST(ReadStand, LeavesATensionOpenWhenTheJobNamesNone) { EXPECT_FALSE(read(least_stand()).stand.jobs.at(0).tension); }

TEST(ReadStand, ReadsTheSameStandInUnitsOfAnotherSystem) {
  const std::pair<const char*, const char*> same[] = {{"\"1000 mm\"", "\"39.37007874015748 in\""},
                                                      {"\"12 um\"", "\"0.4724409448818898 mil\""},
                                                      {"\"300 m/min\"", "\"984.2519685039370 ft/min\""},
                                                      {"\"5.5 bar\"", "\"79.77075574\x20psi\""},
                                                      {"\"250 degC\"", "\"482 degF\""},
                                                      {"\"150 K\"", "\"270 degF\""}};
  std::string text = least_stand();
  for (const auto& [si, us] : same) text = with(text, si, us);
  const Stand si = read(least_stand()).stand;
  const StandFile us = read(text);
  ASSERT_EQ(told(us.problems), "");
  EXPECT_DOUBLE_EQ(us.stand.webs.at(0).width, si.webs.at(0).width);
  EXPECT_DOUBLE_EQ(us.stand.webs.at(0).caliper, si.webs.at(0).caliper);
  EXPECT_DOUBLE_EQ(us.stand.line.top_speed, si.line.top_speed);
  EXPECT_NEAR(us.stand.brakes.at(0).rated_pressure, si.brakes.at(0).rated_pressure, 1e-3);
  EXPECT_NEAR(us.stand.brakes.at(0).rated_temperature, si.brakes.at(0).rated_temperature, 1e-9);
  EXPECT_DOUBLE_EQ(us.stand.brakes.at(0).cooling_rise, si.brakes.at(0).cooling_rise);
}

TEST(ReadStand, DoesNotMindLineEndsOrAByteOrderMark) {
  std::string windows = "\xEF\xBB\xBF";
  for (const char c : full_stand()) windows += c == '\n' ? std::string("\r\n") : std::string(1, c);
  const StandFile file = read(windows);
  EXPECT_EQ(told(file.problems), "");
  EXPECT_EQ(file.stand, read(full_stand()).stand);
  EXPECT_EQ(file.places.at("stand.title").where, (Position{4, 9}));
  EXPECT_EQ(file.lines.at("stand.toml").at(3), "title = \"slitter 2\"");
}

TEST(ReadStand, DoesNotMindTheOrderOfTables) {
  const std::string line = "[line]\ntop_speed = \"300 m/min\"\n";
  const std::string moved = with(least_stand(), line, "") + line;
  EXPECT_EQ(read(moved).stand, read(least_stand()).stand);
}

TEST(ReadStand, TakesDottedKeys) {
  const std::string dotted = with(least_stand(), "[line]\ntop_speed", "line.top_speed");
  const StandFile file = read(dotted);
  EXPECT_EQ(told(file.problems), "");
  EXPECT_DOUBLE_EQ(file.stand.line.top_speed, 5);
}

TEST(ReadStand, ReadsTheSameTextToTheSameValueEveryTime) {
  EXPECT_EQ(read(full_stand()).stand, read(full_stand()).stand);
}

}  // namespace
}  // namespace holdback::files::test
