// What the file leaves out is taken from the field table, and every such value is named.
#include <gtest/gtest.h>

#include <map>

#include "holdback/files/field_table.hpp"
#include "texts.hpp"

namespace holdback::files::test {
namespace {

std::map<std::string, DefaultUsed> defaults_of(const std::string& text) {
  std::map<std::string, DefaultUsed> by_field;
  for (const DefaultUsed& used : read(text).defaults) by_field[used.field] = used;
  return by_field;
}

/// Path of a section's first table in least_stand().
std::string first_of(const Section& section) {
  const std::string own = section.many ? section.key + "[0]" : section.key;
  if (section.parent.empty()) return own;
  return first_of(section_of(section.parent)) + "." + own;
}

TEST(Defaults, NamesEveryDefaultOfTheTableOnce) {
  const std::string text =
      optional_tables() + with(least_stand(), "[[roll]]", "[[web.ply]]\ncaliper = \"12 um\"\n[[roll]]");
  const StandFile file = read(text);
  ASSERT_EQ(told(file.problems), "");
  std::size_t expected = 0;
  const auto used = defaults_of(text);
  for (const Section& section : sections()) {
    for (const FieldInfo* field : section.fields) {
      if (field->presence != Presence::defaulted) continue;
      ++expected;
      const std::string path = section.key.empty() ? field->key : first_of(section) + "." + field->key;
      ASSERT_EQ(used.count(path), 1U) << path;
      EXPECT_EQ(used.at(path).text, field->default_text);
    }
  }
  EXPECT_EQ(file.defaults.size(), expected);
}

TEST(Defaults, NamesTheOwnerInWords) {
  const auto used = defaults_of(least_stand());
  EXPECT_EQ(used.at("line.ramp_time").owner, "");
  EXPECT_EQ(used.at("web[0].material").owner, "web \"film\"");
  EXPECT_EQ(used.at("brake[0].threshold_pressure").owner, "brake \"D300\"");
  EXPECT_EQ(used.at("brake[0].grade[0].wear_rate").owner, "grade \"standard\" of brake \"D300\"");
}

TEST(Defaults, PutsTheDefaultsIntoTheStand) {
  const Stand stand = read(least_stand()).stand;
  EXPECT_EQ(stand.title, "untitled stand");
  EXPECT_EQ(stand.guard, Guard::mesh);
  EXPECT_DOUBLE_EQ(stand.ambient, 298.15);
  EXPECT_DOUBLE_EQ(stand.air.supply_pressure, 6e5);
  EXPECT_DOUBLE_EQ(stand.line.emergency_stop_time, 5);
  EXPECT_DOUBLE_EQ(stand.limits.least_pad_life, 500 * 3600.0);
  EXPECT_DOUBLE_EQ(stand.jobs.at(0).share, 1);
  EXPECT_DOUBLE_EQ(stand.brakes.at(0).specific_heat, 500);
  EXPECT_DOUBLE_EQ(stand.brakes.at(0).grades.at(0).wear_rate, 30e-15);
}

TEST(Defaults, AreInsideTheirOwnDomains) {
  for (const Section& section : sections()) {
    for (const FieldInfo* field : section.fields) {
      if (field->presence != Presence::defaulted || field->form != Form::quantity) continue;
      const double value = std::get<double>(default_value(*field));
      EXPECT_GE(value, field->low->value) << field->key;
      EXPECT_LE(value, field->high->value) << field->key;
    }
  }
}

TEST(Defaults, AreNotNamedForAGivenValue) {
  const auto used = defaults_of(with(least_stand(), "[line]\n", "[line]\nramp_time = \"30 s\"\n"));
  EXPECT_EQ(used.count("line.ramp_time"), 0U);
  EXPECT_EQ(used.count("line.stop_time"), 1U);
}

}  // namespace
}  // namespace holdback::files::test
