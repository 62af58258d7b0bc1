#include "holdback/draw/chart.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "holdback/draw/clip.hpp"
#include "holdback/draw/placer.hpp"
#include "holdback/draw/spread.hpp"
#include "holdback/draw/svg.hpp"
#include "holdback/draw/ticks.hpp"
#include "unit/draw/pictures.hpp"

namespace holdback::draw {
namespace {

constexpr double undefined = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();
const Box box{8, 18, 172, 110};

Chart straight() {
  Chart chart;
  chart.x = {"roll diameter", Quantity::short_length, {}, {}, false};
  chart.y = {"brake torque", Quantity::torque, {}, {}, true};
  chart.curves = {{"run", {MarkRole::curve, Pattern::solid, 0}, {0.1, 1.0}, {10, 80}}};
  chart.limits = {{"capacity", {}, {100}, true}};
  return chart;
}

Scene drawn(const Chart& chart, units::System system = units::System::si) {
  Scene scene;
  scene.height = 118;
  add_chart(scene, chart, box, system);
  return scene;
}

void expect_sound(const Scene& scene) {
  EXPECT_EQ(pictures::outside(scene), "");
  EXPECT_EQ(pictures::overlapping(scene), "");
  const auto text = svg(scene);
  EXPECT_EQ(pictures::Xml(text).fault(), "");
  const auto marks = text.substr(text.find("</style>"));
  for (const auto* word : {"nan", "inf", "e+", "e-0"}) EXPECT_EQ(marks.find(word), std::string::npos) << word;
}

// The steps that people count in: 1, 2, 5 and their tens (common practice).
TEST(nice_ticks, are_whole_multiples_of_one_two_or_five) {
  for (const auto& range : {Range{0, 1}, Range{0, 34.5}, Range{-7, 13}, Range{90, 600}, Range{0, 1e-9}, Range{2e8, 9e8},
                            Range{99.9, 100.1}, Range{-1e6, -0.5}}) {
    for (const int most : {2, 5, 8, 12}) {
      const double step = nice_step(range, most);
      const double lead = step / std::pow(10, std::floor(std::log10(step) + 1e-9));
      EXPECT_TRUE(std::abs(lead - 1) < 1e-6 || std::abs(lead - 2) < 1e-6 || std::abs(lead - 5) < 1e-6) << step;
      const auto ticks = nice_ticks(range, most);
      EXPECT_LE(ticks.size(), static_cast<std::size_t>(most) + 1);
      for (const double tick : ticks) {
        EXPECT_NEAR(tick / step, std::round(tick / step), 1e-6);
        EXPECT_GE(tick, range.low - 1e-6 * step);
        EXPECT_LE(tick, range.high + 1e-6 * step);
      }
    }
  }
}

TEST(rounded_out, covers_the_range_and_ends_at_ticks) {
  for (const auto& range : {Range{0.3, 34.5}, Range{-7, 13}, Range{0, 100}, Range{1e-7, 4e-7}}) {
    const auto out = rounded_out(range, 7);
    EXPECT_LE(out.low, range.low + 1e-9 * std::abs(range.low));
    EXPECT_GE(out.high, range.high - 1e-9 * std::abs(range.high));
    const auto ticks = nice_ticks(out, 8);
    EXPECT_NEAR(ticks.front(), out.low, 1e-9 * (out.high - out.low));
  }
  EXPECT_EQ(rounded_out({0, 100}, 5), (Range{0, 100}));
}

TEST(opened, has_room_whatever_the_ends) {
  for (const auto& range : {Range{5, 5}, Range{0, 0}, Range{-3, -3}, Range{1e9, 1e9 + 1e-7}, Range{undefined, infinite},
                            Range{1e-300, 1e-300}, Range{5, 1}, Range{-1e308, 1e308}, Range{-1e99, 1e99}}) {
    const auto out = opened(range);
    EXPECT_LT(out.low, out.high);
    EXPECT_TRUE(std::isfinite(out.high - out.low));
    EXPECT_FALSE(nice_ticks(out, 6).empty());
  }
}

TEST(tick_text, has_as_many_decimals_as_the_step) {
  EXPECT_EQ(tick_text({0, 0.5, 1.0}).texts, (std::vector<std::string>{"0.0", "0.5", "1.0"}));
  EXPECT_EQ(tick_text({-20, 0, 20}).texts, (std::vector<std::string>{"−20", "0", "20"}));
  EXPECT_EQ(tick_text({5000, 10000}).texts, (std::vector<std::string>{"5000", "10\u2009000"}));
  const auto large = tick_text({0, 2e8, 4e8});
  EXPECT_EQ(large.exponent, 6);
  EXPECT_EQ(large.texts, (std::vector<std::string>{"0", "200", "400"}));
  const auto small = tick_text({0, 2e-5, 4e-5});
  EXPECT_EQ(small.exponent, -6);
  EXPECT_EQ(small.texts, (std::vector<std::string>{"0", "20", "40"}));
  EXPECT_TRUE(tick_text({}).texts.empty());
  EXPECT_EQ(unit_text("N·m", 6), "10⁶ N·m");
  EXPECT_EQ(unit_text("", -6), "10⁻⁶");
  EXPECT_EQ(unit_text("bar", 0), "bar");
}

TEST(spread, leaves_alone_what_does_not_meet) {
  EXPECT_EQ(spread({{10, 4}, {20, 4}}, 0, 100), (std::vector<double>{10, 20}));
  EXPECT_TRUE(spread({}, 0, 100).empty());
}

TEST(spread, moves_labels_apart_as_little_as_can_be) {
  // Two of height 4 that both want 10 stand at 8 and 12: the least sum of squares.
  EXPECT_EQ(spread({{10, 4}, {10, 4}}, 0, 100), (std::vector<double>{8, 12}));
  // A third one that wants 11: middles m − 4, m, m + 4 with m the mean of 10 + 4, 10 and 11 − 4.
  const auto three = spread({{10, 4}, {10, 4}, {11, 4}}, 0, 100);
  EXPECT_NEAR(three[1], (14 + 10 + 7) / 3.0, 1e-9);
  EXPECT_NEAR(three[0], three[1] - 4, 1e-9);
}

TEST(spread, keeps_the_order_and_stays_inside) {
  const auto middles = spread({{95, 4}, {99, 4}, {2, 4}, {98, 8}, {-50, 4}}, 0, 100);
  EXPECT_NEAR(middles[4], 2, 1e-9);
  EXPECT_NEAR(middles[2], 6, 1e-9);
  EXPECT_NEAR(middles[1], 98, 1e-9);
  EXPECT_NEAR(middles[3], 92, 1e-9);
  EXPECT_NEAR(middles[0], 86, 1e-9);
  const auto crowded = spread({{5, 4}, {5, 4}, {5, 4}}, 0, 6);
  EXPECT_NEAR(crowded[0], 2, 1e-9);
  EXPECT_NEAR(crowded[2], 10, 1e-9);
}

TEST(clipped, keeps_the_part_in_the_box) {
  const Box unit{0, 0, 10, 10};
  const auto across = clipped({{-5, 5}, {15, 5}}, unit);
  ASSERT_TRUE(across);
  EXPECT_EQ(*across, (Segment{{0, 5}, {10, 5}}));
  EXPECT_FALSE(clipped({{-5, -5}, {-1, 20}}, unit));
  EXPECT_FALSE(clipped({{20.5, 0}, {0, 20.5}}, unit));  // passes the corner
  EXPECT_TRUE(clipped({{3, 3}, {3, 3}}, unit));
  EXPECT_EQ(clipped_line({{-5, 5}, {5, 5}, {5, -5}, {8, -5}, {8, 5}}, unit).size(), 2U);
  EXPECT_TRUE(clipped_line({{5, 5}}, unit).empty());
  EXPECT_TRUE(clipped_line({{5, 5}, {5, 5}}, unit).empty());
}

TEST(clipped_area, of_a_triangle_over_the_corner) {
  const auto area = clipped_area({{5, 5}, {15, 5}, {5, 15}}, {0, 0, 10, 10});
  double twice = 0;  // shoelace
  for (std::size_t i = 0; i < area.size(); ++i) {
    const auto& a = area[i];
    const auto& b = area[(i + 1) % area.size()];
    twice += a.x * b.y - b.x * a.y;
  }
  EXPECT_NEAR(std::abs(twice) / 2, 25, 1e-9);  // the square [5, 10]²: its corner (10, 10) lies on the triangle's edge
  EXPECT_TRUE(clipped_area({{20, 20}, {30, 20}, {20, 30}}, {0, 0, 10, 10}).empty());
}

TEST(placer, finds_a_place_clear_of_words_and_lines) {
  Placer placer({0, 0, 100, 50});
  const std::vector<Point> line{{0, 25}, {100, 25}};
  placer.taken(line);
  const auto first = placer.spot(line, "usual in the trade", 3, true);
  ASSERT_TRUE(first);
  EXPECT_NEAR(first->x, 50, 1e-9);
  EXPECT_LT(first->y, 25);
  placer.taken(bounds({*first, "usual in the trade", Anchor::middle, 3, Weight::normal, 0}));
  const auto second = placer.spot(line, "usual in the trade", 3, true);
  ASSERT_TRUE(second);
  EXPECT_FALSE(*second == *first);
  EXPECT_FALSE(placer.spot(line, std::string(200, 'W'), 3, false));
  EXPECT_FALSE(placer.spot({}, "words", 3, false));
}

TEST(add_chart, names_axes_with_units_and_curves_where_they_end) {
  const auto si = drawn(straight());
  expect_sound(si);
  for (const auto* text : {"brake torque [N·m]", "roll diameter [mm]", "run", "capacity", "1000"})
    EXPECT_TRUE(pictures::has_label(si, text)) << text;
  const auto us = drawn(straight(), units::System::us);
  expect_sound(us);
  for (const auto* text : {"brake torque [in·lbf]", "roll diameter [in]"})
    EXPECT_TRUE(pictures::has_label(us, text)) << text;
}

TEST(add_chart, places_values_where_the_numbers_say) {
  auto chart = straight();
  chart.curves[0] = {"", {MarkRole::curve, Pattern::solid, 0}, {0.2, 0.6, 1.0}, {20, 60, 100}};
  const auto scene = drawn(chart);
  const auto line = pictures::shapes<Polyline>(scene, MarkRole::curve).at(0);
  const auto all = pictures::labels(scene);
  const auto at = [&](const std::string& text, Anchor anchor) {
    const auto found = std::find_if(all.begin(), all.end(),
                                    [&](const Label& label) { return label.text == text && label.anchor == anchor; });
    EXPECT_NE(found, all.end()) << text;
    return found->at;
  };
  EXPECT_NEAR(line.points[1].x, at("600", Anchor::middle).x, 0.01);
  EXPECT_NEAR(line.points[2].x, at("1000", Anchor::middle).x, 0.01);
  EXPECT_NEAR(line.points[1].y - line.points[0].y, at("60", Anchor::end).y - at("20", Anchor::end).y, 0.01);
}

TEST(add_chart, hatches_a_limit_on_its_forbidden_side_only) {
  for (const bool above : {true, false}) {
    auto chart = straight();
    chart.limits = {{"limit", {0.1, 0.5, 1.0}, {40, 60, 45}, above}};
    const auto scene = drawn(chart);
    const auto limit = pictures::shapes<Polyline>(scene, MarkRole::limit);
    ASSERT_EQ(limit.size(), 1U);
    const auto& points = limit[0].points;
    int hatches = 0;
    for (const auto& line : pictures::shapes<Segment>(scene, MarkRole::axis)) {
      const bool slanted = std::abs(line.from.x - line.to.x) > 1e-6 && std::abs(line.from.y - line.to.y) > 1e-6;
      if (!slanted) continue;
      ++hatches;
      const auto end = std::lower_bound(points.begin() + 1, points.end() - 1, line.to.x,
                                        [](const Point& point, double x) { return point.x < x; });
      const auto& b = *end;
      const auto& a = *(end - 1);
      const double on_limit = std::lerp(a.y, b.y, (line.to.x - a.x) / (b.x - a.x));
      EXPECT_GT(above ? on_limit - line.to.y : line.to.y - on_limit, 0);
    }
    EXPECT_GT(hatches, 20);
  }
}

TEST(add_chart, nothing_drawn_leaves_the_plot) {
  auto chart = straight();
  chart.y.high = 50;
  chart.curves.push_back({"steep", {MarkRole::curve, Pattern::dashed, 1}, {0.1, 0.2, 1.0}, {-1e90, 1e90, 20}});
  chart.areas.push_back({"band", {MarkRole::area}, {0.1, 1.0}, {-1e50, 10}, {30, 1e50}});
  const auto scene = drawn(chart);
  expect_sound(scene);
  for (const auto& mark : scene.marks) {
    std::vector<Point> points;
    if (const auto* line = std::get_if<Polyline>(&mark.shape)) points = line->points;
    if (const auto* area = std::get_if<Polygon>(&mark.shape)) points = area->points;
    for (const auto& point : points) {
      EXPECT_GE(point.x, box.left);
      EXPECT_LE(point.x, box.right);
      EXPECT_GE(point.y, box.top);
      EXPECT_LE(point.y, box.bottom);
    }
  }
}

TEST(add_chart, a_curve_above_the_plot_is_named_with_value_and_arrow) {
  auto chart = straight();
  chart.y.high = 50;
  chart.limits = {{"capacity", {0.1, 1.0}, {1000, 1200}, true}};
  EXPECT_TRUE(pictures::has_label(drawn(chart), "capacity 1200\u00A0N·m\u00A0↑"));
}

TEST(add_chart, many_names_stand_apart) {
  auto chart = straight();
  chart.curves.clear();
  for (int i = 0; i < 18; ++i)
    chart.curves.push_back(
        {"curve " + std::to_string(i), {MarkRole::curve, Pattern::solid, i % 6}, {0, 1}, {0, 50.0 + 0.1 * i}});
  expect_sound(drawn(chart));
  for (int i = 0; i < 40; ++i)
    chart.curves.push_back({"a long name of a curve that says nothing", {MarkRole::curve}, {0, 1}, {0, 51}});
  expect_sound(drawn(chart));
}

TEST(add_chart, degenerate_input_gives_a_sound_picture) {
  const std::vector<std::pair<std::vector<double>, std::vector<double>>> inputs{{{}, {}},
                                                                                {{0.5}, {3}},
                                                                                {{0.5, 0.5}, {3, 3}},
                                                                                {{0, 0, 0}, {0, 0, 0}},
                                                                                {{0.1, 1}, {0, 0}},
                                                                                {{0.1, 1}, {5}},
                                                                                {{undefined, infinite}, {1, 2}},
                                                                                {{0.1, 0.2, 0.3}, {1, undefined, 2}},
                                                                                {{0.1, 1}, {1e308, -1e308}},
                                                                                {{0.1, 1}, {1e90, -1e90}},
                                                                                {{0.1, 1}, {1e-300, 2e-300}},
                                                                                {{1e-12, 2e-12}, {1e-12, 3e-12}},
                                                                                {{1e12, 1e12 + 1}, {1e12, 1e12}},
                                                                                {{1, 0.1}, {-5, -6}}};
  for (const auto& [x, y] : inputs) {
    for (const bool zero : {false, true}) {
      auto chart = straight();
      chart.y.from_zero = zero;
      chart.curves = {{"curve", {MarkRole::curve, Pattern::solid, 0}, x, y}};
      chart.limits = {{"limit", x, y, true}, {"floor", {}, {}, false}};
      chart.areas = {{"area", {MarkRole::area}, x, y, y}};
      chart.captions = {{"words", {MarkRole::text}, x, y, true, false, false}};
      chart.spans = {{"span", x.empty() ? undefined : x.front(), infinite}};
      expect_sound(drawn(chart));
      EXPECT_EQ(in_words(chart, units::System::si).find("nan"), std::string::npos);
    }
  }
  EXPECT_TRUE(pictures::has_label(drawn({}), "no values"));
}

TEST(add_chart, fits_into_any_box) {
  for (const double size : {0.0, 1.0, 5.0, 20.0, 60.0}) {
    Scene scene;
    add_chart(scene, straight(), {50, 50, 50 + size, 50 + size}, units::System::si);
    EXPECT_EQ(pictures::Xml(svg(scene)).fault(), "");
  }
}

TEST(add_panels, have_plots_of_one_width) {
  auto second = straight();
  second.curves[0].name = "a curve with a longer name";
  second.limits[0].y = {100000};
  Scene scene;
  scene.height = 220;
  add_panels(scene, {straight(), second}, {8, 18, 172, 210}, units::System::si);
  expect_sound(scene);
  std::vector<double> starts;
  std::vector<double> ends;
  for (const auto& line : pictures::shapes<Segment>(scene, MarkRole::grid)) {
    starts.push_back(line.from.x);
    ends.push_back(line.to.x);
  }
  ASSERT_GT(starts.size(), 8U);
  EXPECT_EQ(*std::min_element(starts.begin(), starts.end()), *std::max_element(starts.begin(), starts.end()));
  EXPECT_EQ(*std::min_element(ends.begin(), ends.end()), *std::max_element(ends.begin(), ends.end()));
}

TEST(in_words, names_limits_and_curves_with_their_values) {
  const auto text = in_words(straight(), units::System::si);
  EXPECT_NE(text.find("brake torque over roll diameter."), std::string::npos) << text;
  EXPECT_NE(text.find("Limit, capacity: at most 100 N·m."), std::string::npos) << text;
  EXPECT_NE(text.find("run: 10.0 to 80.0 N·m."), std::string::npos) << text;
}

}  // namespace
}  // namespace holdback::draw
