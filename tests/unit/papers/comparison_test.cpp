// Two dossiers side by side, and the change list. The answers are made by hand: nothing here is computed, so that what
// the papers have to say can be read off.
#include <gtest/gtest.h>

#include <algorithm>

#include "holdback/papers/papers.hpp"
#include "support/stands.hpp"
#include "unit/report/sample.hpp"

namespace holdback::papers {
namespace {

template <class What>
std::vector<const What*> blocks(const Paper& paper) {
  std::vector<const What*> out;
  for (const auto& block : paper.blocks)
    if (const auto* found = std::get_if<What>(&block)) out.push_back(found);
  return out;
}

/// All words of a paper, a line for a row, cells apart by " | ".
std::string words(const Paper& paper) {
  std::string out = paper.title + "\n" + paper.subject + "\n";
  for (const auto& block : paper.blocks) {
    if (const auto* heading = std::get_if<Heading>(&block)) out += heading->text + "\n";
    if (const auto* paragraph = std::get_if<Paragraph>(&block)) out += paragraph->text + "\n";
    if (const auto* verdict = std::get_if<Verdict>(&block)) out += verdict->text + "\n";
    if (const auto* items = std::get_if<Items>(&block))
      for (const auto& item : items->items) out += "- " + item + "\n";
    if (const auto* facts = std::get_if<Facts>(&block))
      for (const auto& fact : facts->facts) out += fact.label + ": " + fact.value + "\n";
    if (const auto* table = std::get_if<Table>(&block))
      for (const auto& row : table->rows) {
        for (const auto& cell : row) out += (&cell == &row.front() ? "" : " | ") + cell.text;
        out += "\n";
      }
  }
  for (std::size_t at; (at = out.find("\u00A0")) != std::string::npos;) out.replace(at, 2, " ");
  return out;
}

::testing::AssertionResult says(const Paper& paper, const std::string& text) {
  const auto all = words(paper);
  if (all.find(text) != std::string::npos) return ::testing::AssertionSuccess();
  return ::testing::AssertionFailure() << "'" << text << "' is not in\n" << all;
}

/// The column of a table that has it, by its head; texts of its cells.
std::vector<std::string> column(const Paper& paper, const std::string& head) {
  std::vector<std::string> out;
  for (const auto* table : blocks<Table>(paper))
    for (std::size_t i = 0; i < table->columns.size(); ++i)
      if (table->columns[i].head == head)
        for (const auto& row : table->rows) out.push_back(i < row.size() ? row[i].text : "");
  return out;
}

Dossier dossier(const std::vector<JobFit>& jobs) {
  Dossier out;
  out.file = "stand.toml";
  out.date = "2026-11-28";
  out.stand = test::small_stand();
  out.stand.jobs.clear();
  FitResult best;
  best.fit = {"disc", "middle", 2, 3};
  Plan plan;
  for (const JobFit& each : jobs) {
    Job job = test::film_job();
    job.name = each.job;
    out.stand.jobs.push_back(job);
    best.covered += each.state != State::fails ? 1 : 0;
    best.tight += each.state == State::tight ? 1 : 0;
    JobPlan planned;
    planned.job = each.job;
    planned.automatic = {{1, 3e5, 110, 220}, {0.2, 6e4, 22, 220}};
    plan.jobs.push_back(planned);
  }
  best.worst_margin = 1.18;
  best.worst_limit = LimitId::stop_torque;
  best.worst_job = jobs.empty() ? "" : jobs.front().job;
  best.pads_per_year = 38.4;
  best.price = 2400;
  best.jobs = jobs;
  Choice choice;
  choice.title = out.stand.title;
  choice.currency = "EUR";
  choice.recommended = best;
  out.size.choice = choice;
  out.plan.plan = plan;
  return out;
}

JobFit job(const std::string& name, double margin, State state) { return sample::job(name, margin, state); }

Dossier first() { return dossier({job("labels", 1.18, State::holds), job("film", 1.04, State::tight)}); }
Dossier second() { return dossier({job("labels", 1.3, State::holds), job("film", 0.9, State::fails)}); }

void expect_even(const Paper& paper) {
  for (const auto* table : blocks<Table>(paper))
    for (const auto& row : table->rows) EXPECT_EQ(row.size(), table->columns.size()) << table->caption;
}

TEST(comparison, sets_both_sides_beside_each_other) {
  const auto paper = comparison(first(), second());
  EXPECT_EQ(paper.kind, Kind::comparison);
  EXPECT_EQ(paper.file, "comparison");
  EXPECT_TRUE(says(paper, "tight: A, 2 of 2 jobs covered, 1 of them tight, by 2 × disc, 3 pairs each, grade middle"));
  EXPECT_TRUE(says(paper, "fails: B, 1 of 2 jobs covered, by"));
  EXPECT_TRUE(says(paper, "jobs covered | 2 of 2 | 1 of 2"));
  EXPECT_TRUE(says(paper, "pads a year | 38 | 38"));
  EXPECT_TRUE(says(paper, "brakes, price | 2400 EUR | 2400 EUR"));
  EXPECT_TRUE(says(paper, "covered by A and not by B: “film”"));
  EXPECT_TRUE(says(paper, "more in hand: A in 1 job, B in 1 job"));
  EXPECT_EQ(column(paper, "state, A"), (std::vector<std::string>{"holds", "tight"}));
  EXPECT_EQ(column(paper, "state, B"), (std::vector<std::string>{"holds", "fails"}));
  EXPECT_EQ(column(paper, "pairs, A"), (std::vector<std::string>{"2", "2"}));
  EXPECT_EQ(column(paper, "hottest disc, A"), (std::vector<std::string>{"143", "143"}));  // 416.15 K
  expect_even(paper);
}

TEST(comparison, aligns_the_numbers_of_both_sides) {
  auto b = second();
  b.size.choice->recommended->jobs.front().stop.slack = 0.0123;
  b.size.choice->recommended->jobs.back().stop.runs_away = true;
  const auto paper = comparison(first(), b);
  // Slack [mm]: 0, 12.3, 0, without end. The columns share their decimals.
  const auto a_side = column(paper, "slack, stop, A");
  const auto b_side = column(paper, "slack, stop, B");
  ASSERT_EQ(b_side.size(), 2U);
  EXPECT_EQ(b_side.front(), "12");
  EXPECT_EQ(b_side.back(), "–");
  EXPECT_EQ(a_side.front(), "0");
}

TEST(comparison, of_different_mixes_leaves_what_is_not_there_open) {
  const auto paper = comparison(first(), dossier({job("labels", 1.3, State::holds), job("foil", 1.5, State::holds)}));
  EXPECT_TRUE(says(paper, "only in the mix of A: “film”"));
  EXPECT_TRUE(says(paper, "only in the mix of B: “foil”"));
  EXPECT_EQ(column(paper, "state, A"), (std::vector<std::string>{"holds", "tight", "–"}));
  EXPECT_EQ(column(paper, "state, B"), (std::vector<std::string>{"holds", "–", "holds"}));
  expect_even(paper);
}

TEST(comparison, of_a_stand_without_a_fit_says_so) {
  auto none = first();
  none.size.choice->recommended = std::nullopt;
  for (const auto& paper : {comparison(first(), none), comparison(none, first()), comparison(none, none)}) {
    EXPECT_TRUE(says(paper, "no fit was found"));
    expect_even(paper);
  }
  EXPECT_FALSE(comparison(Dossier{}, Dossier{}).blocks.empty());
}

Changes some_changes() {
  return {{{ChangeKind::changed, "", "line.stop_time", "10 s", "6 s"},
           {ChangeKind::changed, "", "air.supply_pressure", "6 bar (default)", "5.5 bar"},
           {ChangeKind::changed, "web \"film\"", "web.caliper", "36 µm", "40 µm"},
           {ChangeKind::changed, "job \"labels\"", "job.speed", "300 m/min", "350 m/min"},
           {ChangeKind::added, "job \"labels\"", "job.tension_tolerance", "", "8 %"},
           {ChangeKind::changed, "job \"labels\"", "job.web.modulus", "4 GPa", "5 GPa"},
           {ChangeKind::added, "job \"foil\"", "job", "", ""},
           {ChangeKind::removed, "", "dancer", "", ""},
           {ChangeKind::changed, "grade \"middle\" of brake \"disc\"", "brake.grade.friction", "0.35", "0.33"}}};
}

TEST(change_list, tells_what_changed_thing_by_thing) {
  const auto paper = change_list(first(), second(), some_changes());
  EXPECT_EQ(paper.kind, Kind::change_list);
  EXPECT_EQ(paper.file, "change-list");
  EXPECT_TRUE(says(paper, "changed: 7 fields, 1 thing added, 1 thing removed"));
  EXPECT_TRUE(says(paper, "line | stop time | 10 s | 6 s | \n"));
  EXPECT_TRUE(says(paper, "air | supply pressure | 6 bar (default) | 5.5 bar | \n"));
  EXPECT_TRUE(says(paper, "job \"labels\" | speed | 300 m/min | 350 m/min | “labels”\n"));
  EXPECT_TRUE(says(paper, "\n | tension tolerance | not given | 8 % | “labels”\n"));  // of the same job
  EXPECT_TRUE(says(paper, "\n | web modulus | 4 GPa | 5 GPa | “labels”\n"));
  EXPECT_TRUE(says(paper, "job \"foil\" |  | – | added | “foil”\n"));
  EXPECT_TRUE(says(paper, "dancer |  | there | removed | \n"));
  EXPECT_TRUE(says(paper, "grade \"middle\" of brake \"disc\" | friction | 0.35 | 0.33 | \n"));
  expect_even(paper);
}

TEST(change_list, names_the_jobs_that_read_a_web_only_where_they_run_it) {
  auto before = first();
  before.stand.jobs.back().web.name = "another";
  auto after = second();
  after.stand.jobs.back().web.name = "another";
  const Changes changes{{{ChangeKind::changed, "web \"film\"", "web.caliper", "36 µm", "40 µm"}}};
  EXPECT_TRUE(says(change_list(before, after, changes), "web \"film\" | caliper | 36 µm | 40 µm | “labels”\n"));
}

TEST(change_list, tells_what_that_does) {
  auto after = second();
  after.size.choice->recommended->fit.pairs = 4;
  after.plan.plan->jobs.front().automatic.front().torque = 123.4;
  const auto paper = change_list(first(), after, some_changes());
  EXPECT_TRUE(says(paper, "The recommended fit was 2 × disc, 3 pairs each, grade middle; it is now 2 × disc, 4 pairs"));
  EXPECT_TRUE(says(paper, "- tight → fails: “film”\n"));
  EXPECT_TRUE(says(paper, "tight: before, 2 of 2 jobs covered, 1 of them tight, by"));
  EXPECT_TRUE(says(paper, "fails: after, 1 of 2 jobs covered, by"));
  EXPECT_EQ(column(paper, "run torque, before"), (std::vector<std::string>{"110", "110"}));
  EXPECT_EQ(column(paper, "run torque, after"), (std::vector<std::string>{"123", "110"}));
  EXPECT_EQ(column(paper, "in hand, after").front(), "+30\u00A0%");
  expect_even(paper);
}

TEST(change_list, of_two_same_files_says_that_nothing_differs) {
  const auto paper = change_list(first(), first(), {});
  EXPECT_TRUE(says(paper, "No field of the stand file differs."));
  EXPECT_TRUE(says(paper, "The recommended fit stays 2 × disc"));
  EXPECT_TRUE(says(paper, "every job keeps its state"));
}

TEST(change_list, tells_jobs_that_came_and_went) {
  const auto paper =
      change_list(first(), dossier({job("labels", 1.18, State::holds), job("foil", 1.2, State::holds)}), {});
  EXPECT_TRUE(says(paper, "- came into the mix: “foil”\n"));
  EXPECT_TRUE(says(paper, "- left the mix: “film”\n"));
  EXPECT_FALSE(change_list(Dossier{}, Dossier{}, {}).blocks.empty());
}

}  // namespace
}  // namespace holdback::papers
