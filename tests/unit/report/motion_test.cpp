// Runs and tunings as text, CSV and JSON: what must be said is said, and every list has its column.
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <sstream>

#include "holdback/draw/cells.hpp"
#include "holdback/report/report.hpp"
#include "sample.hpp"

namespace holdback::report {
namespace {

using Json = nlohmann::json;

constexpr Style si{};
constexpr Style us{units::System::us, false, 100, false};

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> out;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) out.push_back(line);
  return out;
}

/// The cells of a line of numbers and plain words.
std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> out(1);
  for (const char c : line) {
    if (c == ',') {
      out.emplace_back();
    } else if (c != '\r') {
      out.back() += c;
    }
  }
  return out;
}

TEST(simulate_text, one_run_has_headline_verdict_phases_numbers_and_picture) {
  const auto shown = text(samples::simulate(), si);
  for (const auto* part : {"Label slitter, unwind A (invented): “paper labels” in motion",
                           "1 × disc 330, 4 pairs, grade low; 2 pairs engaged; control by load cell; scenario “usual”",
                           "tension 75.0 N, window 67.5 N to 82.5 N; 198 m/min; roll from Ø 600 mm to 90.0 mm",
                           "holds: the tension stays within 3.00 N of its setpoint",
                           "Phase by phase",
                           "standstill",
                           "72.0 to 78.0 N",
                           "84.2 N at 40.5 s",
                           "5.50 s, 11.5 % of moving",
                           "34.2 °C",
                           "9.35 kJ",
                           "0.0107 % of it",
                           "0.00170 % of a pad",
                           "once",
                           "scenario over",
                           "4210 explicit steps",
                           "window to 82.5 N",
                           "time [s]",
                           "Assumptions and defaults",
                           "Cautions"})
    EXPECT_TRUE(has(shown, part)) << part << "\n" << shown;
  EXPECT_FALSE(has(shown, "side by side"));
  EXPECT_FALSE(has(shown, "no longer a number"));
}

TEST(simulate_text, several_runs_stand_side_by_side_first) {
  const auto shown = text(samples::simulate(true), si);
  const auto table = shown.find("Controls side by side");
  const auto best = shown.find("Best: load cell: it stays within 3.00 N");
  const auto section = shown.find("Control by load cell");
  ASSERT_NE(table, std::string::npos) << shown;
  ASSERT_NE(best, std::string::npos) << shown;
  EXPECT_LT(table, best);
  EXPECT_LT(best, section);
  for (const auto* control : {"load cell", "dancer", "diameter", "hand"})
    EXPECT_TRUE(has(shown, std::string("Control by ") + control)) << control;
  EXPECT_TRUE(has(shown, "fails: the web hangs slack by up to 310 mm in the stop")) << shown;
}

TEST(simulate_text, a_failed_run_is_told_in_the_first_lines) {
  for (const bool several : {false, true}) {
    auto answer = samples::simulate(several);
    auto& run = answer.simulation->runs.back();
    run.end = RunEnd::failed;
    run.state = State::fails;
    run.fault = "the pressure at the brake";
    run.fault_time = 31.2;
    const auto lines = lines_of(text(answer, si));
    const auto found = std::find_if(lines.begin(), lines.end(), [](const std::string& line) {
      return has(line, "stopped at 31.2 s: the pressure at the brake");
    });
    EXPECT_LT(found - lines.begin(), 6);
  }
}

TEST(simulate_text, tells_steady_running_outside_and_an_accident) {
  auto answer = samples::simulate();
  EXPECT_FALSE(has(text(answer, si), "accident"));
  EXPECT_FALSE(has(text(answer, si), "outside in steady run"));
  auto& run = answer.simulation->runs[0];
  run.accident = true;
  run.steady_outside = 0.031;
  run.verdict = {"The web parts.", {}};
  const auto shown = text(answer, si);
  for (const auto* part : {"holds. The web parts.", "holds an accident", "outside in steady run  3.10 %"})
    EXPECT_TRUE(has(shown, part)) << part << "\n" << shown;
}

TEST(simulate_text, a_phase_that_never_settles_says_so_and_many_phases_are_counted) {
  auto answer = samples::simulate();
  auto& phases = answer.simulation->runs[0].phases;
  phases[2].settles = false;
  EXPECT_TRUE(has(text(answer, si), "never"));
  phases.resize(40, phases.back());
  EXPECT_TRUE(has(text(answer, si), "and 16 phases more")) << text(answer, si);
  EXPECT_FALSE(has(text(answer, {units::System::si, false, 100, true}), "phases more"));
}

