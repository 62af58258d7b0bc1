#include "holdback/draw/thin.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "holdback/draw/chart_layout.hpp"

namespace holdback::draw {
namespace {

constexpr double undefined = std::numeric_limits<double>::quiet_NaN();

std::vector<double> rising(std::size_t count) {
  std::vector<double> x(count);
  for (std::size_t i = 0; i < count; ++i) x[i] = static_cast<double>(i);
  return x;
}

TEST(thinned, keeps_the_lowest_and_the_highest_of_each_column) {
  const auto x = rising(10'000);
  std::vector<double> y(x.size(), 5);
  y[1234] = 90;
  y[7777] = -3;
  const auto line = thinned(x, y, 50);
  EXPECT_LE(line.x.size(), 200U);
  ASSERT_EQ(line.x.size(), line.y.size());
  const auto high = std::max_element(line.y.begin(), line.y.end()) - line.y.begin();
  const auto low = std::min_element(line.y.begin(), line.y.end()) - line.y.begin();
  EXPECT_EQ(line.x[static_cast<std::size_t>(high)], 1234);
  EXPECT_EQ(line.y[static_cast<std::size_t>(high)], 90);
  EXPECT_EQ(line.x[static_cast<std::size_t>(low)], 7777);
  EXPECT_EQ(line.y[static_cast<std::size_t>(low)], -3);
  EXPECT_TRUE(std::is_sorted(line.x.begin(), line.x.end()));
  EXPECT_EQ(line.x.front(), 0);
  EXPECT_EQ(line.x.back(), 9999);
}

TEST(thinned, leaves_a_short_line_as_it_is) {
  const auto line = thinned({0, 1, 2}, {4, 5, 6, 7}, 1);
  EXPECT_EQ(line.x, (std::vector<double>{0, 1, 2}));
  EXPECT_EQ(line.y, (std::vector<double>{4, 5, 6}));
  EXPECT_TRUE(thinned({0, 1}, {1, 2}, 0).x.empty());
  EXPECT_TRUE(thinned({}, {}, 5).x.empty());
}

TEST(thinned, keeps_gaps_and_takes_one_x_for_all) {
  const auto x = rising(1000);
  std::vector<double> y(x.size(), 1);
  y[500] = undefined;
  const auto line = thinned(x, y, 10);
  EXPECT_EQ(std::count_if(line.y.begin(), line.y.end(), [](double each) { return std::isnan(each); }), 1);
  EXPECT_LE(thinned(std::vector<double>(1000, 3), y, 10).x.size(), 5U);
  EXPECT_LE(thinned(x, std::vector<double>(1000, undefined), 10).x.size(), 50U);
}

TEST(thinned_band, spans_what_each_column_spans) {
  const auto x = rising(1000);
  std::vector<double> low(x.size(), 4);
  std::vector<double> high(x.size(), 6);
  low[10] = 1;
  high[990] = 9;
  low[500] = undefined;
  const auto band = thinned_band(x, low, high, 10);
  ASSERT_EQ(band.x.size(), 10U);
  EXPECT_EQ(band.low.front(), 1);
  EXPECT_EQ(band.low.back(), 4);
  EXPECT_EQ(band.high.front(), 6);
  EXPECT_EQ(band.high.back(), 9);
  EXPECT_EQ(band.x.back(), 999);
  EXPECT_EQ(thinned_band({1, 2}, {0, undefined}, {3, 3}, 10).x.size(), 1U);
  EXPECT_TRUE(thinned_band(x, low, high, 0).x.empty());
}

/// Where a name stands, with its line.
std::pair<double, double> room_of(const Flag& flag) {
  const double width = text_width(flag.text, measure::number) + measure::flag_gap;
  return flag.left ? std::pair{flag.x - width, flag.x} : std::pair{flag.x, flag.x + width};
}

TEST(flags, stand_in_one_row_while_there_is_room) {
  const auto out = flags({{"ramp", 10}, {"run", 40}, {"stop", 80}}, 0, 100, 3);
  for (const auto& flag : out) {
    EXPECT_EQ(flag.row, 0) << flag.text;
    EXPECT_FALSE(flag.left);
  }
}

TEST(flags, close_ones_go_down_a_row_and_one_at_the_end_turns_left) {
  const auto out = flags({{"emergency stop", 10}, {"web break", 14}, {"standstill", 98}}, 0, 100, 3);
  EXPECT_EQ(out[0].row, 0);
  EXPECT_EQ(out[1].row, 1);
  EXPECT_EQ(out[2].row, 0);
  EXPECT_TRUE(out[2].left);
}

TEST(flags, neither_meet_nor_cross_each_others_lines) {
  std::vector<Flag> wanted;
  for (int i = 0; i < 80; ++i) wanted.push_back({i % 3 == 0 ? "emergency stop" : "run", 1.3 * i});
  const auto out = flags(wanted, 0, 104, 3);
  int shown = 0;
  for (std::size_t a = 0; a < out.size(); ++a) {
    if (out[a].row < 0) continue;
    ++shown;
    EXPECT_GE(room_of(out[a]).first, 0);
    EXPECT_LE(room_of(out[a]).second, 104);
    for (std::size_t b = 0; b < out.size(); ++b) {
      if (a == b || out[b].row < 0) continue;
      const auto [from, to] = room_of(out[a]);
      if (out[a].row == out[b].row) {
        EXPECT_FALSE(from < room_of(out[b]).second && room_of(out[b]).first < to) << a << " on " << b;
      }
      if (out[b].row < out[a].row) {
        EXPECT_FALSE(out[b].x > from && out[b].x < to) << b << " rises through " << a;
      }
    }
  }
  EXPECT_GT(shown, 6);
  EXPECT_EQ(flags({{"a", 1}}, 0, 100, 0)[0].row, -1);
  EXPECT_EQ(flags({{"", 1}}, 0, 100, 3)[0].row, -1);
}

}  // namespace
}  // namespace holdback::draw
