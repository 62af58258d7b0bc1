#include "holdback/draw/loop_words.hpp"

#include <gtest/gtest.h>

#include "unit/draw/motion_samples.hpp"

namespace holdback::draw {
namespace {

TEST(name_of_loop, says_schedule_and_where_it_comes_from) {
  auto tuning = samples::tuning();
  EXPECT_EQ(name_of_loop(tuning, 0), "scheduled");
  EXPECT_EQ(name_of_loop(tuning, 1), "fixed");
  EXPECT_EQ(name_of_loop(tuning, 2), "stand file, fixed");
  tuning.from_file = false;
  EXPECT_EQ(name_of_loop(tuning, 2), "fixed");
  EXPECT_EQ(name_of_loop(tuning, 3), "");
}

TEST(joined, starts_a_sentence_where_there_is_one) {
  EXPECT_EQ(joined("holds", "it stays"), "holds: it stays");
  EXPECT_EQ(joined("holds", "It stays."), "holds. It stays.");
  EXPECT_EQ(joined("holds", ""), "holds");
}

TEST(decibels, of_a_factor_of_ten_are_twenty) {
  EXPECT_DOUBLE_EQ(decibels(10), 20);
  EXPECT_DOUBLE_EQ(decibels(1), 0);
  EXPECT_NEAR(decibels(2), 6.0206, 1e-4);
  EXPECT_EQ(decibels(0), 0);
  EXPECT_EQ(decibels(-1), 0);
}

TEST(window_at, keeps_its_share_of_the_setpoint) {
  TensionTarget tension;
  tension.setpoint = 100;
  tension.low = 90;
  tension.high = 120;
  EXPECT_DOUBLE_EQ(window_at(tension, 50).low, 45);
  EXPECT_DOUBLE_EQ(window_at(tension, 50).high, 60);
  tension.setpoint = 0;
  EXPECT_DOUBLE_EQ(window_at(tension, 50).high, 120);
}

TEST(setpoint_moves, is_told_from_the_trace) {
  RunTrace trace;
  EXPECT_FALSE(setpoint_moves(trace));
  trace.setpoint = {75, 75, 75};
  EXPECT_FALSE(setpoint_moves(trace));
  trace.setpoint[2] = 60;
  EXPECT_TRUE(setpoint_moves(trace));
}

}  // namespace
}  // namespace holdback::draw
