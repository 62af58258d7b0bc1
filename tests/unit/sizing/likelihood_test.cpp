#include "holdback/sizing/likelihood.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "support/stands.hpp"

namespace holdback::sizing {
namespace {

struct Case {
  Stand stand = test::small_stand();
  int pairs = 4;
  Site site() const { return site_of(stand); }
  Candidate candidate() const { return candidate_of(stand.brakes[0], stand.brakes[0].grades[0], 1, site()); }
  SampledJob sampled(std::size_t base = 256) const {
    return sample_job(demand_of(stand.jobs[0], site()), candidate(), site(), pairs, {base, 20});
  }
  double chance_of(LimitId id, std::size_t base) const {
    for (const Chance& chance : sampled(base).likelihood.limits)
      if (chance.id == id) return chance.probability;
    return 1;
  }
};

/// Nothing varies but friction, and only the emergency stop can fail: its torque needs a share of friction that follows
/// by hand from the limit at nominal friction. Friction lies evenly over its band, so the closed form of the likelihood
/// is a length: (μ_max − μ_needed)/(μ_max − μ_min).
struct FrictionAlone : Case {
  double closed_form{};
  FrictionAlone() {
    stand.uncertainty = {};
    stand.brakes[0].grades[0].fade_start.reset();
    stand.line.emergency_stop_time = 9;
    stand.brakes[0].rated_torque = 1e5;
    stand.brakes[0].grades[0].temperature_limit = 900;
    stand.brakes[0].rated_temperature = 900;
    const Demand demand = demand_of(stand.jobs[0], site());
    const Assessment judged = assess(demand, survey(demand, candidate(), site()), candidate(), site(), pairs);
    const Limit& stop = judged.limits[static_cast<std::size_t>(LimitId::emergency_stop_torque)];
    const double band = stand.brakes[0].grades[0].friction_band;
    const double needed = stop.value / (stop.bound / (1 - band));  // share of nominal friction
    closed_form = (1 + band - needed) / (2 * band);
  }
};

TEST(sample_job, comes_to_the_closed_form_when_friction_alone_varies) {
  const FrictionAlone c;
  ASSERT_GT(c.closed_form, 0.05);
  ASSERT_LT(c.closed_form, 0.95);
  EXPECT_NEAR(c.chance_of(LimitId::emergency_stop_torque, 4096), c.closed_form, 1e-3);
}

TEST(sample_job, comes_closer_the_more_points_are_taken) {
  const FrictionAlone c;
  EXPECT_NEAR(c.chance_of(LimitId::emergency_stop_torque, 32), c.closed_form, 0.05);
  EXPECT_NEAR(c.chance_of(LimitId::emergency_stop_torque, 512), c.closed_form, 0.005);
}

TEST(sample_job, names_friction_when_nothing_else_varies) {
  const Likelihood likelihood = FrictionAlone().sampled().likelihood;
  ASSERT_FALSE(likelihood.drivers.empty());
  EXPECT_EQ(likelihood.drivers.front().input, Input::friction);
  EXPECT_NEAR(likelihood.drivers.front().total, 1, 0.02);
  EXPECT_NEAR(likelihood.drivers[1].total, 0, 1e-9);
}

TEST(sample_job, is_certain_when_nothing_varies) {
  Case c;
  c.stand.uncertainty = {};
  c.stand.brakes[0].grades[0].friction_band = 0;
  const Likelihood likelihood = c.sampled(32).likelihood;
  EXPECT_TRUE(likelihood.probability == 0 || likelihood.probability == 1);
  EXPECT_TRUE(likelihood.drivers.empty());
  EXPECT_DOUBLE_EQ(likelihood.low_margin, likelihood.middle_margin);
}

TEST(sample_job, agrees_with_the_check_at_nominal_values) {
  Case c;
  c.stand.uncertainty = {};
  c.stand.brakes[0].grades[0].friction_band = 0;
  const Demand demand = demand_of(c.stand.jobs[0], c.site());
  const Assessment judged = assess(demand, survey(demand, c.candidate(), c.site()), c.candidate(), c.site(), c.pairs);
  EXPECT_NEAR(c.sampled(32).likelihood.middle_margin, std::min(judged.margin, 10.0), 1e-12);
}

TEST(sample_job, is_the_same_every_time) {
  const Case c;
  EXPECT_EQ(c.sampled().failing, c.sampled().failing);
}

TEST(variation_at, goes_from_one_end_of_every_band_to_the_other) {
  const Case c;
  const auto bands = input_bands(c.candidate(), c.site());
  const double low[input_count] = {0, 0, 0, 0, 0, 0, 0};
  const double high[input_count] = {1, 1, 1, 1, 1, 1, 1};
  EXPECT_DOUBLE_EQ(variation_at(low, bands).friction, -0.2);
  EXPECT_DOUBLE_EQ(variation_at(high, bands).friction, 0.2);
  EXPECT_DOUBLE_EQ(variation_at(low, bands).drag, 0.7);
  EXPECT_DOUBLE_EQ(variation_at(high, bands).ambient, 5);
}

TEST(mix_of, holds_where_every_counted_job_holds) {
  SampledJob a;
  SampledJob b;
  a.failing = {0, 1, 0, 0, 7, 7};  // A and B of two points, then the rest of the design
  b.failing = {0, 0, 0, 1, 7, 7};
  const Sampling sampling{2, 20};
  EXPECT_DOUBLE_EQ(mix_of({a, b}, {true, true}, {}, sampling).probability, 0.5);
  EXPECT_DOUBLE_EQ(mix_of({a, b}, {true, false}, {}, sampling).probability, 0.75);
  EXPECT_DOUBLE_EQ(mix_of({a, b}, {false, false}, {}, sampling).probability, 0);
}

}  // namespace
}  // namespace holdback::sizing
