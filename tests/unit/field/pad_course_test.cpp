// From entries to courses of pads. All numbers follow from the entries by hand.
#include "holdback/field/pad_course.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "holdback/field/history.hpp"
#include "holdback/field/trend.hpp"
#include "holdback/model/date.hpp"

namespace holdback::field {
namespace {

constexpr double mm = 1e-3;
constexpr double gj = 1e9;

/// Entries of one stand, numbered as they come.
class Entries {
 public:
  HistoryEntry& add(const char* date, EntryKind kind) {
    all_.emplace_back();
    all_.back().number = static_cast<int>(all_.size());
    all_.back().stand = "A";
    all_.back().day = *day_of(date);
    all_.back().kind = kind;
    return all_.back();
  }
  Entries& pads(const char* date, std::optional<double> depth, const char* brake = "") {
    auto& entry = add(date, EntryKind::pads);
    entry.depth = depth;
    entry.brake = brake;
    return *this;
  }
  Entries& wear(const char* date, double depth, const char* brake = "") {
    auto& entry = add(date, EntryKind::wear);
    entry.depth = depth;
    entry.brake = brake;
    return *this;
  }
  Entries& work(const char* date, double energy) {
    add(date, EntryKind::energy).energy = energy;
    return *this;
  }
  std::vector<HistoryEntry> held() const { return in_force(all_); }
  const std::vector<HistoryEntry>& all() const { return all_; }

