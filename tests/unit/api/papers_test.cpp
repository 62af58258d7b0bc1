#include "holdback/api/papers.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "support/files.hpp"

namespace holdback::api {
namespace {

using Json = nlohmann::json;
using papers::Kind;

const std::string example = test::read_source("examples/01-label-slitter.toml");

PapersRequest request(std::vector<Kind> kinds) {
  PapersRequest made;
  made.base.stand = {"folder/stand.toml", example};
  made.kinds = std::move(kinds);
  return made;
}

Json ask(Json more) {
  Json request{{"version", 1}, {"command", "papers"}, {"stand", {{"name", "stand.toml"}, {"text", example}}}};
  request.update(more);
  return Json::parse(answer(request.dump()));
}

TEST(make_papers, without_a_wish_makes_report_cards_maintenance_and_commissioning) {
  const PaperSet set = make_papers(request({}));
  ASSERT_EQ(set.answer.outcome, Outcome::holds);
  ASSERT_EQ(set.papers.size(), 9U);  // six jobs
  EXPECT_EQ(set.papers.front().kind, Kind::selection_report);
  EXPECT_EQ(set.papers.back().kind, Kind::commissioning_sheet);
  ASSERT_EQ(set.attachments.size(), 1U);
  EXPECT_EQ(set.attachments.front().file, "commissioning-sheet.csv");
}

TEST(make_papers, makes_one_card_for_the_job_that_is_named) {
  PapersRequest one = request({Kind::setup_card});
  one.base.job = "tickets";
  const PaperSet set = make_papers(one);
  ASSERT_EQ(set.papers.size(), 1U);
  EXPECT_NE(set.papers.front().title.find("tickets"), std::string::npos);
}

TEST(make_papers, names_files_that_differ_and_are_safe_everywhere) {
  const PaperSet set = make_papers(request({}));
  std::vector<std::string> names;
  for (const auto& paper : set.papers) {
    EXPECT_EQ(paper.file.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-"), std::string::npos) << paper.file;
    names.push_back(paper.file);
  }
  std::sort(names.begin(), names.end());
  EXPECT_EQ(std::adjacent_find(names.begin(), names.end()), names.end());
}

TEST(make_papers, needs_something_to_compare_with) {
  for (const Kind kind : {Kind::comparison, Kind::change_list}) {
    const PaperSet set = make_papers(request({kind}));
    EXPECT_EQ(set.answer.outcome, Outcome::bad_input);
    EXPECT_EQ(set.answer.problems.size(), 1U);
    EXPECT_TRUE(set.papers.empty());
  }
}

TEST(make_papers, lists_no_change_between_a_file_and_itself) {
  PapersRequest same = request({Kind::change_list});
  same.before = Source{"before.toml", example};
  const PaperSet set = make_papers(same);
  ASSERT_EQ(set.papers.size(), 1U);
  for (const auto& block : set.papers.front().blocks)
    if (const auto* table = std::get_if<papers::Table>(&block)) {
      for (const auto& row : table->rows) EXPECT_LE(row.size(), table->columns.size());
    }
}

TEST(make_papers, refuses_to_compare_with_a_fit_that_the_stand_does_not_have) {
  PapersRequest unknown = request({Kind::comparison});
  unknown.other_grade = "velvet";
  const PaperSet set = make_papers(unknown);
  EXPECT_EQ(set.answer.outcome, Outcome::bad_input);
  EXPECT_TRUE(set.papers.empty());
  EXPECT_FALSE(set.answer.problems.empty());
}

TEST(make_papers, leaves_no_cell_of_a_change_list_without_its_value) {
  PapersRequest same = request({Kind::change_list});
  same.before = Source{"before.toml", example};
  const PaperSet set = make_papers(same);
  int jobs = 0;
  for (const auto& block : set.papers.at(0).blocks) {
    const auto* table = std::get_if<papers::Table>(&block);
    if (table == nullptr || table->columns.at(0).head != "job") continue;
    for (const auto& row : table->rows) {
      ++jobs;
      for (const auto& cell : row) EXPECT_NE(cell.text, "–") << table->caption << ", " << row.front().text;
    }
  }
  EXPECT_EQ(jobs, 12);  // six jobs in each of two tables
}

TEST(make_papers, refuses_a_bad_earlier_revision_by_its_name_and_makes_nothing) {
  PapersRequest bad = request({Kind::maintenance_card, Kind::change_list});
  bad.before = Source{"before.toml", "format = 1\n"};
  const PaperSet set = make_papers(bad);
  EXPECT_EQ(set.answer.outcome, Outcome::bad_input);
  EXPECT_TRUE(set.papers.empty());
  EXPECT_EQ(set.answer.problems.front().file, "before.toml");
}

TEST(make_papers, refuses_a_date_that_is_none) {
  PapersRequest dated = request({Kind::maintenance_card});
  dated.date = "2026-02-30";
  const PaperSet set = make_papers(dated);
  EXPECT_EQ(set.answer.outcome, Outcome::bad_input);
  EXPECT_EQ(set.answer.problems.front().field, "--date");
}

TEST(make_papers, says_on_its_way_how_far_it_is) {
  PapersRequest told = request({});
  double last = -1;
  told.base.progress = [&](const std::string& /*what*/, double share) {
    EXPECT_GE(share, last);
    EXPECT_LE(share, 1);
    last = share;
  };
  make_papers(told);
  EXPECT_GT(last, 0);
}

TEST(make_papers, tells_no_folders_of_the_file) {
  const std::string text = json(make_papers(request({Kind::selection_report})));
  EXPECT_EQ(text.find("folder/stand.toml"), std::string::npos);
  EXPECT_NE(text.find("stand.toml"), std::string::npos);
}

TEST(answer_papers, gives_blocks_with_figures_as_svg) {
  const Json answer = ask({{"papers", {"report"}}, {"units", "us"}});
  EXPECT_EQ(answer["outcome"], "holds");
  bool figure = false;
  for (const Json& block : answer["papers"][0]["blocks"])
    if (block["block"] == "figure") figure = block["svg"].get<std::string>().find("<svg ") < 60 || figure;
  EXPECT_TRUE(figure);
  EXPECT_NE(answer.dump().find("lbf"), std::string::npos);
}

TEST(answer_papers, refuses_words_it_does_not_know) {
  EXPECT_EQ(ask({{"papers", {"poster"}}})["outcome"], "bad_input");
  EXPECT_EQ(ask({{"papers", "report"}})["outcome"], "bad_input");
  EXPECT_EQ(ask({{"units", "cgs"}})["outcome"], "bad_input");
  EXPECT_EQ(ask({{"before", "x"}})["outcome"], "bad_input");
}

}  // namespace
}  // namespace holdback::api
