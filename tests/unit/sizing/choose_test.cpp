#include "holdback/sizing/choose.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "support/stands.hpp"

namespace holdback::sizing {
namespace {

Stand impossible_stop() {
  Stand stand = test::small_stand();
  stand.line.emergency_stop_time = 11;
  stand.brakes[0].most_brakes = 1;
  return stand;
}

bool has_kind(const Uncovered& out, RemedyKind kind) {
  return std::any_of(out.remedies.begin(), out.remedies.end(), [&](const Remedy& r) { return r.kind == kind; });
}

TEST(choose, recommends_the_single_brake_that_covers_the_job) {
  const Choice choice = choose(test::small_stand(), {});
  ASSERT_TRUE(choice.recommended);
  EXPECT_EQ(choice.recommended->fit.brakes, 1);
  EXPECT_EQ(choice.recommended->covered, 1);
  EXPECT_TRUE(choice.uncovered.empty());
  EXPECT_FALSE(choice.why.text.empty());
}

TEST(choose, tries_only_what_the_options_leave) {
  ChooseOptions options;
  options.brakes = 2;
  const Choice choice = choose(test::small_stand(), options);
  EXPECT_EQ(choice.fits_tried, 1);
  EXPECT_EQ(choice.recommended->fit.brakes, 2);
}

TEST(choose, recommends_nothing_when_no_candidate_is_left) {
  ChooseOptions options;
  options.brake = "none such";
  EXPECT_FALSE(choose(test::small_stand(), options).recommended);
}

TEST(choose, shows_the_hardest_job_when_none_is_asked_for_in_depth) {
  Stand stand = test::small_stand();
  stand.jobs.push_back(test::film_job());
  stand.jobs[1].name = "harder";
  stand.jobs[1].emergency_stop_time = 1;
  const Choice choice = choose(stand, {});
  EXPECT_FALSE(choice.job);
  ASSERT_TRUE(choice.envelope);
  EXPECT_EQ(choice.envelope->job, "harder");
}

TEST(choose, in_brief_answers_as_in_full_what_it_does_answer) {
  Stand stand = test::small_stand();
  stand.jobs.push_back(test::film_job());
  stand.jobs[1].name = "harder";
  stand.jobs[1].emergency_stop_time = 1;
  ChooseOptions options;
  options.all = true;
  const Choice full = choose(stand, options);
  options.brief = true;
  const Choice brief = choose(stand, options);
  EXPECT_TRUE(brief.brief);
  ASSERT_EQ(brief.all.size(), full.all.size());
  for (std::size_t fit = 0; fit < full.all.size(); ++fit) {
    EXPECT_EQ(brief.all[fit].fit, full.all[fit].fit);
    EXPECT_TRUE(brief.all[fit].jobs.empty());
    ASSERT_EQ(brief.all[fit].standings.size(), 2U);
    for (std::size_t job = 0; job < 2; ++job) {
      const Standing& in_a_line = brief.all[fit].standings[job];
      const JobFit& in_full = full.all[fit].jobs[job];
      EXPECT_EQ(in_a_line.state, in_full.state);
      EXPECT_EQ(in_a_line.binding, in_full.binding);
      EXPECT_EQ(in_a_line.pairs, in_full.pairs);
      EXPECT_DOUBLE_EQ(in_a_line.margin, in_full.margin);
    }
  }
  EXPECT_EQ(brief.envelope->job, full.envelope->job);
  EXPECT_FALSE(brief.likelihood);
  ASSERT_EQ(brief.recommended->jobs.size(), 2U);
  EXPECT_FALSE(brief.recommended->jobs[0].thermal);
  EXPECT_EQ(brief.recommended->jobs[1].thermal->disc_highest, full.recommended->jobs[1].thermal->disc_highest);
}

TEST(choose, in_brief_looks_for_no_remedies) {
  ChooseOptions options;
  options.brief = true;
  const Choice brief = choose(impossible_stop(), options);
  ASSERT_EQ(brief.uncovered.size(), 1U);
  EXPECT_FALSE(brief.uncovered[0].failing.empty());
  EXPECT_TRUE(brief.uncovered[0].remedies.empty());
}

TEST(choose, always_carries_cautions_and_assumptions) {
  const Choice choice = choose(test::small_stand(), {});
  EXPECT_GE(choice.cautions.size(), 4U);
  EXPECT_FALSE(choice.assumptions.empty());
}

TEST(remedies, find_the_stop_time_that_brings_a_job_in_and_none_shorter) {
  const Stand stand = impossible_stop();
  const Choice choice = choose(stand, {});
  ASSERT_EQ(choice.uncovered.size(), 1U);
  const auto& all = choice.uncovered[0].remedies;
  const auto slower =
      std::find_if(all.begin(), all.end(), [](const Remedy& r) { return r.kind == RemedyKind::slower_stop; });
  ASSERT_NE(slower, all.end());
  const double time = slower->what.amounts[0].value;
  Stand mended = stand;
  mended.jobs[0].emergency_stop_time = time;
  EXPECT_TRUE(choose(mended, {}).uncovered.empty());
  mended.jobs[0].emergency_stop_time = time - 0.11;  // times are given to a tenth of a second
  EXPECT_FALSE(choose(mended, {}).uncovered.empty());
}

TEST(remedies, offer_a_second_brake_where_torque_is_missing) {
  const Choice choice = choose(impossible_stop(), {});
  ASSERT_EQ(choice.uncovered.size(), 1U);
  EXPECT_TRUE(has_kind(choice.uncovered[0], RemedyKind::second_brake));
  EXPECT_TRUE(has_kind(choice.uncovered[0], RemedyKind::more_pairs));
}

TEST(remedies, offer_an_open_guard_where_heat_fails_behind_a_closed_one) {
  Stand stand = test::small_stand();
  stand.guard = Guard::closed;
  stand.guard_factor = 0.4;
  stand.jobs[0].tension = 180;
  stand.jobs[0].speed = 6.5;
  stand.brakes[0].most_brakes = 1;
  const Choice choice = choose(stand, {});
  ASSERT_EQ(choice.uncovered.size(), 1U);
  EXPECT_TRUE(has_kind(choice.uncovered[0], RemedyKind::guard));
}

TEST(remedies, name_the_jobs_that_a_change_of_grade_would_lose) {
  Stand stand = test::small_stand();
  stand.brakes[0].most_brakes = 1;
  stand.brakes[0].grades[0].friction = 0.14;
  stand.brakes[0].grades.push_back(test::middle_grade());
  stand.brakes[0].grades[1].name = "high";
  stand.brakes[0].grades[1].friction = 0.6;
  stand.drag = 0.1;
  stand.brakes[0].drag = 0.05;
  Job light = test::film_job();  // needs the low grade: five of them decide the choice
  light.roll.full_diameter = 0.5;
  light.tension = 15;
  light.tension_tolerance = 0.2;
  light.ramp_time = 300;
  light.emergency_stop_time = 30;
  for (int i = 0; i < 5; ++i) {
    light.name = "light " + std::to_string(i);
    stand.jobs.push_back(light);
  }
  const Choice choice = choose(stand, {});
  ASSERT_EQ(choice.recommended->fit.grade, "middle");
  const auto out = std::find_if(choice.uncovered.begin(), choice.uncovered.end(),
                                [](const Uncovered& u) { return u.job == "film job"; });
  ASSERT_NE(out, choice.uncovered.end());
  const auto grade = std::find_if(out->remedies.begin(), out->remedies.end(),
                                  [](const Remedy& r) { return r.kind == RemedyKind::other_grade; });
  ASSERT_NE(grade, out->remedies.end());
  EXPECT_EQ(grade->jobs_lost.size(), 5U);
}

}  // namespace
}  // namespace holdback::sizing