 private:
  std::vector<HistoryEntry> all_{};
};

Courses courses(const Entries& entries, const std::optional<StandWear>& stand = {}) {
  const auto held = entries.held();
  const auto basis = basis_of(held);
  return courses_of(held, UseLog(held, basis), basis, stand);
}

TEST(use_log, counts_from_the_entry_before_or_the_change_of_pads) {
  Entries entries;
  entries.pads("2026-01-01", 12 * mm).work("2026-01-11", 20 * gj).work("2026-01-31", 10 * gj);
  const UseLog log(entries.held(), UseBasis::energy);
  ASSERT_EQ(log.periods().size(), 2U);
  EXPECT_EQ(log.periods()[0].days, 10);
  EXPECT_EQ(log.periods()[1].days, 20);
  EXPECT_NEAR(log.until(*day_of("2026-01-06")), 10 * gj, 1);   // half of the first
  EXPECT_NEAR(log.until(*day_of("2026-01-21")), 25 * gj, 1);   // and half of the second
  EXPECT_NEAR(log.until(*day_of("2026-03-02")), 60 * gj, 1);   // a month more at the mean, 1 GJ a day
  EXPECT_NEAR(log.until(*day_of("2025-12-22")), -10 * gj, 1);  // ten days before
  EXPECT_EQ(log.uncovered(*day_of("2026-01-21"), *day_of("2026-02-10")), 10);
}

TEST(use_log, no_day_counts_twice_and_since_is_heeded) {
  Entries entries;
  entries.add("2026-01-11", EntryKind::energy).energy = 20 * gj;
  EXPECT_TRUE(UseLog(entries.held(), UseBasis::energy).empty());  // nothing says from when
  auto& later = entries.add("2026-01-31", EntryKind::energy);
  later.energy = 10 * gj;
  later.since = *day_of("2026-01-21");
  const UseLog log(entries.held(), UseBasis::energy);
  EXPECT_EQ(log.first(), *day_of("2026-01-21"));
  EXPECT_EQ(log.until(*day_of("2026-01-31")), 10 * gj);
}

TEST(basis_of, takes_what_the_log_covers_best) {
  Entries entries;
  entries.pads("2026-01-01", 12 * mm);
  EXPECT_EQ(basis_of(entries.held()), UseBasis::calendar);
  entries.add("2026-02-01", EntryKind::energy).running_time = 3600;
  EXPECT_EQ(basis_of(entries.held()), UseBasis::running_time);
  auto& both = entries.add("2026-02-20", EntryKind::energy);
  both.running_time = 3600;
  both.energy = gj;
  EXPECT_EQ(basis_of(entries.held()), UseBasis::running_time);
  entries.work("2026-06-01", gj);
  EXPECT_EQ(basis_of(entries.held()), UseBasis::energy);
}

TEST(courses_of, a_change_closes_the_set_of_its_brake_alone) {
  Entries entries;
  entries.pads("2026-01-01", 12 * mm).work("2026-02-01", 31 * gj);
  entries.wear("2026-02-01", 11 * mm, "front").wear("2026-02-01", 10 * mm, "rear");
  entries.pads("2026-02-02", 12 * mm, "rear").work("2026-03-04", 31 * gj);
  entries.wear("2026-03-04", 10 * mm, "front").wear("2026-03-04", 11.5 * mm, "rear");
  const auto found = courses(entries);
  ASSERT_EQ(found.all.size(), 3U);
  EXPECT_EQ(found.all[0].pad, "brake front");
  EXPECT_FALSE(found.all[0].until);
  EXPECT_EQ(found.all[0].points.size(), 3U);
  EXPECT_NEAR(*found.all[0].rate, 2 * mm / (62 * gj), 1e-18);
  EXPECT_EQ(found.all[1].until, day_of("2026-02-02"));
  EXPECT_EQ(found.all[2].points.size(), 2U);
  EXPECT_NEAR(found.all[2].points[1].use, 30 * gj, 1);
  ASSERT_EQ(found.in_use.size(), 2U);
  EXPECT_FALSE(found.in_use[0].prior);
  ASSERT_TRUE(found.in_use[1].prior);  // from the rear set before: 2 mm in 31 GJ, and a bit of the day of the change
  EXPECT_NEAR(found.in_use[1].prior->rate, 2 * mm / (31 * gj), 1e-18);
  EXPECT_NEAR(found.in_use[1].prior->uncertainty, 0.25 * std::sqrt(2.0) * 2 * mm / (31 * gj), 1e-18);
}

TEST(courses_of, the_thinnest_counts_and_a_correction_takes_the_place) {
  Entries entries;
  entries.pads("2026-01-01", 12 * mm)
      .wear("2026-02-01", 11 * mm)
      .wear("2026-02-01", 10.5 * mm)
      .wear("2026-03-01", 4 * mm);
  entries.wear("2026-03-01", 9 * mm);
  auto corrected = entries.all();
  corrected[4].corrects = 4;
  const auto held = in_force(corrected);
  const auto found = courses_of(held, UseLog(held, UseBasis::calendar), UseBasis::calendar, {});
  ASSERT_EQ(found.all.front().points.size(), 3U);
  EXPECT_EQ(found.all.front().points[1].depth, 10.5 * mm);
  EXPECT_EQ(found.all.front().points[2].depth, 9 * mm);
}

TEST(courses_of, thickness_needs_the_makers_limit) {
  Entries entries;
  entries.add("2026-01-01", EntryKind::pads).thickness = 14 * mm;
  entries.add("2026-02-01", EntryKind::wear).thickness = 13 * mm;
  EXPECT_EQ(courses(entries).no_limit, (std::vector<std::string>{"entry 2"}));
  EXPECT_NEAR(courses(entries, StandWear{11 * mm, {}}).all[0].points[1].depth, 10 * mm, 1e-15);  // 14 − 11 is the limit
  entries.add("2026-03-01", EntryKind::wear).thickness = 12 * mm;
  auto all = entries.all();
  all[2].limit = 2 * mm;
  const auto held = in_force(all);
  const auto found = courses_of(held, UseLog(held, UseBasis::calendar), UseBasis::calendar, {});
  EXPECT_NEAR(found.all[0].points[0].depth, 12 * mm, 1e-15);
  EXPECT_NEAR(found.all[0].points[2].depth, 10 * mm, 1e-15);
}

TEST(courses_of, the_stand_file_gives_new_depth_and_rate) {
  Entries entries;
  entries.pads("2026-01-01", {}).work("2026-02-01", 31 * gj);
  const auto found = courses(entries, StandWear{10 * mm, {1e7, 1000 * gj}});
  ASSERT_EQ(found.in_use.size(), 1U);
  EXPECT_EQ(found.in_use[0].depth, (std::vector<double>{10 * mm}));
  EXPECT_NEAR(found.in_use[0].prior->rate, 10 * mm / (1000 * gj), 1e-20);
  EXPECT_NEAR(found.in_use[0].prior->uncertainty, 0.42 * 10 * mm / (1000 * gj), 1e-20);
}

TEST(history_of, says_what_to_measure_when_nothing_can_be_told) {
  Entries entries;
  entries.add("2026-01-01", EntryKind::note).text = "bought second hand";
  auto history = history_of(entries.all(), {});
  EXPECT_FALSE(history.forecast);
  ASSERT_FALSE(history.measure_next.empty());
  EXPECT_NE(history.measure_next[0].text.find("depth left of the hottest pad"), std::string::npos);
  entries.wear("2026-02-01", 9 * mm);
  history = history_of(entries.all(), {});
  EXPECT_NE(history.measure_next[0].text.find("one depth of a set tells no rate"), std::string::npos);
  EXPECT_FALSE(history.cautions.empty());
}

TEST(history_of, a_worn_pad_is_told_first) {
  Entries entries;
  entries.pads("2026-01-01", 12 * mm).wear("2026-02-01", 0);
  const auto history = history_of(entries.all(), {});
  EXPECT_TRUE(worn_out(history));
  EXPECT_NE(history.cautions[0].text.find("Worn to the maker's limit"), std::string::npos);
  entries.pads("2026-02-02", 12 * mm);
  EXPECT_FALSE(worn_out(history_of(entries.all(), {})));
}

TEST(history_of, running_time_follows_from_the_energy) {
  Entries entries;
  entries.pads("2026-01-01", 12 * mm);
  for (const char* date : {"2026-02-01", "2026-03-01", "2026-04-01"}) {
    auto& entry = entries.add(date, EntryKind::energy);
    entry.energy = 100 * gj;
    entry.running_time = 50 * 3600;
  }
  entries.wear("2026-04-01", 9 * mm);
  const auto history = history_of(entries.all(), {});
  ASSERT_TRUE(history.forecast && history.forecast->running);
  EXPECT_NEAR(*history.forecast->running->middle, *history.forecast->remaining.middle / (2 * gj) * 3600, 1);
}

// SciPy linregress and Student's t: tests/published/scripts/forecast_reference.py.
TEST(trend, is_that_of_scipy) {
  const auto found = trend({0, 90, 200, 310, 420}, {0.38, 0.37, 0.36, 0.345, 0.34});
  EXPECT_NEAR(found.per_year, -0.03612897707, 1e-10);
  EXPECT_NEAR(found.low, -0.04258928374, 1e-10);
  EXPECT_NEAR(found.high, -0.0296686704, 1e-10);
  EXPECT_TRUE(found.seen);
  EXPECT_THROW(trend({1, 2}, {1, 2}), std::invalid_argument);
  EXPECT_THROW(trend({1, 1, 1}, {1, 2, 3}), std::invalid_argument);
}

TEST(trends_of, go_by_constant_and_brake) {
  Entries entries;
  for (const char* date : {"2026-01-01", "2026-02-01", "2026-03-01"}) {
    auto& entry = entries.add(date, EntryKind::fit);
    entry.friction = 0.4;
    entry.brake = "front";
  }
  entries.add("2026-03-02", EntryKind::fit).drag = 2;
  const auto found = trends_of(entries.held());
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].key, "friction");
  EXPECT_EQ(found[0].brake, "front");
  EXPECT_FALSE(found[0].seen);
}

}  // namespace
}  // namespace holdback::field
