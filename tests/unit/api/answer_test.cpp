#include "holdback/api/answer.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "support/files.hpp"

namespace holdback::api {
namespace {

using Json = nlohmann::json;

const std::string example = test::read_source("examples/01-label-slitter.toml");

Request request(const std::string& command) {
  Request r;
  r.command = command;
  r.stand = {"stand.toml", example};
  return r;
}

Json ask(const Json& json) { return Json::parse(answer(json.dump())); }

Json size_request() {
  return {{"version", 1}, {"command", "size"}, {"stand", {{"name", "stand.toml"}, {"text", example}}}};
}

TEST(answer, sizes_an_example) {
  const Answer a = answer(request("size"));
  ASSERT_TRUE(a.choice);
  EXPECT_EQ(a.outcome, Outcome::holds);
  EXPECT_EQ(a.choice->recommended->jobs.size(), 6U);
}

TEST(answer, plans_an_example) {
  const Answer a = answer(request("plan"));
  ASSERT_TRUE(a.plan);
  EXPECT_EQ(a.plan->jobs.size(), 6U);
}

TEST(answer, checks_an_example) {
  const Answer a = answer(request("check"));
  ASSERT_TRUE(a.check);
  EXPECT_EQ(a.check->jobs.size(), 6U);
}

TEST(answer, refuses_a_command_it_does_not_know_and_names_those_it_does) {
  const Answer a = answer(request("guess"));
  EXPECT_EQ(a.outcome, Outcome::bad_input);
  EXPECT_NE(a.problems.at(0).accepted.text.find("size"), std::string::npos);
}

TEST(answer, refuses_a_job_that_the_stand_does_not_have_and_names_those_it_has) {
  Request r = request("size");
  r.job = "no such job";
  const Answer a = answer(r);
  EXPECT_EQ(a.outcome, Outcome::bad_input);
  EXPECT_NE(a.problems.back().accepted.text.find("paper labels"), std::string::npos);
}

TEST(answer, refuses_a_brake_that_leaves_no_candidate) {
  Request r = request("size");
  r.brake = "no such brake";
  EXPECT_EQ(answer(r).outcome, Outcome::bad_input);
}

TEST(answer, refuses_a_tolerance_that_is_none) {
  for (const double tolerance : {0.0, -0.1, 1.0}) {
    Request r = request("plan");
    r.tolerance = tolerance;
    EXPECT_EQ(answer(r).outcome, Outcome::bad_input) << tolerance;
  }
}

TEST(answer, names_cells_of_a_sheet_and_says_what_its_columns_are) {
  Json r = size_request();
  r["command"] = "check";
  r["jobs"] = {{"name", "mix.xlsx"}, {"text", "Job,Line speed (m/min)\na,fast\n"}, {"sheet", true}};
  const Json a = ask(r);
  EXPECT_EQ(a["outcome"], "bad_input");
  EXPECT_EQ(a["columns"][1]["column"], "B");
  EXPECT_EQ(a["columns"][1]["field"], "speed");
  bool told = false;
  for (const auto& problem : a["problems"]) told = told || problem["cell"] == "B2";
  EXPECT_TRUE(told) << a["problems"].dump(1);
  r["jobs"]["sheet"] = "yes";
  EXPECT_EQ(ask(r)["problems"][0]["field"], "jobs.sheet");
}

TEST(answer, computes_nothing_from_a_broken_stand) {
  Request r = request("size");
  r.stand.text = "[line]\ntop_speed = 5\n";
  const Answer a = answer(r);
  EXPECT_EQ(a.outcome, Outcome::bad_input);
  EXPECT_FALSE(a.choice);
  EXPECT_GT(a.problems.size(), 1U);
}

TEST(answer_json, gives_the_typed_answer_as_text) {
  const Json a = ask(size_request());
  EXPECT_EQ(a["command"], "size");
  EXPECT_EQ(a["outcome"], "holds");
  EXPECT_EQ(a["choice"]["recommended"]["jobs"].size(), 6U);
}

TEST(answer_json, plans_with_a_tolerance_written_as_text) {
  Json r = size_request();
  r["command"] = "plan";
  r["tolerance"] = "5 %";
  EXPECT_DOUBLE_EQ(ask(r)["plan"]["jobs"][0]["tolerance"].get<double>(), 0.05);
}

TEST(answer_json, answers_anything_with_json_and_never_throws) {
  for (const char* text : {"", "{", "[]", "null", "42", "\"size\"", "{}", R"({"command":"size"})", "\xff\xfe",
                           R"({"command":5,"stand":{"text":""}})", R"({"command":"size","stand":"text"})",
                           R"({"version":2,"command":"size","stand":{"text":""}})",
                           R"({"command":"size","stand":{"text":""},"brakes":1.5})",
                           R"({"command":"size","stand":{"text":""},"tolerance":"ten"})",
                           R"({"command":"size","stand":{"text":"\u0000"}})"}) {
    const Json a = Json::parse(answer(std::string_view(text)));
    EXPECT_EQ(a["outcome"], "bad_input") << text;
    EXPECT_FALSE(a["problems"].empty()) << text;
  }
}

TEST(answer_json, names_a_field_that_it_does_not_know) {
  Json r = size_request();
  r["joob"] = "paper labels";
  const Json a = ask(r);
  EXPECT_EQ(a["outcome"], "bad_input");
  EXPECT_EQ(a["problems"][0]["field"], "joob");
}

}  // namespace
}  // namespace holdback::api
