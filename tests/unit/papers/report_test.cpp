// The selection report from hand-made dossiers: what it says, what it leaves out, and that it loses nothing. Expected
// texts are worked out by hand from the numbers that the dossier is given.
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "holdback/papers/papers.hpp"
#include "support/stands.hpp"
#include "unit/draw/figure_samples.hpp"
#include "unit/draw/motion_samples.hpp"

namespace holdback::papers {
namespace {

const std::string no_break = "\u00A0";

std::string loosened(std::string text) {
  for (auto at = text.find(no_break); at != std::string::npos; at = text.find(no_break, at))
    text.replace(at, no_break.size(), " ");
  return text;
}

template <typename T>
std::vector<T> all(const Paper& paper) {
  std::vector<T> out;
  for (const auto& block : paper.blocks)
    if (const auto* found = std::get_if<T>(&block)) out.push_back(*found);
  return out;
}

std::vector<std::string> chapters(const Paper& paper) {
  std::vector<std::string> out;
  for (const auto& heading : all<Heading>(paper))
    if (heading.level == 1) out.push_back(heading.text);
  return out;
}

bool has_chapter(const Paper& paper, const std::string& title) {
  const auto found = chapters(paper);
  return std::any_of(found.begin(), found.end(),
                     [&](const std::string& each) { return each.find(title) != std::string::npos; });
}

/// Collects every text of a block.
struct Words {
  std::string& out;
  void operator()(const Heading& b) const { out += b.text + "\n"; }
  void operator()(const Paragraph& b) const { out += b.text + "\n"; }
  void operator()(const Items& b) const {
    for (const auto& item : b.items) out += item + "\n";
  }
  void operator()(const Facts& b) const {
    for (const auto& fact : b.facts) out += fact.label + ": " + fact.value + "\n";
  }
  void operator()(const Table& b) const {
    out += b.caption + "\n";
    for (const auto& column : b.columns) out += column.head + " [" + column.unit + "] | ";
    out += "\n";
    for (const auto& row : b.rows) {
      for (const auto& cell : row) out += cell.text + " | ";
      out += "\n";
    }
  }
  void operator()(const Figure& b) const { out += b.scene.title + "\n"; }
  void operator()(const Equation& b) const {
    out += b.name + "\n" + b.formula + "\n" + b.put_in + "\n" + b.result + "\n" + b.source + "\n";
  }
  void operator()(const Warning& b) const { out += b.text + "\n"; }
  void operator()(const Verdict& b) const { out += b.text + "\n"; }
  void operator()(const PageBreak& /*unused*/) const {}
};

std::string words(const Paper& paper) {
  std::string out;
  for (const auto& block : paper.blocks) std::visit(Words{out}, block);
  return loosened(out);
}

bool says(const Paper& paper, const std::string& text) { return words(paper).find(text) != std::string::npos; }

/// The first table whose caption holds the text; an empty one when there is none.
Table table(const Paper& paper, const std::string& caption) {
  for (auto& each : all<Table>(paper))
    if (each.caption.find(caption) != std::string::npos) return each;
  return {};
}

std::size_t column(const Table& table, const std::string& head) {
  for (std::size_t i = 0; i < table.columns.size(); ++i)
    if (table.columns[i].head == head) return i;
  ADD_FAILURE() << "no column " << head << " in " << table.caption;
  return 0;
}

std::vector<std::string> texts(const Table& table, const std::string& head) {
  std::vector<std::string> out;
  for (const auto& row : table.rows) out.push_back(loosened(row.at(column(table, head)).text));
  return out;
}

bool holds_name(const Table& table, const std::string& name) {
  return std::any_of(table.rows.begin(), table.rows.end(),
                     [&](const auto& row) { return !row.empty() && row.front().text == name; });
}

ShaftFacts shaft_facts() {
  ShaftFacts shaft;
  shaft.deflection = 0.00021;
  shaft.slope_first = 0.0004;
  shaft.slope_second = 0.0005;
  shaft.bending_stress = 31.4e6;
  shaft.torsion_stress = 4.2e6;
  shaft.safety = 2.71;
  shaft.whirl_speed = 300;
  shaft.whirl_speed_full = 120;
  shaft.top_speed = 74;
  shaft.bearing_load = 2310;
  shaft.bearing_life = 41234 * 3600.0;
  shaft.grip_torque = 87;
  shaft.grip_diameter = 0.6;
  return shaft;
}

/// A step that a person does in the head: 120 N · 1 m / 2 − 1.5 N·m = 58.5 N·m.
WorkedStep torque_step() {
  return {"brake_torque",
          "brake torque in steady run",
          "F · d / 2 − M_drag",
          {{"F", "tension", Quantity::force, 120},
           {"d", "diameter of the roll", Quantity::short_length, 1},
           {"M_drag", "drag", Quantity::torque, 1.5}},
          {"M", "brake torque", Quantity::torque, 58.5},
          "without the roll's thinning",
          "meriam"};
}

/// Everything that a dossier can hold: six jobs, the first failing, the first in depth.
Dossier full(int jobs = 6) {
  Dossier d;
  d.file = "stand.toml";
  d.date = "2026-11-28";
  d.stand = test::small_stand();
  d.stand.title = "Label slitter, unwind A (invented)";
  d.stand.brakes.front().name = "disc 330";
  d.stand.brakes.front().grades.front().name = "low";
  d.size = samples::choice(jobs);
  auto& best = *d.size.choice->recommended;
  d.stand.jobs.clear();
  for (auto& fit : best.jobs) {
    auto job = test::film_job();
    job.name = fit.job;
    d.stand.jobs.push_back(job);
    fit.shaft = shaft_facts();
    fit.wear = {12345 * 3600.0, 2.2e7, 1834, 1.2e7, 8.3, 240.5};
    fit.stop = {12, 203.4, 181.2, 0.6, 25300, 350.15, 362.15, 0, 0, 3.21, 14.3, false, false};
    fit.emergency_stop = fit.stop;
    fit.web_break = {150, 22.4, 0.6, false};
  }
  best.worst_job = best.jobs.back().job;
  best.pads_per_year = 14.2;
  d.size.outcome = Outcome::fails;
  d.size.defaults = {{"air.supply_pressure", "", "6 bar"}};
  auto& choice = *d.size.choice;
  choice.fits_tried = 12;
  choice.why = {"it covers more jobs", {}};
  choice.next = best;
  choice.next->fit.grade = "middle";
  choice.likelihood = MixLikelihood{4096, 0.93, {{Input::friction, 0.2}, {Input::ambient, 5}}};
  choice.assumptions = {{"air at {0}", {{301.15, Quantity::temperature}}}};
  choice.cautions = {{"Keep clear of the in-running nip.", {}}};
  choice.uncovered = {
      {best.jobs.front().job,
       {"the stop asks for {0}", {{203.4, Quantity::torque}}},
       {{LimitId::stop_torque, 203.4, 181.2, 0.89, 0.1, 0.6, LoadCase::stop, Known::formula, State::fails}},
       {{RemedyKind::slower_stop,
         {"stop in {0} instead of {1}", {{16, Quantity::duration}, {12, Quantity::duration}}},
         State::tight,
         LimitId::stop_torque,
         1.02,
         {"tickets"},
         {}}}}};
  d.plan = samples::plan(1);
  d.plan.plan->jobs.front().job = best.jobs.front().job;
  d.in_depth = {d.size};
  d.in_depth.front().choice->job = best.jobs.front();
  d.simulations = {samples::simulate()};
  d.tunings = {samples::tune()};
  d.worked = WorkedJob{best.jobs.front().job, {torque_step()}};
  return d;
}

/// A stand without a brake: nothing is recommended and nothing else is known.
Dossier bare() {
  Dossier d;
  d.file = "stand.toml";
  d.stand = test::small_stand();
  d.stand.brakes.clear();
  d.size.command = "size";
  d.size.outcome = Outcome::fails;
  d.size.choice = Choice{};
  return d;
}

void expect_no_empty_section(const Paper& paper) {
  const Heading* before = nullptr;
  for (const auto& block : paper.blocks) {
    const auto* heading = std::get_if<Heading>(&block);
    if (before != nullptr && heading != nullptr) {
      EXPECT_LT(before->level, heading->level) << "nothing under: " << before->text;
    }
    before = heading;
  }
  EXPECT_EQ(before, nullptr) << "nothing under the last heading";
}

TEST(selection_report, chapters_stand_in_the_order_in_which_an_engineer_reads) {
  const auto found = chapters(selection_report(full()));
  const std::vector<std::string> wanted{"1 The result in short",
                                        "2 The stand",
                                        "3 The mix",
                                        "4 The fit for each job",
                                        "5 What falls out and what would bring it in",
                                        "6 Jobs in depth: torque, limits, tension window",
                                        "7 Heat",
                                        "8 Stops and web break",
                                        "9 Pressure over the roll",
                                        "10 Control",
                                        "11 Pads",
                                        "12 Shaft and core",
                                        "13 Uncertainty",
                                        "14 One job by hand: every equation with its numbers",
                                        "15 Assumptions, defaults, limits of the model",
                                        "16 Cautions"};
  EXPECT_EQ(found, wanted);
}

TEST(selection_report, cover_says_what_it_is_of_and_what_it_is_not) {
  const auto paper = selection_report(full());
  EXPECT_TRUE(paper.cover);
  EXPECT_EQ(paper.file, "selection-report");
  EXPECT_EQ(paper.subject, "Label slitter, unwind A (invented)");
  EXPECT_EQ(paper.date, "2026-11-28");
  ASSERT_TRUE(std::holds_alternative<Facts>(paper.blocks.front()));
  for (const auto* text : {"date: 2026-11-28", "stand file: stand.toml", "units: SI", "what it is not: an approval"})
    EXPECT_TRUE(says(paper, text)) << text;
  auto undated = full();
  undated.date.clear();
  EXPECT_TRUE(says(selection_report(undated), "date: not given"));
}

TEST(selection_report, what_is_absent_leaves_no_empty_section) {
  auto d = full();
  for (auto* fit : {&*d.size.choice->recommended, &*d.in_depth.front().choice->recommended})
    for (auto& job : fit->jobs) {
      job.shaft.reset();
      job.likelihood.reset();
      job.thermal.reset();
    }
  d.in_depth.front().choice->job->likelihood.reset();
  d.in_depth.front().choice->job->thermal.reset();
  d.in_depth.front().choice->job->window = {};
  d.size.choice->likelihood.reset();
  d.size.choice->uncovered.clear();
  d.simulations.clear();
  d.tunings.clear();
  d.worked.reset();
  d.plan = {};
  const auto paper = selection_report(d);
  for (const auto* title :
       {"Shaft and core", "Uncertainty", "Control", "One job by hand", "Pressure over the roll", "What falls out"})
    EXPECT_FALSE(has_chapter(paper, title)) << title;
  for (const auto* title : {"Heat", "Stops", "Pads", "Cautions"}) EXPECT_TRUE(has_chapter(paper, title)) << title;
  expect_no_empty_section(paper);
  expect_no_empty_section(selection_report(full()));
}

TEST(selection_report, without_a_brake_it_says_so_and_what_would_bring_jobs_in) {
  const auto paper = selection_report(bare());
  const auto verdicts = all<Verdict>(paper);
  ASSERT_EQ(verdicts.size(), 1U);
  EXPECT_EQ(verdicts.front().state, State::fails);
  EXPECT_TRUE(says(paper, "no brake to choose from"));
  EXPECT_TRUE(says(paper, "add a candidate brake"));
  EXPECT_TRUE(holds_name(table(paper, "as given"), "film job"));
  EXPECT_TRUE(says(paper, "recommended fit: none"));
  for (const auto* title : {"The fit for each job", "Stops", "Pads", "Heat"})
    EXPECT_FALSE(has_chapter(paper, title)) << title;
  expect_no_empty_section(paper);
}

TEST(selection_report, an_answer_without_a_choice_is_a_failure_too) {
  auto d = bare();
  d.size.choice.reset();
  d.size.problems = {{Severity::error,
                      {"the core is not smaller than the full roll", {}},
                      "roll[0].core_diameter",
                      "\"500 mm\"",
                      {},
                      "stand.toml",
                      {},
                      ""}};
  const auto paper = selection_report(d);
  EXPECT_EQ(all<Verdict>(paper).front().state, State::fails);
  EXPECT_TRUE(says(paper, "the core is not smaller than the full roll"));
  expect_no_empty_section(paper);
}

TEST(selection_report, two_hundred_jobs_stand_in_every_table_of_jobs_and_figures_stay_few) {
  const auto few = selection_report(full());
  const auto many = selection_report(full(200));
  EXPECT_EQ(all<Figure>(many).size(), all<Figure>(few).size());
  for (const auto* caption :
       {"as given", "Tension over the whole width", "Each job on this fit", "Highest temperatures", "In hand against",
        "Normal stop", "Emergency stop", "After a web break", "Each job run alone", "Shaft under", "Whirl",
        "Likelihood of each job"}) {
    const auto found = table(many, caption);
    EXPECT_EQ(found.rows.size(), 200U) << caption;
    EXPECT_TRUE(holds_name(found, "paper labels")) << caption;
    EXPECT_TRUE(holds_name(found, "trial 199")) << caption;
  }
}

TEST(selection_report, rows_are_as_long_as_their_heads) {
  for (const auto& each : all<Table>(selection_report(full())))
    for (const auto& row : each.rows) EXPECT_EQ(row.size(), each.columns.size()) << each.caption;
}

TEST(selection_report, a_failing_job_is_shown_as_failing_wherever_it_stands) {
  const auto paper = selection_report(full());
  const auto verdict = all<Verdict>(paper).front();
  EXPECT_EQ(verdict.state, State::fails);
  EXPECT_EQ(verdict.text.rfind("fails: ", 0), 0U);
  const auto on_fit = table(paper, "Each job on this fit");
  const auto& cell = on_fit.rows.front().at(column(on_fit, "state"));
  EXPECT_EQ(cell.text, "fails");
  EXPECT_TRUE(cell.has_state);
  EXPECT_EQ(cell.state, State::fails);
  EXPECT_EQ(cell.tone, Tone::strong);
  EXPECT_EQ(texts(on_fit, "in hand").front(), "−6 %");  // a margin of 0.94
  EXPECT_EQ(texts(table(paper, "Jobs that are not covered"), "job"), std::vector<std::string>{"paper labels"});
  EXPECT_TRUE(says(paper, "stop torque 203 N·m against at most 181 N·m at Ø 600 mm; −11 % in hand, by formula"));
  EXPECT_TRUE(
      says(paper, "stop in 16.0 s instead of 12.0 s: then tight, +2 % in hand (stop torque); but loses “tickets”"));
  const auto warnings = all<Warning>(paper);
  EXPECT_EQ(warnings.front().signal, Signal::warning);
  EXPECT_NE(warnings.front().text.find("“paper labels”"), std::string::npos);
}

TEST(selection_report, what_is_beyond_a_rating_is_never_shown_as_acceptable) {
  auto d = full();
  auto& job = d.size.choice->recommended->jobs.front();
  for (auto& limit : job.limits)
    if (limit.id == LimitId::disc_temperature)
      limit = {LimitId::disc_temperature, 563.15, 523.15, 0.85, 0.1, 0.3, LoadCase::run, Known::rating, State::fails};
  d.in_depth.front().choice->job = job;
  const auto paper = selection_report(d);
  const auto near = table(paper, "Limits that are tight or fail");
  const auto hot = std::find_if(near.rows.begin(), near.rows.end(), [&](const auto& row) {
    return row.front().text == "paper labels" && row.at(1).text == "disc temperature";
  });
  ASSERT_NE(hot, near.rows.end());
  EXPECT_EQ(loosened(hot->at(column(near, "value")).text), "290 °C");
  EXPECT_EQ(loosened(hot->at(column(near, "bound")).text), "≤ 250 °C");
  EXPECT_EQ(hot->at(column(near, "state")).state, State::fails);
  const auto ratings = table(paper, "In hand against");
  const auto& cell = ratings.rows.front().at(column(ratings, "disc temperature"));
  EXPECT_EQ(loosened(cell.text), "−15 %");
  EXPECT_EQ(cell.state, State::fails);
  const auto limits = table(paper, "All limits");
  for (const auto& row : limits.rows) {
    if (row.front().text == "disc temperature") {
      EXPECT_EQ(row.back().text, "fails");
    }
  }
}

TEST(selection_report, every_limit_of_a_job_in_depth_stands_in_its_table) {
  const auto d = full();
  const auto limits = table(selection_report(d), "All limits");
  ASSERT_EQ(limits.rows.size(), d.in_depth.front().choice->job->limits.size());
  for (const auto& limit : d.in_depth.front().choice->job->limits)
    EXPECT_TRUE(holds_name(limits, std::string(info(limit.id).name))) << info(limit.id).name;
}

TEST(selection_report, numbers_of_stops_wear_and_shaft_are_all_there) {
  const auto paper = selection_report(full());
  const auto stop = table(paper, "Normal stop");
  EXPECT_EQ(texts(stop, "torque needed").front(), "203");
  EXPECT_EQ(texts(stop, "torque available").front(), "181");
  const auto heat = table(paper, "Energy into all discs");
  EXPECT_EQ(texts(heat, "normal: energy").front(), "25.3");
  EXPECT_EQ(texts(stop, "web taut from").front(), "3.21 s");
  EXPECT_EQ(texts(stop, "tension kept from").front(), "14.3 s");
  EXPECT_EQ(texts(heat, "disc after it").front(), "77.0");
  EXPECT_EQ(texts(stop, "slack").front(), "none");
  const auto wear = table(paper, "Each job run alone");
  EXPECT_EQ(texts(wear, "pads last").front(), "12 000");  // 12345 h: two digits are meant
  EXPECT_EQ(texts(wear, "rolls until then").front(), "1800");
  EXPECT_EQ(texts(wear, "pads a year").front(), "8.3");
  EXPECT_EQ(texts(wear, "cost a year").front(), "240");
  EXPECT_EQ(texts(table(paper, "Shaft under"), "safety against fatigue").front(), "2.71");
  EXPECT_EQ(texts(table(paper, "Whirl"), "bearings last").front(), "41 000");
}

TEST(selection_report, a_roll_that_nothing_stops_has_no_times_and_no_slack_of_a_length) {
  auto d = full();
  auto& job = d.size.choice->recommended->jobs.front();
  job.stop.runs_away = true;
  job.stop.never = true;
  job.emergency_stop.slack = 1.25;
  job.emergency_stop.slack_diameter = 0.6;
  job.web_break = {0, 0, 0, true};
  const auto paper = selection_report(d);
  const auto stop = table(paper, "Normal stop");
  EXPECT_EQ(texts(stop, "slack").front(), "without end");
  EXPECT_EQ(texts(stop, "web taut from").front(), "never");
  EXPECT_EQ(texts(stop, "tension kept from").front(), "never");
  EXPECT_EQ(texts(table(paper, "Emergency stop"), "slack").front(), "1250 mm at Ø 600 mm");
  const auto coast = table(paper, "After a web break");
  EXPECT_EQ(texts(coast, "time").front(), "–");
  EXPECT_EQ(texts(coast, "the roll").front(), "nothing stops it");
}

TEST(selection_report, numbers_of_a_column_have_the_same_decimals) {
  const auto decimals = [](const std::string& text) {
    const auto point = text.find('.');
    return point == std::string::npos ? std::size_t{0} : text.size() - point - 1;
  };
  for (const auto& each : all<Table>(selection_report(full()))) {
    for (std::size_t i = 0; i < each.columns.size(); ++i) {
      if (!each.columns[i].number || each.columns[i].unit.empty() || each.columns[i].unit == "dB") continue;
      std::vector<std::size_t> seen;
      for (const auto& row : each.rows)
        if (row.at(i).text.find_first_not_of("0123456789.−-\u00A0") == std::string::npos)
          seen.push_back(decimals(row.at(i).text));
      const auto ends = std::minmax_element(seen.begin(), seen.end());
      if (!seen.empty()) {
        EXPECT_EQ(*ends.first, *ends.second) << each.caption << ": " << each.columns[i].head;
      }
    }
  }
}

TEST(selection_report, long_and_foreign_names_are_kept) {
  const std::string far(300, 'x');
  for (const std::string& name :
       {far, std::string("標籤紙 第三"), std::string("ورق الملصقات"), std::string("Bögen ½ µm")}) {
    auto d = full();
    d.stand.title = name;
    d.stand.jobs.front().name = name;
    d.size.choice->recommended->jobs.front().job = name;
    const auto paper = selection_report(d);
    EXPECT_EQ(paper.subject, name);
    EXPECT_TRUE(holds_name(table(paper, "as given"), name));
    EXPECT_TRUE(holds_name(table(paper, "Each job on this fit"), name));
    EXPECT_TRUE(holds_name(table(paper, "Each job run alone"), name));
  }
  auto d = full();
  d.size.choice->recommended->jobs.front().job = "a\x1b[31mb";
  EXPECT_EQ(words(selection_report(d)).find('\x1b'), std::string::npos);
}

TEST(selection_report, equations_stand_with_their_numbers_in_si_and_in_the_readers_units) {
  auto d = full();
  const auto si = all<Equation>(selection_report(d));
  ASSERT_EQ(si.size(), 1U);
  EXPECT_EQ(si.front().name, "Brake torque in steady run");
  EXPECT_EQ(si.front().id, "brake_torque");
  EXPECT_EQ(si.front().formula, "M = F · d / 2 − M_drag");
  EXPECT_EQ(loosened(si.front().put_in), "M = 120 N · 1 m / 2 − 1.5 N·m");
  EXPECT_EQ(loosened(si.front().result), "M = 58.5 N·m");
  EXPECT_TRUE(says(selection_report(d), "without the roll's thinning"));
  d.system = units::System::us;
  // 1 N·m is 8.850 746 in·lbf, NIST SP 811 (2008), appendix B.8.
  EXPECT_EQ(loosened(all<Equation>(selection_report(d)).front().result), "M = 58.5 N·m = 518 in·lbf");
}

TEST(selection_report, numbers_are_put_in_so_that_nothing_binds_wrongly) {
  auto d = full();
  WorkedStep step;
  step.formula = "a / b + π · d^2 · sqrt(d) − c · x_1";
  step.terms = {{"a", "", Quantity::modulus, 3.2e9},
                {"b", "", Quantity::basis_weight, 0.155},
                {"d", "", Quantity::caliper, 145e-6},
                {"c", "", Quantity::acceleration, -0.5},
                {"x_1", "", Quantity::temperature, 301.15}};
  step.result = {"Θ", "", Quantity::temperature, 373.15};
  d.worked->steps = {step};
  const auto equation = all<Equation>(selection_report(d)).front();
  EXPECT_EQ(loosened(equation.put_in),
            "Θ = 3.2·10⁹ Pa / (0.155 kg/m²) + π · (1.45·10⁻⁴ m)^2 · sqrt(1.45·10⁻⁴ m) − "
            "(−0.5 m/s²) · 301.15 K");
  EXPECT_EQ(loosened(equation.result), "Θ = 373.15 K = 100 °C");
}

TEST(selection_report, simulated_runs_and_tuned_loops_are_shown_with_what_was_found) {
  const auto paper = selection_report(full());
  EXPECT_TRUE(says(paper, "holds: the tension stays within 3.00 N of its setpoint"));
  EXPECT_TRUE(says(paper, "tension in steady run: 72.0 N to 78.0 N"));
  EXPECT_TRUE(says(paper, "Take the scheduled gain of 0.800"));
  EXPECT_EQ(table(paper, "Phase by phase").rows.size(), 4U);
  EXPECT_EQ(table(paper, "Settings, and the least margins").rows.size(), 3U);
  auto d = full();
  auto& run = d.simulations.front().simulation->runs.front();
  run.end = RunEnd::failed;
  run.fault = "roll speed is no longer a number";
  run.fault_time = 12;
  const auto failed = selection_report(d);
  EXPECT_TRUE(says(failed, "fails: the run stopped at 12.0 s: roll speed is no longer a number"));
}

TEST(selection_report, cautions_have_their_signal_word_and_the_last_line_says_who_decides) {
  const auto warnings = all<Warning>(selection_report(full()));
  ASSERT_GE(warnings.size(), 3U);
  const auto nip = std::find_if(warnings.begin(), warnings.end(), [](const Warning& warning) {
    return warning.text == "Keep clear of the in-running nip.";
  });
  ASSERT_NE(nip, warnings.end());
  EXPECT_EQ(nip->signal, Signal::warning);
  EXPECT_EQ(std::count_if(warnings.begin(), warnings.end(), [&](const Warning& w) { return w.text == nip->text; }), 1);
  EXPECT_EQ(warnings.back().signal, Signal::notice);
  EXPECT_EQ(warnings.back().text.rfind("Local codes, makers' ratings and licensed practice decide", 0), 0U);
}

TEST(selection_report, defaults_and_assumptions_are_listed) {
  const auto paper = selection_report(full());
  EXPECT_TRUE(holds_name(table(paper, "Defaults"), "air.supply_pressure"));
  EXPECT_TRUE(says(paper, "air at 28.0 °C"));
  EXPECT_TRUE(says(paper, "the loop is linear near its setpoint"));
}

TEST(selection_report, tables_are_numbered_without_a_gap) {
  int number = 0;
  for (const auto& each : all<Table>(selection_report(full())))
    EXPECT_EQ(each.caption.rfind("Table " + std::to_string(++number) + ". ", 0), 0U) << each.caption;
  EXPECT_GT(number, 20);
}

}  // namespace
}  // namespace holdback::papers
