// `tune`: settings of the control, what they hold over the roll, and the run that proves it.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "holdback/draw/loop_words.hpp"
#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

namespace {

using draw::Ink;

constexpr std::size_t most_rows = 10;  // of the table over the roll; JSON and CSV hold all points

bool by_dancer(const Tuning& tuning) { return tuning.control == key_of(ControlKind::dancer); }

/// What a real gain is measured in, as a person sets it: pressure over what the sensor says.
Quantity sensed(const Tuning& tuning) { return by_dancer(tuning) ? Quantity::short_length : Quantity::force; }

std::string real_gain_unit(const Tuning& tuning, units::System system) {
  return "[" + units::unit_of(Quantity::pressure, system) + "/" + units::unit_of(sensed(tuning), system) + "]";
}

std::string real_gain(const Tuning& tuning, const LoopTuning& loop, units::System system) {
  const double shown_gain = units::in_display_unit(loop.real_gain, Quantity::pressure, system) /
                            units::in_display_unit(1, sensed(tuning), system);
  return units::show_number(shown_gain, Quantity::number, system);
}

std::string factor(double margin) { return margin > 0 ? fmt::format("{:.2f}", margin) : "no limit"; }

std::string decibels(double margin) { return margin > 0 ? fmt::format("{:.1f}", draw::decibels(margin)) : "–"; }

std::string degrees(double angle, units::System system) {
  return angle > 0 ? units::show_number(angle, Quantity::angle, system) : "–";
}

bool stable_throughout(const LoopTuning& loop) {
  return std::all_of(loop.points.begin(), loop.points.end(), [](const TunePoint& point) { return point.stable; });
}

void headline(Sheet& sheet, const Tuning& tuning) {
  const auto system = sheet.style().system;
  const auto show = [system](double si, Quantity kind) { return shown(si, kind, system); };
  sheet.title((tuning.title.empty() ? "" : tuning.title + ": ") + named(tuning.job) + ", control by " + tuning.control +
              (tuning.loops.empty() ? ", which has no loop to tune" : " tuned"));
  sheet.paragraph(
      fmt::format("{}; {} engaged{}; tension {}, window {} to {}", words_of(tuning.fit), counted(tuning.pairs, "pair"),
                  tuning.fit.brakes > 1 ? " on each" : "", show(tuning.tension.setpoint, Quantity::force),
                  show(tuning.tension.low, Quantity::force), show(tuning.tension.high, Quantity::force)),
      Ink::plain, 2, true);
  if (tuning.loops.empty()) return;
  sheet.paragraph(fmt::format("asked: gain margin at least {:.2f} ({}), phase margin at least {}; the loop has {} of "
                              "dead time and {} of lag",
                              tuning.asked_gain_margin, kept_together(decibels(tuning.asked_gain_margin) + " dB"),
                              show(tuning.asked_phase_margin, Quantity::angle),
                              show(tuning.dead_time, Quantity::duration), show(tuning.lag, Quantity::duration)),
                  Ink::plain, 2, true);
}

void advice(Sheet& sheet, const Tuning& tuning) {
  const auto text = filled(tuning.advice, sheet.style().system);
  sheet.blank();
  sheet.paragraph(tuning.holds ? "The window is held." : "The window is not held.",
                  tuning.holds ? Ink::good : Ink::bad);
  if (!text.empty()) sheet.paragraph("Advice: " + text, Ink::strong, 2, true);
}

void loops_table(Sheet& sheet, const Tuning& tuning) {
  if (tuning.loops.empty()) return;
  const auto system = sheet.style().system;
  const auto& loops = tuning.loops;
  const auto integral = column_of(loops, &LoopTuning::integral_time, Quantity::duration, system);
  const auto derivative = column_of(loops, &LoopTuning::derivative_time, Quantity::duration, system);
  const auto diameter = column_of(loops, &LoopTuning::worst_diameter, Quantity::short_length, system);
  const auto crossover = column_of(loops, &LoopTuning::slowest_crossover, Quantity::frequency, system);
  const auto time = unit_head(Quantity::duration, system);
  Table table({{"settings", false, true, ""},
               {"gain", true, false, ""},
               {"Ti\n" + time, true, false, ""},
               {"Td\n" + time, true, false, ""},
               {"real gain\n" + real_gain_unit(tuning, system), true, false, ""},
               {"factor", true, false, "gain margin"},
               {"dB", true, false, "gain margin"},
               {"phase\nmargin\n" + unit_head(Quantity::angle, system), true, false, ""},
               {"least\nat Ø\n" + unit_head(Quantity::short_length, system), true, false, ""},
               {"crossover\n" + unit_head(Quantity::frequency, system), true, false, ""},
               {"state", false, false, ""}});
  for (std::size_t i = 0; i < loops.size(); ++i) {
    const auto& loop = loops[i];
    const auto ink = ink_of(loop.state);
    const bool stable = stable_throughout(loop);
    table.row({{draw::name_of_loop(tuning, i)},
               {units::show_number(loop.gain, Quantity::number, system)},
               {integral[i]},
               {loop.derivative_time > 0 ? derivative[i] : "–"},
               {real_gain(tuning, loop, system)},
               {stable ? factor(loop.least_gain_margin) : "unstable", ink},
               {stable ? decibels(loop.least_gain_margin) : "–", ink},
               {stable ? degrees(loop.least_phase_margin, system) : "–", ink},
               {diameter[i]},
               {crossover[i]},
               cell_of(loop.state)});
  }
  sheet.section("Settings, and the least margins over the roll");
  sheet.table(table);
  sheet.paragraph(fmt::format("Gain as control.gain of the stand file; Ti its integral time, Td its derivative time. "
                              "The real gain is at the full roll: pressure over {}.",
                              by_dancer(tuning) ? "the dancer's way" : "the tension that the load cell reads"),
                  Ink::faint);
}

/// The margins of one loop at a diameter: gain in decibels, phase in degrees.
std::vector<Cell> margin_cells(const TunePoint& point, const Tuning& tuning, units::System system) {
  if (!point.stable) return {{"–"}, {"unstable", Ink::bad}};
  const bool gain_short = point.gain_margin > 0 && point.gain_margin < tuning.asked_gain_margin;
  const bool phase_short = point.phase_margin > 0 && point.phase_margin < tuning.asked_phase_margin;
  return {{point.gain_margin > 0 ? decibels(point.gain_margin) : "no limit", gain_short ? Ink::warning : Ink::plain},
          {degrees(point.phase_margin, system), phase_short ? Ink::warning : Ink::plain}};
}

std::vector<Column> roll_columns(const Tuning& tuning, units::System system) {
  std::vector<Column> columns{{"Ø\n" + unit_head(Quantity::short_length, system), true, false, ""},
                              {unit_head(Quantity::frequency, system), true, false, "mode of roll and web"},
                              {"damping", true, false, "mode of roll and web"}};
  for (std::size_t i = 0; i < tuning.loops.size(); ++i) {
    const auto name = draw::name_of_loop(tuning, i);
    columns.push_back({"gain\n[dB]", true, false, name});
    columns.push_back({"phase\n" + unit_head(Quantity::angle, system), true, false, name});
  }
  for (std::size_t i = 1; i < 3; ++i) columns[i].head = "\n" + columns[i].head;  // as high as their neighbours
  columns[0].head = "\n" + columns[0].head;
  return columns;
}

void roll_table(Sheet& sheet, const Tuning& tuning) {
  if (tuning.loops.empty() || tuning.loops.front().points.empty()) return;
  const auto system = sheet.style().system;
  const auto& points = tuning.loops.front().points;
  const auto diameter = column_of(points, &TunePoint::diameter, Quantity::short_length, system);
  const auto mode = column_of(points, &TunePoint::mode_frequency, Quantity::frequency, system);
  Table table(roll_columns(tuning, system));
  const auto rows = std::min(points.size(), most_rows);
  for (std::size_t row = 0; row < rows; ++row) {
    const auto i = rows > 1 ? row * (points.size() - 1) / (rows - 1) : 0;
    const auto& point = points[i];
    std::vector<Cell> cells{
        {diameter[i]},
        {mode[i]},
        {fmt::format("{:.3f}", point.mode_damping), point.mode_damping < 0 ? Ink::bad : Ink::plain}};
    for (const auto& loop : tuning.loops) {
      const auto here =
          i < loop.points.size() ? margin_cells(loop.points[i], tuning, system) : std::vector<Cell>{{"–"}, {"–"}};
      cells.insert(cells.end(), here.begin(), here.end());
    }
    table.row(std::move(cells));
  }
  sheet.section("Over the roll: the mode, and the margins of each loop");
  sheet.table(table);
}

/// "at 210 m/min with Ø 600 mm, at 90 m/min with Ø 200 mm"; empty when the line never gets there.
std::string meetings(const RunoutMap& runout, units::System system) {
  std::vector<std::size_t> met;
  const auto count = std::min(runout.meets.size(), runout.diameter.size());
  for (std::size_t i = 0; i < count; ++i) {
    if (runout.meets[i] > 0) met.push_back(i);
  }
  std::string out;
  const auto add = [&](std::size_t i) {
    out += fmt::format("{}at {} with Ø {}", out.empty() ? "" : ", ", shown(runout.meets[i], Quantity::speed, system),
                       shown(runout.diameter[i], Quantity::short_length, system));
  };
  if (met.empty()) return out;
  add(met.front());
  if (met.size() > 2) add(met[met.size() / 2]);
  if (met.size() > 1) add(met.back());
  return out;
}

void runout_text(Sheet& sheet, const Tuning& tuning) {
  const auto system = sheet.style().system;
  const auto& runout = tuning.runout;
  sheet.section("What shakes the tension");
  if (runout.speed.empty()) {
    sheet.paragraph("– the roll runs true: no runout is given", Ink::plain, 2, true);
  } else {
    sheet.paragraph(fmt::format("– runout, loop closed: at worst ±{} of the setpoint, at {} with Ø {}",
                                shown(runout.worst_share, Quantity::ratio, system),
                                shown(runout.worst_speed, Quantity::speed, system),
                                shown(runout.worst_diameter, Quantity::short_length, system)),
                    Ink::plain, 2, true);
    const auto met = meetings(runout, system);
    sheet.paragraph(met.empty() ? "– it does not meet the mode of roll and web up to " +
                                      shown(runout.speed.back(), Quantity::speed, system)
                                : "– it meets the mode of roll and web " + met,
                    Ink::plain, 2, true);
  }
  if (tuning.stick_slip_onset > 0) {
    sheet.paragraph(fmt::format("– stick-slip: below {} friction makes the swing grow, at some diameter",
                                shown(tuning.stick_slip_onset, Quantity::speed, system)),
                    Ink::warning, 2, true);
  } else {
    sheet.paragraph("– stick-slip: friction makes no swing grow at any speed", Ink::plain, 2, true);
  }
}

void evidence(Sheet& sheet, const Tuning& tuning) {
  if (tuning.run.control.empty()) return;  // nothing was run
  sheet.section(tuning.loops.empty() ? "The usual scenario, run" : "The usual scenario, run with these settings");
  verdict_text(sheet, tuning.run);
  phases_text(sheet, tuning.run.phases);
  sheet.blank();
  run_text(sheet, tuning.run);
}

void others_text(Sheet& sheet, const Tuning& tuning) {
  if (tuning.others.empty()) return;
  sheet.section("Other controls that were tried");
  for (const auto& other : tuning.others) {
    const auto what = "– " + other.control + (other.holds ? " holds the window" : " does not hold it");
    sheet.paragraph(draw::joined(what, filled(other.evidence, sheet.style().system)),
                    other.holds ? Ink::good : Ink::plain, 2, true);
  }
}

}  // namespace

void tune_text(Sheet& sheet, const Answer& answer) {
  const auto& tuning = *answer.tuning;
  headline(sheet, tuning);
  fault_text(sheet, tuning.run);
  advice(sheet, tuning);
  loops_table(sheet, tuning);
  roll_table(sheet, tuning);
  runout_text(sheet, tuning);
  evidence(sheet, tuning);
  others_text(sheet, tuning);
  columns_text(sheet, answer.columns);
  closing(sheet, answer.defaults, tuning.assumptions, tuning.cautions);
}

}  // namespace holdback::report
