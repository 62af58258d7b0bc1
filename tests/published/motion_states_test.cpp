// States of two stands in motion against SciPy (scripts/motion_reference.py), events included.
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <numbers>
#include <sstream>
#include <string>
#include <vector>

#include "holdback/dynamics/mover.hpp"

namespace holdback::published {
namespace {

using namespace dynamics;

/// One line of the reference: a name, a time [s] and what stands behind it.
struct Row {
  std::string name{};
  double t{};
  std::vector<double> values{};
};

std::vector<Row> rows(const std::string& name) {
  std::ifstream file(std::string(HOLDBACK_SOURCE_DIR) + "/tests/published/motion/states.txt");
  std::vector<Row> found;
  for (std::string line; std::getline(file, line);) {
    std::istringstream words(line);
    Row row;
    words >> row.name >> row.t;
    for (double value = 0; words >> value;) row.values.push_back(value);
    if (row.name.rfind(name, 0) == 0) found.push_back(row);
  }
  return found;
}

/// The roll and brake of both stands (invented).
Plant stand() {
  Plant plant;
  plant.roll = {0.08, 2e-4, 0.5, std::numbers::pi / 2 * 800, 0, 1, 0};
  plant.brake = {1e-3, 1e4, 1.3, 0, 1.5};
  plant.air.lag = 0.1;
  return plant;
}

/// A stretch of a run with one drive.
struct Leg {
  double until, begin, line_speed, acceleration, set_pressure;
};

Drive drive_of(const Leg& leg) {
  Drive drive;
  drive.begin = leg.begin;
  drive.line_speed = leg.line_speed;
  drive.acceleration = leg.acceleration;
  drive.set_pressure = leg.set_pressure;
  return drive;
}

/// Goes on to a time [s] along the legs.
void go(Mover& mover, const std::vector<Leg>& legs, double to) {
  for (const Leg& leg : legs) {
    if (leg.until <= mover.sight().time) continue;
    ASSERT_TRUE(mover.advance(drive_of(leg), std::min(to, leg.until)));
    if (to <= leg.until) return;
  }
}

/// One span with a roll off centre, in steady running.
std::unique_ptr<Mover> one_span() {
  Plant plant = stand();
  plant.roll.runout = 5e-4;
  plant.path = single_span(3, 2e5, 30);
  return make_mover(plant, {4, 120, 0.35}, {1e-12, Steps::explicit_steps});
}

/// Steady, a stop faster than the roll's, a rest, a pull that breaks the roll loose; the pressure stays.
std::vector<Leg> stop_and_pull(double pressure) {
  return {{2, 0, 4, 0, pressure}, {6, 2, 4, -1, pressure}, {8, 6, 0, 0, pressure}, {14, 8, 0, 0.3, pressure}};
}

// One span, runout 0.5 mm, static friction 1.3 times sliding: the line stops faster than the roll can, the web goes
// slack, the roll comes to rest; then the line takes the slack up, pulls, and breaks the roll loose.
TEST(motion, agrees_with_scipy_through_slack_rest_and_break_away) {
  const auto mover = one_span();
  const std::vector<Leg> legs = stop_and_pull(mover->sight().pressure);
  const auto expected = rows("one_span");
  ASSERT_GT(expected.size(), 30U);
  for (const Row& row : expected) {
    SCOPED_TRACE(row.name + " " + std::to_string(row.t));
    go(*mover, legs, row.t);
    const Sight& seen = mover->sight();
    EXPECT_NEAR(seen.roll_speed, row.values[0], 1e-7);
    EXPECT_NEAR(seen.angle, row.values[1], 1e-7);
    EXPECT_NEAR(seen.radius / row.values[2], 1, 1e-10);
    EXPECT_NEAR(seen.pressure / row.values[3], 1, 1e-9);
    EXPECT_NEAR(seen.tension, row.values[4], 1e-4);  // of 2e5 N of stiffness
    EXPECT_NEAR(seen.slack, row.values[5], 1e-7);
    if (row.name == "one_span") {  // just at an event either is right
      EXPECT_EQ(seen.motion.roll == Motion::Roll::held, row.values[6] != 0);
    }
  }
}

// The events themselves, between two times a microsecond apart.
TEST(motion, meets_the_events_that_scipy_finds) {
  const auto mover = one_span();
  const std::vector<Leg> legs = stop_and_pull(mover->sight().pressure);
  int events = 0;
  for (const Row& row : rows("one_span_")) {
    SCOPED_TRACE(row.name + " " + std::to_string(row.t));
    const bool of_roll = row.name == "one_span_rest" || row.name == "one_span_loose";
    const auto state = [&] {
      const Sight& seen = mover->sight();
      return of_roll ? seen.motion.roll == Motion::Roll::held : seen.slack > 0;
    };
    go(*mover, legs, row.t - 5e-7);
    const bool before = state();
    go(*mover, legs, row.t + 5e-7);
    EXPECT_NE(before, state());
    ++events;
  }
  EXPECT_EQ(events, 5);
}

// Four light idlers on short spans of a stiff web, with swings of up to a thousand hertz: both methods.
TEST(motion, agrees_with_scipy_on_a_stiff_chain) {
  Plant plant = stand();
  PathPlant& path = plant.path;
  path.stiffness = 1e6;
  path.wound_in = 30;
  path.spans = {0.6, 0.4, 0.5, 0.4, 0.6};
  path.idlers.assign(4, IdlerPlant{0.04, 4e-4, 0.04});
  for (const Steps steps : {Steps::explicit_steps, Steps::stiff_steps}) {
    const bool is_explicit = steps == Steps::explicit_steps;
    const auto mover = make_mover(plant, {4, 120, 0.35}, {is_explicit ? 1e-12 : 1e-9, steps});
    const double p = mover->sight().pressure;
    const std::vector<Leg> legs{{0.5, 0, 4, 0, p + 5e3}, {1.5, 0.5, 4, -0.5, p + 5e3}, {3, 1.5, 3.5, 0, p}};
    const auto expected = rows("chain");
    ASSERT_EQ(expected.size(), 12U);
    // The stiff method damps the fastest swings, which the first tension of 130 N shows by a few thousandths.
    for (const Row& row : expected) {
      SCOPED_TRACE(row.t);
      go(*mover, legs, row.t);
      const Sight& seen = mover->sight();
      EXPECT_NEAR(seen.roll_speed / row.values[0], 1, is_explicit ? 1e-8 : 1e-6);
      EXPECT_NEAR(seen.radius / row.values[1], 1, 1e-9);
      EXPECT_NEAR(seen.pressure / row.values[2], 1, is_explicit ? 1e-9 : 1e-7);
      EXPECT_NEAR(seen.tension / row.values[3], 1, is_explicit ? 1e-6 : 1e-4);
      EXPECT_NEAR(seen.nip_tension / row.values[4], 1, is_explicit ? 1e-6 : 1e-4);
    }
  }
}

}  // namespace
}  // namespace holdback::published
