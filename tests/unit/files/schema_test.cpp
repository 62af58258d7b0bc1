// The schema and the page say what the field table says.
#include "holdback/files/schema.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "holdback/files/field_table.hpp"
#include "holdback/files/format_page.hpp"
#include "texts.hpp"

namespace holdback::files::test {
namespace {

using nlohmann::json;

/// The part of the schema that describes one table of a section.
json table_of(const json& schema, const Section& section) {
  if (section.key.empty()) return schema;
  const json outer = section.parent.empty() ? schema : table_of(schema, section_of(section.parent));
  const json& own = outer.at("properties").at(section.key);
  return section.many ? own.at("items") : own;
}

TEST(StandSchema, HoldsEveryRowOfTheFieldTable) {
  const json schema = json::parse(stand_schema());
  for (const Section& section : sections()) {
    const json table = table_of(schema, section);
    EXPECT_EQ(table.at("additionalProperties"), false);
    for (const FieldInfo* field : section.fields) {
      ASSERT_TRUE(table.at("properties").contains(field->key)) << section.key << "." << field->key;
      const json& row = table.at("properties").at(field->key);
      EXPECT_EQ(row.at("description").get<std::string>().rfind(field->help, 0), 0U) << field->key;
      EXPECT_EQ(row.contains("default"), field->presence == Presence::defaulted) << field->key;
    }
  }
}

TEST(StandSchema, RequiresWhatTheTableRequires) {
  const json schema = json::parse(stand_schema());
  for (const Section& section : sections()) {
    if (section.key.empty()) continue;
    const json required = table_of(schema, section).value("required", json::array());
    for (const FieldInfo* field : section.fields) {
      const bool listed = std::find(required.begin(), required.end(), field->key) != required.end();
      EXPECT_EQ(listed, field->presence == Presence::required) << section.key << "." << field->key;
    }
  }
}

TEST(StandSchema, AllowsABareNumberOnlyWhereNoUnitIsDue) {
  const json schema = json::parse(stand_schema());
  const json line = table_of(schema, section_of("line")).at("properties");
  EXPECT_EQ(line.at("top_speed").at("type"), "string");
  EXPECT_EQ(line.at("uptime").at("oneOf").at(0).at("type"), "number");
  EXPECT_EQ(line.at("uptime").at("oneOf").at(0).at("maximum"), 1.0);
  EXPECT_EQ(table_of(schema, section_of("brake")).at("properties").at("pairs").at("oneOf").at(0).at("type"), "integer");
}

TEST(StandSchema, IsTheSameTextEveryTime) { EXPECT_EQ(stand_schema(), stand_schema()); }

TEST(FormatPage, HoldsEveryKeyWithItsMeaning) {
  const std::string page = file_format_page();
  for (const Section& section : sections()) {
    for (const FieldInfo* field : section.fields) {
      const std::size_t row = page.find("| `" + field->key + "` |");
      ASSERT_NE(row, std::string::npos) << field->key;
      EXPECT_NE(page.find(field->help, row), std::string::npos) << field->key;
    }
  }
}

TEST(FormatPage, ShowsAStandThatReadsWithoutAProblem) {
  const std::string page = file_format_page();
  const std::string fence = "```toml\n";
  const std::size_t begin = page.find(fence) + fence.size();
  StandFile file = read(page.substr(begin, page.find("```", begin) - begin));
  EXPECT_EQ(told(file.problems), "");
  const std::string csv_fence = "```csv\n";
  const std::size_t csv = page.find(csv_fence) + csv_fence.size();
  read_jobs(page.substr(csv, page.find("```", csv) - csv), "jobs.csv", file);
  EXPECT_EQ(told(file.problems), "");
  EXPECT_EQ(file.stand.jobs.size(), 3U);
}

TEST(FieldTable, GivesEveryFieldAMeaningAndAnExample) {
  for (const Section& section : sections()) {
    for (const FieldInfo* field : section.fields) {
      EXPECT_FALSE(field->help.empty()) << field->key;
      const bool shown = !field->example.empty() || !field->default_text.empty() || field->form == Form::points;
      EXPECT_TRUE(shown) << field->key;
      if (field->form == Form::quantity) {
        EXPECT_TRUE(field->low && field->high) << field->key;
      }
    }
  }
}

TEST(FieldTable, GivesExamplesThatItAccepts) {
  for (const Section& section : sections()) {
    for (const FieldInfo* field : section.fields) {
      if (field->form != Form::quantity || field->example.empty()) continue;
      const auto parsed = units::parse(field->example, field->kind);
      ASSERT_TRUE(std::holds_alternative<double>(parsed)) << field->key;
      EXPECT_GE(std::get<double>(parsed), field->low->value) << field->key;
      EXPECT_LE(std::get<double>(parsed), field->high->value) << field->key;
    }
  }
}

}  // namespace
}  // namespace holdback::files::test
