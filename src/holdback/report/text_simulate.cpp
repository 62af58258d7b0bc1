// `simulate`: a job run through a scenario, under one control or several side by side.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/draw/terminal_plot.hpp"
#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

namespace {

using draw::Ink;

void headline(Sheet& sheet, const Simulation& simulation) {
  const auto system = sheet.style().system;
  const auto show = [system](double si, Quantity kind) { return shown(si, kind, system); };
  const auto& tension = simulation.tension;
  const auto& runs = simulation.runs;
  sheet.title((simulation.title.empty() ? "" : simulation.title + ": ") + named(simulation.job) + " in motion");
  sheet.paragraph(fmt::format("{}; {} engaged{}; {}; scenario {}", words_of(simulation.fit),
                              counted(simulation.pairs, "pair"), simulation.fit.brakes > 1 ? " on each" : "",
                              runs.size() == 1 ? "control by " + runs.front().control
                                               : counted(static_cast<int>(runs.size()), "control") + " compared",
                              named(simulation.scenario)),
                  Ink::plain, 2, true);
  sheet.paragraph(
      fmt::format("tension {}, window {} to {}; {}; roll from Ø {} to {}", show(tension.setpoint, Quantity::force),
                  show(tension.low, Quantity::force), show(tension.high, Quantity::force),
                  show(simulation.speed, Quantity::speed), show(simulation.full_diameter, Quantity::short_length),
                  show(simulation.core_diameter, Quantity::short_length)),
      Ink::plain, 2, true);
}

/// The picture of tension over time, small: the comparison shows several.
void tension_picture(Sheet& sheet, const Simulation& simulation, const MotionRun& run, int height) {
  const auto& style = sheet.style();
  const auto picture = draw::terminal_plot(draw::tension_plot(run.trace, simulation.tension),
                                           {style.width - 2, height, style.system, style.colour});
  if (picture.empty()) return;
  sheet.blank();
  sheet.block(picture);
}

Cell slack_cell(const MotionRun& run, units::System system) {
  if (!(run.slack > 0)) return {"none"};
  return {units::show_number(run.slack, Quantity::short_length, system), Ink::bad};
}

void comparison(Sheet& sheet, const Simulation& simulation) {
  const auto system = sheet.style().system;
  const auto& runs = simulation.runs;
  const auto column = [&](auto get, Quantity kind) { return column_of(runs, get, kind, system); };
  const auto lowest = column(&MotionRun::run_lowest, Quantity::force);
  const auto highest = column(&MotionRun::run_highest, Quantity::force);
  const auto peak = column(&MotionRun::peak, Quantity::force);
  const auto outside = column(&MotionRun::outside, Quantity::duration);
  const auto settling = column(&MotionRun::settling, Quantity::duration);
  const auto disc = column(&MotionRun::disc_highest, Quantity::temperature);
  const auto force = unit_head(Quantity::force, system);
  const auto time = unit_head(Quantity::duration, system);
  Table table({{"control", false, true, ""},
               {"state", false, false, ""},
               {"lowest\n" + force, true, false, "steady run"},
               {"highest\n" + force, true, false, "steady run"},
               {"peak\n" + force, true, false, ""},
               {"outside\n" + time, true, false, ""},
               {"slack\n" + unit_head(Quantity::short_length, system), true, false, ""},
               {"settles\nwithin\n" + time, true, false, ""},
               {"disc\n" + unit_head(Quantity::temperature, system), true, false, "hottest"},
               {"pads\n" + unit_head(Quantity::temperature, system), true, false, "hottest"}});
  const auto pads = column(&MotionRun::pads_highest, Quantity::temperature);
  for (std::size_t i = 0; i < runs.size(); ++i) {
    const auto& run = runs[i];
    const auto state = run.end == RunEnd::failed ? Cell{"stopped", Ink::bad} : cell_of(run.state);
    table.row({{run.control},
               state,
               {lowest[i]},
               {highest[i]},
               {peak[i]},
               run.outside > 0 ? Cell{outside[i], Ink::warning} : Cell{"never"},
               slack_cell(run, system),
               {run.settling > 0 ? settling[i] : "–"},
               {disc[i]},
               {pads[i]}});
  }
  sheet.section("Controls side by side");
  sheet.table(table);
  const auto best = filled(simulation.best, system);
  if (best.empty()) return;
  sheet.blank();
  sheet.paragraph("Best: " + best, Ink::strong, 2, true);
}

/// One of several: what happened, where, and its picture.
void short_section(Sheet& sheet, const Simulation& simulation, const MotionRun& run) {
  sheet.section("Control by " + run.control);
  verdict_text(sheet, run);
  phases_text(sheet, run.phases);
  constexpr int height = 7;
  tension_picture(sheet, simulation, run, height);
}

void whole_run(Sheet& sheet, const Simulation& simulation, const MotionRun& run) {
  sheet.blank();
  verdict_text(sheet, run);
  if (!run.phases.empty()) sheet.section("Phase by phase");
  phases_text(sheet, run.phases);
  sheet.section("The run in numbers");
  run_text(sheet, run);
  constexpr int height = 10;
  tension_picture(sheet, simulation, run, height);
}

}  // namespace

void simulate_text(Sheet& sheet, const Answer& answer) {
  const auto& simulation = *answer.simulation;
  headline(sheet, simulation);
  for (const auto& run : simulation.runs) fault_text(sheet, run);
  if (simulation.runs.size() == 1) {
    whole_run(sheet, simulation, simulation.runs.front());
  } else if (!simulation.runs.empty()) {
    comparison(sheet, simulation);
    for (const auto& run : simulation.runs) short_section(sheet, simulation, run);
  }
  columns_text(sheet, answer.columns);
  closing(sheet, answer.defaults, simulation.assumptions, simulation.cautions);
}

}  // namespace holdback::report
