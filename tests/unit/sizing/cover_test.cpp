#include "holdback/sizing/cover.hpp"

#include <gtest/gtest.h>

#include "support/stands.hpp"

namespace holdback::sizing {
namespace {

FitResult result(int covered, int tight, int brakes, std::optional<double> price, double margin) {
  FitResult r;
  r.fit = {"b", "g", brakes, 4};
  r.covered = covered;
  r.tight = tight;
  r.price = price;
  r.worst_margin = margin;
  return r;
}

std::size_t best_of(const std::vector<FitResult>& results) {
  std::vector<Candidate> candidates;
  for (const FitResult& r : results)
    candidates.push_back({nullptr, nullptr, r.fit.brakes, static_cast<int>(candidates.size())});
  return rank(results, candidates).front();
}

TEST(rank, prefers_the_fit_that_covers_most) {
  EXPECT_EQ(best_of({result(5, 0, 1, 100, 2), result(6, 4, 2, 900, 1)}), 1U);
}

TEST(rank, then_the_fit_that_keeps_the_reserve_on_most) {
  EXPECT_EQ(best_of({result(6, 3, 1, 100, 2), result(6, 0, 2, 900, 1.2)}), 1U);
}

TEST(rank, then_the_cheaper_one) { EXPECT_EQ(best_of({result(6, 0, 1, 900, 2), result(6, 0, 2, 800, 1.2)}), 1U); }

TEST(rank, counts_brakes_when_a_price_is_missing) {
  EXPECT_EQ(best_of({result(6, 0, 2, std::nullopt, 2), result(6, 0, 1, 800, 1.2)}), 1U);
}

TEST(rank, takes_the_brake_listed_first_among_equals_without_prices) {
  EXPECT_EQ(best_of({result(6, 0, 1, std::nullopt, 1.2), result(6, 0, 1, std::nullopt, 2)}), 0U);
}

TEST(why, names_the_first_criterion_in_which_the_two_differ) {
  EXPECT_NE(why(result(6, 0, 1, 1, 2), result(5, 0, 1, 1, 2), 6).text.find("covers 6 of 6"), std::string::npos);
  EXPECT_NE(why(result(6, 0, 1, 100, 2), result(6, 0, 1, 200, 2), 6).text.find("for {0} instead of {1}"),
            std::string::npos);
}

TEST(why, speaks_of_all_jobs_when_none_is_tight) {
  EXPECT_NE(why(result(6, 0, 1, 100, 2), result(6, 1, 1, 100, 2), 6).text.find("reserve on all of them"),
            std::string::npos);
  EXPECT_NE(why(result(6, 1, 1, 100, 2), result(6, 2, 1, 100, 2), 6).text.find("all but 1 job where"),
            std::string::npos);
}

TEST(candidates, are_every_brake_by_number_by_grade) {
  Stand stand = test::small_stand();
  stand.brakes[0].grades.push_back(test::middle_grade());
  stand.brakes[0].most_brakes = 3;
  EXPECT_EQ(candidates(stand, site_of(stand)).size(), 6U);
}

TEST(cover, answers_the_same_on_one_thread_or_many) {
  Stand stand = test::small_stand();
  for (int i = 1; i < 20; ++i) {
    stand.jobs.push_back(test::film_job());
    stand.jobs.back().tension = 40.0 * i;
  }
  const Site site = site_of(stand);
  const Coverage one = cover(stand, site, candidates(stand, site), 1);
  const Coverage many = cover(stand, site, candidates(stand, site), 4);
  for (std::size_t fit = 0; fit < one.verdicts.size(); ++fit)
    for (std::size_t job = 0; job < one.verdicts[fit].size(); ++job) {
      EXPECT_EQ(one.verdicts[fit][job].margin, many.verdicts[fit][job].margin);
      EXPECT_EQ(one.verdicts[fit][job].pairs, many.verdicts[fit][job].pairs);
    }
}

TEST(sum_up, weighs_pads_by_the_jobs_share_of_running_time) {
  Stand stand = test::small_stand();
  stand.jobs.push_back(test::film_job());
  stand.jobs[1].name = "light";
  stand.jobs[1].tension = 60;
  const auto pads = [&](double first, double second) {
    stand.jobs[0].share = first;
    stand.jobs[1].share = second;
    const Site site = site_of(stand);
    return sum_up(cover(stand, site, candidates(stand, site), 1), 0, stand).pads_per_year;
  };
  const double heavy = pads(1, 0);
  const double light = pads(0, 1);
  EXPECT_GT(heavy, light);
  EXPECT_NEAR(pads(3, 1), (3 * heavy + light) / 4, 1e-9 * heavy);
}

}  // namespace
}  // namespace holdback::sizing
