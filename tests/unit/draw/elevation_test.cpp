// The stand from the side: to scale, all of it on the page, no words on others, for any stand.
#include "holdback/draw/elevation.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include "holdback/draw/web_route.hpp"
#include "holdback/files/stand_file.hpp"
#include "support/files.hpp"
#include "support/stands.hpp"
#include "unit/draw/pictures.hpp"
#include "unit/draw/sound.hpp"

namespace holdback::draw {
namespace {

constexpr auto si = units::System::si;
constexpr auto us = units::System::us;
constexpr double pi = std::numbers::pi;

/// Every place that a mark reaches.
std::vector<Point> places(const Mark& mark) {
  if (const auto* segment = std::get_if<Segment>(&mark.shape)) return {segment->from, segment->to};
  if (const auto* line = std::get_if<Polyline>(&mark.shape)) return line->points;
  if (const auto* area = std::get_if<Polygon>(&mark.shape)) return area->points;
  if (const auto* box = std::get_if<Rectangle>(&mark.shape))
    return {{box->box.left, box->box.top}, {box->box.right, box->box.bottom}};
  if (const auto* circle = std::get_if<Circle>(&mark.shape)) {
    const auto& [centre, radius, filled] = *circle;
    return {{centre.x - radius, centre.y - radius}, {centre.x + radius, centre.y + radius}};
  }
  return {};
}

/// Whether a label holds the words; no-break blanks count as blanks.
bool says(const Scene& scene, const std::string& words) {
  for (auto label : pictures::labels(scene)) {
    for (std::size_t at; (at = label.text.find("\u00A0")) != std::string::npos;) label.text.replace(at, 2, " ");
    if (label.text.find(words) != std::string::npos) return true;
  }
  return false;
}

void expect_on_page(const Scene& scene) {
  for (const auto& mark : scene.marks)
    for (const auto& place : places(mark)) {
      EXPECT_TRUE(place.x >= 0 && place.x <= scene.width && place.y >= 0 && place.y <= scene.height)
          << scene.title << ": mark " << mark.shape.index() << " at " << place.x << ", " << place.y;
    }
}

/// The length of the scale bar [mm on the page], and what it stands for [m] by its words.
std::pair<double, double> scale_bar(const Scene& scene) {
  double left = 1e9;
  double right = -1e9;
  double row = 0;
  for (const auto& each : pictures::shapes<Rectangle>(scene, MarkRole::text)) {
    left = std::min(left, each.box.left);
    right = std::max(right, each.box.right);
    row = each.box.bottom;
  }
  for (const auto& label : pictures::labels(scene)) {
    if (label.at.y != row || label.at.x > left) continue;
    const auto read = units::parse(label.text, Quantity::web_length);
    return {right - left, std::holds_alternative<double>(read) ? std::get<double>(read) : 0};
  }
  return {right - left, 0};
}

/// The radius of the full roll: the largest ring that is drawn heavy.
double roll_radius(const Scene& scene) {
  double radius = 0;
  for (const auto& each : pictures::shapes<Circle>(scene, MarkRole::text))
    if (!each.filled) radius = std::max(radius, each.radius);
  return radius;
}

void expect_true(const Stand& stand, const Job& job, const Fit* fit) {
  for (const auto system : {si, us}) {
    const auto scene = elevation_figure(stand, job, fit, system);
    expect_sound(scene);
    expect_on_page(scene);
    EXPECT_EQ(scene.width, 180);
    EXPECT_LE(scene.height, 116);
    const auto [drawn, meant] = scale_bar(scene);
    ASSERT_GT(meant, 0) << scene.title;
    EXPECT_NEAR(roll_radius(scene) / drawn, job.roll.full_radius() / meant, 1e-6 * job.roll.full_radius() / meant)
        << scene.title;
  }
}

Idler idler(const std::string& name, double diameter, double wrap, double span) {
  Idler out;
  out.name = name;
  out.diameter = diameter;
  out.wrap = wrap;
  out.span = span;
  return out;
}

Stand stand_with(int idlers) {
  Stand stand = test::small_stand();
  stand.path.first_span = 1.5;
  for (int i = 0; i < idlers; ++i)
    stand.idlers.push_back(idler("idler " + std::to_string(i + 1), 0.08 + 0.01 * (i % 4), pi / 2, 0.4 + 0.2 * (i % 5)));
  return stand;
}

void expect_true(const Stand& stand) { expect_true(stand, stand.jobs.front(), nullptr); }

TEST(elevation_figure, of_every_example_is_sound_and_true_to_its_scale_bar) {
  for (const auto* name : {"01-label-slitter", "02-film-laminator", "03-board-stand", "04-film-in-motion"}) {
    const auto file = files::read_stand(test::read_source("examples/" + std::string(name) + ".toml"), name);
    ASSERT_TRUE(file.problems.empty()) << name;
    for (const Job& job : file.stand.jobs) {
      expect_true(file.stand, job, nullptr);
      if (&job != &file.stand.jobs.front()) continue;
      for (const Brake& brake : file.stand.brakes) {
        const Fit fit{brake.name, brake.grades.back().name, brake.most_brakes, brake.pairs};
        expect_true(file.stand, job, &fit);
      }
    }
  }
}

TEST(elevation_figure, says_what_the_stand_gives) {
  Stand stand = stand_with(2);
  stand.load_cell = LoadCell{};
  stand.dancer = Dancer{"idler 1", 5, 0.2, 50, 2, 0.05};
  stand.diameter_sensor = DiameterSensor{};
  const Fit fit{"disc", "middle", 2, 3};
  const auto scene = elevation_figure(stand, stand.jobs.front(), &fit, si);
  for (const auto* words : {"Ø 1000", "core Ø 172", "220 N", "300 m/min", "1.50 m", "2 × disc", "3 pairs each",
                            "grade middle", "load cell", "dancer", "diameter by sound", "mesh guard", "5.80 bar"})
    EXPECT_TRUE(says(scene, words)) << words;
  EXPECT_TRUE(says(elevation_figure(stand, stand.jobs.front(), &fit, us), "49.5 lbf"));
}

TEST(elevation_figure, names_no_tension_that_the_job_does_not_give) {
  Stand stand = stand_with(0);
  stand.jobs.front().tension = std::nullopt;
  EXPECT_TRUE(says(elevation_figure(stand, stand.jobs.front(), nullptr, si), "as recommended"));
}

TEST(elevation_figure, of_any_number_of_idlers_is_sound) {
  for (const int count : {0, 1, 3, 5, 8, 9, 20, 60}) expect_true(stand_with(count));
}

TEST(elevation_figure, of_extremes_is_sound) {
  Stand stand = stand_with(3);
  stand.jobs.front().roll.core_diameter = 0.011;
  expect_true(stand);
  stand.jobs.front().roll = {"huge", 0.5, 5, 0, 0, 1, {}, {}};
  expect_true(stand);
  stand.jobs.front().roll = {"small", 0.02, 0.03, 0, 0, 1, {}, {}};
  expect_true(stand);
  stand = stand_with(2);
  stand.path.first_span = 80;
  expect_true(stand);
  stand.path.first_span = 0.02;
  stand.idlers = {idler("wide", 3, 4 * pi, 0.02), idler("thin", 0.005, 0.01, 100)};
  expect_true(stand);
}

TEST(elevation_figure, of_every_guard_sensor_and_pad_is_sound) {
  Stand stand = stand_with(2);
  stand.dancer = Dancer{"", 5, 0.4, 50, 2, 0.05};
  stand.load_cell = LoadCell{"idler 1", 0, 0, 0};
  for (const auto method : {DiameterMethod::ultrasonic, DiameterMethod::turns})
    for (const auto guard : {Guard::none, Guard::mesh, Guard::partly_closed, Guard::closed})
      for (const Pad& pad : {Pad{RoundPad{0.06, 0.325}}, Pad{SectorPad{0.18, 0.29, 0.7}}, Pad{DataSheetPad{5e5, 0.24}}})
        for (const int pairs : {1, 7, 24}) {
          stand.diameter_sensor = DiameterSensor{method, 0, 0, 0};
          stand.guard = guard;
          stand.brakes.front().pad = pad;
          stand.brakes.front().pairs = pairs;
          expect_true(stand);
        }
  stand.brakes.clear();
  expect_true(stand);
  EXPECT_TRUE(says(elevation_figure(stand, stand.jobs.front(), nullptr, si), "no brake"));
}

TEST(elevation_figure, cuts_names_that_are_too_long_and_bears_any_letters) {
  Stand stand = stand_with(3);
  const std::string name =
      "Abwickler für außergewöhnlich breite 薄膜ロール with a name that goes on and on and on and on";
  stand.title = name;
  stand.jobs.front().name = name;
  stand.brakes.front().name = name;
  stand.brakes.front().grades.front().name = name;
  for (Idler& each : stand.idlers) each.name = name;
  const Fit fit{name, name, 2, 4};
  expect_true(stand, stand.jobs.front(), &fit);
  stand.title = "";
  stand.jobs.front().name = "<&\">";
  stand.idlers.front().name = "";
  expect_true(stand);
}

TEST(elevation_figure, of_a_fit_that_the_stand_does_not_know_draws_the_first_candidate) {
  const Stand stand = stand_with(1);
  const Fit fit{"another", "middle", 2, 3};
  EXPECT_TRUE(says(elevation_figure(stand, stand.jobs.front(), &fit, si), "4 pairs, the first candidate"));
}

TEST(elevation_figure, is_the_first_figure_of_a_stand_that_was_sized) {
  const Stand stand = stand_with(1);
  Answer answer;
  answer.choice = Choice{};
  EXPECT_TRUE(figures_of(answer, si).empty());
  const auto figures = figures_of(answer, si, &stand);
  ASSERT_EQ(figures.size(), 1U);
  EXPECT_EQ(figures.front().file, "stand-film-job");
  Stand empty = stand;
  empty.jobs.clear();
  EXPECT_TRUE(figures_of(answer, si, &empty).empty());
}

// The route by itself: lengths and angles are geometry that can be laid with ruler and protractor.

TEST(web_route, keeps_spans_radii_and_wraps) {
  const std::vector<Turn> turns{{0, 0.05, pi / 2}, {1, 0.04, 2.0}, {dancer_turn, 0.06, pi}};
  const std::vector<double> spans{1.5, 0.7, 0.9, 9};
  const auto route = web_route(0.5, spans, turns, 5, 1.6);
  ASSERT_EQ(route.legs.size(), 4u);
  ASSERT_EQ(route.bends.size(), 3u);
  for (std::size_t i = 0; i < spans.size(); ++i) {
    const auto& leg = route.legs[i];
    EXPECT_NEAR(std::hypot(leg.to.x - leg.from.x, leg.to.y - leg.from.y), std::min(spans[i], 5.0), 1e-12);
    EXPECT_EQ(leg.shortened, spans[i] > 5);
  }
  for (std::size_t i = 0; i < turns.size(); ++i) {
    const auto& bend = route.bends[i];
    for (const Place& end : {route.legs[i].to, route.legs[i + 1].from})
      EXPECT_NEAR(std::hypot(end.x - bend.centre.x, end.y - bend.centre.y), turns[i].radius, 1e-12);
    EXPECT_NEAR(std::abs(route.legs[i + 1].heading - route.legs[i].heading), turns[i].wrap, 1e-12);
  }
  const auto& first = route.legs.front();  // it leaves the roll as a tangent
  EXPECT_NEAR(std::hypot(first.from.x, first.from.y), 0.5, 1e-12);
  EXPECT_NEAR(first.from.x * std::cos(first.heading) + first.from.y * std::sin(first.heading), 0, 1e-12);
}

TEST(web_route, of_a_plain_path_crosses_neither_itself_nor_the_roll) {
  const auto route = web_route(0.5, {1.5, 1, 1}, {{0, 0.05, 2.1}, {1, 0.06, 2.6}}, 5, 1.6);
  for (std::size_t i = 1; i < route.legs.size(); ++i)
    for (int k = 0; k <= 20; ++k) {
      const auto& leg = route.legs[i];
      const double share = k / 20.0;
      EXPECT_GT(std::hypot(std::lerp(leg.from.x, leg.to.x, share), std::lerp(leg.from.y, leg.to.y, share)), 0.5);
    }
}

}  // namespace
}  // namespace holdback::draw
