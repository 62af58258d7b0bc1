#include "holdback/numerics/events.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <tuple>
#include <vector>

namespace holdback::numerics {
namespace {

using One = std::array<double, 1>;

// A straight line or a parabola as the curve of one step: y0 + slope s + bend s², s from 0 to 1 over t0 … t1.
Dense<1> parabola(double t0, double t1, double y0, double slope, double bend) {
  return {t0, t1, {y0}, {y0 + slope + bend}, {-bend}, {0}, {0}};
}

// The state itself as the guard.
One itself(double, const State<1>& y) { return {y[0]}; }

struct Seen {
  double t;
  int crossed;
};

// All events of a guard over one step.
template <class Guards>
std::vector<Seen> events_of(Guards guards, const Guard& guard, const Dense<1>& step, int samples = 3,
                            bool run_ends = false) {
  auto finder = event_finder<1>(guards, std::array<Guard, 1>{guard}, {1e-12, samples});
  finder.arm(step.t0, step.y0);
  std::vector<Seen> seen;
  while (const auto event = finder.find(step, run_ends)) seen.push_back({event->t, event->crossed[0]});
  return seen;
}

TEST(locate_change, meets_its_tolerance_on_the_far_side) {
  const auto f = [](double x) { return std::cos(x) - x; };  // zero at 0.7390851332151607 (known constant)
  for (const double tolerance : {1e-3, 1e-8, 1e-13}) {
    const double x = locate_change(f, 0, f(0), 1, f(1), tolerance);
    EXPECT_NEAR(x, 0.7390851332151607, tolerance + 2e-16);
    EXPECT_LE(f(x), 0);
  }
}

TEST(locate_change, needs_few_evaluations_and_never_many) {
  int asked = 0;
  const auto counted = [&asked](auto f) {
    return [&asked, f](double x) {
      ++asked;
      return f(x);
    };
  };
  const auto smooth = counted([](double x) { return std::exp(x) - 2; });
  EXPECT_NEAR(locate_change(smooth, 0, -1, 1, std::exp(1.0) - 2, 1e-12), std::log(2.0), 1e-12);
  EXPECT_LE(asked, 12);
  asked = 0;
  const auto flat = counted([](double x) { return std::pow(x - 0.3, 9); });
  EXPECT_NEAR(locate_change(flat, 0, std::pow(-0.3, 9), 1, std::pow(0.7, 9), 1e-12), 0.3, 1e-12);
  EXPECT_LE(asked, 180);
  asked = 0;
  const auto jump = counted([](double x) { return x < 0.3 ? -1e-9 : 1e9; });
  EXPECT_NEAR(locate_change(jump, 0, -1e-9, 1, 1e9, 1e-12), 0.3, 1e-12);
  EXPECT_LE(asked, 180);
}

TEST(locate_change, takes_a_zero_at_the_start) {
  EXPECT_EQ(locate_change([](double x) { return x; }, 0, 0, 1, 1, 1e-12), 0);
}

TEST(EventFinder, tells_the_direction_and_only_what_is_asked) {
  const Dense<1> rising = parabola(2, 4, -1, 4, 0);
  const Dense<1> falling = parabola(2, 4, 1, -4, 0);
  for (const auto& [crossing, up, down] : std::vector<std::tuple<Crossing, std::size_t, std::size_t>>{
           {Crossing::rising, 1, 0}, {Crossing::falling, 0, 1}, {Crossing::either, 1, 1}, {Crossing::off, 0, 0}}) {
    const auto risen = events_of(itself, {crossing}, rising);
    const auto fallen = events_of(itself, {crossing}, falling);
    ASSERT_EQ(risen.size(), up);
    ASSERT_EQ(fallen.size(), down);
    for (const Seen& seen : risen) {
      EXPECT_NEAR(seen.t, 2.5, 1e-12);
      EXPECT_EQ(seen.crossed, 1);
    }
    for (const Seen& seen : fallen) {
      EXPECT_NEAR(seen.t, 2.5, 1e-12);
      EXPECT_EQ(seen.crossed, -1);
    }
  }
}

TEST(EventFinder, finds_two_in_one_step_one_after_the_other) {
  // y = (t − 4.1)(t − 4.3) over 0 … 10: above zero in every even place; the dip between is looked at.
  const Dense<1> dip = parabola(0, 10, 4.1 * 4.3, -84, 100);
  for (const int samples : {1, 3, 7}) {
    const auto seen = events_of(itself, {}, dip, samples);
    ASSERT_EQ(seen.size(), 2U) << samples;
    EXPECT_NEAR(seen[0].t, 4.1, 1e-11);
    EXPECT_NEAR(seen[1].t, 4.3, 1e-11);
    EXPECT_EQ(seen[0].crossed, -1);
    EXPECT_EQ(seen[1].crossed, 1);
  }
  EXPECT_EQ(events_of(itself, {Crossing::rising}, dip).size(), 1U);
  EXPECT_EQ(events_of(itself, {}, dip, 0).size(), 0U);  // the ends alone say nothing
}

TEST(EventFinder, finds_a_dip_that_is_no_parabola_and_every_swing_that_is_sampled) {
  const Dense<1> line = parabola(0, 1, 0, 1, 0);  // y = t
  const auto bump = [](double, const State<1>& y) { return One{0.05 - std::exp(-8 * std::pow(y[0] - 0.4, 2)) / 19}; };
  EXPECT_EQ(events_of(bump, {}, line).size(), 2U);
  const auto swing = [](double, const State<1>& y) { return One{std::sin(12 * y[0] + 1)}; };
  const auto seen = events_of(swing, {}, line, 7);
  ASSERT_EQ(seen.size(), 4U);  // (kπ − 1)/12 below 1
  for (std::size_t k = 0; k < 4; ++k)
    EXPECT_NEAR(seen[k].t, (3.14159265358979324 * static_cast<double>(k + 1) - 1) / 12, 1e-12);
}

TEST(EventFinder, makes_no_event_of_a_touch) {
  for (const double place : {3.0, 5.0, 10.0, 7.123}) {  // 5 is a sample, 10 the end
    const Dense<1> touch = parabola(0, 10, place * place, -20 * place, 100);
    const auto exact = [place](double t, const State<1>&) { return One{(t - place) * (t - place)}; };
    EXPECT_EQ(events_of(exact, {}, touch).size(), 0U) << place;
    EXPECT_EQ(events_of(exact, {}, touch, 3, true).size(), 0U) << place;
  }
}

TEST(EventFinder, finds_a_change_in_a_sample_once) {
  const auto seen = events_of(itself, {}, parabola(0, 8, -4, 8, 0));
  ASSERT_EQ(seen.size(), 1U);
  EXPECT_EQ(seen[0].t, 4);
}

TEST(EventFinder, finds_a_change_between_two_steps_once) {
  const Dense<1> first = parabola(0, 1, 1, -1, 0);
  const Dense<1> second = parabola(1, 2, 0, -1, 0);
  auto finder = event_finder<1>(itself, std::array<Guard, 1>{}, {});
  finder.arm(0, {1});
  EXPECT_FALSE(finder.find(first, false));  // at zero: on neither side
  const auto event = finder.find(second, false);
  ASSERT_TRUE(event);
  EXPECT_EQ(event->t, 1);
  EXPECT_EQ(event->crossed[0], -1);
  EXPECT_FALSE(finder.find(second, false));
}

TEST(EventFinder, finds_a_change_at_the_end_of_the_run) {
  ASSERT_EQ(events_of(itself, {}, parabola(0, 1, 1, -1, 0), 3, true).size(), 1U);
  EXPECT_EQ(events_of(itself, {}, parabola(0, 1, 1, -1, 0), 3, true)[0].t, 1);
  EXPECT_EQ(events_of(itself, {}, parabola(0, 1, 1, -1 + 1e-13, 0), 3, true)[0].t, 1);  // a rounding after it
  EXPECT_EQ(events_of(itself, {}, parabola(0, 1, 1, -1 + 1e-9, 0), 3, true).size(), 0U);
  EXPECT_EQ(events_of(itself, {Crossing::rising}, parabola(0, 1, 1, -1, 0), 3, true).size(), 0U);
}

TEST(EventFinder, arms_what_starts_at_zero_once_it_has_left) {
  EXPECT_EQ(events_of(itself, {}, parabola(0, 1, 0, 1, 0)).size(), 0U);
  EXPECT_EQ(events_of(itself, {}, parabola(0, 1, 0, 0, 0)).size(), 0U);
  const auto back = events_of(itself, {}, parabola(0, 1, 0, 1, -1.25));  // back at 0.8
  ASSERT_EQ(back.size(), 1U);
  EXPECT_NEAR(back[0].t, 0.8, 1e-12);
  // Rounding that starts it on the wrong side is not taken for a change.
  EXPECT_EQ(events_of(itself, {}, parabola(0, 1, -1e-12, 1, 0)).size(), 0U);
  EXPECT_EQ(events_of(itself, {Crossing::either, 1e-13}, parabola(0, 1, -1e-12, 1, 0)).size(), 1U);
}

TEST(EventFinder, sees_a_leap_that_is_short_against_the_step) {
  for (const double back : {1e-1, 1e-3, 1e-5, 1e-7}) {
    const auto seen = events_of(itself, {Crossing::falling}, parabola(0, 1, 0, 1, -1 / back));
    ASSERT_EQ(seen.size(), 1U) << back;
    EXPECT_NEAR(seen[0].t, back, 1e-12);
  }
}

TEST(EventFinder, tells_events_of_one_time_together) {
  const auto guards = [](double, const State<1>& y) {
    return std::array<double, 4>{5 * (y[0] - 1), y[0] - 2, 1 - y[0], std::exp(y[0]) - std::exp(1.0)};
  };
  auto finder = event_finder<1>(guards, std::array<Guard, 4>{}, {1e-10, 3});
  const Dense<1> step = parabola(0, 1, 0, 3, 0);
  finder.arm(0, {0});
  const auto first = finder.find(step, false);
  ASSERT_TRUE(first);
  EXPECT_NEAR(first->t, 1.0 / 3, 2e-10);
  EXPECT_EQ(first->crossed, (std::array<int, 4>{1, 0, -1, 1}));
  const auto second = finder.find(step, false);
  ASSERT_TRUE(second);
  EXPECT_NEAR(second->t, 2.0 / 3, 2e-10);
  EXPECT_EQ(second->crossed, (std::array<int, 4>{0, 1, 0, 0}));
  EXPECT_FALSE(finder.find(step, false));
}

TEST(EventFinder, watches_differently_from_an_event_on) {
  const auto guards = [](double t, const State<1>&) { return std::array<double, 2>{t - 1, t - 2}; };
  auto finder = event_finder<1>(guards, std::array<Guard, 2>{Guard{}, Guard{Crossing::off}}, {});
  const Dense<1> step = parabola(0, 3, 0, 0, 0);
  finder.arm(0, {0});
  EXPECT_NEAR(finder.find(step, false)->t, 1, 1e-12);
  finder.watch(1, {Crossing::rising});
  const auto second = finder.find(step, false);
  ASSERT_TRUE(second);
  EXPECT_NEAR(second->t, 2, 1e-12);
}

TEST(EventFinder, takes_no_event_from_a_guard_that_is_no_number) {
  const auto none = [](double, const State<1>&) { return One{std::nan("")}; };
  EXPECT_EQ(events_of(none, {}, parabola(0, 1, 1, -2, 0), 3, true).size(), 0U);
}

}  // namespace
}  // namespace holdback::numerics
