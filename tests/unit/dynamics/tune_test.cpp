// Tunings: what is asked is kept at every diameter, told by the margins of numerics/frequency, and by the simulation.
#include "holdback/dynamics/tune.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace holdback::dynamics {
namespace {

/// Invented: 150 N at 4 m/s on three metres of web, air of 80 ms behind 40 ms.
TuneRequest request(Held held = Held::tension) {
  TuneRequest request;
  request.plant.roll = {0.09, 1e-4, 0.6, std::numbers::pi / 2 * 900, 5e-4, 1, 9.81};
  request.plant.brake = {1e-3, 1e4, 1.1, 0, 1.5};
  request.plant.air = {0.08, 0.04, 0};
  request.plant.path = single_span(3, 2e5);
  request.held = held;
  if (held == Held::dancer_place) request.plant.path.dancer = DancerPlant{0, 4, 0.1, 100, 2, 0};
  request.speed = 4;
  request.setpoint = 150;
  request.full_radius = 0.45;
  request.core_radius = 0.09;
  request.believed = {1e-3, 1e4, 1.5, 0.6, request.plant.roll.inertia_per_fourth, 0.09, 0};
  request.delays = {0.04, 0.01, 0.02};
  return request;
}

class TunedLoop : public testing::TestWithParam<std::pair<Held, bool>> {};

TEST_P(TunedLoop, keeps_its_margins_from_full_to_core) {
  const auto [held, scheduled] = GetParam();
  const TuneRequest asked = request(held);
  const auto stands = stands_over_roll(asked);
  const LoopSettings settings = tuned(asked, stands, scheduled);
  ASSERT_GT(settings.gain, 0);
  for (const LinearStand& stand : stands) {
    const auto margins = margins_of(stand, held, settings, asked.delays, asked.believed, asked.setpoint);
    EXPECT_TRUE(margins.stable);
    EXPECT_GE(margins.gain_rise, asked.asked.gain * (1 - 1e-6));
    EXPECT_GE(std::abs(margins.phase_margin), asked.asked.phase * (1 - 1e-6));
  }
  EXPECT_EQ(tuning_of(asked, stands, settings).state, State::holds);
}

INSTANTIATE_TEST_SUITE_P(Loops, TunedLoop,
                         testing::Values(std::pair{Held::tension, false}, std::pair{Held::tension, true},
                                         std::pair{Held::dancer_place, false}, std::pair{Held::dancer_place, true}));

// A quarter more than the least gain margin is too much somewhere: the margin is not given away.
TEST(tuning_of, fails_with_more_gain_than_the_margin) {
  const TuneRequest asked = request();
  const auto stands = stands_over_roll(asked);
  LoopSettings settings = tuned(asked, stands, true);
  settings.gain *= 1.25 * tuning_of(asked, stands, settings).least_gain_margin;
  const LoopTuning tuning = tuning_of(asked, stands, settings);
  EXPECT_EQ(tuning.state, State::fails);
  EXPECT_TRUE(std::any_of(tuning.points.begin(), tuning.points.end(), [](const TunePoint& p) { return !p.stable; }));
}

TEST(tuned, finds_nothing_for_a_dancer_without_a_derivative) {
  TuneRequest asked = request(Held::dancer_place);
  asked.derivative_time = 1e-6;  // given, and as good as none: two integrators and a lag, which no PI holds
  const auto stands = stands_over_roll(asked);
  EXPECT_EQ(tuned(asked, stands, true).gain, 0);
}

// Arms by hand: tension R; place J(R)/J(full) · full²/R.
TEST(gain_arm, undoes_what_the_diameter_does) {
  const TuneRequest asked = request();
  LoopSettings settings;
  settings.full_radius = 0.45;
  EXPECT_DOUBLE_EQ(gain_arm(Held::tension, settings, asked.believed, 0.2), 0.45);
  settings.scheduled = true;
  EXPECT_DOUBLE_EQ(gain_arm(Held::tension, settings, asked.believed, 0.2), 0.2);
  const double share = inertia_at(asked.plant.roll, 0.2) / inertia_at(asked.plant.roll, 0.45);
  EXPECT_NEAR(gain_arm(Held::dancer_place, settings, asked.believed, 0.2), share * 0.45 * 0.45 / 0.2, 1e-12);
}

TEST(runout_map, is_worst_where_the_runout_meets_the_mode) {
  const TuneRequest asked = request();
  const RunoutMap map = runout_map(asked, nullptr);
  ASSERT_EQ(map.share.size(), map.speed.size() * map.diameter.size());
  const auto at = static_cast<std::size_t>(std::min_element(map.diameter.begin(), map.diameter.end(),
                                                            [&](double a, double b) {
                                                              return std::abs(a - map.worst_diameter) <
                                                                     std::abs(b - map.worst_diameter);
                                                            }) -
                                           map.diameter.begin());
  ASSERT_GT(map.meets[at], 0);
  EXPECT_NEAR(map.worst_speed / map.meets[at], 1, 0.1);  // a step of the map is 3 % of the speed at most
}

TEST(runout_map, is_empty_for_a_round_roll) {
  TuneRequest asked = request();
  asked.plant.roll.runout = 0;
  EXPECT_TRUE(runout_map(asked, nullptr).share.empty());
}

}  // namespace
}  // namespace holdback::dynamics
