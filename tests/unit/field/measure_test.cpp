#include "holdback/field/measure.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace holdback::field {
namespace {

constexpr double turn = 2 * std::numbers::pi;

KeyReadings read(const std::string& key, std::vector<double> values, double resolution) {
  return {key, std::move(values), {}, resolution, ResolutionFrom::digits, 0};
}

MeasureInput question(const std::string& method, std::vector<KeyReadings> readings) {
  MeasureInput input;
  input.method = measure_method(method);
  input.readings = std::move(readings);
  return input;
}

/// Check T-2, first row: EA 48000 N, so that a web 0.5 m wide and 24 µm thick has a modulus of 4 GPa.
MeasureInput push_question() {
  return question("push", {read("span", {1.0}, 1e-3), read("push", {10e-3}, 1e-4), read("force", {6.38388483839}, 0.01),
                           read("modulus", {4e9}, 0), read("caliper", {24e-6}, 0), read("width", {0.5}, 1e-3)});
}

Web film() {
  Web web;
  web.name = "film";
  web.width = 0.5;
  web.caliper = 24e-6;
  web.basis_weight = 24e-6 * 1390;
  web.modulus = 4e9;
  web.yield_strength = 80e6;
  return web;
}

Measurement found(const MeasureInput& input) {
  Problems problems;
  const auto measured = measure(input, problems);
  for (const Problem& problem : problems)
    if (problem.severity == Severity::error) ADD_FAILURE() << problem.field << ": " << problem.what.text;
  return measured.value_or(Measurement{});
}

Problems faults(const MeasureInput& input) {
  Problems problems;
  EXPECT_FALSE(measure(input, problems));
  EXPECT_TRUE(has_errors(problems));
  return problems;
}

bool names(const Problems& problems, const std::string& field, const std::string& word) {
  return std::any_of(problems.begin(), problems.end(), [&](const Problem& problem) {
    return problem.field == field && problem.what.text.find(word) != std::string::npos;
  });
}

const BudgetLine& line(const Measurement& measured, const std::string& key) {
  return *std::find_if(measured.budget.begin(), measured.budget.end(),
                       [&](const BudgetLine& one) { return one.key == key; });
}

TEST(measure, a_push_gives_the_tension_before_it) {
  const Measurement measured = found(push_question());
  EXPECT_NEAR(*measured.tension, 150, 150e-10);  // T-2
  EXPECT_NEAR(*measured.per_width, 300, 300e-10);
  EXPECT_NEAR(measured.simple->tension, 159.6, 0.05);  // T-2: 6 % too high
  EXPECT_NEAR(measured.simple->error_share, 0.064, 0.0005);
}

// By hand, from T = F/(2 sin φ) − EA ΔL/S nearly: ∂T/∂F = S/(4 δ) = 25; the gauge's 0.01 N makes 25 · 0.01/√12 N.
TEST(measure, the_budget_of_a_push_by_hand) {
  const Measurement measured = found(push_question());
  EXPECT_NEAR(line(measured, "force").contribution, 25 * 0.01 / std::sqrt(12.0), 2e-4);
  // ∂T/∂E · E ± 10 %: EA ΔL/S = 48000 · 2 · 0.01² = 9.6 N, rectangular.
  EXPECT_NEAR(line(measured, "modulus").contribution, 0.96 / std::sqrt(3.0), 2e-3);
  double squares = 0;
  double shares = 0;
  for (const BudgetLine& one : measured.budget) {
    squares += one.contribution * one.contribution;
    shares += one.share;
  }
  EXPECT_NEAR(std::sqrt(squares), *measured.uncertainty, 1e-12);
  EXPECT_NEAR(shares, 1, 1e-12);
  EXPECT_EQ(measured.budget.front().contribution,
            std::max_element(measured.budget.begin(), measured.budget.end(), [](const auto& a, const auto& b) {
              return a.contribution < b.contribution;
            })->contribution);
}

// Readings 6.30, 6.38, 6.46 N: s/√3 = 0.04619 N, 2 degrees of freedom.
TEST(measure, repeats_count_with_their_freedom) {
  MeasureInput input = push_question();
  input.readings[2] = read("force", {6.30, 6.38, 6.46}, 1e-6);
  input.readings[3].limit = 1;  // Pa: as good as exact
  input.readings[4].limit = 1e-12;
  input.readings[1].resolution = 1e-9;
  input.readings[0].resolution = 1e-9;
  input.readings[5].resolution = 1e-9;
  const Measurement measured = found(input);
  EXPECT_NEAR(*measured.uncertainty, 25 * 0.0461880215, 2e-3);
  EXPECT_NEAR(*measured.freedom, 2, 0.01);
  EXPECT_NEAR(*measured.coverage, 4.30, 0.02);  // JCGM 100, table G.2
  EXPECT_EQ(measured.better->key, "force");
}

TEST(measure, draws_and_linear_propagation_agree_where_nothing_is_odd) {
  MeasureInput input = push_question();
  for (auto& one : input.readings) one.limit = 0.005 * one.values.front();
  const Measurement measured = found(input);
  ASSERT_TRUE(measured.drawn);
  EXPECT_NEAR(measured.drawn->mean, *measured.tension, 0.02 * *measured.uncertainty);
  EXPECT_NEAR(*measured.drawn->uncertainty, *measured.uncertainty, 0.02 * *measured.uncertainty);
}

// tests/published/scripts/push_draws.py: 16 million pseudo-random draws by NumPy, with the strain balance written
// another way.
TEST(measure, draws_agree_with_numpy) {
  MeasureInput input = push_question();
  input.readings[2] = read("force", {6.30, 6.38, 6.46, 6.39, 6.37}, 0);
  for (auto& one : input.readings) {
    one.resolution = 0;
    one.limit = 0.005 * numerics::mean_of(one.values);
  }
  const Measurement measured = found(input);
  ASSERT_TRUE(measured.drawn);
  EXPECT_NEAR(measured.drawn->mean, 149.904, 0.01);
  EXPECT_NEAR(*measured.drawn->uncertainty, 1.2481, 0.012);
  EXPECT_NEAR(measured.drawn->low, 147.508, 0.03);
  EXPECT_NEAR(measured.drawn->high, 152.312, 0.03);
}

// One rectangle alone: its 95 % end at 0.95 √3 u = 1.645 u, not at 1.96 u.
TEST(measure, says_when_the_linear_interval_is_not_as_good) {
  MeasureInput input = question("pull", {read("pull", {100}, 20)});
  const Measurement measured = found(input);
  ASSERT_TRUE(measured.drawn);
  EXPECT_FALSE(measured.drawn->agrees);
  EXPECT_NEAR(measured.drawn->high, 100 + 0.95 * 10, 0.01);
  EXPECT_NEAR(*measured.expanded, 1.96 * 20 / std::sqrt(12.0), 0.01);
  EXPECT_NE(measured.cautions.front().text.find("draws"), std::string::npos);
}

// Check T-1 through a web of the cable's weight under standard gravity: 0.75 kg/m, one metre wide.
TEST(measure, a_sag_gives_the_tension_at_the_rollers) {
  const Measurement measured = found(question("sag", {read("span", {40}, 0), read("sag", {0.5}, 1e-3),
                                                      read("basis_weight", {0.75}, 0), read("width", {1}, 0)}));
  EXPECT_NEAR(*measured.tension, 2947.29167075 / 9.81 * 9.80665, 1e-6);
  EXPECT_NEAR(line(measured, "sag").sensitivity, -2947.0 / 0.5, 30);  // T goes with 1/sag
}

// Check T-3 without air, and with: 2 S/(π W) and π/4 put together as method.md says, by hand for W = S = 1 m.
TEST(measure, a_plucked_span_with_and_without_air) {
  std::vector<KeyReadings> readings{read("span", {1}, 0), read("frequency", {47.4152026132 * turn}, 0),
                                    read("basis_weight", {12e-6 * 1390}, 0), read("width", {1}, 0),
                                    read("air", {0}, 0)};
  EXPECT_NEAR(*found(question("pluck", readings)).tension, 150, 1e-8);
  readings.back().values = {1};
  readings.push_back(read("air_density", {1.2}, 0));
  const Measurement measured = found(question("pluck", readings));
  const double carried =
      1.2 * std::pow(std::pow(std::numbers::pi / 4, -1.5) + std::pow(2 / std::numbers::pi, -1.5), -2.0 / 3);
  EXPECT_NEAR(*measured.tension / 150, (12e-6 * 1390 + carried) / (12e-6 * 1390), 1e-9);
  EXPECT_NEAR(measured.simple->tension, 150, 1e-8);
}

TEST(measure, pulls_part_brake_and_drag) {
  const Measurement measured = found(question(
      "pull", {read("pull", {46}, 1), read("back", {40}, 1), read("released", {5}, 1), read("released_back", {1}, 1),
               read("diameter", {0.8}, 1e-3), read("at_diameter", {0.4}, 1e-3)}));
  EXPECT_NEAR(*measured.tension, 86, 1e-12);  // 43 N · 0.8/0.4
  const auto part = [&](const std::string& key) {
    return std::find_if(measured.parts.begin(), measured.parts.end(), [&](const auto& one) { return one.key == key; })
        ->value.value;
  };
  EXPECT_NEAR(part("brake_torque"), 40 * 0.4, 1e-12);
  EXPECT_NEAR(part("drag_torque"), 3 * 0.4, 1e-12);
  EXPECT_NEAR(part("unbalance"), 3, 1e-12);
}

TEST(measure, a_load_cell_less_its_tare) {
  const Measurement measured = found(question(
      "cell", {read("reading", {153.421356237}, 0.1), read("tare", {12}, 0.1), read("wrap", {turn / 4}, 0.01)}));
  EXPECT_NEAR(*measured.tension, 100, 1e-8);  // T-4
}

TEST(measure, the_window_is_told_by_probability) {
  MeasureInput input = push_question();
  input.target = TensionTarget{};
  const auto state = [&](double low, double high) {
    input.target->low = low;
    input.target->high = high;
    input.target->setpoint = (low + high) / 2;
    return found(input).window->state;
  };
  EXPECT_EQ(state(100, 200), "inside");
  EXPECT_EQ(state(150, 200), "may be outside");
  EXPECT_EQ(state(200, 260), "outside");
  EXPECT_NEAR(found(input).window->probability, 0, 1e-6);
  state(150, 1e6);
  EXPECT_NEAR(found(input).window->probability, 0.5, 1e-3);
}

TEST(measure, the_web_comes_from_the_job) {
  MeasureInput input = push_question();
  input.readings.resize(3);
  input.web = film();
  EXPECT_NEAR(*found(input).tension, 150, 150e-10);
  EXPECT_EQ(line(found(input), "modulus").readings, 0);
}

TEST(measure, without_a_modulus_the_simple_reading_stands_with_a_warning) {
  MeasureInput input = push_question();
  input.readings.erase(input.readings.begin() + 3);
  Problems problems;
  const auto measured = measure(input, problems);
  ASSERT_TRUE(measured);
  EXPECT_TRUE(names(problems, "modulus", "simple reading"));
  EXPECT_NEAR(*measured->tension, 159.629037193, 1e-8);  // T-2, pushed
  EXPECT_EQ(measured->better->key, "stretch");
  EXPECT_GE(*measured->tension - *measured->expanded, 150 - 20);
}

TEST(measure, a_push_past_yield_is_warned_of) {
  MeasureInput input = push_question();
  input.web = film();
  input.web->yield_strength = 13e6;  // 156 N
  Problems problems;
  ASSERT_TRUE(measure(input, problems));
  EXPECT_TRUE(names(problems, "push", "past its yield"));
}

TEST(measure, one_reading_is_warned_of) {
  Problems problems;
  measure(push_question(), problems);
  EXPECT_TRUE(names(problems, "push, force", "one reading"));
  MeasureInput several = push_question();
  several.readings[1].values = {10e-3, 10.1e-3, 9.9e-3};
  several.readings[2].values = {6.38, 6.39, 6.37};
  Problems none;
  measure(several, none);
  EXPECT_TRUE(none.empty());
  several.readings[2].values = {6.38, 6.39};
  measure(several, none);
  EXPECT_TRUE(names(none, "force", "two readings"));
}

TEST(measure, wrong_readings_are_named) {
  const auto changed = [](std::size_t at, double value) {
    MeasureInput input = push_question();
    input.readings[at].values = {value};
    return input;
  };
  EXPECT_TRUE(names(faults(changed(2, -6.4)), "force", "negative"));
  EXPECT_TRUE(names(faults(changed(1, 0)), "push", "zero"));
  EXPECT_TRUE(names(faults(changed(1, 1.2)), "push", "span"));
  EXPECT_TRUE(names(faults(changed(2, 0.1)), "force", "slack web"));
  MeasureInput missing = push_question();
  missing.readings.erase(missing.readings.begin() + 2);
  EXPECT_TRUE(names(faults(missing), "force", "missing"));
  EXPECT_TRUE(names(faults(question("sag", {read("span", {1}, 0), read("sag", {1.1}, 0),
                                            read("basis_weight", {0.08}, 0), read("width", {1}, 0)})),
                    "sag", "span"));
  EXPECT_TRUE(names(faults(question("sag", {read("span", {1}, 0), read("sag", {0.1}, 0)})), "basis_weight", "missing"));
  EXPECT_TRUE(
      names(faults(question("pull", {read("pull", {10}, 1), read("released", {12}, 1)})), "released", "brake off"));
  EXPECT_TRUE(names(faults(question("cell", {read("reading", {10}, 1), read("tare", {12}, 1), read("wrap", {1}, 0)})),
                    "reading", "tare"));
  EXPECT_TRUE(names(faults(question("cell", {read("reading", {10}, 1), read("wrap", {7}, 0)})), "wrap", "round"));
}

TEST(outlooks, rank_by_uncertainty_and_say_what_is_missing) {
  MeasureInput input = push_question();
  input.web = film();
  const auto all = outlooks(input, 150);
  ASSERT_EQ(all.size(), 5U);
  for (std::size_t i = 1; i < all.size(); ++i) {
    EXPECT_TRUE(all[i - 1].possible || !all[i].possible);
    if (all[i].possible) {
      EXPECT_LE(all[i - 1].uncertainty, all[i].uncertainty);
    }
    EXPECT_FALSE(all[i].why.text.empty());
  }
  // 24 µm film of 16 N/m² over a metre at 300 N/m hangs 0.14 mm: no ruler shows it.
  const auto sag = std::find_if(all.begin(), all.end(), [](const auto& one) { return one.method == "sag"; });
  EXPECT_FALSE(sag->possible);
  EXPECT_NE(sag->why.text.find("ruler"), std::string::npos);
}

TEST(outlooks, of_a_stiff_short_span_the_push_is_poor) {
  MeasureInput input = question("push", {read("span", {0.3}, 1e-3)});
  input.web = film();
  input.web->modulus = 70e9;
  input.web->caliper = 100e-6;
  const auto all = outlooks(input, 150);
  const auto push = std::find_if(all.begin(), all.end(), [](const auto& one) { return one.method == "push"; });
  ASSERT_TRUE(push->possible);
  EXPECT_GT(push->share, 0.5);
  EXPECT_NE(all.front().method, "push");
}

TEST(instruction_of, every_method_has_steps_cautions_and_its_fields) {
  for (const MeasureMethod& method : measure_methods()) {
    MeasureInput input;
    input.method = &method;
    const Instruction instruction = instruction_of(input);
    EXPECT_GE(instruction.steps.size(), 4U);
    EXPECT_GE(instruction.cautions.size(), 2U);
    EXPECT_EQ(instruction.fields.size(), method.keys.size());
    EXPECT_TRUE(instruction.expected.empty());
    std::string all;
    for (const Note& step : instruction.steps) all += step.text;
    for (const ReadingKey& key : method.keys)
      if (key.due == Due::always) {
        EXPECT_TRUE(all.find(std::string(key.key)) != std::string::npos || key.key == "frequency") << key.key;
      }
  }
}

// T-2 again: at 150 N a push of 1/60 of the span takes what push_force() says; told in the instruction.
TEST(instruction_of, tells_what_to_expect_on_the_jobs_web) {
  MeasureInput input = push_question();
  input.readings.clear();
  input.web = film();
  input.span = 1.0;
  input.target = TensionTarget{};
  input.target->setpoint = 150;
  const Instruction instruction = instruction_of(input);
  ASSERT_EQ(instruction.expected.size(), 1U);
  EXPECT_NEAR(instruction.expected.front().amounts[1].value, 1.0 / 60, 1e-12);
  const double sine = 1 / std::sqrt(1 + 900.0);  // δ : half span = 1 : 30
  const double strain = std::sqrt(1 + 1 / 900.0) - 1;
  EXPECT_NEAR(instruction.expected.front().amounts[3].value, 2 * sine * (150 * (1 + strain) + 48000 * strain) * 1,
              0.01);
}

}  // namespace
}  // namespace holdback::field