TEST(tune_text, has_advice_settings_margins_runout_and_evidence) {
  const auto shown = text(samples::tune(), si);
  for (const auto* part : {"“paper labels”, control by load cell tuned",
                           "The window is held.",
                           "Advice: take the scheduled gain of 0.800",
                           "gain margin at least 2.00 (6.0 dB)",
                           "[bar/N]",
                           "0.0224",
                           "scheduled",
                           "stand file, fixed",
                           "unstable",
                           "10.1",
                           "[Hz]",
                           "1.43",
                           "0.190",
                           "at worst ±4.00 % of the setpoint",
                           "meets the mode of roll and web at 162 m/min with Ø 600 mm",
                           "stick-slip: below 3.00 m/min",
                           "The usual scenario, run with these settings",
                           "Other controls that were tried",
                           "dancer holds the window",
                           "hand does not hold it"})
    EXPECT_TRUE(has(shown, part)) << part << "\n" << shown;
}

TEST(tune_text, says_what_has_no_number) {
  auto answer = samples::tune();
  auto& tuning = *answer.tuning;
  tuning.holds = false;
  tuning.runout = {};
  tuning.stick_slip_onset = 0;
  tuning.control = "dancer";
  tuning.loops[0].least_gain_margin = 0;
  for (auto& point : tuning.loops[0].points) point.gain_margin = 0;
  const auto shown = text(answer, si);
  for (const auto* part : {"The window is not held.", "no limit", "[bar/mm]", "no runout is given",
                           "friction makes no swing grow at any speed"})
    EXPECT_TRUE(has(shown, part)) << part << "\n" << shown;
  tuning.loops.clear();
  EXPECT_FALSE(has(text(answer, si), "gain margin"));
  EXPECT_TRUE(has(text(answer, si), "which has no loop to tune"));
  EXPECT_TRUE(has(text(answer, si), "The usual scenario, run\n"));
  tuning.run = {};
  EXPECT_FALSE(has(text(answer, si), "The usual scenario"));
}

TEST(tune_text, real_gain_is_in_the_readers_units) {
  // 2240 Pa/N: 1 psi = 6894.757 Pa, 1 lbf = 4.448222 N, so 2240 / 6894.757 · 4.448222 = 1.4452 psi/lbf.
  const auto shown = text(samples::tune(), us);
  EXPECT_TRUE(has(shown, "[psi/lbf]")) << shown;
  EXPECT_TRUE(has(shown, "1.45")) << shown;
}

TEST(text, of_motion_is_never_wider_than_the_page) {
  const std::string endless = "Ümläute µ und ein sehr langer Name ohne Ende " + std::string(150, 'x');
  for (auto answer : {samples::simulate(), samples::simulate(true), samples::tune()}) {
    for (const bool odd : {false, true}) {
      if (odd && answer.simulation) {
        answer.simulation->job = answer.simulation->scenario = answer.simulation->title = endless;
        answer.simulation->runs[0].control = answer.simulation->runs[0].fault = endless;
        answer.simulation->runs[0].end = RunEnd::failed;
        answer.simulation->runs[0].phases[0].what = endless;
        answer.simulation->runs[0].slack = 1234;
        answer.simulation->runs[0].outside = 123456;
      }
      if (odd && answer.tuning) answer.tuning->job = answer.tuning->fit.brake = answer.tuning->control = endless;
      for (const int width : {100, 90}) {
        for (const auto system : {units::System::si, units::System::us}) {
          for (const auto& line : lines_of(text(answer, {system, false, width, true})))
            EXPECT_LE(draw::columns(line), width) << line;
        }
      }
    }
  }
}

TEST(text, of_motion_says_the_same_in_colour) {
  for (const auto& answer : {samples::simulate(true), samples::tune()}) {
    auto coloured = text(answer, {units::System::si, true, 100, false});
    ASSERT_TRUE(has(coloured, "\x1b["));
    for (auto at = coloured.find('\x1b'); at != std::string::npos; at = coloured.find('\x1b'))
      coloured.erase(at, coloured.find('m', at) - at + 1);
    EXPECT_EQ(coloured, text(answer, si));
  }
}

TEST(trace_csv, has_a_column_a_list_and_a_row_a_time_in_the_readers_units) {
  auto run = samples::motion_run();
  const auto lines = lines_of(trace_csv(run, units::System::si));
  ASSERT_EQ(lines.size(), 602U);
  EXPECT_EQ(lines[0],
            "time [s],line_speed [m/min],rim_speed [m/min],tension [N],lowest_tension [N],highest_tension [N],"
            "measured_tension [N],setpoint [N],slack [mm],pressure [bar],set_pressure [bar],pairs,diameter [mm],"
            "torque [N·m],slip_power [W],disc [°C],pads [°C],dancer\r");
  const auto row = cells_of(lines[201]);
  ASSERT_EQ(row.size(), 18U);
  EXPECT_EQ(row[0], "20");
  EXPECT_EQ(row[1], "198");  // 3.3 m/s
  EXPECT_EQ(row[7], "75");
  EXPECT_EQ(row[11], "2");
  for (const auto& line : lines) EXPECT_EQ(cells_of(line).size(), 18U);
  EXPECT_TRUE(has(trace_csv(run, units::System::us), "pressure [psi]"));
}

