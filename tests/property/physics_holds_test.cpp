// What must be true of any stand, tried on many: laws of the trade and of physics, not values.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "holdback/physics/brake.hpp"
#include "holdback/physics/heat.hpp"
#include "holdback/sizing/assess.hpp"
#include "support/stands.hpp"

namespace holdback::sizing {
namespace {

// A stand with every number drawn within what the trade builds. The seed is fixed: the same stands on every run.
class Stands {
 public:
  Stand next() {
    Stand stand = test::small_stand();
    Job& job = stand.jobs[0];
    job.web.width = between(0.2, 2.5);
    job.web.caliper = between(10e-6, 400e-6);
    job.web.basis_weight = job.web.caliper * between(500, 1500);
    job.roll.core_diameter = between(0.08, 0.33);
    job.roll.full_diameter = job.roll.core_diameter * between(1.5, 10);
    job.speed = between(0.5, 6.5);
    job.tension = between(20, 600);
    job.web.yield_strength.reset();
    stand.line.emergency_stop_time = between(2, 15);
    stand.brakes[0].grades[0].friction = between(0.15, 0.55);
    stand.brakes[0].piston_area = between(4e-4, 3e-3);
    return stand;
  }
  double between(double low, double high) { return std::uniform_real_distribution<double>(low, high)(random_); }

 private:
  std::mt19937_64 random_{20261125};
};

struct Judged {
  Demand demand;
  Survey found;
  Assessment assessment;
};

Judged judge(const Stand& stand, int pairs, int brakes = 1) {
  const Site site = site_of(stand);
  const Candidate candidate = candidate_of(stand.brakes[0], stand.brakes[0].grades[0], brakes, site);
  Judged judged{demand_of(stand.jobs[0], site), {}, {}};
  judged.found = survey(judged.demand, candidate, site);
  judged.assessment = assess(judged.demand, judged.found, candidate, site, pairs);
  return judged;
}

double margin(const Judged& judged, LimitId id) {
  return judged.assessment.limits[static_cast<std::size_t>(id)].margin;
}

constexpr int stands = 400;

TEST(property, torque_doubles_with_the_pairs) {
  Stands draw;
  for (int i = 0; i < stands; ++i) {
    const Stand stand = draw.next();
    const double one = judge(stand, 1).assessment.limits[static_cast<std::size_t>(LimitId::stop_torque)].bound;
    for (int pairs = 2; pairs <= 4; ++pairs) {
      const auto more = judge(stand, pairs).assessment.limits[static_cast<std::size_t>(LimitId::stop_torque)];
      EXPECT_NEAR(more.bound, pairs * one, 1e-9 * more.bound);
    }
  }
}

// With neither drag nor the thinning of the roll to help, M_b ω = T v at every diameter.
TEST(property, slip_power_does_not_depend_on_diameter) {
  Stands draw;
  for (int i = 0; i < stands; ++i) {
    Stand stand = draw.next();
    stand.drag = stand.brakes[0].drag = 0;
    const Demand demand = demand_of(stand.jobs[0], site_of(stand));
    for (std::size_t r = 0; r < demand.radius.size(); ++r) {
      const double torque = case_torques(demand, stand.limits, r, 0, 0).run;
      EXPECT_NEAR(physics::slip_power(torque, demand.rotational_speed[r]), *stand.jobs[0].tension * stand.jobs[0].speed,
                  1e-9 * *stand.jobs[0].tension * stand.jobs[0].speed);
    }
  }
}

TEST(property, a_longer_emergency_stop_never_leaves_less_in_hand) {
  Stands draw;
  for (int i = 0; i < stands; ++i) {
    Stand stand = draw.next();
    const double before = margin(judge(stand, 2), LimitId::emergency_stop_torque);
    stand.line.emergency_stop_time *= draw.between(1, 4);
    EXPECT_GE(margin(judge(stand, 2), LimitId::emergency_stop_torque), before * (1 - 1e-12));
  }
}

TEST(property, more_pairs_never_leave_less_torque_nor_finer_control) {
  Stands draw;
  for (int i = 0; i < stands; ++i) {
    const Stand stand = draw.next();
    for (int pairs = 1; pairs < 4; ++pairs) {
      const Judged few = judge(stand, pairs);
      const Judged more = judge(stand, pairs + 1);
      for (const LimitId id : {LimitId::highest_pressure, LimitId::stop_torque, LimitId::emergency_stop_torque,
                               LimitId::holding_torque, LimitId::pad_life})
        EXPECT_GE(margin(more, id), margin(few, id)) << info(id).key;
      for (const LimitId id : {LimitId::lowest_pressure, LimitId::lowest_tension, LimitId::tension_resolution})
        EXPECT_LE(margin(more, id), margin(few, id)) << info(id).key;
    }
  }
}

TEST(property, a_wider_friction_band_never_leaves_more_in_hand) {
  Stands draw;
  for (int i = 0; i < stands; ++i) {
    Stand stand = draw.next();
    stand.brakes[0].grades[0].friction_band = draw.between(0, 0.2);
    const Judged narrow = judge(stand, 2);
    stand.brakes[0].grades[0].friction_band += draw.between(0, 0.3);
    const Judged wide = judge(stand, 2);
    for (std::size_t l = 0; l < narrow.assessment.limits.size(); ++l)
      EXPECT_LE(wide.assessment.limits[l].margin, narrow.assessment.limits[l].margin * (1 + 1e-12))
          << info(static_cast<LimitId>(l)).key;
  }
}

TEST(property, hotter_air_a_tighter_guard_and_altitude_never_cool) {
  Stands draw;
  for (int i = 0; i < stands; ++i) {
    const Stand before = draw.next();
    const double temperature = judge(before, 2).found.temperature.value;
    Stand stand = before;
    stand.ambient += draw.between(0, 20);
    EXPECT_GE(judge(stand, 2).found.temperature.value, temperature);
    stand = before;
    stand.guard = Guard::closed;
    EXPECT_GE(judge(stand, 2).found.temperature.value, temperature);
    stand = before;
    stand.altitude = draw.between(0, 3000);
    EXPECT_GE(judge(stand, 2).found.temperature.value, temperature);
  }
}

// Radiation grows with temperature, so that half the heat leaves somewhat more than half the rise.
TEST(property, a_second_brake_takes_nearly_half_the_heat_of_each_disc) {
  Stands draw;
  for (int i = 0; i < stands; ++i) {
    Stand stand = draw.next();
    stand.brakes[0].drag = stand.brakes[0].disc_inertia = 0;
    const double one = judge(stand, 2, 1).found.temperature.value - stand.ambient;
    const double two = judge(stand, 2, 2).found.temperature.value - stand.ambient;
    EXPECT_GE(two, one / 2);
    EXPECT_LT(two, 0.8 * one);
  }
}

TEST(property, no_limit_of_any_stand_is_without_a_number) {
  Stands draw;
  for (int i = 0; i < stands; ++i) {
    const Judged judged = judge(draw.next(), 1 + i % 4);
    for (std::size_t l = 0; l < judged.assessment.limits.size(); ++l) {
      if (!judged.assessment.present.test(l)) continue;
      EXPECT_TRUE(std::isfinite(judged.assessment.limits[l].value)) << info(static_cast<LimitId>(l)).key;
      EXPECT_TRUE(std::isfinite(judged.assessment.limits[l].bound)) << info(static_cast<LimitId>(l)).key;
    }
  }
}

}  // namespace
}  // namespace holdback::sizing
