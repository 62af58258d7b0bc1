#include "holdback/draw/terminal_plot.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "holdback/draw/cells.hpp"
#include "unit/draw/motion_samples.hpp"

namespace holdback::draw {
namespace {

Plot straight() {
  Plot plot{{"roll diameter", Quantity::short_length, {}}, {"brake torque", Quantity::torque, {}}, {}};
  plot.series = {{"capacity", Role::capacity, {0.2, 1.0}, {100, 100}},
                 {"steady run", Role::demand, {0.2, 1.0}, {20, 80}}};
  return plot;
}

std::string all(const Plot& plot, const Frame& frame) {
  std::string text;
  for (const auto& line : terminal_plot(plot, frame)) text += line + "\n";
  return text;
}

TEST(terminal_plot, names_axes_curves_and_their_ends_in_the_readers_units) {
  const auto text = all(straight(), {});
  EXPECT_NE(text.find("brake torque [N·m]"), std::string::npos) << text;
  EXPECT_NE(text.find("roll diameter [mm]"), std::string::npos) << text;
  EXPECT_NE(text.find("steady run 80.0 N·m"), std::string::npos) << text;
  EXPECT_NE(text.find(" 1000"), std::string::npos) << text;
  const auto us = all(straight(), {100, 14, units::System::us, false});
  EXPECT_NE(us.find("brake torque [in·lbf]"), std::string::npos) << us;
  EXPECT_NE(us.find("roll diameter [in]"), std::string::npos) << us;
}

TEST(terminal_plot, a_rising_curve_starts_low_at_the_left_and_ends_high_at_the_right) {
  Plot plot = straight();
  plot.series = {{"line", Role::demand, {0, 1}, {0, 100}}};
  const auto lines = terminal_plot(plot, {});
  const auto dots = [](const std::string& line) {
    return line.find("\xE2\xA0") != std::string::npos || line.find("\xE2\xA1") != std::string::npos ||
           line.find("\xE2\xA2") != std::string::npos;
  };
  const auto first = *std::find_if(lines.begin(), lines.end(), dots);
  const auto last = *std::find_if(lines.rbegin(), lines.rend(), dots);
  EXPECT_GT(columns(first.substr(0, first.find("\xE2\xA0"))), columns(last.substr(0, last.find("\xE2\xA1"))));
}

TEST(terminal_plot, stays_in_its_frame) {
  for (const int width : {72, 100}) {
    for (const auto& line : terminal_plot(straight(), {width, 14, units::System::us, false}))
      EXPECT_LE(columns(line), width) << line;
  }
}

TEST(terminal_plot, a_curve_above_the_picture_is_named_with_an_arrow) {
  Plot plot = straight();
  plot.series.front().y = {1000, 1000};
  plot.y.top = 100;
  EXPECT_NE(all(plot, {}).find("capacity 1000 N·m ↑"), std::string::npos) << all(plot, {});
}

TEST(terminal_plot, names_that_would_meet_each_keep_a_line) {
  Plot plot = straight();
  plot.series = {};
  for (const auto* name : {"one", "two", "three", "four", "five"})
    plot.series.push_back({name, Role::stop, {0, 1}, {1, 50}});
  const auto text = all(plot, {});
  for (const auto* name : {"one 50", "two 50", "three 50", "four 50", "five 50"})
    EXPECT_NE(text.find(name), std::string::npos) << text;
}

TEST(terminal_plot, is_nothing_without_points) {
  Plot plot = straight();
  plot.series = {{"point", Role::demand, {1}, {1}}, {"upright", Role::demand, {1, 1}, {0, 1}}};
  EXPECT_TRUE(terminal_plot(plot, {}).empty());
}

TEST(terminal_plot, all_zero_is_drawn_at_the_bottom) {
  Plot plot = straight();
  plot.series = {{"nothing", Role::demand, {0, 1}, {0, 0}}};
  EXPECT_FALSE(terminal_plot(plot, {}).empty());
}

TEST(envelope_plot, a_capacity_far_above_the_demand_leaves_the_picture) {
  Envelope envelope;
  envelope.diameter = {0.1, 1};
  envelope.run = {1, 10};
  envelope.stop = {1, 12};
  envelope.emergency_stop = {1, 20};
  envelope.capacity_low = {500, 500};
  envelope.floor = {1, 1};
  const auto plot = envelope_plot(envelope);
  EXPECT_LT(*plot.y.top, 100);
  EXPECT_GT(*plot.y.top, 20);
  envelope.capacity_low = {30, 30};
  EXPECT_GT(*envelope_plot(envelope).y.top, 30);
}

TEST(tension_plot, has_the_band_and_the_window_and_cuts_far_peaks_off) {
  auto trace = samples::run_trace();
  const auto tension = samples::simulation().tension;
  auto plot = tension_plot(trace, tension);
  ASSERT_EQ(plot.series.size(), 4U);
  EXPECT_EQ(plot.series[0].y.front(), 82.5);
  EXPECT_EQ(plot.series[3].y.back(), 67.5);
  EXPECT_LT(*plot.y.top, 110);
  trace.highest_tension[5] = 2000;
  EXPECT_LT(*tension_plot(trace, tension).y.top, 250);
  trace.setpoint.assign(trace.setpoint.size(), 37.5);
  EXPECT_EQ(tension_plot(trace, tension).series[0].y.front(), 41.25);
  EXPECT_TRUE(terminal_plot(tension_plot({}, {}), {}).empty());
}

}  // namespace
}  // namespace holdback::draw