TEST(trace_csv, leaves_cells_of_short_lists_empty_and_is_nothing_without_times) {
  auto run = samples::motion_run();
  run.trace.dancer.clear();
  run.trace.slack.resize(1);
  const auto lines = lines_of(trace_csv(run, units::System::si));
  EXPECT_EQ(cells_of(lines[1])[8], "0");
  EXPECT_EQ(cells_of(lines[2])[8], "");
  EXPECT_EQ(cells_of(lines[2])[17], "");
  EXPECT_EQ(trace_csv({}, units::System::si), "");
}

std::string cell(const std::vector<std::string>& lines, std::size_t row, const std::string& head) {
  const auto heads = cells_of(lines[0]);
  const auto found = std::find(heads.begin(), heads.end(), head);
  return found == heads.end() ? "no column " + head
                              : cells_of(lines[row])[static_cast<std::size_t>(found - heads.begin())];
}

TEST(csv, a_simulation_is_one_row_a_run) {
  const auto lines = lines_of(csv(samples::simulate(true), units::System::si));
  ASSERT_EQ(lines.size(), 5U);
  EXPECT_EQ(cell(lines, 4, "control"), "hand");
  EXPECT_EQ(cell(lines, 4, "state"), "fails");
  EXPECT_EQ(cell(lines, 4, "slack [mm]"), "310");
  EXPECT_EQ(cell(lines, 1, "energy_slipped [kJ]"), "9.35");
  EXPECT_EQ(cell(lines, 1, "fault_time [s]"), "");
  EXPECT_EQ(cell(lines, 1, "method"), "explicit");
}

TEST(csv, a_tuning_is_one_row_a_diameter_and_loop) {
  const auto lines = lines_of(csv(samples::tune(), units::System::si));
  ASSERT_EQ(lines.size(), 1U + 3 * 25);
  EXPECT_EQ(cell(lines, 1, "schedule"), "diameter");
  EXPECT_EQ(cell(lines, 1, "settings"), "tuned");
  EXPECT_EQ(cell(lines, 26, "schedule"), "fixed");
  EXPECT_EQ(cell(lines, 51, "settings"), "stand file");
  EXPECT_EQ(cell(lines, 75, "stable"), "no");
  EXPECT_EQ(cell(lines, 75, "gain_margin"), "");
  EXPECT_EQ(cell(lines, 1, "diameter [mm]"), "600");
}

TEST(json, a_run_has_its_trace_as_numbers_and_its_end_in_words) {
  const auto read = Json::parse(json(samples::simulate()));
  const auto& run = read["simulation"]["runs"][0];
  EXPECT_EQ(run["trace"].size(), 18U);
  for (const auto& [key, values] : run["trace"].items()) EXPECT_EQ(values.size(), 601U) << key;
  EXPECT_EQ(run["trace"]["setpoint"][3], 75.0);
  EXPECT_EQ(run["end"], "scenario over");
  EXPECT_EQ(run["method"], "explicit");
  EXPECT_EQ(run["state"], "holds");
  EXPECT_EQ(run["phases"][2]["what"], "stop");
  EXPECT_EQ(run["energy"]["residual"], 1.0);
}

TEST(json, a_loop_names_its_schedule_and_explains_its_real_gain) {
  const auto loop = Json::parse(json(samples::tune()))["tuning"]["loops"][1];
  EXPECT_EQ(loop["schedule"], "fixed");
  EXPECT_EQ(loop["points"].size(), 25U);
  const auto defs = Json::parse(answer_schema())["$defs"];
  const auto& properties = defs["loop_tuning"]["properties"];
  EXPECT_TRUE(has(properties["real_gain"]["description"].get<std::string>(), "Pa/N with a load cell, Pa/m"));
  EXPECT_EQ(properties["schedule"]["enum"], Json::parse(R"(["fixed", "diameter"])"));
  EXPECT_TRUE(has(defs["tune_point"]["properties"]["crossover"]["description"].get<std::string>(), "[rad/s]"));
  EXPECT_EQ(defs["motion_run"]["properties"]["end"]["enum"],
            Json::parse(R"(["scenario over", "core reached", "stopped by a fault"])"));
}

}  // namespace
}  // namespace holdback::report
