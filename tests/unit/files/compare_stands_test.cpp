// What differs between two stand files. The files themselves say what has to be found: each is changed in one line.
#include "holdback/files/compare_stands.hpp"

#include <gtest/gtest.h>

#include <cctype>
#include <set>
#include <sstream>

#include "holdback/files/field_table.hpp"
#include "texts.hpp"

namespace holdback::files::test {
namespace {

constexpr auto si = units::System::si;
constexpr auto us = units::System::us;

Changes between(const std::string& before, const std::string& after, units::System system = si) {
  const StandFile a = read(before);
  const StandFile b = read(after);
  EXPECT_EQ(told(a.problems), "");
  EXPECT_EQ(told(b.problems), "");
  return changes_between(Revision{a.stand, a.defaults}, Revision{b.stand, b.defaults}, system);
}

/// "changed brake "D300" | brake.pairs | 4 | 3", one a line.
std::string listed(const Changes& found) {
  std::string out;
  for (const Change& each : found.changes) {
    out += each.kind == ChangeKind::changed ? "changed " : each.kind == ChangeKind::added ? "added " : "removed ";
    out += each.owner + " | " + each.field + " | " + each.before + " | " + each.after + "\n";
  }
  return out;
}

/// A line `key = value` of a file, with the path of its field.
struct Line {
  std::size_t index{};
  std::string path{};
  std::string key{};
  std::string value{};
};

std::vector<std::string> lines(const std::string& text) {
  std::vector<std::string> out;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) out.push_back(line);
  return out;
}

std::string text_of(const std::vector<std::string>& lines) {
  std::string out;
  for (const auto& line : lines) out += line + "\n";
  return out;
}

std::vector<Line> fields_in(const std::string& text) {
  std::vector<Line> out;
  std::string table;
  const auto all = lines(text);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const auto& line = all[i];
    const auto equals = line.find(" = ");
    if (line.rfind("[", 0) == 0) {
      const auto from = line.find_first_not_of('[');
      table = line.substr(from, line.find(']') - from);
    } else if (equals != std::string::npos && !table.empty()) {
      const auto key = line.substr(0, equals);
      out.push_back({i, table + "." + key, key, line.substr(equals + 3)});
    }
  }
  return out;
}

/// The value with another last digit of its number; empty when it holds none.
std::string nudged(std::string value) {
  const auto first = value.find_first_of("0123456789");
  if (first == std::string::npos || first > 2 || value[0] == '[') return {};
  auto last = first;
  while (last + 1 < value.size() &&
         (std::isdigit(static_cast<unsigned char>(value[last + 1])) || value[last + 1] == '.'))
    ++last;
  value[last] = value[last] == '9' ? '8' : static_cast<char>(value[last] + 1);
  return value;
}

TEST(changes_between, finds_each_field_of_the_table_that_is_changed_alone) {
  const std::string before = full_stand();
  std::set<std::string> found;
  for (const Line& line : fields_in(before)) {
    const std::string value = nudged(line.value);
    // A name tells things apart; beside the job's tension the one per width is only a cross-check.
    if (value.empty() || line.key == "name" || line.key == "tension_per_width") continue;
    auto text = lines(before);
    text[line.index] = line.key + " = " + value;
    if (!read(text_of(text)).problems.empty()) continue;  // it has to agree with another one
    const Changes changes = between(before, text_of(text));
    ASSERT_EQ(changes.changes.size(), 1U) << line.path << "\n" << listed(changes);
    const Change& change = changes.changes.front();
    EXPECT_EQ(change.field, line.path);
    EXPECT_EQ(change.kind, ChangeKind::changed);
    EXPECT_NE(change.before, change.after);
    found.insert(line.path);
  }
  // Every quantity of the table stands in the file; those that have to agree with another one are few.
  std::size_t quantities = 0;
  for (const Section& section : sections())
    for (const FieldInfo* field : section.fields) quantities += field->form == Form::quantity ? 1 : 0;
  EXPECT_GE(found.size() + 20, quantities);
}

TEST(changes_between, finds_what_is_left_to_its_default) {
  const std::string before = full_stand();
  std::size_t found = 0;
  for (const Line& line : fields_in(before)) {
    const auto table = line.path.substr(0, line.path.size() - line.key.size() - 1);
    const auto dot = table.rfind('.');
    const Section& section = section_of(dot == std::string::npos ? table : table.substr(dot + 1));
    for (const FieldInfo* field : section.fields) {
      if (field->key != line.key || field->presence != Presence::defaulted) continue;
      auto text = lines(before);
      text[line.index] = "";
      if (!read(text_of(text)).problems.empty()) continue;
      const Changes changes = between(before, text_of(text));
      ASSERT_EQ(changes.changes.size(), 1U) << line.path << "\n" << listed(changes);
      EXPECT_EQ(changes.changes.front().field, line.path);
      EXPECT_NE(changes.changes.front().after.find(" (default)"), std::string::npos) << listed(changes);
      EXPECT_EQ(changes.changes.front().before.find(" (default)"), std::string::npos) << listed(changes);
      ++found;
    }
  }
  EXPECT_GT(found, 60U);
}

