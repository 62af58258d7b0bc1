// The same stand must get the same answer however it is written and however it is computed.
#include <gtest/gtest.h>

#include <regex>
#include <sstream>

#include "holdback/api/answer.hpp"
#include "holdback/files/field_table.hpp"
#include "holdback/report/report.hpp"
#include "support/files.hpp"

namespace holdback {
namespace {

const char* const examples[] = {"examples/01-label-slitter.toml", "examples/02-film-laminator.toml",
                                "examples/03-board-stand.toml"};

// The field that `key` names in a table of the file, or null.
const files::FieldInfo* field(const std::string& section, const std::string& key) {
  for (const files::FieldInfo* info : files::section_of(section).fields)
    if (info->key == key) return info;
  return nullptr;
}

std::string rewritten(const std::string& section, const std::string& key, const std::string& text,
                      units::System system) {
  const files::FieldInfo* info = field(section, key);
  if (!info || info->form != files::Form::quantity) return text;
  const units::Parsed value = units::parse(text, info->kind);
  EXPECT_TRUE(std::holds_alternative<double>(value)) << section << "." << key << " = " << text;
  return units::write(std::get<double>(value), info->kind, system);
}

// The stand file with every quantity written anew in the units of `system`. Comments and layout stay.
std::string in_units(const std::string& toml, units::System system) {
  static const std::regex header(R"(^\[+(?:brake\.)?(\w+)\]+)");
  static const std::regex pair(R"re((\w+) = "([^"]*)")re");
  std::istringstream lines(toml);
  std::string result;
  std::string section;
  for (std::string line; std::getline(lines, line); result += "\n") {
    std::smatch found;
    if (std::regex_search(line, found, header)) section = found[1];
    const std::string of = line.rfind("  {", 0) == 0 ? files::section::cooling : section;
    auto at = line.cbegin();
    for (std::sregex_iterator it(line.begin(), line.end(), pair), end; it != end && !of.empty(); ++it) {
      result.append(at, (*it)[2].first);
      result += rewritten(of, (*it)[1], (*it)[2], system);
      at = (*it)[2].second;
    }
    result.append(at, line.cend());
  }
  return result;
}

std::string size_json(const std::string& name, const std::string& text, int threads = 0) {
  api::Request request;
  request.command = "size";
  request.stand = {name, text};
  request.threads = threads;
  request.all = true;
  Answer answer = api::answer(request);
  EXPECT_TRUE(answer.choice) << report::problems_text(answer.problems, {});
  answer.problems.clear();  // warnings quote the file, which is written differently
  return report::json(answer);
}

class example : public testing::TestWithParam<const char*> {};

TEST_P(example, gets_the_same_answer_in_si_and_us_units) {
  const std::string text = test::read_source(GetParam());
  const std::string us = in_units(text, units::System::us);
  const std::string si = in_units(text, units::System::si);
  ASSERT_NE(us, si);
  EXPECT_EQ(size_json(GetParam(), us), size_json(GetParam(), text));
  EXPECT_EQ(size_json(GetParam(), si), size_json(GetParam(), text));
}

TEST_P(example, gets_identical_bytes_on_one_thread_or_many) {
  const std::string text = test::read_source(GetParam());
  const std::string one = size_json(GetParam(), text, 1);
  EXPECT_EQ(one, size_json(GetParam(), text, 2));
  EXPECT_EQ(one, size_json(GetParam(), text, 5));
}

TEST_P(example, says_that_it_is_invented) {
  EXPECT_NE(test::read_source(GetParam()).substr(0, 40).find("Invented example"), std::string::npos);
}

TEST_P(example, does_not_depend_on_the_order_of_its_jobs) {
  const std::string text = test::read_source(GetParam());
  api::Request request;
  request.command = "size";
  request.stand = {"stand.toml", text};
  const Answer answer = api::answer(request);
  ASSERT_TRUE(answer.choice && answer.choice->recommended);
  for (const JobFit& job : answer.choice->recommended->jobs) {
    request.job = job.job;
    const Answer alone = api::answer(request);
    ASSERT_TRUE(alone.choice->job);
    EXPECT_EQ(alone.choice->job->pairs, job.pairs);
    EXPECT_EQ(alone.choice->job->limits, job.limits);
  }
}

INSTANTIATE_TEST_SUITE_P(property, example, testing::ValuesIn(examples), [](const auto& tried) {
  const std::string name = tried.param;
  return "n" + name.substr(name.find('/') + 1, 2);
});

}  // namespace
}  // namespace holdback
