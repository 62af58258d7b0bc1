// The cards at the machine and the commissioning, from a small stand that is sized for them.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <sstream>

#include "holdback/api/on_site.hpp"
#include "holdback/papers/papers.hpp"
#include "holdback/sizing/commissioning.hpp"
#include "holdback/sizing/plan.hpp"
#include "support/stands.hpp"

namespace holdback::papers {
namespace {

Dossier dossier_of(Stand stand, units::System system = units::System::si) {
  Dossier dossier;
  dossier.file = "stand.toml";
  dossier.date = "2026-11-28";
  dossier.system = system;
  dossier.size.choice = sizing::choose(stand, {});
  dossier.plan.plan = sizing::plan(stand, {});
  if (dossier.size.choice->recommended)
    dossier.commissioning = sizing::commissioning(stand, *dossier.size.choice->recommended, 1e4);
  dossier.stand = std::move(stand);
  return dossier;
}

template <typename Kind>
std::vector<Kind> blocks_of(const Paper& paper) {
  std::vector<Kind> out;
  for (const Block& block : paper.blocks)
    if (const auto* one = std::get_if<Kind>(&block)) out.push_back(*one);
  return out;
}

/// Every word of a paper, blanks that hold lines together as blanks.
std::string words_of(const Paper& paper) {
  std::string out = paper.title + "\n" + paper.subject + "\n";
  for (const auto& one : blocks_of<Heading>(paper)) out += one.text + "\n";
  for (const auto& one : blocks_of<Paragraph>(paper)) out += one.text + "\n";
  for (const auto& one : blocks_of<Verdict>(paper)) out += one.text + "\n";
  for (const auto& one : blocks_of<Warning>(paper)) out += std::string(word_of(one.signal)) + " " + one.text + "\n";
  for (const auto& one : blocks_of<Items>(paper))
    for (const auto& item : one.items) out += item + "\n";
  for (const auto& one : blocks_of<Facts>(paper))
    for (const auto& fact : one.facts) out += fact.label + " " + fact.value + "\n";
  for (const auto& one : blocks_of<Table>(paper))
    for (const auto& row : one.rows)
      for (const auto& cell : row) out += cell.text + "\n";
  const std::string kept = "\u00A0";
  for (auto at = out.find(kept); at != std::string::npos; at = out.find(kept, at)) out.replace(at, kept.size(), " ");
  return out;
}

bool says(const Paper& paper, const std::string& what) { return words_of(paper).find(what) != std::string::npos; }

// ---- set-up card ---------------------------------------------------------------------------------------------------

TEST(setup_card, fits_its_page_and_names_its_job) {
  const Paper card = setup_card(dossier_of(test::small_stand()), "film job");
  EXPECT_TRUE(card.one_page);
  EXPECT_GE(card.size, 12);
  EXPECT_EQ(card.file, "card-01-film-job");
  EXPECT_EQ(card.date, "2026-11-28");
  EXPECT_TRUE(says(card, "Set-up card: film job"));
  EXPECT_TRUE(says(card, "220 N"));
  EXPECT_TRUE(says(card, "198 to 242 N"));  // ±10 % of 220 N
}

TEST(setup_card, has_every_setting_of_the_hand_card) {
  const Dossier dossier = dossier_of(test::small_stand());
  const auto& settings = dossier.plan.plan->jobs.front().by_hand;
  const Paper card = setup_card(dossier, "film job");
  std::vector<double> diameters;
  std::vector<double> pressures;
  for (const auto& table : blocks_of<Table>(card)) {
    if (!table.large) continue;
    for (std::size_t half = 0; half < table.columns.size(); half += 3)
      for (const auto& row : table.rows) {
        if (row.size() <= half) continue;
        diameters.push_back(std::stod(row[half].text) * 1e-3);
        pressures.push_back(std::stod(row[half + 1].text) * 1e5);
      }
  }
  ASSERT_EQ(pressures.size(), settings.size());
  for (std::size_t i = 0; i < settings.size(); ++i) {
    EXPECT_NEAR(pressures[i], settings[i].pressure, 0.01 * settings[i].pressure);
    EXPECT_NEAR(diameters[i], settings[i].from, 0.01 * settings[i].from);
  }
}

TEST(setup_card, draws_the_pairs_to_engage) {
  const Dossier dossier = dossier_of(test::small_stand());
  const auto figures = blocks_of<Figure>(setup_card(dossier, "film job"));
  ASSERT_EQ(figures.size(), 1U);
  const auto engaged = std::to_string(dossier.plan.plan->jobs.front().pairs);
  EXPECT_EQ(figures.front().scene.description.find(engaged + " of 4"), 0U);
}

TEST(setup_card, gives_a_controller_its_setpoint_and_checks_it_at_full_roll_and_core) {
  Stand stand = test::small_stand();
  stand.control.kind = ControlKind::load_cell;
  stand.load_cell = LoadCell{};
  const Dossier dossier = dossier_of(stand);
  const Paper card = setup_card(dossier, "film job");
  EXPECT_TRUE(says(card, "by the load cell"));
  EXPECT_TRUE(says(card, "full roll"));
  EXPECT_TRUE(says(card, "core"));
  EXPECT_FALSE(says(card, "Set by hand"));
  EXPECT_TRUE(says(card, "The load cell shows 198 to 242 N"));
  const auto tables = blocks_of<Table>(card);
  ASSERT_FALSE(tables.empty());
  EXPECT_EQ(tables.front().rows.size(), 3U);
}

TEST(setup_card, gives_a_control_by_diameter_its_whole_curve) {
  Stand stand = test::small_stand();
  stand.control.kind = ControlKind::diameter;
  const Dossier dossier = dossier_of(stand);
  const auto tables = blocks_of<Table>(setup_card(dossier, "film job"));
  ASSERT_FALSE(tables.empty());
  EXPECT_EQ(tables.front().rows.size(), dossier.plan.plan->jobs.front().automatic.size());
}

TEST(setup_card, tells_which_push_the_tension_gives) {
  Dossier dossier = dossier_of(test::small_stand());
  EXPECT_TRUE(says(setup_card(dossier, "film job"), "holdback measure"));
  Answer push;
  push.measurement = Measurement{};
  push.measurement->job = "film job";
  push.measurement->instruction.expected = {
      {"a push of {0} takes about {1}", {{0.02, Quantity::short_length}, {13.2, Quantity::force}}}};
  dossier.pushes = {push};
  EXPECT_TRUE(says(setup_card(dossier, "film job"), "a push of 20.0 mm takes about 13.2 N"));
}

TEST(setup_card, of_a_job_that_fails_says_not_to_run_and_gives_no_setting) {
  Stand stand = test::small_stand();
  stand.brakes.front().rated_torque = 5;  // 220 N on a radius of 0.5 m ask for 110 N·m
  const Paper card = setup_card(dossier_of(stand), "film job");
  const auto verdicts = blocks_of<Verdict>(card);
  ASSERT_EQ(verdicts.size(), 1U);
  EXPECT_EQ(verdicts.front().state, State::fails);
  const auto warnings = blocks_of<Warning>(card);
  ASSERT_FALSE(warnings.empty());
  EXPECT_EQ(warnings.front().signal, Signal::danger);
  EXPECT_EQ(warnings.front().text.find("Do not run this job from this card"), 0U);
  EXPECT_TRUE(blocks_of<Table>(card).empty());
  EXPECT_TRUE(blocks_of<Figure>(card).empty());
  EXPECT_TRUE(says(card, "torque rating"));
}

TEST(setup_card, of_a_job_that_is_not_planned_says_not_to_run) {
  for (const bool empty : {false, true}) {
    const Paper card = setup_card(empty ? Dossier{} : dossier_of(test::small_stand()), "no such job");
    ASSERT_FALSE(blocks_of<Verdict>(card).empty());
    EXPECT_EQ(blocks_of<Verdict>(card).front().state, State::fails);
    EXPECT_TRUE(blocks_of<Table>(card).empty());
  }
}

TEST(setup_card, names_the_limits_that_are_tight) {
  Dossier dossier = dossier_of(test::small_stand());
  auto& job = dossier.size.choice->recommended->jobs.front();
  dossier.plan.plan->jobs.front().state = State::tight;
  auto limit = std::find_if(job.limits.begin(), job.limits.end(),
                            [](const Limit& one) { return one.id == LimitId::stop_torque; });
  ASSERT_NE(limit, job.limits.end());
  limit->state = State::tight;
  limit->margin = 1.04;
  const auto verdicts = blocks_of<Verdict>(setup_card(dossier, "film job"));
  ASSERT_FALSE(verdicts.empty());
  EXPECT_EQ(verdicts.front().state, State::tight);
  EXPECT_NE(verdicts.front().text.find("stop torque"), std::string::npos);
  EXPECT_NE(verdicts.front().text.find("+4"), std::string::npos);
}

TEST(setup_card, of_names_in_any_letters_has_a_file_name_in_plain_ones) {
  Stand stand = test::small_stand();
  stand.jobs.front().name = "Ölpapier / عريض \"7\"";
  const Paper card = setup_card(dossier_of(stand), stand.jobs.front().name);
  EXPECT_EQ(card.file, "card-01-lpapier-7");
  EXPECT_TRUE(says(card, "Ölpapier / عريض \"7\""));
}

TEST(setup_card, speaks_the_readers_units) {
  const Paper card = setup_card(dossier_of(test::small_stand(), units::System::us), "film job");
  EXPECT_TRUE(says(card, "lbf"));
  EXPECT_FALSE(says(card, " mm"));
  EXPECT_FALSE(says(card, "°C"));
}

// ---- maintenance card ----------------------------------------------------------------------------------------------

// The order of 29 CFR 1910.147(d): shut down, isolate and lock, release stored energy, verify; work only afterwards;
// the locks go last.
TEST(maintenance_card, locks_out_and_lets_the_air_off_before_hands_go_in) {
  const Paper card = maintenance_card(dossier_of(test::small_stand()));
  std::vector<std::string> steps;
  for (const auto& items : blocks_of<Items>(card))
    if (items.numbered) steps = items.items;
  const auto step = [&](const std::string& words) {
    const auto found = std::find_if(steps.begin(), steps.end(),
                                    [&](const std::string& one) { return one.find(words) != std::string::npos; });
    EXPECT_NE(found, steps.end()) << words;
    return found - steps.begin();
  };
  const std::vector<std::string> order{
      "Stop the line", "lock it out",     "prove zero pressure", "cool",   "Take the guard off",
      "Measure",       "Change all pads", "Refit the guard",     "Run in", "commissioning sheet",
      "history"};
  for (std::size_t i = 1; i < order.size(); ++i) EXPECT_LT(step(order[i - 1]), step(order[i])) << order[i];
}

TEST(maintenance_card, tells_pads_and_life) {
  Dossier dossier = dossier_of(test::small_stand());
  auto& result = *dossier.size.choice->recommended;
  result.fit.brakes = 1;
  result.jobs.front().wear.life = 1500 * 3600.0;
  result.jobs.push_back(result.jobs.front());
  result.jobs.back().wear.life = 4444 * 3600.0;
  const Paper card = maintenance_card(dossier);
  EXPECT_TRUE(says(card, "8, grade middle"));  // one brake, four pairs, two pads each
  EXPECT_TRUE(says(card, "wear allowed 8 mm"));
  EXPECT_TRUE(says(card, "first check, running 500 h"));  // a third of 1500 h
  EXPECT_TRUE(says(card, "1500 h to 4400 h"));            // two digits
}

TEST(maintenance_card, says_how_long_the_disc_cools) {
  Dossier dossier = dossier_of(test::small_stand());
  auto& job = dossier.size.choice->recommended->jobs.front();
  job.thermal = ThermalFacts{};
  job.thermal->disc_highest = 273.15 + 181.4;
  job.thermal->time_to_open = 24.2 * 60;
  const Paper card = maintenance_card(dossier);
  EXPECT_TRUE(says(card, "below 55 °C: up to 25 min of standing"));
  EXPECT_TRUE(says(card, "The disc gets to 181 °C"));
  job.thermal->never_cool = true;
  EXPECT_TRUE(says(maintenance_card(dossier), "too warm"));
}

TEST(maintenance_card, leaves_room_to_write) {
  const auto tables = blocks_of<Table>(maintenance_card(dossier_of(test::small_stand())));
  ASSERT_FALSE(tables.empty());
  EXPECT_GE(tables.back().row_height, 7);
  EXPECT_GE(tables.back().rows.size(), 6U);
  for (const auto& row : tables.back().rows)
    for (const auto& cell : row) EXPECT_TRUE(cell.text.empty());
}

TEST(maintenance_card, without_a_brake_says_so) {
  const Paper card = maintenance_card(Dossier{});
  ASSERT_EQ(blocks_of<Verdict>(card).size(), 1U);
  EXPECT_EQ(blocks_of<Verdict>(card).front().state, State::fails);
}

// ---- commissioning -------------------------------------------------------------------------------------------------

TEST(commissioning_sheet, has_a_row_to_fill_for_every_setting) {
  const Dossier dossier = dossier_of(test::small_stand());
  const auto tables = blocks_of<Table>(commissioning_sheet(dossier));
  ASSERT_EQ(tables.size(), 1U);
  const auto& points = dossier.commissioning->points;
  ASSERT_EQ(tables.front().rows.size(), points.size());
  EXPECT_GT(tables.front().row_height, 5);
  for (std::size_t i = 0; i < points.size(); ++i) {
    const auto& row = tables.front().rows[i];
    EXPECT_LT(row.size(), tables.front().columns.size());  // the rest is to be written
    EXPECT_NEAR(std::stod(row[3].text) * 1e5, points[i].pressure, 500);
    EXPECT_NEAR(std::stod(row[4].text), points[i].torque, 0.006 * points[i].torque + 0.05);
    EXPECT_LE(std::stod(row[6].text), std::stod(row[7].text));
  }
}

TEST(commissioning_sheet, without_a_brake_says_so) {
  const Paper sheet = commissioning_sheet(Dossier{});
  ASSERT_EQ(blocks_of<Verdict>(sheet).size(), 1U);
  EXPECT_EQ(blocks_of<Verdict>(sheet).front().state, State::fails);
  EXPECT_TRUE(blocks_of<Table>(sheet).empty());
}

enum class Reading { torque, pull };

/// The CSV with the expected values written into it, every `step`-th row alone.
std::string filled(const Dossier& dossier, Reading what, std::size_t step) {
  const auto& all = *dossier.commissioning;
  std::istringstream lines(commissioning_csv(dossier));
  std::string out;
  std::string line;
  for (int i = 0; i < 2 && std::getline(lines, line); ++i) out += line + "\n";
  const auto in = [&](double si, Quantity kind) {
    return std::to_string(units::in_display_unit(si, kind, dossier.system));
  };
  for (std::size_t i = 0; std::getline(lines, line); ++i) {
    EXPECT_LT(i, all.points.size());
    if (i % step != 0) continue;
    const auto& point = all.points.at(i);
    const auto empty = line.rfind(",,,,,");
    EXPECT_NE(empty, std::string::npos) << line;
    const auto values = what == Reading::torque ? ",,," + in(point.torque, Quantity::torque) + ",,"
                                                : "," + in(point.pull, Quantity::force) + "," +
                                                      in(all.diameter, Quantity::short_length) + ",,,";
    out += line.replace(empty, 5, values) + "\n";
  }
  return out;
}

Answer fit_of(const Dossier& dossier, const std::string& readings) {
  api::Request request;
  request.command = "fit";
  request.brake = dossier.commissioning->fit.brake;
  request.grade = dossier.commissioning->fit.grade;
  request.brakes = dossier.commissioning->fit.brakes;
  request.fit = api::FitRequest{{"readings.csv", readings}, false};
  Answer answer;
  api::fit(dossier.stand, request, answer);
  return answer;
}

class commissioning_csv_read_back : public testing::TestWithParam<std::tuple<units::System, Reading, std::size_t>> {};

// What the fit is to find stands in the stand file: friction 0.35, threshold 0.1 bar, the drag of shaft and brakes.
TEST_P(commissioning_csv_read_back, finds_the_nominal_brake) {
  const auto [system, what, step] = GetParam();
  const Dossier dossier = dossier_of(test::small_stand(), system);
  const Answer answer = fit_of(dossier, filled(dossier, what, step));
  for (const auto& problem : answer.problems) ADD_FAILURE() << problem.what.text << " in " << problem.field;
  ASSERT_TRUE(answer.fit);
  EXPECT_TRUE(answer.fit->sufficient);
  ASSERT_TRUE(answer.fit->friction);
  EXPECT_NEAR(answer.fit->friction->value, 0.35, 0.35 * 0.005);
  EXPECT_NEAR(answer.fit->threshold.value, 1e4, 1500);
  const double drag = 0.8 + 0.2 * dossier.commissioning->fit.brakes;
  EXPECT_NEAR(answer.fit->drag.value, drag, 0.1 * drag);
  ASSERT_FALSE(answer.fit->verdicts.empty());
  EXPECT_EQ(answer.fit->verdicts.front().cause, BrakeCause::as_expected);
}

INSTANTIATE_TEST_SUITE_P(in_both_systems, commissioning_csv_read_back,
                         testing::Combine(testing::Values(units::System::si, units::System::us),
                                          testing::Values(Reading::torque, Reading::pull), testing::Values(1U, 2U)));

TEST(commissioning_csv, without_a_brake_is_a_head_alone) {
  const auto text = commissioning_csv(Dossier{});
  EXPECT_EQ(text.find("pressure [bar],pairs,direction,tension [N],diameter [mm],torque"), 0U);
  EXPECT_EQ(std::count(text.begin(), text.end(), '\n'), 1);
}

TEST(commissioning_csv, keeps_a_title_with_quotes_in_one_cell) {
  Stand stand = test::small_stand();
  stand.title = "=stand \"A\", left\nside";
  const Dossier dossier = dossier_of(stand);
  const auto text = commissioning_csv(dossier);
  EXPECT_EQ(text.front(), '"');
  EXPECT_NE(text.find("\"\"A\"\""), std::string::npos);
  EXPECT_EQ(static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')),
            dossier.commissioning->points.size() + 2);
}

}  // namespace
}  // namespace holdback::papers
