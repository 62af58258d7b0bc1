#include "holdback/model/job.hpp"

#include "unit/model/faults_of.hpp"

namespace holdback {
namespace {

using testing::one_error;
using testing::one_warning;
using testing::sound_job;

TEST(problems_of_job, finds_nothing_in_a_sound_job) { EXPECT_TRUE(problems_of(sound_job(), "job[0]").empty()); }

TEST(problems_of_job, refuses_a_tension_at_which_the_web_yields) {
  Job job = sound_job();
  const double at_yield = 90e6 * 1.2 * 25e-6;
  job.tension = 0.99 * at_yield;
  EXPECT_TRUE(problems_of(job, "job[0]").empty());
  job.tension = at_yield;
  const Problems problems = problems_of(job, "job[0]");
  ASSERT_TRUE(one_error(problems, "job[0].tension"));
  EXPECT_EQ(problems[0].what.amounts[0].value, at_yield);
  EXPECT_DOUBLE_EQ(problems[0].what.amounts[1].value, at_yield);
}

TEST(problems_of_job, asks_nothing_of_a_job_without_tension_or_strength) {
  Job job = sound_job();
  job.tension.reset();
  EXPECT_TRUE(problems_of(job, "job[0]").empty());
  job = sound_job();
  job.tension = 1e9;
  job.web.yield_strength.reset();
  EXPECT_TRUE(problems_of(job, "job[0]").empty());
}

TEST(problems_of_job, doubts_an_emergency_stop_slower_than_a_normal_one) {
  Job job = sound_job();
  job.emergency_stop_time = 9;
  EXPECT_TRUE(one_warning(problems_of(job, "job[0]"), "job[0].emergency_stop_time"));
}

}  // namespace
}  // namespace holdback
