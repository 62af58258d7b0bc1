// Drawings of how the tension is measured, and of what was found: everything named, nothing on another.
#include <gtest/gtest.h>

#include <numbers>

#include "holdback/draw/figures.hpp"
#include "unit/draw/pictures.hpp"
#include "unit/draw/sound.hpp"

namespace holdback::draw {
namespace {

constexpr auto si = units::System::si;
constexpr auto us = units::System::us;

BudgetLine line(const std::string& key, double value, Quantity kind, double share) {
  BudgetLine out;
  out.key = key;
  out.name = key;
  out.value = {value, kind};
  out.uncertainty = {0.01 * value, kind};
  out.contribution = 2 * share;
  out.share = share;
  return out;
}

Measurement sheet(const std::string& method) {
  Measurement out;
  out.method = method;
  out.instruction.title = "Push the span sideways";
  out.instruction.idea = "Pushing a taut web aside takes a force that grows with its tension.";
  out.instruction.cautions = {{"Measure with the line standing still.", {}}, {"Keep hands out of nips.", {}}};
  out.instruction.expected = {{"about {0}", {{7.7, Quantity::force}}}};
  return out;
}

Measurement found(const std::string& method) {
  Measurement out = sheet(method);
  out.job = "clear film";
  out.tension = 88.4;
  out.uncertainty = 2.1;
  out.expanded = 4.2;
  out.coverage = 2;
  out.budget = {line("force", 7.77, Quantity::force, 0.7),
                line("push", 0.02, Quantity::short_length, 0.2),
                line("sag", 0.003, Quantity::short_length, 0.06),
                line("span", 1.2, Quantity::short_length, 0.04),
                line("frequency", 18, Quantity::frequency, 0),
                line("basis_weight", 0.08, Quantity::basis_weight, 0),
                line("pull", 88, Quantity::force, 0),
                line("released", 4, Quantity::force, 0),
                line("back", 80, Quantity::force, 0),
                line("diameter", 0.8, Quantity::short_length, 0),
                line("reading", 152, Quantity::force, 0),
                line("tare", 12, Quantity::force, 0),
                line("wrap", std::numbers::pi / 2, Quantity::angle, 0)};
  out.drawn = DrawnCheck{32768, "quasi-random (Sobol)", 1, 88.4, 2.1, 84.1, 92.7, 0.5, true};
  out.window = MeasuredWindow{"clear film", 77.4, 98.6, 88, 0.99, "inside", {"The tension lies inside.", {}}};
  return out;
}

constexpr const char* methods[] = {"push", "sag", "pluck", "pull", "cell"};

TEST(measure_figure, of_every_method_is_sound_with_and_without_readings) {
  for (const char* method : methods)
    for (const auto system : {si, us}) {
      expect_sound(measure_figure(sheet(method), system));
      expect_sound(measure_figure(found(method), system));
    }
}

TEST(measure_figure, bears_what_was_read_where_it_was_read) {
  const auto scene = measure_figure(found("push"), si);
  for (const auto* words : {"force 7.77", "push 20.0", "span 1200", "tension 88.4", "Caution: Measure with"})
    EXPECT_TRUE(pictures::has_label(scene, words)) << words;
  EXPECT_TRUE(pictures::has_label(measure_figure(found("push"), us), "lbf"));
  EXPECT_TRUE(pictures::has_label(measure_figure(found("pull"), si), "released"));
}

TEST(measure_figure, of_wraps_from_little_to_more_than_half) {
  for (const double wrap : {0.1, 0.6, 1.6, 2.6, 3.3, 6.0}) {
    auto measured = found("cell");
    measured.budget.back().value.value = wrap;
    expect_sound(measure_figure(measured, si));
  }
}

TEST(measured_figure, shows_interval_window_and_budget) {
  const auto scene = measured_figure(found("push"), si);
  expect_sound(scene);
  expect_sound(measured_figure(found("push"), us));
  for (const auto* words : {"88.4 N ± 4.2 N (95 %)", "window of the job", "force", "70.0 %", "inside"})
    EXPECT_TRUE(pictures::has_label(scene, words)) << words;
  EXPECT_FALSE(pictures::has_label(scene, "frequency"));  // makes nothing
}

TEST(measured_figure, shows_the_interval_of_the_draws_where_it_counts) {
  auto measured = found("push");
  measured.by_draws = true;
  measured.low = 86.1;
  measured.high = 91.9;
  measured.drawn = DrawnCheck{32768, "quasi-random (Sobol)", 1, 88.4, 2.1, 86.1, 91.9, 0.5, false, 84.2, 92.6};
  const auto scene = measured_figure(measured, si);
  expect_sound(scene);
  for (const auto* words : {"95 % 86.1 N to 91.9 N", "which count here"})
    EXPECT_TRUE(pictures::has_label(scene, words)) << words;
}

TEST(measured_figure, without_a_window_or_a_tension) {
  auto bare = found("sag");
  bare.window.reset();
  bare.drawn.reset();
  expect_sound(measured_figure(bare, si));
  expect_sound(measured_figure(sheet("sag"), si));
}

TEST(figures_of, a_measurement_is_its_drawing_and_what_was_found) {
  Answer answer;
  answer.measurement = sheet("pull");
  EXPECT_EQ(files(answer), (std::vector<std::string>{"measure-pull"}));
  answer.measurement = found("pull");
  EXPECT_EQ(files(answer), (std::vector<std::string>{"measure-pull", "measured-pull"}));
}

}  // namespace
}  // namespace holdback::draw
