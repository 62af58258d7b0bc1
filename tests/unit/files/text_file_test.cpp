// What is text, and where its lines and characters are.
#include "holdback/files/text_file.hpp"

#include <gtest/gtest.h>

namespace holdback::files {
namespace {

using Lines = std::vector<std::string>;

Position wrong_at(std::string_view text) {
  const auto problem = unreadable(text, 1000, "a file", "f");
  return problem ? problem->where : Position{-1, -1};
}

TEST(LinesOf, PartsAtBothKindsOfLineEnd) {
  EXPECT_EQ(lines_of("a\nb\r\n\nc"), (Lines{"a", "b", "", "c"}));
  EXPECT_EQ(lines_of("a\n"), (Lines{"a"}));
  EXPECT_EQ(lines_of(""), Lines{});
}

TEST(Unreadable, PassesUtf8) { EXPECT_FALSE(unreadable("µ ° ² € 😀\t\r\n", 1000, "a file", "f")); }

TEST(Unreadable, FindsTheFirstWrongByte) {
  EXPECT_EQ(wrong_at("ab\nµ\xFF"), (Position{2, 2}));
  EXPECT_EQ(wrong_at("\xC3"), (Position{1, 1})) << "a character cut off";
  EXPECT_EQ(wrong_at("\xC0\xAF"), (Position{1, 1})) << "a character in more bytes than it needs";
  EXPECT_EQ(wrong_at("\xED\xA0\x80"), (Position{1, 1})) << "half of a pair that only UTF-16 has";
  EXPECT_EQ(wrong_at("\xF4\x90\x80\x80"), (Position{1, 1})) << "beyond the last character";
  EXPECT_EQ(wrong_at(std::string_view("a\0b", 3)), (Position{1, 2}));
}

TEST(Slice, CountsCharacters) {
  EXPECT_EQ(slice("aµb°c", 2, 4), "µb");
  EXPECT_EQ(length_of("aµb°c"), 5U);
}

TEST(Clipped, KeepsOneLineOfSixtyCharacters) {
  EXPECT_EQ(clipped("plain"), "plain");
  EXPECT_EQ(clipped("two\nlines"), "two…");
  EXPECT_EQ(length_of(clipped(std::string(100, 'x'))), 61U);
  EXPECT_EQ(clipped("a\x1b[31m"), "a\uFFFD[31m");
}

}  // namespace
}  // namespace holdback::files
