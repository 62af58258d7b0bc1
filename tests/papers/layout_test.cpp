// What stands where: pages, tables, figures, frames, foreign letters.
#include <gmock/gmock.h>

#include <cmath>
#include <cstdlib>

#include "papers/reading.hpp"
#include "papers/sample.hpp"
#include "pdf.hpp"

namespace holdback {
namespace {

using papers::Paper;
using papers::plain_paper;
using testing::HasSubstr;
using testing::Not;

std::string repeated(const std::string& part, int times) {
  std::string out;
  for (int i = 0; i < times; ++i) out += part;
  return out;
}

std::vector<Word> named(const File& file, const std::string& text) {
  std::vector<Word> found;
  for (const auto& word : file.words()) {
    if (word.text == text) found.push_back(word);
  }
  return found;
}

TEST(Layout, ATableOf200RowsRepeatsItsHead) {
  const auto written = pdf::pdf(plain_paper({papers::job_table(200)}), {pdf::Sheet::a4, ""});
  const File file(written.bytes);
  expect_sound(file);
  ASSERT_GT(written.pages, 3);
  EXPECT_EQ(named(file, "pressure").size(), static_cast<std::size_t>(written.pages));
  const auto text = file.text();
  for (int i = 1; i <= 200; ++i) EXPECT_EQ(count_of(text, "Job " + std::to_string(i) + " paper labels "), 1U) << i;
}

TEST(Layout, DecimalPointsStandBelowEachOther) {
  papers::Table table{
      "", {{"name"}, {"torque", "N·m", true}}, {{{"a"}, {"9.25"}}, {{"b"}, {"−123.5"}}, {{"c"}, {"1000"}}}};
  const File file(pdf::pdf(plain_paper({table}), {pdf::Sheet::a4, ""}).bytes);
  const auto two = named(file, "9.25").at(0);
  const auto one = named(file, "−123.5").at(0);
  const auto none = named(file, "1000").at(0);
  const double digit = (none.right - none.left) / 4;  // figures are equally wide
  EXPECT_NEAR(two.right - one.right, digit, 0.05);
  EXPECT_GT(one.right - none.right, digit);  // point and one figure
}

TEST(Layout, AHeadingDoesNotEndAPage) {
  for (int lines = 36; lines < 50; ++lines) {  // so that the page's end falls everywhere around the heading
    std::vector<papers::Block> blocks(static_cast<std::size_t>(lines),
                                      papers::Paragraph{"a line", papers::Tone::normal});
    blocks.push_back(papers::Heading{"Alone", 2});
    blocks.push_back(papers::Table{"", {{"h"}}, {{{"first"}}, {{"second"}}, {{"third"}}}});
    const File file(pdf::pdf(plain_paper(blocks), {pdf::Sheet::a4, ""}).bytes);
    EXPECT_EQ(named(file, "Alone").at(0).page, named(file, "second").at(0).page) << lines;
  }
}

TEST(Layout, APageBreakBreaksOnce) {
  const papers::Paragraph line{"a line", papers::Tone::normal};
  const auto pages = [](std::vector<papers::Block> blocks) {
    return pdf::pdf(plain_paper(std::move(blocks)), {}).pages;
  };
  EXPECT_EQ(pages({line, papers::PageBreak{}, line}), 2);
  EXPECT_EQ(pages({line, papers::PageBreak{}, papers::PageBreak{}, line}), 2);
  EXPECT_EQ(pages({line, papers::PageBreak{}}), 1);
}

TEST(Layout, AWideTableGivesWay) {
  papers::Table table;
  table.rows.resize(3);
  for (int i = 0; i < 14; ++i) {
    table.columns.push_back({"head of column " + std::to_string(i), i % 2 == 1 ? "N·m" : "", i % 2 == 1});
    for (auto& row : table.rows) row.push_back({i % 2 == 1 ? "123.4" : "some words that may be broken"});
  }
  const auto written = pdf::pdf(plain_paper({table}), {pdf::Sheet::a4, ""});
  EXPECT_TRUE(written.warnings.empty());
  const File file(written.bytes);
  expect_sound(file);
  EXPECT_EQ(named(file, "123.4").size(), 21U);  // no number is broken
}

TEST(Layout, AnImpossibleTableStaysOnThePage) {
  for (const int columns : {40, 150}) {
    papers::Table table;
    table.rows.resize(1);
    for (int i = 0; i < columns; ++i) {
      table.columns.push_back({"column", "N", true});
      table.rows[0].push_back({"1234567.89"});
    }
    const auto written = pdf::pdf(plain_paper({table}), {pdf::Sheet::a4, ""});
    ASSERT_FALSE(written.warnings.empty());
    EXPECT_THAT(written.warnings[0], HasSubstr("too wide"));
    const File file(written.bytes);
    EXPECT_EQ(file.tool("qpdf --check").code, 0);
    EXPECT_THAT(file.look().output, Not(HasSubstr("margins"))) << columns;
  }
}

TEST(Layout, ARowHigherThanAPageIsSplit) {
  papers::Table table{"", {{"a"}, {"b"}}, {{{"short"}, {repeated("many words ", 1500) + "end"}}, {{"next"}, {"row"}}}};
  const auto written = pdf::pdf(plain_paper({table}), {pdf::Sheet::a4, ""});
  const File file(written.bytes);
  expect_sound(file);
  EXPECT_GT(written.pages, 2);
  EXPECT_EQ(named(file, "many").size(), 1500U);
  EXPECT_EQ(named(file, "end").size(), 1U);
}

TEST(Layout, EmptyPartsBreakNothing) {
  const auto written =
      pdf::pdf(plain_paper({papers::Table{}, papers::Table{"Caption", {{"head", "mm", true}}, {}}, papers::Facts{},
                            papers::Items{}, papers::Figure{draw::Scene{}, 1}, papers::Paragraph{}, papers::Heading{},
                            papers::Equation{}, papers::Warning{}, papers::Verdict{},
                            papers::Table{"", {}, {{{"no heads"}}, {}}}, papers::PageBreak{}}),
               {pdf::Sheet::a4, ""});
  const File file(written.bytes);
  expect_sound(file);
  EXPECT_THAT(file.text(), HasSubstr("Caption"));
  EXPECT_THAT(file.text(), HasSubstr("no heads"));
}

TEST(Layout, LongNamesStayWithinTheMargins) {
  const auto word = repeated("Unbrokenname", 25);
  const auto words = repeated("a very long name of a job ", 20);
  for (const auto& name : {word, words}) {
    Paper paper =
        plain_paper({papers::Heading{name, 1}, papers::Paragraph{name, papers::Tone::strong},
                     papers::Facts{{{name, name}, {"b", name}, {name, "c"}}, 3, false},
                     papers::Facts{{{name, name}, {"b", name}, {name, "c"}}, 3, true}, papers::Items{{name}, true},
                     papers::Verdict{State::fails, name}, papers::Warning{papers::Signal::danger, name},
                     papers::Equation{name, name, name, name, name, name},
                     papers::Table{name, {{name, name, true}, {"x"}}, {{{name}, {name}}}}});
    paper.title = paper.subject = paper.date = name;
    paper.cover = &name == &word;
    const File file(pdf::pdf(paper, {pdf::Sheet::letter, ""}).bytes);
    expect_sound(file);
  }
}

TEST(Layout, ForeignLettersAreSet) {
  const File file(
      pdf::pdf(plain_paper(
                   {papers::Paragraph{"Этикетки 60 мкм, Ετικέτες, Etykiety żółć", papers::Tone::normal},
                    papers::Paragraph{"ملصقات ورقية", papers::Tone::normal},
                    papers::Paragraph{"The job תוויות נייר holds at 3.5 bar", papers::Tone::normal},
                    papers::Paragraph{"标签纸 60 µm ラベル", papers::Tone::normal},
                    papers::Table{"", {{"job"}, {"bar", "", true}}, {{{"תוויות"}, {"3.50"}}, {{"标签纸"}, {"4.5"}}}}}),
               {pdf::Sheet::a4, ""})
          .bytes);
  expect_sound(file);
  const auto text = file.text();
  EXPECT_THAT(text, HasSubstr("Этикетки 60 мкм"));
  EXPECT_THAT(text, HasSubstr("żółć"));
  EXPECT_EQ(named(file, "3.50").size(), 1U);
  const auto job = named(file, "job").at(0);
  const auto holds = named(file, "holds").at(0);
  EXPECT_LT(named(file, "The").at(0).left, holds.left);  // an English sentence runs from the left
  EXPECT_LT(job.left, holds.left);
}

TEST(Layout, WhatTurnsTheWritingDirectionIsShownAsUnknown) {
  const File file(
      pdf::pdf(plain_paper({papers::Paragraph{"safe\u202Eesrever \x01 bytes \xff end", papers::Tone::normal}}), {})
          .bytes);
  expect_sound(file);
  EXPECT_THAT(file.text(), HasSubstr("safe\uFFFDesrever \uFFFD bytes \uFFFD end"));
}

TEST(Layout, ACardIsMadeToFitOnOnePage) {
  const auto fits = pdf::pdf(papers::card_paper("Labels"), {pdf::Sheet::a4, ""});
  EXPECT_EQ(fits.pages, 1);
  const double usual = named(File(fits.bytes), "Keep").at(0).bottom - named(File(fits.bytes), "Keep").at(0).top;
  auto crowded = papers::card_paper("Labels");
  for (int i = 0; i < 9; ++i) crowded.blocks.push_back(papers::Items{{"one more step"}, true});
  const auto written = pdf::pdf(crowded, {pdf::Sheet::a4, ""});
  EXPECT_EQ(written.pages, 1);
  EXPECT_TRUE(written.warnings.empty());
  const auto word = named(File(written.bytes), "Keep").at(0);
  EXPECT_LT(word.bottom - word.top, 0.99 * usual);
  EXPECT_GT(word.bottom - word.top, 0.69 * usual);
  crowded.blocks.push_back(papers::job_table(60));
  const auto over = pdf::pdf(crowded, {pdf::Sheet::a4, ""});
  EXPECT_GT(over.pages, 1);
  ASSERT_EQ(over.warnings.size(), 1U);
  EXPECT_THAT(over.warnings[0], HasSubstr("card-01: does not fit on one page"));
}

TEST(Layout, LargeTypeIsReadFromAnArmsLength) {
  auto card = papers::card_paper("Labels");
  card.one_page = false;
  const File file(pdf::pdf(card, {pdf::Sheet::a4, ""}).bytes);
  // Height of a word's box in DejaVu Sans: 1.164 of its size (hhea table of the font).
  for (const auto* text : {"bar", "300", "2.25"}) {
    const auto word = named(file, text).at(0);
    EXPECT_GE(word.bottom - word.top, 1.16 * 14 - 0.1) << text;
  }
}

TEST(Layout, AFigureIsWholeAndAsWideAsItsShare) {
  for (int lines = 20; lines < 40; lines += 3) {
    std::vector<papers::Block> blocks(static_cast<std::size_t>(lines),
                                      papers::Paragraph{"a line", papers::Tone::normal});
    blocks.push_back(papers::Figure{papers::curve_scene("Figuretitle"), 1});
    const File file(pdf::pdf(plain_paper(blocks), {pdf::Sheet::a4, ""}).bytes);
    EXPECT_EQ(named(file, "Figuretitle").at(0).page, named(file, "diameter").at(0).page);
  }
  const File pair(pdf::pdf(plain_paper({papers::Figure{papers::curve_scene("Left"), 0.5},
                                        papers::Figure{papers::curve_scene("Right"), 0.5}}),
                           {})
                      .bytes);
  const auto left = named(pair, "Left").at(0);
  const auto right = named(pair, "Right").at(0);
  EXPECT_NEAR(left.top, right.top, 0.01);
  EXPECT_NEAR(right.left - left.left, (170 * 72 / 25.4 + 12) / 2, 0.5);  // half the text's width and of the gap
}

TEST(Layout, WordsOfASceneStayInTheRoomReckonedForThem) {
  using namespace draw;
  Scene scene{180, 40, "", "", {}};
  const std::string words = "WWWWWW — fffiii —";
  add(scene, Label{{90, 20}, words, Anchor::middle, 5, Weight::bold, 0}, {MarkRole::text});
  const File file(pdf::pdf(plain_paper({papers::Figure{scene, 1}}), {}).bytes);
  const double room = text_width(words, 5, Weight::bold) * 170 / 180 * 72 / 25.4;
  const double width = named(file, "—").at(1).right - named(file, "WWWWWW").at(0).left;
  EXPECT_LE(width, room + 0.2);
}

/// Whether somewhere in the page's content this number stands before an operator.
bool has_number_before(const std::string& content, const std::string& operation, double number) {
  for (auto at = content.find(operation); at != std::string::npos; at = content.find(operation, at + 1)) {
    const auto start = content.find_last_of(" \n", at - 1) + 1;
    if (std::abs(std::strtod(content.c_str() + start, nullptr) - number) < 1e-4) return true;
  }
  return false;
}

TEST(Layout, StrokesAreThoseOfThePictureAsSvg) {
  using namespace draw;
  Scene scene{170, 40, "", "", {}};  // as wide as the text: drawn at its own size
  add(scene, Segment{{10, 10}, {160, 10}}, {MarkRole::limit, Pattern::dashed, 0});
  add(scene, Segment{{10, 20}, {160, 20}}, {MarkRole::curve, Pattern::solid, 1});
  const File file(pdf::pdf(plain_paper({papers::Figure{scene, 1}}), {}).bytes);
  const auto content = file.tool("qpdf --qdf --object-streams=disable", "-").output;
  const double mm = 72 / 25.4;
  EXPECT_TRUE(has_number_before(content, " w\n", 0.65 * mm));
  EXPECT_TRUE(has_number_before(content, " w\n", 0.55 * mm));
  EXPECT_FALSE(has_number_before(content, " w\n", 0.75 * mm));
  EXPECT_TRUE(has_number_before(content, "] 0 d\n", 1.2 * mm));
  EXPECT_THAT(content, HasSubstr("0.721569 0.282353 0.0431373 RG"));  // #b8480b
}

}  // namespace
}  // namespace holdback
