// Cells of a CSV text by RFC 4180, each with its place.
#include "holdback/files/csv.hpp"

#include <gtest/gtest.h>

namespace holdback::files {
namespace {

std::vector<Row> rows_of(std::string_view text, char delimiter = ',') {
  CsvReader reader(text, delimiter);
  std::vector<Row> rows;
  for (Row row; reader.next(row);) rows.push_back(row);
  return rows;
}

std::vector<std::string> texts_of(const Row& row) {
  std::vector<std::string> texts;
  for (const Cell& cell : row.cells) texts.push_back(cell.text);
  return texts;
}

using Texts = std::vector<std::string>;

TEST(Csv, ReadsPlainCells) {
  const auto rows = rows_of("a,b\nc,\n");
  ASSERT_EQ(rows.size(), 2U);
  EXPECT_EQ(texts_of(rows[0]), (Texts{"a", "b"}));
  EXPECT_EQ(texts_of(rows[1]), (Texts{"c", ""}));
}

TEST(Csv, ReadsQuotedDelimitersQuotesAndLineEnds) {
  const auto rows = rows_of("\"a,b\",\"say \"\"x\"\"\",\"two\r\nlines\"\r\nd,e,f");
  ASSERT_EQ(rows.size(), 2U);
  EXPECT_EQ(texts_of(rows[0]), (Texts{"a,b", "say \"x\"", "two\r\nlines"}));
  EXPECT_EQ(rows[0].fault, RowFault::none);
  EXPECT_EQ(rows[1].number, 2);
  EXPECT_EQ(rows[1].cells[0].where, (Position{3, 1})) << "the row before took two lines";
}

TEST(Csv, CountsColumnsInCharacters) {
  const auto rows = rows_of("µ,b c\n");
  EXPECT_EQ(rows[0].cells[1].where, (Position{1, 3}));
}

TEST(Csv, DropsBlanksAroundACell) { EXPECT_EQ(texts_of(rows_of("  a , \"b\" ,c  \n")[0]), (Texts{"a", "b", "c"})); }

TEST(Csv, KeepsAQuoteInsideAPlainCell) { EXPECT_EQ(texts_of(rows_of("6\" core,b\n")[0]), (Texts{"6\" core", "b"})); }

TEST(Csv, TellsAQuoteThatNeverCloses) {
  const auto rows = rows_of("a,\"b\nc,d\n");
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_EQ(rows[0].fault, RowFault::open_quote);
  EXPECT_EQ(rows[0].fault_where, (Position{1, 3}));
}

TEST(Csv, TellsTextAfterAClosingQuote) {
  const auto rows = rows_of("\"a\"b,c\nd,e\n");
  ASSERT_EQ(rows.size(), 2U);
  EXPECT_EQ(rows[0].fault, RowFault::text_after_quote);
  EXPECT_EQ(rows[0].fault_where, (Position{1, 4}));
  EXPECT_EQ(texts_of(rows[1]), (Texts{"d", "e"}));
}

TEST(Csv, KnowsABlankRow) {
  const auto rows = rows_of("a,b\n\n,\n");
  ASSERT_EQ(rows.size(), 3U);
  EXPECT_FALSE(rows[0].blank());
  EXPECT_TRUE(rows[1].blank());
  EXPECT_TRUE(rows[2].blank());
}

TEST(Csv, FindsTheDelimiterInTheHeader) {
  EXPECT_EQ(delimiter_of("a,b,c\n1;2;3;4;5\n"), ',');
  EXPECT_EQ(delimiter_of("a;b;c\n1,5;2;3\n"), ';');
  EXPECT_EQ(delimiter_of("a\tb\tc\n"), '\t');
  EXPECT_EQ(delimiter_of("\"a,b,c,d\";e;f\n"), ';');
  EXPECT_EQ(delimiter_of("alone\n"), ',');
}

}  // namespace
}  // namespace holdback::files
