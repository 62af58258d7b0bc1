#include "holdback/sizing/target.hpp"

#include <gtest/gtest.h>

#include "support/stands.hpp"

namespace holdback::sizing {
namespace {

const Limits limits = test::small_stand().limits;

TEST(tension_target, runs_what_the_job_asks) {
  const TensionTarget target = tension_target(test::film_job(), limits);
  EXPECT_TRUE(target.asked);
  EXPECT_DOUBLE_EQ(target.setpoint, 220);
}

TEST(tension_target, keeps_the_window_at_the_tolerance_around_the_setpoint) {
  Job job = test::film_job();
  job.tension_tolerance = 0.05;
  const TensionTarget target = tension_target(job, limits);
  EXPECT_DOUBLE_EQ(target.low, 209);
  EXPECT_DOUBLE_EQ(target.high, 231);
}

TEST(tension_target, recommends_when_the_job_asks_nothing) {
  Job job = test::film_job();
  job.tension.reset();
  const TensionTarget target = tension_target(job, limits);
  EXPECT_FALSE(target.asked);
  EXPECT_GT(target.setpoint, 0);
  EXPECT_DOUBLE_EQ(target.setpoint, target.recommended);
}

// Polyester 0.5–1.0 lbf/in per mil: common practice, no source. 36 µm × 1.2 m: 1.417 mil × 47.24 in → 149 … 298 N.
TEST(tension_target, recommends_inside_what_the_trade_runs_on_polyester) {
  Job job = test::film_job();
  job.tension.reset();
  const TensionTarget target = tension_target(job, limits);
  EXPECT_GE(target.recommended_low, 148);
  EXPECT_LE(target.recommended_high, 299);
}

TEST(tension_target, has_no_setpoint_when_nothing_is_known) {
  Job job = test::film_job();
  job.tension.reset();
  job.web.material = Material::other;
  job.web.modulus.reset();
  job.web.yield_strength.reset();
  EXPECT_EQ(tension_target(job, limits).setpoint, 0);
}

TEST(tension_target, knows_the_tension_at_yield_from_strength_and_section) {
  EXPECT_NEAR(tension_target(test::film_job(), limits).web_strength, 90e6 * 1.2 * 36e-6, 1e-9);
}

}  // namespace
}  // namespace holdback::sizing
