// Values set in the text of a stand file: nothing else may change.
#include "holdback/files/patch_stand.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <iterator>

namespace holdback::files {
namespace {

std::string example(const std::string& name) {
  std::ifstream file(HOLDBACK_SOURCE_DIR "/examples/" + name, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

PatchedStand patched(const std::string& text, const std::vector<BrakeValue>& values) {
  auto done = patch_stand(text, "stand.toml", values);
  if (const auto* problem = std::get_if<Problem>(&done)) {
    ADD_FAILURE() << problem->what.text;
    return {};
  }
  return std::get<PatchedStand>(done);
}

/// Lines that differ, as "before → after".
std::vector<std::string> differences(const std::string& a, const std::string& b) {
  std::vector<std::string> out;
  std::size_t i = 0;
  std::size_t k = 0;
  while (i < a.size() && k < b.size()) {
    const std::string before = a.substr(i, a.find('\n', i) - i);
    const std::string after = b.substr(k, b.find('\n', k) - k);
    if (before != after) out.push_back(before + " → " + after);
    i += before.size() + 1;
    k += after.size() + 1;
  }
  return out;
}

TEST(patch_stand, replaces_values_in_their_manner) {
  const std::string text = example("01-label-slitter.toml");
  const auto done = patched(text, {{"disc 330", "middle", "friction", 0.30571},
                                   {"disc 330", "", "threshold_pressure", 12345.6},
                                   {"disc 330", "", "drag", 0.2}});
  const auto lines = differences(text, done.text);
  ASSERT_EQ(lines.size(), 3U);
  EXPECT_EQ(lines[0], "threshold_pressure = \"0.08 bar\" → threshold_pressure = \"0.1235 bar\"");
  EXPECT_EQ(lines[1], "drag = \"0.15 N*m\" → drag = \"0.2 N*m\"");
  EXPECT_EQ(lines[2], "friction = 0.33 → friction = 0.3057");
  ASSERT_EQ(done.changes.size(), 3U);
  EXPECT_EQ(done.changes[0].before, "0.33");
  EXPECT_EQ(done.changes[0].after, "0.3057");
}

TEST(patch_stand, keeps_us_units_and_data_sheets) {
  const std::string text = example("03-board-stand.toml");
  const auto done = patched(text, {{"finned disc 26", "high", "torque_per_pair", 400}});
  const auto lines = differences(text, done.text);
  ASSERT_EQ(lines.size(), 1U);
  EXPECT_EQ(lines[0], "torque_per_pair = \"4000 in*lbf\" → torque_per_pair = \"3540 in*lbf\"");  // 400 N·m
}

TEST(patch_stand, adds_a_key_behind_the_name_with_the_same_line_ends) {
  std::string text = example("01-label-slitter.toml");
  const std::string line = "threshold_pressure = \"0.08 bar\"\n";
  for (std::size_t at = text.find(line); at != std::string::npos; at = text.find(line)) text.erase(at, line.size());
  std::string windows;
  for (const char c : text) windows += c == '\n' ? std::string("\r\n") : std::string(1, c);
  for (const std::string& file : {text, windows}) {
    const std::string end = file == windows ? "\r\n" : "\n";
    const auto done = patched(file, {{"disc 330", "", "threshold_pressure", 9000}});
    EXPECT_NE(done.text.find("name = \"disc 330\"" + end + "threshold_pressure = \"0.09 bar\"" + end),
              std::string::npos);
    EXPECT_EQ(done.changes.front().before, "");
    EXPECT_EQ(done.text.size(), file.size() + std::string("threshold_pressure = \"0.09 bar\"").size() + end.size());
  }
}

TEST(patch_stand, minds_comments_quotes_and_inline_tables) {
  std::string text = example("01-label-slitter.toml");
  const std::string before = "friction = 0.33";
  const std::size_t at = text.rfind(before);
  text.replace(at, before.size(), "friction = '0.33'   # \"read\" in spring, 0.33 then");
  const auto done = patched(text, {{"disc 330", "middle", "friction", 0.3}});
  EXPECT_NE(done.text.find("friction = \"0.3\"   # \"read\" in spring, 0.33 then"), std::string::npos)
      << done.text.substr(at, 60);
}

TEST(patch_stand, refuses_what_it_cannot_place) {
  const std::string text = example("01-label-slitter.toml");
  const auto refused = [&](const BrakeValue& value) {
    return std::holds_alternative<Problem>(patch_stand(text, "stand.toml", {value}));
  };
  EXPECT_TRUE(refused({"no such brake", "", "drag", 1}));
  EXPECT_TRUE(refused({"disc 330", "no such grade", "friction", 0.3}));
  EXPECT_TRUE(refused({"disc 330", "middle", "friction", 3}));  // beyond what the file format accepts
  EXPECT_TRUE(refused({"disc 330", "middle", "no such key", 0.3}));
  EXPECT_TRUE(std::holds_alternative<Problem>(patch_stand("[[brake", "x", {{"disc 330", "", "drag", 1}})));
}

}  // namespace
}  // namespace holdback::files
