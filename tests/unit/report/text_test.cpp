// The text answers: what must be said is said, in words, and nothing is wider than the page.
#include <gtest/gtest.h>

#include <sstream>

#include "holdback/draw/cells.hpp"
#include "holdback/report/phrase.hpp"
#include "holdback/report/report.hpp"
#include "sample.hpp"

namespace holdback::report {
namespace {

constexpr Style si{};
constexpr Style us{units::System::us, false, 100, false};

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

/// The first line that is wider; empty when there is none.
std::string too_wide(const std::string& text, int width) {
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    if (draw::columns(line) > width) return line;
  }
  return {};
}

TEST(in_hand, is_said_in_per_cent_rounded_towards_what_is_worse) {
  EXPECT_EQ(in_hand(1.18), "+18 %");
  EXPECT_EQ(in_hand(0.9), "−10 %");
  EXPECT_EQ(in_hand(1), "+0 %");
  EXPECT_EQ(in_hand(0.9999), "−1 %");
  EXPECT_EQ(in_hand(1.999), "+99 %");
  EXPECT_EQ(in_hand(margin_cap), ">+900 %");
}

TEST(text, the_mix_names_the_fit_the_jobs_and_what_falls_out) {
  const auto shown = text(sample::size(), si);
  EXPECT_TRUE(has(shown, "2 × D300, 4 pairs each, grade medium")) << shown;
  EXPECT_TRUE(has(shown, "covers 1 of 2 jobs, 1 of them tight")) << shown;
  EXPECT_TRUE(has(shown, "Why: it covers more jobs")) << shown;
  EXPECT_TRUE(has(shown, "[bar]")) << shown;
  EXPECT_TRUE(has(shown, "3.20")) << shown;
  EXPECT_TRUE(has(shown, "What falls out")) << shown;
  EXPECT_TRUE(has(shown, "“wide board” fails")) << shown;
  EXPECT_TRUE(
      has(shown,
          "1. stop in 16.0 s instead of 12.0 s → tight, +2 % in hand (stop torque); but loses “narrow\n        label”"))
      << shown;
}

TEST(text, a_failing_job_is_called_failing_and_its_slack_is_named) {
  const auto shown = text(sample::size(), si);
  EXPECT_TRUE(has(shown, "fails")) << shown;
  EXPECT_TRUE(has(shown, "−10 %")) << shown;
  EXPECT_TRUE(has(shown, "“wide board”: a normal stop throws 1250 mm of slack at Ø 1000 mm")) << shown;
}

TEST(text, a_fit_that_covers_nothing_is_not_called_recommended) {
  auto answer = sample::size();
  answer.choice->recommended->covered = answer.choice->recommended->tight = 0;
  const auto shown = text(answer, si);
  EXPECT_TRUE(has(shown, "No fit covers a job")) << shown;
  EXPECT_TRUE(has(shown, "Every job fails on it")) << shown;
  EXPECT_FALSE(has(shown, "Recommended")) << shown;
}

TEST(text, large_numbers_are_rounded_with_thousands_apart) {
  EXPECT_EQ(rounded(34986482, Quantity::web_length, units::System::si), kept_together("35 000 000 m"));
  EXPECT_EQ(rounded(1234 * 3600.0, Quantity::running_time, units::System::si), kept_together("1 230 h"));
  EXPECT_EQ(rounded(123456, Quantity::number, units::System::si), kept_together("123 000"));
  EXPECT_EQ(rounded(14.83, Quantity::number, units::System::si), "14.8");
}

TEST(text, many_names_are_counted_after_the_first) {
  EXPECT_EQ(names({"a", "b"}), "“a”, “b”");
  EXPECT_EQ(names({"a", "b", "c", "d", "e", "f", "g"}), "“a”, “b”, “c”, “d”, “e” and 2 more");
}

TEST(text, defaults_of_one_kind_are_told_together) {
  EXPECT_TRUE(has(text(sample::size(), si), "air.supply_pressure 6 bar · friction_band 20 % (2 grades)"));
}

TEST(text, cautions_stand_at_the_end) {
  auto answer = sample::size();
  for (const auto& shown : {text(answer, si), text(sample::everything(), si)}) {
    EXPECT_EQ(shown.substr(shown.rfind("\n\n") + 2), "Cautions\n  – Keep clear of the in-running nip.\n");
  }
}

TEST(text, the_readers_units_stand_in_the_heads) {
  const auto shown = text(sample::size(), us);
  EXPECT_TRUE(has(shown, "[psi]")) << shown;
  EXPECT_TRUE(has(shown, "[°F]")) << shown;
  EXPECT_FALSE(has(shown, "bar]")) << shown;
}

TEST(text, a_job_in_depth_shows_every_limit_the_stops_the_wear_and_the_picture) {
  auto answer = sample::size();
  answer.choice->job = answer.choice->recommended->jobs.front();
  answer.choice->envelope = sample::envelope();
  const auto shown = text(answer, si);
  EXPECT_TRUE(has(shown, "job “narrow label”")) << shown;
  EXPECT_TRUE(has(shown, "2 of 4 pairs engaged")) << shown;
  EXPECT_TRUE(has(shown, "disc temperature")) << shown;
  EXPECT_TRUE(has(shown, "maker's rating")) << shown;
  EXPECT_TRUE(has(shown, "shortest stop, web just taut")) << shown;
  EXPECT_TRUE(has(shown, "pads a year")) << shown;
  EXPECT_TRUE(has(shown, "capacity, lowest friction 400 N·m")) << shown;
}

TEST(text, a_stop_that_is_never_kept_says_so) {
  auto answer = sample::size();
  answer.choice->job = answer.choice->recommended->jobs.front();
  answer.choice->job->stop.never = true;
  EXPECT_TRUE(has(text(answer, si), "never"));
}

TEST(text, a_roll_that_nothing_stops_is_never_shown_without_slack) {
  auto answer = sample::size();
  auto& runaway = answer.choice->recommended->jobs.front();
  runaway.stop.runs_away = runaway.web_break.runs_away = true;
  EXPECT_TRUE(has(text(answer, si), "a normal stop finds nothing that stops the roll"));
  answer.choice->job = runaway;
  EXPECT_TRUE(has(text(answer, si), "without end"));
  EXPECT_TRUE(has(text(answer, si), "After a web break nothing stops the roll."));
}

TEST(text, a_plan_shows_both_ways_and_a_failing_one_forbids_its_use) {
  Answer answer;
  answer.plan = sample::plan();
  EXPECT_TRUE(has(text(answer, si), "For automatic control"));
  EXPECT_TRUE(has(text(answer, si), "By hand, tension within ±8.0 %: 2 settings"));
  EXPECT_FALSE(has(text(answer, si), "do not run"));
  answer.plan->jobs.front().state = State::fails;
  EXPECT_TRUE(has(text(answer, si), "do not run the job by these settings"));
}

TEST(text, a_check_shows_the_jobs_as_understood) {
  Answer answer;
  answer.check = sample::check();
  const auto shown = text(answer, si);
  EXPECT_TRUE(has(shown, "1 job, 1 web, 1 roll, 2 brakes; 12 fits for size to compare")) << shown;
  EXPECT_TRUE(has(shown, "the job")) << shown;
}

TEST(text, is_never_wider_than_the_page_however_long_the_names) {
  auto answer = sample::everything();
  const std::string endless = "Ümläute µ und ein sehr langer Name ohne Ende " + std::string(150, 'x');
  auto& best = *answer.choice->recommended;
  best.fit.brake = best.fit.grade = best.jobs.front().job = endless;
  answer.choice->uncovered.front().job = answer.choice->title = endless;
  answer.choice->job->job = answer.check->jobs.front().web = answer.plan->jobs.front().job = endless;
  for (const int width : {100, 90}) {
    for (const auto system : {units::System::si, units::System::us}) {
      for (const bool deep : {false, true}) {
        auto shown = answer;
        if (!deep) shown.choice->job.reset();
        const auto page = text(shown, {system, false, width, true});
        EXPECT_EQ(too_wide(page, width), "");
      }
    }
  }
}

TEST(text, colour_changes_no_word) {
  const auto plain = text(sample::everything(), si);
  auto coloured = text(sample::everything(), {units::System::si, true, 100, false});
  ASSERT_TRUE(has(coloured, "\x1b["));
  for (auto at = coloured.find('\x1b'); at != std::string::npos; at = coloured.find('\x1b')) {
    coloured.erase(at, coloured.find('m', at) - at + 1);
  }
  EXPECT_EQ(coloured, plain);
}

TEST(text, a_name_cannot_steer_the_terminal) {
  auto answer = sample::everything();
  for (auto& job : answer.choice->recommended->jobs) job.job = "\x1b[2Jevil";
  answer.choice->title = answer.check->title = answer.plan->title = "\x1b[2Jevil";
  answer.choice->job->job = answer.plan->jobs.front().job = "\x1b[2Jevil";
  answer.defaults.front().text = "\x1b[2Jevil";
  for (const bool deep : {false, true}) {
    if (!deep) answer.choice->job.reset();
    EXPECT_EQ(text(answer, si).find('\x1b'), std::string::npos);
  }
}

}  // namespace
}  // namespace holdback::report
