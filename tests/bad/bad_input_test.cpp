// Wrong files and what is told about them. The name of a file says what is wrong with it; beside it, `<name>.expected`
// holds the whole message as it is printed. A table of jobs (.csv) is read with good.toml as its stand, and so is a log
// (logs/….csv).
//
// With HOLDBACK_UPDATE_EXPECTED=1 in the environment the .expected files are written instead of compared. They hold
// wording, not physics, so that is fair; read the difference before it is kept.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <cstring>
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
  for (const char* part : {"", "logs"})
    for (const auto& entry : fs::directory_iterator(folder / part))
      if (entry.path().extension() == extension)
        names.push_back((fs::path(part) / entry.path().filename()).generic_string());
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

bool is_log(const std::string& name) { return name.compare(0, 5, "logs/") == 0; }

api::LogRequest log_of(const std::string& name) {
  api::LogRequest log;
  log.name = name;
  log.read = [text = content(folder / name), at = std::size_t{}](char* to, std::size_t most) mutable {
    const std::size_t some = std::min(most, text.size() - at);
    std::memcpy(to, text.data() + at, some);
    at += some;
    return some;
  };
  return log;
}

Problems problems_of(const std::string& name) {
  api::Request request;
  request.command = "check";
  if (is_log(name)) {
    request.command = "diagnose";
    request.stand = {"good.toml", content(folder / "good.toml")};
    request.log = log_of(name);
    return api::answer(request).problems;
  }
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
  std::replace(name.begin(), name.end(), '/', '_');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Corpus, BadInput, testing::ValuesIn(wrong_files()), test_name);

TEST(BadCorpus, HoldsAtLeastFortyFilesAndNoExpectationWithoutOne) {
  std::vector<std::string> wanted;
  for (const std::string& name : wrong_files())
    wanted.push_back(fs::relative(expected_of(name), folder).generic_string());
  EXPECT_GE(wanted.size(), 40U);
  std::sort(wanted.begin(), wanted.end());
  EXPECT_EQ(std::adjacent_find(wanted.begin(), wanted.end()), wanted.end()) << "two files share one expected message";
  for (const std::string& expected : names_with(".expected")) EXPECT_THAT(wanted, testing::Contains(expected));
}

TEST(BadCorpus, HasAGoodFileBesideIt) { EXPECT_EQ(report::problems_text(problems_of("good.toml"), {}), ""); }

}  // namespace
}  // namespace holdback::test