TEST(changes_between, finds_nothing_between_two_ways_to_write_the_same) {
  std::string other = full_stand();
  EXPECT_EQ(listed(between(full_stand(), other)), "");
  // Factors by definition: 1 min = 60 s, 1 in = 25.4 mm, 1 bar = 100 kPa, 1 ft = 0.3048 m (NIST SP 811, appendix B).
  other = with(other, "\"300 m/min\"", "\"5 m/s\"");
  other = with(other, "\"152 mm\"", "\"5.984251968503937 in\"");
  other = with(other, "\"7 bar\"", "\"700 kPa\"");
  other = with(other, "\"0.9 m\"", "\"2.952755905511811 ft\"");
  other = with(other, "\"30 degC\"", "\"86 degF\"");
  EXPECT_EQ(listed(between(full_stand(), other)), "");
}

TEST(changes_between, says_values_as_the_reader_has_them) {
  const auto other =
      with(with(full_stand(), "stop_time = \"9 s\"", "stop_time = \"9.5 s\""), "\"800 mm\"", "\"1016 mm\"");
  EXPECT_EQ(listed(between(full_stand(), other)),
            "changed  | line.stop_time | 9 s | 9.5 s\n"
            "changed roll \"jumbo\" | roll.full_diameter | 800 mm | 1016 mm\n");
  const auto in_us = between(full_stand(), other, us);  // 1016 mm = 40 in, 800 mm = 31.496… in
  EXPECT_EQ(in_us.changes.back().after, "40 in");
  EXPECT_EQ(in_us.changes.back().before, "31.5 in");
}

TEST(changes_between, gives_as_many_digits_as_it_takes_to_tell_two_values_apart) {
  const auto other = with(full_stand(), "\"800 mm\"", "\"800.02 mm\"");
  const auto change = between(full_stand(), other, us).changes.front();  // 31.49606 in and 31.49685 in
  EXPECT_EQ(change.before, "31.496 in");
  EXPECT_EQ(change.after, "31.497 in");
}

TEST(changes_between, matches_things_by_their_names) {
  const std::string second = "[[job]]\nname = \"second\"\nweb = \"film\"\nroll = \"jumbo\"\nspeed = \"100 m/min\"\n";
  const auto one = with(full_stand(), "[[job]]", second + "[[job]]");
  const auto last = with(full_stand(), "[[brake]]", second + "[[brake]]");
  EXPECT_EQ(listed(between(one, last)), "");
  EXPECT_EQ(listed(between(full_stand(), last)), "added job \"second\" | job |  | \n");
  EXPECT_EQ(listed(between(one, full_stand())), "removed job \"second\" | job |  | \n");
  EXPECT_EQ(listed(between(full_stand(), with(full_stand(), "name = \"standard\"", "name = \"soft\""))),
            "removed grade \"standard\" of brake \"D300\" | brake.grade |  | \n"
            "added grade \"soft\" of brake \"D300\" | brake.grade |  | \n");
}

TEST(changes_between, tells_what_is_no_number_too) {
  auto other = with(full_stand(), "guard = \"partly closed\"", "guard = \"mesh\"");
  other = with(other, "title = \"slitter 2\"", "title = \"slitter 3\"");
  other = with(other, "price = 2400\n", "");
  other =
      with(other, "{ speed = \"800 rev/min\", power = \"2.2 kW\" }", "{ speed = \"800 rev/min\", power = \"2.4 kW\" }");
  EXPECT_EQ(listed(between(full_stand(), other)),
            "changed  | stand.title | slitter 2 | slitter 3\n"
            "changed  | stand.guard | partly closed | mesh\n"
            "removed brake \"D300\" | brake.price | 2400 | \n"
            "changed point 2 of the cooling map of brake \"D300\" | brake.cooling.power | 2200 W | 2400 W\n");
}

TEST(changes_between, tells_tables_that_come_and_go) {
  const auto found = listed(between(least_stand(), least_stand() + optional_tables()));
  EXPECT_EQ(found,
            "added idler \"first idler\" | idler |  | \n"
            "added  | shaft |  | \n"
            "added  | load_cell |  | \n"
            "added  | dancer |  | \n"
            "added  | diameter_sensor |  | \n"
            "added scenario \"new roll\" | scenario |  | \n");
}

TEST(changes_between, takes_a_derived_number_for_no_change) {
  // The density makes the same basis weight: 1400 kg/m³ · 12 µm = 16.8 g/m².
  const auto derived = with(full_stand(), "basis_weight = \"16.8 g/m2\"\ndensity", "density");
  EXPECT_EQ(listed(between(full_stand(), derived)), "");
  // A thicker web of that density is heavier, and only what was written is told.
  EXPECT_EQ(listed(between(least_stand(), with(least_stand(), "\"12 um\"", "\"15 um\""))),
            "changed web \"film\" | web.caliper | 12 µm | 15 µm\n");
}

TEST(changes_between, tells_what_a_row_of_a_table_of_jobs_changes_of_its_web) {
  const auto of = [](const std::string& cell) {
    return read_with_jobs("name,web,roll,speed [m/min],web.modulus [GPa]\nrow,film,jumbo,100," + cell + "\n");
  };
  const StandFile a = of("4");
  const StandFile b = of("5");
  ASSERT_EQ(told(a.problems), "");
  EXPECT_EQ(listed(changes_between(a.stand, b.stand, si)), "changed job \"row\" | job.web.modulus | 4 GPa | 5 GPa\n");
}

}  // namespace
}  // namespace holdback::files::test
