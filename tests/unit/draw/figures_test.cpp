#include "holdback/draw/figures.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <set>

#include "holdback/draw/figure_parts.hpp"
#include "holdback/draw/svg.hpp"
#include "unit/draw/figure_samples.hpp"
#include "unit/draw/pictures.hpp"
#include "unit/draw/sound.hpp"

namespace holdback::draw {
namespace {

constexpr auto si = units::System::si;
constexpr auto us = units::System::us;
constexpr double undefined = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

TEST(figures_of, a_choice_are_the_mix_and_one_job_in_depth) {
  EXPECT_EQ(
      files(samples::choice()),
      (std::vector<std::string>{"coverage", "torque-paper-labels", "temperature-paper-labels", "pressure-paper-labels",
                                "heat-paper-labels", "window-paper-labels", "drivers-paper-labels"}));
}

TEST(figures_of, every_figure_is_sound_in_both_systems) {
  for (const auto system : {si, us}) {
    for (const auto& answer : {samples::choice(), samples::choice(1), samples::choice(70, 14), samples::plan(3)}) {
      for (const auto& figure : figures_of(answer, system)) expect_sound(figure.scene);
    }
  }
}

TEST(figures_of, the_job_asked_for_comes_before_the_weakest) {
  auto answer = samples::choice();
  answer.choice->job = samples::job("tickets", 1.3);
  answer.choice->envelope->job = "tickets";
  EXPECT_EQ(files(answer)[1], "torque-tickets");
  EXPECT_EQ(files(answer).back(), "drivers-tickets");
}

TEST(figures_of, an_answer_without_results_has_none) {
  EXPECT_TRUE(files({}).empty());
  Answer empty;
  empty.choice.emplace();
  empty.plan.emplace();
  EXPECT_TRUE(files(empty).empty());
}

TEST(figures_of, parts_that_are_absent_are_left_out) {
  auto answer = samples::choice();
  for (auto& job : answer.choice->recommended->jobs) {
    job.thermal.reset();
    job.likelihood.reset();
    job.window = {};
    job.limits.clear();
  }
  EXPECT_EQ(files(answer), (std::vector<std::string>{"coverage", "torque-paper-labels", "temperature-paper-labels",
                                                     "pressure-paper-labels"}));
  for (const auto& figure : figures_of(answer, si)) expect_sound(figure.scene);
  answer.choice->envelope.reset();
  EXPECT_EQ(files(answer), (std::vector<std::string>{"coverage"}));
}

TEST(figures_of, a_plan_has_one_a_job_up_to_fifty) {
  EXPECT_EQ(files(samples::plan(2)), (std::vector<std::string>{"pressure-paper-labels", "pressure-trial-1"}));
  EXPECT_EQ(files(samples::plan(80)).size(), 50U);
}

TEST(figures_of, file_names_are_safe_and_differ) {
  auto answer = samples::plan(1);
  auto& jobs = answer.plan->jobs;
  for (const auto* name : {"../../etc/passwd", "A/B", "a\\b", "A b", "", "  ", "äöü", "漢字", "con", "\n\x01", "."})
    jobs.push_back(samples::job_plan(name));
  jobs.push_back(samples::job_plan(std::string(5000, 'x')));
  jobs.push_back(samples::job_plan(std::string(5000, 'x') + "y"));
  std::set<std::string> seen;
  for (const auto& name : files(answer)) {
    EXPECT_EQ(name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-"), std::string::npos) << name;
    EXPECT_LE(name.size(), 80U);
    EXPECT_TRUE(seen.insert(name).second) << name;
  }
  EXPECT_TRUE(seen.count("pressure-etc-passwd"));
  EXPECT_TRUE(seen.count("pressure-a-b-2"));
}

TEST(figures_of, names_of_any_length_and_script_stay_on_the_page) {
  for (const auto& name : {std::string(300, 'W'), std::string("多层标签纸 ") + std::string(90, 'M'),
                           std::string("a<b>&\"c\"\x01\x1b[31m"), std::string(120, ' ') + "x", std::string()}) {
    auto answer = samples::choice(4, 3);
    auto& choice = *answer.choice;
    choice.title = name;
    for (auto* fit : {&*choice.recommended, &choice.all[0], &choice.all[1]}) {
      fit->fit.brake = name;
      fit->fit.grade = name;
      for (auto& job : fit->jobs) job.job = name;
    }
    choice.envelope->job = name;
    for (const auto& figure : figures_of(answer, us)) expect_sound(figure.scene);
    auto plan = samples::plan(1);
    plan.plan->jobs[0].job = name;
    plan.plan->jobs[0].fit.brake = name;
    for (const auto& figure : figures_of(plan, us)) expect_sound(figure.scene);
  }
}

TEST(torque_figure, shows_every_case_and_both_ends_of_what_the_brake_gives) {
  const auto scene = torque_figure(samples::envelope(), nullptr, "paper labels", si);
  for (const auto* name : {"run", "ramp", "hold", "stop", "emergency stop", "capacity, lowest friction",
                           "capacity, nominal", "floor, highest friction", "brake torque [N·m]"})
    EXPECT_TRUE(pictures::has_label(scene, name)) << name;
  EXPECT_TRUE(pictures::shapes<Polygon>(scene, MarkRole::bad).empty());
}

TEST(torque_figure, marks_what_goes_beyond_the_capacity) {
  const auto scene = torque_figure(samples::envelope(24), nullptr, "", si);
  EXPECT_EQ(pictures::shapes<Polygon>(scene, MarkRole::bad).size(), 2U);  // stop and emergency stop
  EXPECT_TRUE(pictures::has_label(scene, "Stop beyond capacity from Ø "));
  EXPECT_TRUE(pictures::has_label(scene, "Emergency stop beyond capacity from Ø "));
  EXPECT_NE(scene.description.find("Stop beyond capacity"), std::string::npos);
}

TEST(torque_figure, says_how_holding_is_judged_when_it_passes_the_moving_capacity) {
  auto envelope = samples::envelope();
  for (auto& torque : envelope.hold) torque *= 3;
  const auto job = samples::job("paper labels", 1.2);
  EXPECT_TRUE(pictures::has_label(torque_figure(envelope, &job, "", si), "static friction"));
}

TEST(beyond, ends_where_the_straight_lines_cross) {
  // y = 2x against 3: from x = 1.5 on.
  const auto above = beyond({0, 1, 2}, {0, 2, 4}, {3, 3, 3}, true);
  ASSERT_EQ(above.size(), 1U);
  EXPECT_NEAR(above[0].from, 1.5, 1e-12);
  EXPECT_NEAR(above[0].to, 2, 1e-12);
  const auto below = beyond({0, 1, 2}, {0, 2, 4}, {3, 3, 3}, false);
  ASSERT_EQ(below.size(), 1U);
  EXPECT_NEAR(below[0].from, 0, 1e-12);
  EXPECT_NEAR(below[0].to, 1.5, 1e-12);
  EXPECT_TRUE(beyond({0, 1}, {3, 3}, {3, 3}, true).empty());
  EXPECT_TRUE(beyond({0, 1}, {undefined, infinite}, {3, 3}, true).empty());
  EXPECT_EQ(beyond({0, 1, 2, 3, 4}, {5, 1, 5, undefined, 5}, {3, 3, 3, 3, 3}, true).size(), 3U);
}

TEST(temperature_figure, has_the_ratings_and_the_state_that_repeats) {
  const auto job = samples::job("paper labels", 1.2);
  const auto scene = temperature_figure(samples::envelope(), &job, "", si);
  for (const auto* name :
       {"disc rated to 250\u00A0°C", "pads to 200\u00A0°C", "disc, steady at each diameter", "disc, roll after roll"})
    EXPECT_TRUE(pictures::has_label(scene, name)) << name;
  EXPECT_EQ(pictures::shapes<Polyline>(scene, MarkRole::limit).size(), 2U);
}

TEST(temperature_figure, marks_a_disc_above_its_rating) {
  auto job = samples::job("paper labels", 1.2);
  for (auto& limit : job.limits) {
    if (limit.id == LimitId::disc_temperature) limit.bound = 340;
  }
  const auto scene = temperature_figure(samples::envelope(), &job, "", us);
  EXPECT_FALSE(pictures::shapes<Polygon>(scene, MarkRole::bad).empty());
  EXPECT_TRUE(pictures::has_label(scene, "Disc above its rating"));
  expect_sound(scene);
}

TEST(heat_figure, names_the_parts_and_marks_the_change_over) {
  const auto scene = heat_figure(samples::thermal(), nullptr, "", si);
  for (const auto* name : {"disc", "pads", "calipers", "hub", "change-over", "hottest", "[s]"})
    EXPECT_TRUE(pictures::has_label(scene, name)) << name;
  EXPECT_FALSE(pictures::shapes<Rectangle>(scene, MarkRole::grid).empty());
  auto longer = samples::thermal();
  for (auto& time : longer.time) time *= 10;
  EXPECT_TRUE(pictures::has_label(heat_figure(longer, nullptr, "", si), "[h]"));
}

TEST(pressure_figure, has_curve_and_steps) {
  const auto scene = pressure_figure(samples::job_plan(), si);
  for (const auto* name :
       {"automatic", "by hand", "pressure [bar]", "tension [N]", "±8\u00A0% of the setpoint", "high end of the window"})
    EXPECT_TRUE(pictures::has_label(scene, name)) << name;
  auto failing = samples::job_plan();
  failing.state = State::fails;
  EXPECT_TRUE(pictures::has_label(pressure_figure(failing, si), "not to be run"));
}

TEST(coverage_figure, says_margin_and_state_without_colour) {
  const auto answer = samples::choice();
  const auto scene = coverage_figure(*answer.choice);
  EXPECT_TRUE(pictures::has_label(scene, "−6\u00A0%"));
  for (const auto* word : {"holds", "tight", "fails"}) EXPECT_TRUE(pictures::has_label(scene, word)) << word;
  std::size_t failing = 0;
  for (const auto& job : answer.choice->recommended->jobs) failing += job.state == State::fails ? 1 : 0;
  EXPECT_EQ(failing, 1U);
  EXPECT_GE(pictures::shapes<Segment>(scene, MarkRole::bad).size(), 4U);     // a cross in a cell, one in the key
  EXPECT_GE(pictures::shapes<Circle>(scene, MarkRole::good).size(), 5U);     // rings
  EXPECT_GE(pictures::shapes<Polyline>(scene, MarkRole::tight).size(), 2U);  // triangles
}

TEST(coverage_figure, says_what_it_leaves_out) {
  const auto scene = coverage_figure(*samples::choice(70, 14).choice);
  EXPECT_TRUE(pictures::has_label(scene, "60 jobs with the least in hand; 10 more"));
  EXPECT_TRUE(pictures::has_label(scene, "12 fits; 2 more"));
  EXPECT_TRUE(pictures::has_label(coverage_figure(*samples::choice().choice), "12 limits with the least in hand"));
}

TEST(coverage_figure, keeps_to_the_room_it_is_given) {
  const auto scene = coverage_figure(*samples::choice(70, 14).choice, {35, 7});
  EXPECT_EQ(scene.width, 180);
  EXPECT_LT(scene.height, 250);  // with its title and notes on one page of A4 or Letter
}

TEST(coverage_figure, a_fit_that_lacks_a_job_has_no_number_there) {
  auto answer = samples::choice(3, 2);
  answer.choice->all[1].jobs.erase(answer.choice->all[1].jobs.begin());
  const auto scene = coverage_figure(*answer.choice);
  EXPECT_TRUE(pictures::has_label(scene, "–"));
  expect_sound(scene);
  expect_sound(coverage_figure(Choice{}));
}

TEST(margin_text, rounds_towards_what_is_worse) {
  EXPECT_EQ(margin_text(1.189), "+18\u00A0%");
  EXPECT_EQ(margin_text(0.9), "−10\u00A0%");
  EXPECT_EQ(margin_text(1), "+0\u00A0%");
  EXPECT_EQ(margin_text(1 - 1e-14), "−1\u00A0%");
  EXPECT_EQ(margin_text(0), "−100\u00A0%");
  EXPECT_EQ(margin_text(-5), "−100\u00A0%");
  EXPECT_EQ(margin_text(100), ">+900\u00A0%");
  EXPECT_EQ(margin_text(undefined), "–");
  EXPECT_EQ(margin_text(infinite), ">+900\u00A0%");
}

TEST(share_text, only_what_is_whole_reads_as_a_hundred) {
  EXPECT_EQ(share_text(1), "100\u00A0%");
  EXPECT_EQ(share_text(0.99999), "99.9\u00A0%");
  EXPECT_EQ(share_text(0.931), "93.1\u00A0%");
  EXPECT_EQ(share_text(0), "0\u00A0%");
  EXPECT_EQ(share_text(undefined), "–");
}

TEST(drivers_figure, has_bars_with_numbers_and_the_probability) {
  const auto scene = drivers_figure(samples::likelihood(), "");
  for (const auto* text : {"friction", "66.0\u00A0%", "58.0\u00A0%", "93.1\u00A0%", "4096", "stop torque"})
    EXPECT_TRUE(pictures::has_label(scene, text)) << text;
  const auto light = pictures::shapes<Rectangle>(scene, MarkRole::area);
  const auto dark = pictures::shapes<Rectangle>(scene, MarkRole::curve);
  ASSERT_EQ(light.size(), 7U);
  ASSERT_EQ(dark.size(), 7U);
  EXPECT_NEAR((dark[0].box.right - dark[0].box.left) / (light[0].box.right - light[0].box.left), 0.58 / 0.66, 1e-9);
  auto sure = samples::likelihood();
  sure.probability = 1;
  sure.limits.clear();
  EXPECT_TRUE(pictures::has_label(drivers_figure(sure, ""), "in all of 4096 samples"));
  expect_sound(drivers_figure(sure, ""));
  expect_sound(drivers_figure(Likelihood{}, ""));
  auto wild = samples::likelihood();
  wild.drivers[0] = {Input::friction, -3, infinite};
  wild.drivers[1] = {Input::cooling, undefined, 7};
  wild.limits[0].probability = undefined;
  expect_sound(drivers_figure(wild, ""));
}

TEST(window_figure, names_what_governs_each_end) {
  const auto scene = window_figure(samples::window(), samples::tension(), "", si);
  for (const auto* text : {"least: traction on the idlers", "least: usual in the trade", "most: strain",
                           "most: cinching of the roll", "setpoint 75.0", "web speed [m/min]", "roll diameter [mm]"})
    EXPECT_TRUE(pictures::has_label(scene, text)) << text;
  EXPECT_TRUE(pictures::shapes<Polygon>(scene, MarkRole::bad).empty());
}

TEST(window_figure, marks_a_setpoint_outside_and_takes_open_ends) {
  auto tension = samples::tension();
  tension.setpoint = 50;
  const auto low = window_figure(samples::window(), tension, "", si);
  EXPECT_FALSE(pictures::shapes<Polygon>(low, MarkRole::bad).empty());
  EXPECT_TRUE(pictures::has_label(low, "Setpoint below the window"));
  expect_sound(low);
  auto closed = samples::window();
  for (auto& at : closed.over_roll) at.high = 20;
  const auto none = window_figure(closed, samples::tension(), "", si);
  EXPECT_TRUE(pictures::has_label(none, "No window, the least is above the most, from Ø"));
  expect_sound(none);
  auto open = samples::window();
  for (std::size_t i = 0; i < open.over_speed.size(); ++i) {
    if (i % 3 == 0) open.over_speed[i].low.reset();
    open.over_roll[i].high.reset();
    open.over_roll[i].high_by.reset();
  }
  expect_sound(window_figure(open, samples::tension(), "", us));
  expect_sound(window_figure({}, {}, "", si));
}

TEST(figures, take_degenerate_results) {
  std::vector<Envelope> envelopes(4);
  envelopes[1] = samples::envelope();
  for (auto* values : {&envelopes[1].run, &envelopes[1].stop, &envelopes[1].capacity_low, &envelopes[1].temperature,
                       &envelopes[1].pressure})
    values->assign(values->size(), 0);
  envelopes[2] = samples::envelope();
  envelopes[2].run = {undefined, infinite, -infinite, 1e308, -1e308};
  envelopes[2].temperature = {1e308};
  envelopes[2].capacity_low.clear();
  envelopes[3].diameter = {0.5};
  envelopes[3].run = envelopes[3].capacity_low = envelopes[3].temperature = envelopes[3].pressure = {4};
  const auto job = samples::job("x", undefined);
  for (const auto& envelope : envelopes) {
    expect_sound(torque_figure(envelope, &job, "x", si));
    expect_sound(temperature_figure(envelope, &job, "x", si));
    expect_sound(pressure_figure(envelope, &job, "x", si));
  }
  auto thermal = samples::thermal();
  thermal.changeover = 1e300;
  thermal.disc.resize(3);
  thermal.pads = {undefined};
  expect_sound(heat_figure(thermal, &job, "", si));
  expect_sound(heat_figure({}, nullptr, "", si));
  auto plan = samples::job_plan();
  plan.automatic.resize(1);
  plan.by_hand = {{0.5, 0.5, 0, 0, 0}, {infinite, undefined, 1e300, -1e300, undefined}};
  plan.tolerance = undefined;
  plan.tension.high = infinite;
  expect_sound(pressure_figure(plan, si));
  expect_sound(pressure_figure(JobPlan{}, si));
}

}  // namespace
}  // namespace holdback::draw
