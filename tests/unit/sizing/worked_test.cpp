#include "holdback/sizing/worked.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <regex>
#include <set>

#include "holdback/files/stand_file.hpp"
#include "holdback/sizing/choose.hpp"
#include "support/arithmetic.hpp"
#include "support/files.hpp"
#include "support/stands.hpp"

namespace holdback::sizing {
namespace {

/// What was chosen for a stand, with every job written down.
struct Written {
  Stand stand;
  Choice choice;
  std::vector<WorkedJob> jobs{};
};

Written written(Stand stand) {
  Written all{std::move(stand), {}, {}};
  ChooseOptions options;
  options.brief = true;
  options.threads = 1;
  all.choice = choose(all.stand, options);
  for (const JobFit& job : all.choice.recommended->jobs)
    all.jobs.push_back(worked_job(all.stand, job, all.choice.recommended->fit));
  return all;
}

Written example(const std::string& name) {
  const files::StandFile file = files::read_stand(test::read_source("examples/" + name), name);
  EXPECT_FALSE(file.stand.jobs.empty()) << name;
  return written(file.stand);
}

const std::vector<std::string>& examples() {
  static const std::vector<std::string> names{"01-label-slitter.toml", "02-film-laminator.toml", "03-board-stand.toml",
                                              "04-film-in-motion.toml"};
  return names;
}

Shaft stepped_shaft() {
  Shaft shaft;
  shaft.bearing_span = 1.6;
  shaft.roll_centre = 0.7;
  shaft.sections = {{0.3, 0.05, 0}, {1.0, 0.09, 0.04}, {0.3, 0.06, 0}};
  shaft.modulus = 206e9;
  shaft.density = 7850;
  shaft.tensile_strength = 500e6;
  shaft.notch_factor = 2;
  shaft.pull_angle = 0.6;
  shaft.bearing_rating = 60e3;
  shaft.bearing_kind = BearingKind::roller;
  shaft.core_grip = 400;
  return shaft;
}

/// A stand that describes all that can be described.
Stand described() {
  Stand stand = test::small_stand();
  stand.shaft = stepped_shaft();
  stand.path.longest_span = 2;
  stand.idlers = {{"slow", 0.08, 2, 0.3, 8e-6, 0.01, 0.002, 1}, {"heavy", 0.12, 2.5, 0.25, 12e-6, 0.05, 0.02, 1}};
  stand.jobs[0].web.wound_tension = 400;
  stand.jobs[0].roll.runout = 0.8e-3;
  stand.brakes[0].grades[0].pressure_speed_limit = 3e6;
  return stand;
}

Stand of_sectors() {
  Stand stand = described();
  stand.brakes[0].pad = SectorPad{0.2, 0.32, 0.6};
  stand.jobs[0].tension.reset();
  return stand;
}

Stand of_large_round_pads() {
  Stand stand = described();
  stand.brakes[0].pad = RoundPad{0.14, 0.325};
  stand.idlers[0].drag = stand.idlers[0].inertia = 0;
  stand.idlers.pop_back();
  stand.shaft->bearing_kind = BearingKind::ball;
  stand.shaft->tensile_strength = 1500e6;
  return stand;
}

Stand of_pads_wider_than_the_table() {
  Stand stand = test::small_stand();
  stand.brakes[0].pad = RoundPad{0.2, 0.325};
  stand.brakes[0].cooling.clear();  // what the disc sheds follows from its dimensions
  stand.brakes[0].cooling_rise = 0;
  return stand;
}

/// Hot pads: friction fades and wear rises, and a small brake leaves the web slack.
Stand too_small() {
  Stand stand = described();
  stand.jobs[0].tension = 500;
  stand.line.emergency_stop_time = 0.5;
  stand.brakes[0].most_brakes = 1;
  stand.brakes[0].pairs = 2;
  stand.brakes[0].grades[0].fade_start = 350;
  stand.brakes[0].grades[0].wear_knee = 360;
  return stand;
}

Stand of_plies() {
  Stand stand = described();
  Web& web = stand.jobs[0].web;
  web.material = Material::laminate;
  web.modulus.reset();
  web.yield_strength.reset();
  web.plies = {{Material::polyester, 12e-6, {}, 4.2e9, 90e6},
               {Material::aluminium_foil, 9e-6, {}, 60e9, 40e6},
               {Material::polyethylene, 15e-6, {}, 0.25e9, 10e6}};
  return stand;
}

Stand on_thin_overhung_shaft() {
  Stand stand = described();
  stand.shaft->support = Support::cantilever;
  stand.shaft->bearing_span = 0.4;
  stand.shaft->roll_centre = 1.2;
  stand.shaft->sections = {{0.4, 0.045, 0}};
  stand.shaft->tensile_strength = 250e6;
  stand.limits.emergency_stop_tension = 1;
  return stand;
}

std::vector<Written> all_written() {
  std::vector<Written> all;
  for (const std::string& name : examples()) all.push_back(example(name));
  for (const auto stand : {described, of_sectors, of_large_round_pads, of_pads_wider_than_the_table, too_small,
                           of_plies, on_thin_overhung_shaft})
    all.push_back(written(stand()));
  return all;
}

const std::vector<Written>& every_stand() {
  static const std::vector<Written> all = all_written();
  return all;
}

template <class Check>
void for_every_step(Check check) {
  for (const Written& stand : every_stand())
    for (const WorkedJob& job : stand.jobs)
      for (const WorkedStep& step : job.steps) {
        SCOPED_TRACE(stand.stand.title + ", " + job.job + ", " + step.name + ": " + step.formula);
        check(step);
      }
}

std::map<std::string, double> values_of(const WorkedStep& step) {
  std::map<std::string, double> values;
  for (const WorkedTerm& term : step.terms) values[term.symbol] = term.value;
  return values;
}

const WorkedStep* find(const WorkedJob& job, const std::string& id, const std::string& name = {}) {
  const auto at = std::find_if(job.steps.begin(), job.steps.end(), [&](const WorkedStep& step) {
    return step.id == id && step.name.find(name) != std::string::npos;
  });
  return at == job.steps.end() ? nullptr : &*at;
}

double result(const WorkedJob& job, const std::string& id, const std::string& name = {}) {
  const WorkedStep* step = find(job, id, name);
  return step == nullptr ? NAN : step->result.value;
}

/// Of the disc in steady run.
double temperature(const WorkedStep& step) {
  for (const WorkedTerm& term : step.terms)
    if (term.name.rfind("steady temperature", 0) == 0) return term.value;
  return NAN;
}

TEST(arithmetic, reads_what_a_person_would) {
  const auto value = [](const char* text) { return test::Arithmetic(text, {{"a_1", 3}, {"b", 4}}).value(); };
  EXPECT_DOUBLE_EQ(value("a_1 + b · 2 − 1"), 10);
  EXPECT_DOUBLE_EQ(value("−a_1^2 / (b − 1) / 3"), -1);
  EXPECT_DOUBLE_EQ(value("2^3^2"), 512);
  EXPECT_DOUBLE_EQ(value("4^(−0.5)"), 0.5);
  EXPECT_NEAR(value("sqrt(b) + exp(ln(a_1)) + sin(π / 2) − cos(0) + tan(0)"), 5, 1e-14);
  for (const char* wrong : {"", "a", "a_1 b", "(a_1", "a_1 +", "log(2)", "1.5e3"})
    EXPECT_THROW(value(wrong), std::invalid_argument) << wrong;
}

TEST(worked_job, every_formula_with_its_terms_gives_its_result) {
  for_every_step([](const WorkedStep& step) {
    test::Arithmetic formula(step.formula, values_of(step));
    double value = NAN;
    ASSERT_NO_THROW(value = formula.value());
    EXPECT_NEAR(value, step.result.value, 1e-9 * std::abs(step.result.value));
    EXPECT_TRUE(std::isfinite(step.result.value));
    const bool given = step.formula == "100" || step.formula == "0";  // a margin beyond what is shown
    EXPECT_TRUE(given || formula.used().size() == step.terms.size()) << "a term is named twice or stands in no formula";
  });
}

/// Fits that were not chosen fail in ways that the best one does not.
TEST(worked_job, every_formula_gives_its_result_on_every_fit_that_was_tried) {
  for (const Written& stand : every_stand())
    for (const FitResult& tried : stand.choice.all) {
      ChooseOptions options{{}, false, tried.fit.brake, tried.fit.grade, tried.fit.brakes, 1, true};
      const Choice choice = choose(stand.stand, options);
      for (const JobFit& job : choice.recommended->jobs)
        for (const WorkedStep& step : worked_job(stand.stand, job, tried.fit).steps) {
          const double value = test::Arithmetic(step.formula, values_of(step)).value();
          EXPECT_NEAR(value, step.result.value, 1e-9 * std::abs(step.result.value))
              << tried.fit.brake << ", " << tried.fit.grade << ", " << job.job << ", " << step.name;
        }
    }
}

TEST(worked_job, every_step_is_named_and_says_what_its_quantities_are) {
  for_every_step([](const WorkedStep& step) {
    EXPECT_FALSE(step.name.empty());
    EXPECT_FALSE(step.result.symbol.empty());
    for (const WorkedTerm& term : step.terms) EXPECT_FALSE(term.name.empty()) << term.symbol;
  });
}

TEST(worked_job, every_id_is_a_heading_of_the_method_page_and_every_source_is_known) {
  const std::string method = "\n" + test::read_source("docs/method.md");
  const std::string sources = test::read_source("docs/sources.bib");
  const std::set<std::string> words{"by definition", "derived", "common practice, no source"};
  for_every_step([&](const WorkedStep& step) {
    EXPECT_NE(method.find("\n### " + step.id + "\n"), std::string::npos) << step.id;
    EXPECT_TRUE(words.count(step.source) == 1 || sources.find("{" + step.source + ",") != std::string::npos)
        << step.source;
  });
}

/// A checker writes a symbol down once: wherever it stands in a job, it is the same quantity with the same value.
TEST(worked_job, a_symbol_means_one_thing_in_a_job) {
  for (const Written& stand : every_stand())
    for (const WorkedJob& job : stand.jobs) {
      std::map<std::string, WorkedTerm> known;
      const auto look = [&](const WorkedTerm& term, const std::string& step) {
        const WorkedTerm& before = known.emplace(term.symbol, term).first->second;
        EXPECT_NEAR(term.value, before.value, 1e-12 * std::abs(before.value))
            << job.job << ", " << step << ": " << term.symbol;
        EXPECT_EQ(term.kind, before.kind) << job.job << ", " << step << ": " << term.symbol;
      };
      for (const WorkedStep& step : job.steps) {
        for (const WorkedTerm& term : step.terms) look(term, step.name);
        if (step.id != "assess") look(step.result, step.name);
      }
      EXPECT_GT(known.size(), 60U);
    }
}

/// Every margin goes back to the steps: what it compares came out of one, or is a bound of the stand file.
TEST(worked_job, a_margin_takes_its_value_from_a_step) {
  for (const Written& stand : every_stand())
    for (const WorkedJob& job : stand.jobs) {
      std::set<std::string> results;
      for (const WorkedStep& step : job.steps) {
        const auto from_a_step = [&](const WorkedTerm& term) {
          return results.count(term.symbol) == 1 || term.symbol == "v" || term.symbol.rfind("Theta_", 0) == 0;
        };
        const bool clipped = step.formula == "100" || step.formula == "0";
        EXPECT_TRUE(step.id != "assess" || clipped || std::any_of(step.terms.begin(), step.terms.end(), from_a_step))
            << job.job << ", " << step.name;
        results.insert(step.result.symbol);
      }
    }
}

TEST(worked_job, comes_to_the_numbers_of_the_choice) {
  for (const Written& stand : every_stand())
    for (std::size_t j = 0; j < stand.jobs.size(); ++j) {
      const WorkedJob& job = stand.jobs[j];
      const JobFit& fit = stand.choice.recommended->jobs[j];
      SCOPED_TRACE(stand.stand.title + ", " + job.job);
      EXPECT_DOUBLE_EQ(result(job, "roll_length"), fit.roll.length);
      EXPECT_DOUBLE_EQ(result(job, "web_mass") + stand.stand.jobs[j].roll.core_mass, fit.roll.mass);
      EXPECT_DOUBLE_EQ(result(job, "web_inertia", "full roll"), fit.roll.inertia_full);
      EXPECT_DOUBLE_EQ(result(job, "core_inertia"), fit.roll.inertia_core);
      EXPECT_DOUBLE_EQ(result(job, "tension_target", "low end"), fit.tension.low);
      EXPECT_DOUBLE_EQ(result(job, "tension_target", "high end"), fit.tension.high);
      EXPECT_DOUBLE_EQ(result(job, "slip_power", "all brakes"), fit.slip_power);
      EXPECT_DOUBLE_EQ(result(job, "pad_pressure_for", "nominal friction (full roll)"), fit.pressure_full);
      EXPECT_DOUBLE_EQ(result(job, "pad_pressure_for", "nominal friction (core)"), fit.pressure_core);
      EXPECT_DOUBLE_EQ(result(job, "lowest_tension"), fit.lowest_tension);
      EXPECT_DOUBLE_EQ(result(job, "pad_life", "pads worn in a year"), fit.wear.pads_per_year);
      EXPECT_EQ(find(job, "overrun_slack", "emergency") != nullptr, fit.emergency_stop.slack > 0);
      if (fit.shaft) {
        EXPECT_DOUBLE_EQ(result(job, "grip_torque"), fit.shaft->grip_torque);
        EXPECT_DOUBLE_EQ(result(job, "fatigue_safety"), fit.shaft->safety);
        EXPECT_DOUBLE_EQ(result(job, "bend_beam"), fit.shaft->bearing_load);
      }
    }
}

TEST(worked_job, comes_to_the_value_and_the_margin_of_every_limit) {
  const std::map<LimitId, std::string> steps{{LimitId::highest_pressure, "pad_pressure_for"},
                                             {LimitId::lowest_pressure, "pad_pressure_for"},
                                             {LimitId::lowest_tension, "lowest_tension"},
                                             {LimitId::tension_resolution, "tension_step"},
                                             {LimitId::ramp_tension, "released_tension"},
                                             {LimitId::stop_torque, "brake_torque"},
                                             {LimitId::emergency_stop_torque, "brake_torque"},
                                             {LimitId::holding_torque, "brake_torque"},
                                             {LimitId::torque_rating, "brake_torque"},
                                             {LimitId::slip_power, "slip_power"},
                                             {LimitId::stop_temperature, "adiabatic_rise"},
                                             {LimitId::stop_surface, "slab_stop_peak"},
                                             {LimitId::pressure_speed, "contact_pressure"},
                                             {LimitId::pad_life, "pad_life"},
                                             {LimitId::span_sag, "sag_tension"},
                                             {LimitId::roll_balance, "balance_tension"},
                                             {LimitId::cinching, "cinching_tension"},
                                             {LimitId::core_grip, "grip_torque"},
                                             {LimitId::shaft_fatigue, "fatigue_safety"},
                                             {LimitId::bearing_life, "bearing_life"}};
  for (const Written& stand : every_stand())
    for (std::size_t j = 0; j < stand.jobs.size(); ++j) {
      const std::vector<WorkedStep>& all = stand.jobs[j].steps;
      for (const Limit& limit : stand.choice.recommended->jobs[j].limits) {
        SCOPED_TRACE(stand.stand.title + ", " + stand.jobs[j].job + ", " + std::string(info(limit.id).name));
        EXPECT_EQ(result(stand.jobs[j], "assess", "margin: " + std::string(info(limit.id).name)), limit.margin);
        const auto id = steps.find(limit.id);
        if (id == steps.end()) continue;
        EXPECT_TRUE(std::any_of(all.begin(), all.end(), [&](const WorkedStep& step) {
          return step.id == id->second && std::abs(step.result.value - limit.value) <= 1e-12 * std::abs(limit.value);
        }));
      }
    }
}

TEST(worked_job, comes_to_the_torques_of_the_envelope) {
  for (const Written& stand : every_stand()) {
    const Envelope& envelope = *stand.choice.envelope;
    const auto at = std::find_if(stand.jobs.begin(), stand.jobs.end(),
                                 [&](const WorkedJob& job) { return job.job == envelope.job; });
    ASSERT_NE(at, stand.jobs.end());
    SCOPED_TRACE(envelope.job);
    EXPECT_DOUBLE_EQ(result(*at, "brake_torque", "run (full roll)"), envelope.run.back());
    EXPECT_DOUBLE_EQ(result(*at, "brake_torque", "run (core)"), envelope.run.front());
    EXPECT_DOUBLE_EQ(result(*at, "pad_torque", "lowest pressure"), envelope.floor.front());
    const double highest = *std::max_element(envelope.temperature.begin(), envelope.temperature.end());
    const WorkedStep* balance = find(*at, "steady_temperature");
    ASSERT_NE(balance, nullptr);
    EXPECT_NEAR(temperature(*balance), highest, 1e-9 * highest);
  }
}

/// Steps that close an iteration: what the disc sheds is what it takes, what drives an idler is what it asks for.
TEST(worked_job, closes_what_was_found_by_iteration) {
  int balances = 0, idlers = 0, rolls = 0;
  for (const Written& stand : every_stand())
    for (const WorkedJob& job : stand.jobs) {
      SCOPED_TRACE(stand.stand.title + ", " + job.job);
      for (const WorkedStep& step : job.steps) {
        if (step.id != "steady_temperature") continue;
        const std::string place = step.name.substr(step.name.find('('));
        const double taken = result(job, "slip_power", "one disc " + place);
        EXPECT_NEAR(step.result.value, taken, 2e-6 * taken);
        ++balances;
      }
      if (const WorkedStep* put_in = find(job, "traction_torque")) {
        EXPECT_NEAR(put_in->result.value, result(job, "idler_tension"), 1e-6 * put_in->result.value);
        ++idlers;
      }
      if (const WorkedStep* roll = find(job, "periodic_state")) {
        EXPECT_NEAR(roll->result.value, 0, 1e-4);
        ++rolls;
      }
    }
  EXPECT_GT(balances, 20);
  EXPECT_GT(idlers, 20);
  EXPECT_GT(rolls, 8);
}

/// A slab holds the heat nearer to its face than a body without end does.
TEST(worked_job, shows_a_face_at_least_as_hot_as_that_of_a_thick_disc) {
  for (const Written& stand : every_stand())
    for (const WorkedJob& job : stand.jobs) {
      const WorkedStep* face = find(job, "slab_stop_peak");
      ASSERT_NE(face, nullptr);
      const double rise = face->result.value - temperature(*face);
      EXPECT_GE(rise, 0.998 * result(job, "stop_surface_peak")) << job.job;  // both are read, one from a table
    }
}

TEST(worked_job, writes_of_a_topic_only_what_the_stand_describes) {
  const Written plain = written(test::small_stand());
  for (const char* id : {"grip_torque", "sag_tension", "traction_torque", "balance_tension", "cinching_tension"})
    EXPECT_EQ(find(plain.jobs[0], id), nullptr) << id;
  const Written full = written(described());
  for (const char* id : {"grip_torque", "sag_tension", "traction_torque", "balance_tension", "cinching_tension"})
    EXPECT_NE(find(full.jobs[0], id), nullptr) << id;
}

TEST(worked_job, follows_heat_and_slack_where_they_bite) {
  const Written hot = written(too_small());
  for (const char* id : {"fade_factor", "wear_growth", "slack_deceleration", "overrun_slack"})
    EXPECT_NE(find(hot.jobs[0], id), nullptr) << id;
}

TEST(worked_job, refuses_a_fit_that_the_stand_does_not_have) {
  const Written plain = written(test::small_stand());
  Fit fit = plain.choice.recommended->fit;
  fit.grade = "none of ours";
  EXPECT_THROW(worked_job(plain.stand, plain.choice.recommended->jobs[0], fit), std::invalid_argument);
}

}  // namespace
}  // namespace holdback::sizing
