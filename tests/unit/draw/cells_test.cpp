#include "holdback/draw/cells.hpp"

#include <gtest/gtest.h>

#include "holdback/draw/ink.hpp"

namespace holdback::draw {
namespace {

using Lines = std::vector<std::string>;

TEST(columns, counts_code_points_not_bytes) {
  EXPECT_EQ(columns("12 µm × 3 °C"), 12);
  EXPECT_EQ(columns("日本"), 2);
  EXPECT_EQ(columns(""), 0);
}

TEST(columns, colour_takes_none) { EXPECT_EQ(columns(inked("tight", Ink::warning, true)), 5); }

TEST(cut, never_splits_a_character) {
  EXPECT_EQ(cut("ÄÖÜäöü", 4), "ÄÖÜ…");
  EXPECT_EQ(cut("ÄÖÜä", 4), "ÄÖÜä");
  EXPECT_EQ(cut("x", 0), "");
}

TEST(pad, fills_to_the_width_in_columns) {
  EXPECT_EQ(pad_right("µ", 3), "µ  ");
  EXPECT_EQ(pad_left("µ", 3), "  µ");
  EXPECT_EQ(pad_left("long", 3), "long");
}

TEST(wrapped, breaks_at_blanks_and_cuts_what_cannot_break) {
  EXPECT_EQ(wrapped("one two three", 7), (Lines{"one two", "three"}));
  EXPECT_EQ(wrapped("a unbreakable", 6), (Lines{"a", "unbre…"}));
  EXPECT_EQ(wrapped("", 6), (Lines{""}));
}

TEST(plain, takes_out_what_a_terminal_would_act_on) {
  EXPECT_EQ(plain("a\x1b[31mb"), "a\uFFFD[31mb");
  EXPECT_EQ(plain("a\tb\nc"), "a b\uFFFDc");
  EXPECT_EQ(plain("a\xE2\x80\xAE"
                  "b"),
            "a\uFFFDb");
  EXPECT_EQ(plain("a\u009Bb"), "a\uFFFDb");
  EXPECT_EQ(plain("\xC3"), "\uFFFD");
}

TEST(inked, is_plain_without_colour) {
  EXPECT_EQ(inked("fails", Ink::bad, false), "fails");
  EXPECT_EQ(inked("fails", Ink::plain, true), "fails");
  EXPECT_EQ(inked("", Ink::bad, true), "");
}

}  // namespace
}  // namespace holdback::draw
