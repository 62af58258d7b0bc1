// The picture of a history: dates on its axis, the band down to the maker's limit, changes marked.
#include <gtest/gtest.h>

#include <limits>

#include "holdback/draw/date_ticks.hpp"
#include "holdback/draw/figures.hpp"
#include "holdback/model/date.hpp"
#include "unit/draw/pictures.hpp"
#include "unit/draw/sound.hpp"

namespace holdback::draw {
namespace {

constexpr auto si = units::System::si;
constexpr auto us = units::System::us;

double day(const char* text) { return *day_of(text); }

/// A set that was changed, one in use, and a forecast; invented.
History sample() {
  History history;
  history.stand = "Slitter 2";
  const int start = *day_of("2024-01-10");
  for (const int change : {0, 400}) {
    HistoryEntry entry;
    entry.day = start + change;
    entry.kind = EntryKind::pads;
    history.entries.push_back(entry);
    PadCourse course;
    course.since = start + change;
    for (int i = 0; i < 5; ++i) course.points.push_back({course.since + 70 * i, 0, 0.012 - 0.0018 * i, i == 0});
    if (change == 0) course.until = start + 400;
    history.courses.push_back(course);
  }
  Forecast forecast;
  forecast.from = start + 680;
  forecast.pads.push_back({});
  forecast.date = {start + 840, start + 870, start + 920};
  for (int i = 0; i <= 10; ++i) {
    forecast.band.day.push_back(forecast.from + 24 * i);
    forecast.band.middle.push_back(0.0048 - 0.00048 * i);
    forecast.band.low.push_back(std::max(0.0047 - 0.0006 * i, 0.0));
    forecast.band.high.push_back(0.0049 - 0.0004 * i);
  }
  history.forecast = forecast;
  return history;
}

TEST(date_ticks, fall_on_round_dates) {
  const auto months = date_ticks(day("2025-01-10"), day("2025-06-20"), 9);
  EXPECT_EQ(months.texts.front(), "Feb 2025");
  EXPECT_EQ(months.days.front(), day("2025-02-01"));
  const auto quarters = date_ticks(day("2025-01-10"), day("2026-12-20"), 9);
  EXPECT_EQ(quarters.texts.front(), "Apr 2025");
  const auto years = date_ticks(day("2010-05-10"), day("2026-12-20"), 9);
  EXPECT_EQ(years.texts.front(), "2012");
  const auto days = date_ticks(day("2025-01-10"), day("2025-01-14"), 9);
  EXPECT_EQ(days.texts.front(), "2025-01-10");
}

TEST(date_ticks, are_few_and_rise_at_any_length) {
  for (double length = 1; length < 90'000; length *= 1.07) {
    const auto ticks = date_ticks(day("1951-02-03"), day("1951-02-03") + length, 9);
    EXPECT_LE(ticks.days.size(), 10U) << length;
    EXPECT_GE(ticks.days.size(), 1U) << length;
    EXPECT_EQ(ticks.days.size(), ticks.texts.size());
    for (std::size_t i = 1; i < ticks.days.size(); ++i) EXPECT_LT(ticks.days[i - 1], ticks.days[i]);
  }
}

TEST(date_ticks, of_no_stretch_are_none) {
  EXPECT_TRUE(date_ticks(5, 5, 9).days.empty());
  EXPECT_TRUE(date_ticks(0, 1e99, 9).days.empty());
  EXPECT_TRUE(date_ticks(0, std::numeric_limits<double>::quiet_NaN(), 9).days.empty());
}

TEST(history_figure, shows_dates_changes_limit_and_forecast) {
  const auto scene = history_figure(sample(), si);
  for (const auto* name : {"pad above the maker's limit [mm]", "date", "worn out", "pads changed", "thinnest pad",
                           "expected 2026-05-29", "Jan 2025", "Next change of pads about 2026-05-29"})
    EXPECT_TRUE(pictures::has_label(scene, name)) << name;
  EXPECT_FALSE(pictures::shapes<Polygon>(scene, MarkRole::area).empty());
}

TEST(history_figure, is_sound_with_much_and_with_little) {
  auto history = sample();
  for (const auto system : {si, us}) expect_sound(history_figure(history, system));
  for (int i = 0; i < 9; ++i) {
    history.courses.push_back(history.courses.back());
    history.courses.back().pad = "brake of the operator's side, pair " + std::to_string(i);
  }
  for (int i = 0; i < 40; ++i) {
    history.entries.push_back(history.entries.front());
    history.entries.back().day += 20 * i;
  }
  const auto crowded = history_figure(history, si);
  expect_sound(crowded);
  EXPECT_TRUE(pictures::has_label(crowded, "4 more pads are left out."));
  history = sample();
  history.forecast.reset();
  history.courses.resize(1);
  history.courses[0].points.resize(1);
  expect_sound(history_figure(history, si));
  expect_sound(history_figure({}, si));
}

TEST(figures_of, a_history_is_one_figure_when_a_depth_is_known) {
  Answer answer;
  answer.history = sample();
  EXPECT_EQ(files(answer), (std::vector<std::string>{"history-slitter-2"}));
  answer.history->courses.clear();
  EXPECT_TRUE(files(answer).empty());
}

}  // namespace
}  // namespace holdback::draw
