#include "holdback/draw/scene.hpp"

#include <gtest/gtest.h>

#include "holdback/units/text.hpp"

namespace holdback::draw {
namespace {

bool whole_utf8(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const auto point = units::code_point_at(text, at);
    if (point.value == 0xFFFD) return false;
    at += point.size;
  }
  return true;
}

// Advance widths of a common wide sans-serif font (DejaVu Sans 2.37), read from the font file's hmtx table (found).
TEST(text_width, is_that_of_a_wide_sans_serif_font) {
  EXPECT_NEAR(text_width("i", 1000), 278, 1e-9);
  EXPECT_NEAR(text_width("M", 1000), 863, 1e-9);
  EXPECT_NEAR(text_width("0", 1000), 636, 1e-9);
  EXPECT_NEAR(text_width("brake torque", 1000), 635 + 411 + 613 + 579 + 615 + 318 + 392 + 612 + 411 + 635 + 634 + 615,
              1e-9);
  EXPECT_GE(text_width("−", 1000), 838);    // minus
  EXPECT_GE(text_width("Ø", 1000), 787);    // diameter
  EXPECT_GE(text_width("·", 1000), 318);    // middle dot
  EXPECT_GE(text_width("°", 1000), 500);    // degree
  EXPECT_GE(text_width("Ω", 1000), 764);    // Greek
  EXPECT_GE(text_width("ü", 1000), 634);    // accent
  EXPECT_GE(text_width("漢", 1000), 1000);  // ideograph: a full square
}

TEST(text_width, bold_is_wider_than_the_bold_font) {
  // Bold of the same font (found): digits 696, "stop" 595 + 478 + 687 + 716.
  EXPECT_GE(text_width("0123", 1000, Weight::bold), 4 * 696);
  EXPECT_GE(text_width("stop", 1000, Weight::bold), 595 + 478 + 687 + 716);
}

TEST(text_width, of_nothing_or_without_size_is_zero) {
  EXPECT_EQ(text_width("", 3), 0);
  EXPECT_EQ(text_width("text", 0), 0);
  EXPECT_EQ(text_width("text", -1), 0);
}

TEST(fitted, keeps_what_fits_and_cuts_the_rest_between_characters) {
  EXPECT_EQ(fitted("run", 100, 3), "run");
  const std::string name = "étiquettes très larges, 漢字";
  for (double width = 0; width < 100; width += 0.7) {
    const auto text = fitted(name, width, 3);
    EXPECT_LE(text_width(text, 3), width) << text;
    EXPECT_TRUE(whole_utf8(text)) << text;
    if (!text.empty() && text != name) {
      EXPECT_EQ(text.substr(text.size() - 3), "…");
    }
  }
}

TEST(broken, fills_lines_and_cuts_the_last) {
  EXPECT_EQ(broken("capacity, lowest friction", 200, 3, 3), (std::vector<std::string>{"capacity, lowest friction"}));
  const auto lines = broken("one two three four five six seven eight", 20, 3, 2);
  ASSERT_EQ(lines.size(), 2U);
  for (const auto& line : lines) EXPECT_LE(text_width(line, 3), 20) << line;
  EXPECT_EQ(lines[1].substr(lines[1].size() - 3), "…");
  EXPECT_EQ(broken("", 20, 3, 2), (std::vector<std::string>{""}));
  for (const auto& line : broken(std::string(500, 'W'), 20, 3, 4)) EXPECT_LE(text_width(line, 3), 20);
}

TEST(bounds, follow_the_anchor) {
  const double width = text_width("run", 3);
  const auto start = bounds({{10, 20}, "run", Anchor::start, 3, Weight::normal, 0});
  EXPECT_NEAR(start.left, 10, 1e-9);
  EXPECT_NEAR(start.right, 10 + width, 1e-9);
  EXPECT_LT(start.top, 20);
  EXPECT_GT(start.bottom, 20);
  const auto end = bounds({{10, 20}, "run", Anchor::end, 3, Weight::normal, 0});
  EXPECT_NEAR(end.right, 10, 1e-9);
  const auto middle = bounds({{10, 20}, "run", Anchor::middle, 3, Weight::normal, 0});
  EXPECT_NEAR(middle.left + middle.right, 20, 1e-9);
}

TEST(bounds, turned_by_a_quarter_stand_upright) {
  const auto lying = bounds({{50, 50}, "diameter", Anchor::middle, 3, Weight::normal, 0});
  const auto turned = bounds({{50, 50}, "diameter", Anchor::middle, 3, Weight::normal, -90});
  EXPECT_NEAR(turned.right - turned.left, lying.bottom - lying.top, 1e-9);
  EXPECT_NEAR(turned.bottom - turned.top, lying.right - lying.left, 1e-9);
}

TEST(overlap, needs_common_room) {
  EXPECT_TRUE(overlap({0, 0, 2, 2}, {1, 1, 3, 3}));
  EXPECT_FALSE(overlap({0, 0, 2, 2}, {2, 0, 4, 2}));  // side by side
  EXPECT_FALSE(overlap({0, 0, 2, 2}, {0, 3, 2, 4}));
}

TEST(line_width, tells_roles_and_neighbouring_series_apart) {
  EXPECT_GT(line_width({MarkRole::limit}), line_width({MarkRole::curve, Pattern::solid, 1}));
  EXPECT_GT(line_width({MarkRole::curve, Pattern::solid, 1}), line_width({MarkRole::curve, Pattern::solid, 0}));
  EXPECT_GT(line_width({MarkRole::curve, Pattern::solid, 0}), line_width({MarkRole::axis}));
  EXPECT_GT(line_width({MarkRole::axis}), line_width({MarkRole::grid}));
}

}  // namespace
}  // namespace holdback::draw
