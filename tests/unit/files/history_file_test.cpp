// Entries of a history as words of a call and as a table. Amounts in other units: NIST SP 811 (2008), appendix B.8.
#include "holdback/files/history_file.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

#include "holdback/model/date.hpp"
#include "holdback/model/history_fields.hpp"

namespace holdback::files {
namespace {

std::string said(const Problems& problems) {
  std::string text;
  for (const Problem& each : problems)
    text += each.field + ": " + each.what.text + " (" + each.value + ") accepted: " + each.accepted.text + "\n";
  return text;
}

/// The problems of an entry that must be refused, as text.
std::string refused(const std::string& kind, const std::string& date, const std::vector<EntryWord>& words) {
  const HistoryFile read = read_entry(kind, date, words);
  EXPECT_TRUE(has_errors(read.problems)) << kind;
  return said(read.problems);
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

TEST(read_entry, takes_values_in_any_unit) {
  const auto read = read_entry("wear", "2026-05-03",
                               {{"brake", "front"}, {"thickness", "0.5 in"}, {"limit", "2 mm"}, {"hottest", "yes"}});
  ASSERT_FALSE(has_errors(read.problems)) << said(read.problems);
  const HistoryEntry& entry = read.entries.front();
  EXPECT_EQ(entry.kind, EntryKind::wear);
  EXPECT_EQ(entry.day, day_of("2026-05-03"));
  EXPECT_NEAR(*entry.thickness, 0.0127, 1e-15);
  EXPECT_NEAR(*entry.limit, 0.002, 1e-15);
  EXPECT_TRUE(entry.hottest);
  EXPECT_EQ(entry.brake, "front");
}

TEST(read_entry, names_every_wrong_value_with_what_is_accepted) {
  EXPECT_TRUE(has(refused("waer", "2026-05-03", {}), "did you mean wear?"));
  EXPECT_TRUE(
      has(refused("wear", "2026-02-30", {{"depth", "3 mm"}}), "date: this is no date of the calendar (2026-02-30)"));
  EXPECT_TRUE(has(refused("wear", "1066-10-14", {{"depth", "3 mm"}}), "the year lies outside of 1950 to 2199"));
  EXPECT_TRUE(has(refused("wear", "2026-05-03", {{"dept", "3 mm"}}),
                  "dept: there is no such key (3 mm) accepted: did you mean depth?"));
  EXPECT_TRUE(has(refused("wear", "2026-05-03", {{"depth", "-3 mm"}}), "depth: depth cannot be negative (-3 mm)"));
  EXPECT_TRUE(has(refused("wear", "2026-05-03", {{"depth", "3 bar"}}), "depth: "));
  EXPECT_TRUE(has(refused("wear", "2026-05-03", {{"depth", "3"}}), "accepted: 1200 mm, 1.2 m, 48 in"));
  EXPECT_TRUE(has(refused("wear", "2026-05-03", {{"depth", "3 m"}}), "depth is too large"));
  EXPECT_TRUE(has(refused("wear", "2026-05-03", {{"tension", "3 N"}}), "an entry `wear` has no tension"));
  EXPECT_TRUE(has(refused("wear", "2026-05-03", {{"depth", "3 mm"}, {"depth", "4 mm"}}), "a second time"));
  EXPECT_TRUE(has(refused("wear", "2026-05-03", {{"depth", "3 mm"}, {"hottest", "maybe"}}), "yes, no"));
  EXPECT_TRUE(has(refused("wear", "2026-05-03", {{"depth", "3 mm"}, {"thickness", "4 mm"}}), "the same twice"));
  EXPECT_TRUE(has(refused("wear", "2026-05-03", {{"depth", "3 mm"}, {"limit", "4 mm"}}), "goes with a thickness"));
  EXPECT_TRUE(has(refused("reading", "2026-05-03", {{"tension", "-3 N"}}), "tension cannot be negative"));
  EXPECT_TRUE(has(refused("reading", "2026-05-03", {{"temperature", "-300 degC"}}), "temperature"));
  EXPECT_TRUE(has(refused("energy", "2026-05-03", {{"since", "last week"}}), "since: this is no date"));
  EXPECT_TRUE(has(refused("note", "2026-05-03", {{"text", "a\nb"}}), "text is empty, too long or holds a line end"));
}

TEST(read_entry, needs_what_the_entry_is_about) {
  for (const char* kind : {"reading", "wear", "energy", "fit", "note"})
    EXPECT_TRUE(has(refused(kind, "2026-05-03", {}), "at least one of: ")) << kind;
  EXPECT_FALSE(has_errors(read_entry("pads", "2026-05-03", {}).problems));
}

TEST(read_entry, collects_all_problems) {
  EXPECT_EQ(read_entry("wear", "yesterday", {{"depth", "x"}, {"colour", "red"}}).problems.size(), 3U);
}

constexpr const char* table =
    "number,stand,date,kind,corrects,depth [mm],energy [MJ],text\n"
    "1,A,2025-01-10,pads,,12,,\n"
    "2,A,2025-02-10,energy,,,410,\"busy, with \"\"splices\"\"\"\n"
    "3,A,2025-02-10,wear,,10.5,,\n"
    "4,A,2025-02-10,wear,3,10.7,,\n";

TEST(read_history, takes_a_table) {
  const auto read = read_history(table, "a.csv");
  ASSERT_TRUE(read.problems.empty()) << said(read.problems);
  ASSERT_EQ(read.entries.size(), 4U);
  EXPECT_NEAR(*read.entries[0].depth, 0.012, 1e-15);
  EXPECT_NEAR(*read.entries[1].energy, 4.1e8, 1e-3);
  EXPECT_EQ(read.entries[1].text, "busy, with \"splices\"");
  EXPECT_EQ(read.entries[2].corrected_by, 4);
  EXPECT_EQ(stands_of(read.entries), (std::vector<std::string>{"A"}));
}

TEST(read_history, takes_units_in_cells_and_columns_in_any_order) {
  const auto read = read_history("kind;depth;stand;date\nwear;0.4 in;A;2025-01-10\n", "a.csv");
  ASSERT_TRUE(read.problems.empty()) << said(read.problems);
  EXPECT_NEAR(*read.entries[0].depth, 0.01016, 1e-15);
  EXPECT_EQ(read.entries[0].number, 1);
}

TEST(read_history, places_its_problems) {
  const auto read = read_history("stand,date,kind,depth [mm]\nA,2025-01-10,wear,ten\n", "a.csv");
  ASSERT_EQ(read.problems.size(), 1U) << said(read.problems);
  EXPECT_EQ(read.problems[0].where.line, 2);
  EXPECT_EQ(read.problems[0].where.column, 19);
  EXPECT_EQ(read.problems[0].field, "row 2, depth");
  EXPECT_EQ(read.problems[0].value, "ten");
  EXPECT_EQ(read.problems[0].file, "a.csv");
}

TEST(read_history, refuses_a_head_that_it_does_not_know) {
  EXPECT_TRUE(has(said(read_history("stand,date,kind,dept [mm]\n", "a.csv").problems), "did you mean depth?"));
  EXPECT_TRUE(has(said(read_history("stand,date\n", "a.csv").problems), "the column kind is missing"));
  EXPECT_TRUE(has(said(read_history("stand,date,kind,kind\n", "a.csv").problems), "a second time"));
  EXPECT_TRUE(has(said(read_history("stand,date,kind,depth [bar]\n", "a.csv").problems), "head: "));
  EXPECT_TRUE(has(said(read_history("stand,date,kind,text [mm]\n", "a.csv").problems), "text has no unit"));
  EXPECT_TRUE(has_errors(read_history("", "a.csv").problems));
  EXPECT_TRUE(has(said(read_history("stand,date,kind\n", "a.csv").problems), "no entry"));
}

TEST(read_history, a_kind_that_is_not_known_is_told_once) {
  const auto read = read_history("stand,date,kind,depth [mm]\nA,2025-01-10,waer,3\n", "a.csv");
  ASSERT_EQ(read.problems.size(), 1U) << said(read.problems);
  EXPECT_TRUE(has(said(read.problems), "did you mean wear?"));
}

/// The table with one more row.
Problems with(const std::string& row) { return read_history(std::string(table) + row + "\n", "a.csv").problems; }

TEST(read_history, judges_the_entries_together) {
  EXPECT_TRUE(has(said(with("4,A,2025-03-10,wear,,9,,")), "entry 4, number: the number stands a second time"));
  EXPECT_TRUE(has(said(with("5,A,2025-03-10,wear,9,9,,")), "no earlier entry of that number"));
  EXPECT_TRUE(has(said(with("5,A,2025-03-10,wear,3,9,,")), "corrected already"));
  EXPECT_TRUE(has(said(with("5,B,2025-03-10,wear,2,9,,")), "no earlier entry of that number"));
}

TEST(read_history, warns_of_a_pad_that_grew_and_not_after_a_change) {
  const auto grown = with("5,A,2025-03-10,wear,,11.5,,");
  ASSERT_EQ(grown.size(), 1U) << said(grown);
  EXPECT_EQ(grown[0].severity, Severity::warning);
  EXPECT_TRUE(has(grown[0].field, "entry 5, depth"));
  EXPECT_TRUE(with("5,A,2025-03-10,pads,,11.9,,\n6,A,2025-03-11,wear,,11.8,,").empty());
  EXPECT_TRUE(with("5,A,2025-03-10,wear,,10.8,,").empty());  // within the gauge's steps
}

}  // namespace
}  // namespace holdback::files
