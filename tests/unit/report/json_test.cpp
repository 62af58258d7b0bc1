// JSON and its schema: from one list of fields, so they must agree; numbers SI, finite, unshortened.
#include <gtest/gtest.h>

#include <limits>
#include <nlohmann/json.hpp>
#include <set>
#include <stdexcept>

#include "holdback/report/report.hpp"
#include "sample.hpp"

namespace holdback::report {
namespace {

using Json = nlohmann::json;

TEST(json, equal_answers_give_identical_bytes) {
  EXPECT_EQ(json(sample::everything()), json(sample::everything()));
  auto other = sample::everything();
  other.choice->recommended->jobs.front().margin += 1e-15;
  EXPECT_NE(json(sample::everything()), json(other));
}

TEST(json, numbers_are_si_and_read_back_to_the_same_double) {
  auto answer = sample::size();
  answer.choice->recommended->jobs.front().pressure_full = 0.1 + 0.2;
  const auto read = Json::parse(json(answer));
  EXPECT_EQ(read["choice"]["recommended"]["jobs"][0]["pressure_full"].get<double>(), 0.1 + 0.2);
  EXPECT_EQ(read["choice"]["recommended"]["jobs"][0]["hottest"].get<double>(), 416.15);
}

TEST(json, a_limit_names_its_unit_case_and_state) {
  const auto limit = Json::parse(json(sample::size()))["choice"]["recommended"]["jobs"][1]["limits"][0];
  EXPECT_EQ(limit["key"], "stop_torque");
  EXPECT_EQ(limit["unit"], "N*m");
  EXPECT_EQ(limit["case"], "stop");
  EXPECT_EQ(limit["known"], "rating");
  EXPECT_EQ(limit["state"], "fails");
  EXPECT_EQ(limit["value"], 200.0);
}

TEST(json, a_note_has_its_text_filled_in_and_its_amounts_apart) {
  const auto note = Json::parse(json(sample::size()))["choice"]["uncovered"][0]["why"];
  EXPECT_EQ(note["text"], "the stop asks for 210 N·m");
  EXPECT_EQ(note["pattern"], "the stop asks for {0}");
  EXPECT_EQ(note["amounts"], Json::parse(R"([{"value": 210.0, "unit": "N*m", "kind": "torque"}])"));
}

TEST(json, what_an_answer_does_not_hold_is_left_out) {
  const auto read = Json::parse(json(sample::size()));
  EXPECT_FALSE(read.contains("plan"));
  EXPECT_FALSE(read["choice"].contains("next"));
  EXPECT_TRUE(read["choice"]["recommended"].contains("price"));
  EXPECT_FALSE(read["choice"]["recommended"].contains("pad_cost_per_year"));
}

TEST(json, a_number_that_is_not_finite_is_refused_with_its_path) {
  for (const double wrong : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    auto answer = sample::size();
    answer.choice->recommended->jobs[1].stop.slack = wrong;
    try {
      json(answer);
      FAIL() << "nothing was thrown";
    } catch (const std::logic_error& fault) {
      EXPECT_NE(std::string(fault.what()).find("choice.recommended.jobs[1].stop.slack"), std::string::npos)
          << fault.what();
    }
  }
}

TEST(json, bytes_that_are_no_utf_8_become_the_replacement_character) {
  auto answer = sample::size();
  answer.choice->title = "a\xFFz";
  EXPECT_EQ(Json::parse(json(answer))["choice"]["title"], "a\uFFFDz");
}

/// Every object of `value` must have the keys that its schema requires, and no others than it allows.
void expect_keys(const Json& value, const Json& schema, const Json& defs, const std::string& path) {
  if (schema.contains("$ref")) {
    return expect_keys(value, defs[schema["$ref"].get<std::string>().substr(std::string("#/$defs/").size())], defs,
                       path);
  }
  if (value.is_array()) {
    for (const auto& item : value) expect_keys(item, schema["items"], defs, path + "[]");
  }
  if (!value.is_object()) return;
  for (const auto& key : schema["required"]) EXPECT_TRUE(value.contains(key)) << path << " has no " << key;
  for (const auto& [key, member] : value.items()) {
    ASSERT_TRUE(schema["properties"].contains(key)) << path << " has the unknown " << key;
    expect_keys(member, schema["properties"][key], defs, std::string(path).append(".").append(key));
  }
}

TEST(answer_schema, knows_every_key_of_an_answer_that_holds_everything) {
  const auto schema = Json::parse(answer_schema());
  EXPECT_EQ(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
  expect_keys(Json::parse(json(sample::everything())), schema, schema["$defs"], "answer");
}

TEST(answer_schema, lists_the_words_of_an_enum_and_the_unit_of_a_number) {
  const auto defs = Json::parse(answer_schema())["$defs"];
  EXPECT_EQ(defs["limit"]["properties"]["state"]["enum"], Json::parse(R"(["holds", "tight", "fails"])"));
  EXPECT_EQ(defs["limit"]["properties"]["key"]["enum"].size(), static_cast<std::size_t>(limit_count));
  const auto help = defs["job_fit"]["properties"]["pressure_full"]["description"].get<std::string>();
  EXPECT_NE(help.find("[Pa]"), std::string::npos) << help;
}

TEST(answer_schema, closes_every_object) {
  const auto schema = Json::parse(answer_schema());
  for (const auto& [name, definition] : schema["$defs"].items()) {
    EXPECT_EQ(definition["additionalProperties"], false) << name;
  }
}

}  // namespace
}  // namespace holdback::report
