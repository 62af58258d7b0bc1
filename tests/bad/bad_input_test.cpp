// Wrong files and what is told about them. The name of a file says what is wrong with it; beside it, `<name>.expected`
// holds the whole message as it is printed. A table of jobs (.csv) is read with good.toml as its stand.
//
// With HOLDBACK_UPDATE_EXPECTED=1 in the environment the .expected files are written instead of compared. They hold
// wording, not physics, so that is fair; read the difference before it is kept.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "holdback/api/answer.hpp"
#include "holdback/report/report.hpp"

namespace holdback::test {
namespace {

namespace fs = std::filesystem;

const fs::path folder = fs::path(HOLDBACK_SOURCE_DIR) / "tests" / "bad";

std::string content(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) throw std::runtime_error("cannot read " + path.string());
  return {std::istreambuf_iterator<char>(file), {}};
}

std::vector<std::string> names_with(const std::string& extension) {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(folder))
    if (entry.path().extension() == extension) names.push_back(entry.path().filename().string());
  std::sort(names.begin(), names.end());
  return names;
}

/// Every file of the corpus but the good one.
std::vector<std::string> wrong_files() {
  std::vector<std::string> names = names_with(".toml");
  names.erase(std::remove(names.begin(), names.end(), "good.toml"), names.end());
  for (const std::string& name : names_with(".csv")) names.push_back(name);
  return names;
}

Problems problems_of(const std::string& name) {
  api::Request request;
  request.command = "check";
  if (fs::path(name).extension() == ".csv") {
    request.stand = {"good.toml", content(folder / "good.toml")};
    request.jobs = api::Source{name, content(folder / name)};
  } else {
    request.stand = {name, content(folder / name)};
  }
  return api::answer(request).problems;
}

fs::path expected_of(const std::string& name) { return folder / fs::path(name).replace_extension(".expected"); }

bool updating() {
  const char* wish = std::getenv("HOLDBACK_UPDATE_EXPECTED");
  return wish != nullptr && std::string(wish) == "1";
}

class BadInput : public testing::TestWithParam<std::string> {};

TEST_P(BadInput, IsToldAsExpected) {
  const std::string told = report::problems_text(problems_of(GetParam()), {});
  ASSERT_NE(told, "") << "nothing is told about " << GetParam();
  if (updating()) {
    std::ofstream(expected_of(GetParam()), std::ios::binary) << told;
    GTEST_SKIP() << "written, not compared";
  }
  ASSERT_TRUE(fs::exists(expected_of(GetParam()))) << GetParam() << " has no expected message; it is told as\n" << told;
  EXPECT_EQ(told, content(expected_of(GetParam())));
}

TEST_P(BadInput, NamesItsFileAndWhatIsAccepted) {
  for (const Problem& problem : problems_of(GetParam())) {
    EXPECT_EQ(problem.file, GetParam());
    EXPECT_NE(problem.what.text, "");
    EXPECT_NE(problem.accepted.text, "") << problem.what.text;
  }
}

std::string test_name(const testing::TestParamInfo<std::string>& info) {
  std::string name = info.param;
  std::replace(name.begin(), name.end(), '.', '_');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Corpus, BadInput, testing::ValuesIn(wrong_files()), test_name);

TEST(BadCorpus, HoldsAtLeastFortyFilesAndNoExpectationWithoutOne) {
  std::vector<std::string> wanted;
  for (const std::string& name : wrong_files()) wanted.push_back(expected_of(name).filename().string());
  EXPECT_GE(wanted.size(), 40U);
  std::sort(wanted.begin(), wanted.end());
  EXPECT_EQ(std::adjacent_find(wanted.begin(), wanted.end()), wanted.end()) << "two files share one expected message";
  for (const std::string& expected : names_with(".expected")) EXPECT_THAT(wanted, testing::Contains(expected));
}

TEST(BadCorpus, HasAGoodFileBesideIt) { EXPECT_EQ(report::problems_text(problems_of("good.toml"), {}), ""); }

}  // namespace
}  // namespace holdback::test
