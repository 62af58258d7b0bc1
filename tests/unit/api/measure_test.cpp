#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "holdback/api/answer.hpp"
#include "holdback/api/base64.hpp"
#include "holdback/api/measure_readings.hpp"
#include "support/files.hpp"

namespace holdback::api {
namespace {

using Json = nlohmann::json;

std::vector<KeyReadings> read(const std::string& method, const std::vector<Reading>& readings, Problems& problems) {
  return read_readings(*measure_method(method), readings, problems);
}

KeyReadings one(const std::string& key, const std::string& text, const std::string& method = "push") {
  Problems problems;
  const auto all = read(method, {{key, text}}, problems);
  EXPECT_TRUE(problems.empty()) << text;
  return all.empty() ? KeyReadings{} : all.front();
}

TEST(read_readings, the_last_digit_is_the_resolution) {
  EXPECT_NEAR(one("force", "6.38 N").resolution, 0.01, 1e-15);
  EXPECT_NEAR(one("force", "1.430 lbf").resolution, 0.001 * 4.4482216152605, 1e-15);
  EXPECT_NEAR(one("push", "12 mm").resolution, 1e-3, 1e-15);
  EXPECT_NEAR(one("force", "1e1 N").resolution, 10, 1e-12);
}

// A tape shows millimetres, so "1.2 m" is not taken as read to a decimetre; finer digits are believed.
TEST(read_readings, lengths_by_tape_are_as_good_as_a_tape) {
  EXPECT_EQ(one("span", "1.2 m").resolution, 1e-3);
  EXPECT_EQ(one("span", "1.2 m").from, ResolutionFrom::instrument);
  EXPECT_NEAR(one("span", "1.2000 m").resolution, 1e-4, 1e-16);
}

TEST(read_readings, limits_in_any_writing) {
  for (const char* text : {"6.4N±0.2N", "6.4 ± 0.2 N", "6.4 N ± 0.2", "6.4 N +- 0.2 N", "6.4N+/-0.2N"})
    EXPECT_NEAR(one("force", text).limit, 0.2, 1e-15) << text;
  EXPECT_NEAR(one("modulus", "4 GPa ± 10 %").limit, 0.4e9, 1);
  EXPECT_NEAR(one("wrap", "90 deg ± 2 deg", "cell").limit, 2 * std::acos(-1.0) / 180, 1e-15);
}

TEST(read_readings, repeats_keep_their_values_and_the_finest_step) {
  Problems problems;
  const auto all = read("push", {{"force", "6.4 N"}, {"span", "1.2 m"}, {"force", "6.38 N"}}, problems);
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(all[0].key, "span");  // in the order of the table
  EXPECT_EQ(all[1].values, (std::vector<double>{6.4, 6.38}));
  EXPECT_NEAR(all[1].resolution, 0.01, 1e-15);
}

TEST(read_readings, what_is_wrong_is_told_with_what_is_accepted) {
  const auto told = [](const std::string& method, const Reading& reading) {
    Problems problems;
    read(method, {reading}, problems);
    return problems.size() == 1 && !problems.front().accepted.text.empty() && problems.front().field == reading.key
               ? problems.front().what.text
               : std::string("not told");
  };
  EXPECT_NE(told("push", {"forse", "6 N"}).find("did you mean force"), std::string::npos);
  EXPECT_NE(told("push", {"sag", "6 mm"}).find("not a reading of push"), std::string::npos);
  EXPECT_NE(told("push", {"force", "6"}).find("no unit"), std::string::npos);
  EXPECT_NE(told("push", {"force", "6 kg"}).find("mass"), std::string::npos);
  EXPECT_NE(told("push", {"force", ""}).find("nothing"), std::string::npos);
  EXPECT_NE(told("push", {"force", "6N±-1N"}).find("negative"), std::string::npos);
  EXPECT_NE(told("push", {"force.resolution", "0 N"}).find("greater than zero"), std::string::npos);
  EXPECT_NE(told("push", {"force", "1e300 N"}).find("no gauge"), std::string::npos);
  EXPECT_NE(told("push", {"force", "1e-300 N"}).find("no gauge"), std::string::npos);
  EXPECT_NE(told("push", {"force", "6N±1e300N"}).find("beyond"), std::string::npos);
  EXPECT_NE(told("pluck", {"air", "some"}).find("yes or no"), std::string::npos);
  EXPECT_NE(told("pluck", {"partial", "1.5"}).find("whole"), std::string::npos);
}

// A tape's span and a bar's push are far apart in size: each reading has a sample of its own.
TEST(read_readings, what_is_accepted_is_the_methods_own_sample) {
  const auto accepted = [](const std::string& method, const Reading& reading) {
    Problems problems;
    read(method, {reading}, problems);
    return problems.empty() ? std::string{} : problems.front().accepted.text;
  };
  EXPECT_EQ(accepted("push", {"push", "10"}), "push=10.0mm");
  EXPECT_EQ(accepted("sag", {"sag", "1e300 mm"}), "sag=3.5mm");
  EXPECT_EQ(accepted("pull", {"pull", "12 kg"}), "pull=95N");
  EXPECT_NE(accepted("push", {"force", "6N±-1N"}).find("force=6.4N±3%"), std::string::npos);
  for (const MeasureMethod& method : measure_methods())
    for (const ReadingKey& key : method.keys) {
      Problems problems;
      EXPECT_EQ(read(std::string(method.key), {{std::string(key.key), std::string(key.sample)}}, problems).size(), 1U);
      EXPECT_TRUE(problems.empty()) << key.key;
    }
}

TEST(read_readings, more_than_a_thousand_of_one_key_are_told) {
  std::vector<Reading> many(1003, {"force", "6.4 N"});
  many.push_back({"push", "10 mm"});
  Problems problems;
  const auto all = read("push", many, problems);
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(all[1].values.size(), 1000U);
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems.front().severity, Severity::warning);
  EXPECT_NE(problems.front().what.text.find("left out"), std::string::npos);
  many.erase(many.begin(), many.begin() + 3);
  problems.clear();
  read("push", many, problems);
  EXPECT_TRUE(problems.empty());
}

// RFC 4648, section 10: test vectors.
TEST(bytes_of_base64, of_the_published_vectors) {
  EXPECT_EQ(bytes_of_base64(""), "");
  EXPECT_EQ(bytes_of_base64("Zg=="), "f");
  EXPECT_EQ(bytes_of_base64("Zm8="), "fo");
  EXPECT_EQ(bytes_of_base64("Zm9v"), "foo");
  EXPECT_EQ(bytes_of_base64("Zm9vYg=="), "foob");
  EXPECT_EQ(bytes_of_base64("Zm9vYmE="), "fooba");
  EXPECT_EQ(bytes_of_base64("Zm9v\nYmFy"), "foobar");
  for (const char* text : {"Z", "Zm9v!", "Zg=a", "====", "Zm9=v"}) EXPECT_FALSE(bytes_of_base64(text)) << text;
}

Json asked(const Json& request) { return Json::parse(answer(request.dump())); }

std::string base64(const std::string& bytes) {
  static const char digits[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string out;
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    unsigned group = 0;
    for (std::size_t k = 0; k < 3; ++k)
      group = group << 8 | (i + k < bytes.size() ? static_cast<unsigned char>(bytes[i + k]) : 0U);
    for (std::size_t k = 0; k < 4; ++k) out += i + k > bytes.size() ? '=' : digits[group >> (18 - 6 * k) & 63U];
  }
  return out;
}

TEST(measure, a_recording_comes_as_base64) {
  const Json readings{{"span", "1.000 m"}, {"basis_weight", "16.68 g/m2"}, {"width", "1 m"}, {"air", "no"}};
  const Json out = asked({{"command", "measure"},
                          {"method", "pluck"},
                          {"readings", readings},
                          {"recording", {{"base64", base64(test::read_source("tests/support/sounds/span-47.wav"))}}}});
  EXPECT_EQ(out["outcome"], "holds");
  EXPECT_NEAR(out["measurement"]["tension"].get<double>(), 150, 1.5);
  const Json bad = asked({{"command", "measure"}, {"method", "pluck"}, {"recording", {{"base64", "?"}}}});
  EXPECT_EQ(bad["outcome"], "bad_input");
}

TEST(measure, the_instruction_alone_holds_the_fields_of_a_form) {
  const Json out = asked({{"command", "measure"}, {"method", "sag"}, {"instruction", true}});
  EXPECT_EQ(out["outcome"], "holds");
  const Json& instruction = out["measurement"]["instruction"];
  EXPECT_FALSE(out["measurement"].contains("tension"));
  EXPECT_EQ(instruction["fields"][0]["key"], "span");
  EXPECT_EQ(instruction["fields"][0]["kind"], "short_length");
  EXPECT_GE(instruction["steps"].size(), 4U);
}

TEST(measure, without_readings_every_needed_one_is_named) {
  const Json out = asked({{"command", "measure"}, {"method", "push"}});
  EXPECT_EQ(out["outcome"], "bad_input");
  ASSERT_EQ(out["problems"].size(), 3U);
  EXPECT_EQ(out["problems"][0]["field"], "span");
  EXPECT_EQ(out["problems"][2]["accepted"]["text"], "force=6.4N");
  EXPECT_FALSE(out.contains("measurement"));
}

}  // namespace
}  // namespace holdback::api
