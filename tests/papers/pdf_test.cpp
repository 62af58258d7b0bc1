// The file as a whole: validity, metadata, numbers of pages, outline, the same bytes.
#include "pdf.hpp"

#include <gmock/gmock.h>

#include <stdexcept>

#include "papers/reading.hpp"
#include "papers/sample.hpp"

namespace holdback {
namespace {

using papers::Paper;
using papers::plain_paper;
using testing::HasSubstr;
using testing::Not;

TEST(Pdf, AReportIsSound) {
  const auto written = pdf::pdf(papers::report_paper(), {pdf::Sheet::a4, "2026-11-28"});
  EXPECT_TRUE(written.warnings.empty());
  const File file(written.bytes);
  expect_sound(file);
  EXPECT_THAT(file.tool("pdfinfo").output, HasSubstr("Pages:           " + std::to_string(written.pages) + "\n"));
}

TEST(Pdf, MetadataIsWhatThePaperSays) {
  const File file(pdf::pdf(papers::report_paper(3), {pdf::Sheet::a4, "2026-11-28"}).bytes);
  const auto info = file.tool("pdfinfo -isodates").output;
  EXPECT_THAT(info, HasSubstr("Title:           Selection report\n"));
  EXPECT_THAT(info, HasSubstr("Subject:         Label slitter, unwind 1\n"));
  EXPECT_THAT(info, HasSubstr("Creator:         Holdback\n"));
  EXPECT_THAT(info, HasSubstr("CreationDate:    2026-11-28T00:00:00"));
}

TEST(Pdf, NoDateUnlessOneIsGiven) {
  for (const std::string created : {"", "tomorrow", "2026-11-2x", "D:20261128"}) {
    const File file(pdf::pdf(plain_paper({}), {pdf::Sheet::a4, created}).bytes);
    EXPECT_EQ(file.tool("qpdf --check").code, 0) << created;
    EXPECT_THAT(file.tool("pdfinfo").output, Not(HasSubstr("Date:"))) << created;
  }
}

TEST(Pdf, SheetsHaveTheirSize) {  // ISO 216: A4 is 210 mm × 297 mm; ANSI Y14.1: letter is 8.5 in × 11 in
  const File a4(pdf::pdf(plain_paper({}), {pdf::Sheet::a4, ""}).bytes);
  EXPECT_THAT(a4.tool("pdfinfo").output, HasSubstr("595.276 x 841.89 pts (A4)"));
  const File letter(pdf::pdf(plain_paper({}), {pdf::Sheet::letter, ""}).bytes);
  EXPECT_THAT(letter.tool("pdfinfo").output, HasSubstr("612 x 792 pts (letter)"));
  const auto report = pdf::pdf(papers::report_paper(), {pdf::Sheet::letter, ""});
  expect_sound(File(report.bytes));
}

TEST(Pdf, TheSamePaperGivesTheSameBytes) {
  const auto once = pdf::pdf(papers::report_paper(), {pdf::Sheet::a4, ""}).bytes;
  (void)pdf::pdf(papers::card_paper("in between"), {pdf::Sheet::a4, ""});
  EXPECT_TRUE(once == pdf::pdf(papers::report_paper(), {pdf::Sheet::a4, ""}).bytes);
}

TEST(Pdf, EveryPageSaysItsNumberAndWhoDecides) {
  const auto written = pdf::pdf(papers::report_paper(150), {pdf::Sheet::a4, ""});
  ASSERT_GT(written.pages, 6);
  const File file(written.bytes);
  for (int page = 1; page <= written.pages; ++page) {
    const auto text = file.text("-f " + std::to_string(page) + " -l " + std::to_string(page));
    EXPECT_THAT(text, HasSubstr("page " + std::to_string(page) + " of " + std::to_string(written.pages)));
    EXPECT_THAT(text, HasSubstr("Local codes, makers' ratings and licensed practice decide."));
    EXPECT_THAT(text, HasSubstr("Selection report")) << page;
    EXPECT_THAT(text, HasSubstr("Label slitter, unwind 1")) << page;
    EXPECT_THAT(text, HasSubstr("2026-11-28")) << page;
  }
}

TEST(Pdf, TheOutlineHoldsHeadingsOfTwoLevels) {
  const File file(pdf::pdf(papers::report_paper(3), {pdf::Sheet::a4, ""}).bytes);
  const auto json = file.tool("qpdf --json --json-key=outlines").output;
  for (const auto* title : {"Result", "Key figures", "The mix", "Cautions", "Steps", "To be filled in"}) {
    EXPECT_THAT(json, HasSubstr("\"title\": \"" + std::string(title) + "\""));
  }
  EXPECT_THAT(json, Not(HasSubstr("Assumptions")));  // of the third level
  EXPECT_THAT(json, HasSubstr("\"destpageposfrom1\": 2"));
  EXPECT_THAT(json, Not(HasSubstr("\"destpageposfrom1\": null")));
}

TEST(Pdf, SeveralPapersHaveNumbersOfTheirOwn) {
  std::vector<Paper> cards;
  for (const auto* job : {"Labels", "Film", "Liner"}) cards.push_back(papers::card_paper(job));
  cards.push_back(papers::report_paper(60));
  const auto written = pdf::pdf(cards, {pdf::Sheet::a4, ""});
  const File file(written.bytes);
  expect_sound(file);
  EXPECT_EQ(count_of(file.text(), "page 1 of 1\n"), 3U);
  EXPECT_THAT(file.text("-f 4 -l 4"), HasSubstr("page 1 of " + std::to_string(written.pages - 3)));
  const auto json = file.tool("qpdf --json --json-key=outlines").output;
  EXPECT_THAT(json, HasSubstr("\"title\": \"Set-up card · Film\""));
  EXPECT_THAT(json, HasSubstr("\"destpageposfrom1\": 4"));
  EXPECT_THROW((void)pdf::pdf(std::vector<Paper>{}, {}), std::invalid_argument);
}

TEST(Pdf, AnEmptyPaperIsOnePageWithItsTitle) {
  const auto written = pdf::pdf(plain_paper({}), {pdf::Sheet::a4, ""});
  EXPECT_EQ(written.pages, 1);
  const File file(written.bytes);
  expect_sound(file);
  EXPECT_THAT(file.text(), HasSubstr("Plain paper"));
  expect_sound(File(pdf::pdf(Paper{}, {pdf::Sheet::a4, ""}).bytes));
  Paper cover{};
  cover.cover = true;
  EXPECT_EQ(pdf::pdf(cover, {}).pages, 2);
}

}  // namespace
}  // namespace holdback
