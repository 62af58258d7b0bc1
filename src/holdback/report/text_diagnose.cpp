// `diagnose`: what a log says of the tension: likely causes, how it kept its window, what shakes it, what was read.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"
#include "holdback/report/words.hpp"

namespace holdback::report {

namespace {

using draw::Ink;
using units::System;

constexpr std::size_t most_changes = 10;  // in the table; JSON and CSV hold more
constexpr std::size_t most_peaks = 10;
constexpr std::size_t most_turns = 8;
constexpr std::size_t most_gaps = 4;

std::string per_cent(double share) {
  if (share > 0 && share < 0.001) return "< 0.1";
  if (share < 1 && share > 0.999) return "> 99.9";
  return fmt::format("{:.1f}", 100 * share);
}

/// A time of the log: in seconds, or as hours and minutes where these are many.
std::string at_time(double seconds) {
  if (seconds < 600) return fmt::format("{:.1f} s", seconds);
  const auto whole = static_cast<long long>(std::llround(seconds));
  return fmt::format("{}:{:02}:{:02} h", whole / 3600, whole / 60 % 60, whole % 60);
}

std::string of_all(double number, std::size_t shown_ones, const char* word) {
  return fmt::format("{:.0f} {} in all; the {} shown are the worst. JSON and CSV hold more.", number, word, shown_ones);
}

std::string count_of(double number) { return units::show(number, Quantity::count, System::si); }

void headline(Sheet& sheet, const Diagnosis& found) {
  const auto system = sheet.style().system;
  sheet.title((found.title.empty() ? "" : found.title + ": ") + found.log + ", held against " + named(found.job));
  sheet.blank();
  const bool said_below = !found.causes.empty() && found.causes.front().what == found.verdict;
  if (!said_below) sheet.paragraph(filled(found.verdict, system), ink_of(found.state));
  const auto& target = found.tension;
  std::vector<Fact> facts{{"window", fmt::format("{} to {}", shown(target.low, Quantity::force, system),
                                                 shown(target.high, Quantity::force, system))},
                          {"setpoint", shown(target.setpoint, Quantity::force, system)},
                          {"control", found.control},
                          {"pairs engaged", std::to_string(found.pairs)}};
  if (found.steady_speed > 0) facts.push_back({"steady speed", shown(found.steady_speed, Quantity::speed, system)});
  if (found.first_diameter > 0)
    facts.push_back({"roll", fmt::format("Ø {} to {}, {}", shown(found.first_diameter, Quantity::short_length, system),
                                         shown(found.last_diameter, Quantity::short_length, system),
                                         key_of(found.diameter_source))});
  sheet.facts(facts);
}

void cause_text(Sheet& sheet, const LikelyCause& cause, std::size_t number) {
  const auto system = sheet.style().system;
  const bool sound = cause.kind == CauseKind::none;
  sheet.paragraph(fmt::format("{}. {} (confidence {})", number, filled(cause.what, system),
                              kept_together(units::show(cause.confidence, Quantity::ratio, system, 2))),
                  sound ? Ink::good : Ink::strong, 2, true);
  for (const Note& each : cause.evidence) sheet.paragraph("– " + filled(each, system), Ink::plain, 5, true);
  for (const Note& each : cause.to_try) sheet.paragraph("→ try: " + filled(each, system), Ink::plain, 5, true);
  if (!cause.to_tell_apart.text.empty())
    sheet.paragraph("? " + filled(cause.to_tell_apart, system), Ink::faint, 5, true);
}

void causes_text(Sheet& sheet, const Diagnosis& found) {
  sheet.section(found.causes.size() > 1 ? "Likely causes, most likely first" : "Likely cause");
  for (std::size_t i = 0; i < found.causes.size(); ++i) {
    if (i > 0) sheet.blank();
    cause_text(sheet, found.causes[i], i + 1);
  }
}

void phases_table(Sheet& sheet, const Diagnosis& found) {
  const auto& phases = found.phases;
  if (phases.empty()) return;
  const auto system = sheet.style().system;
  const auto force = unit_head(Quantity::force, system);
  const auto column = [&](auto member) { return column_of(phases, member, Quantity::force, system); };
  const auto mean = column(&PhaseTension::mean);
  const auto deviation = column(&PhaseTension::deviation);
  const auto lowest = column(&PhaseTension::lowest);
  const auto highest = column(&PhaseTension::highest);
  Table table({{"phase", false, false, ""},
               {"time", true, false, ""},
               {"inside", true, false, "share of the time [%]"},
               {"below", true, false, "share of the time [%]"},
               {"above", true, false, "share of the time [%]"},
               {"mean\n" + force, true, false, ""},
               {"std. dev.\n" + force, true, false, ""},
               {"lowest\n" + force, true, false, ""},
               {"highest\n" + force, true, false, ""}});
  for (std::size_t i = 0; i < phases.size(); ++i) {
    const auto& phase = phases[i];
    const bool judged = phase.phase == LogPhase::steady;
    table.row({{std::string(key_of(phase.phase))},
               {at_time(phase.time)},
               {per_cent(phase.inside), judged && phase.inside < 0.99 ? Ink::warning : Ink::plain},
               {per_cent(phase.below)},
               {per_cent(phase.above)},
               {mean[i]},
               {deviation[i]},
               {lowest[i]},
               {highest[i]}});
  }
  sheet.section("Tension by phase, against the window");
  sheet.table(table);
}

/// The worst ones, in the order of time.
std::vector<LogChange> worst_of(std::vector<LogChange> changes) {
  if (changes.size() <= most_changes) return changes;
  std::stable_sort(changes.begin(), changes.end(),
                   [](const LogChange& a, const LogChange& b) { return a.state > b.state; });
  changes.resize(most_changes);
  std::sort(changes.begin(), changes.end(), [](const LogChange& a, const LogChange& b) { return a.begin < b.begin; });
  return changes;
}

void changes_table(Sheet& sheet, const Diagnosis& found) {
  const auto changes = worst_of(found.changes);
  if (changes.empty()) return;
  const auto system = sheet.style().system;
  const auto speed = unit_head(Quantity::speed, system);
  const auto force = unit_head(Quantity::force, system);
  const auto from = column_of(changes, &LogChange::from_speed, Quantity::speed, system);
  const auto to = column_of(changes, &LogChange::to_speed, Quantity::speed, system);
  const auto lowest = column_of(changes, &LogChange::lowest_tension, Quantity::force, system);
  const auto highest = column_of(changes, &LogChange::highest_tension, Quantity::force, system);
  Table table({{"at", true, false, ""},
               {"", false, false, ""},
               {"from\n" + speed, true, false, ""},
               {"to\n" + speed, true, false, ""},
               {"lowest\n" + force, true, false, ""},
               {"highest\n" + force, true, false, ""},
               {"state", false, false, ""},
               {"why", false, true, ""}});
  for (std::size_t i = 0; i < changes.size(); ++i)
    table.row({{at_time(changes[i].begin)},
               {std::string(key_of(changes[i].phase))},
               {from[i]},
               {to[i]},
               {lowest[i]},
               {highest[i]},
               cell_of(changes[i].state),
               {filled(changes[i].verdict, system)}});
  sheet.section("Stops and ramps");
  sheet.table(table);
  if (found.changes_found > static_cast<double>(changes.size()))
    sheet.paragraph(of_all(found.changes_found, changes.size(), "stops and ramps"), Ink::faint);
}

std::string source_of(const LogPeak& peak) {
  std::string text(key_of(peak.source));
  if (!peak.idler.empty()) text += " " + named(peak.idler);
  if (peak.harmonic > 1) text += fmt::format(", {}×", peak.harmonic);
  return text;
}

void peaks_table(Sheet& sheet, const Diagnosis& found) {
  if (found.by_frequency.empty() && found.by_order.empty()) return;
  const auto system = sheet.style().system;
  sheet.section("What shakes the tension in steady run");
  if (found.peaks.empty()) {
    sheet.paragraph("No line of the spectra stands out of the noise.", Ink::good);
  } else {
    Table table({{"amplitude\n" + unit_head(Quantity::force, system), true, false, ""},
                 {"of the\nsetpoint", true, false, ""},
                 {"order of\nthe roll", true, false, ""},
                 {"frequency\n" + unit_head(Quantity::frequency, system), true, false, ""},
                 {"by", false, false, ""},
                 {"source", false, true, ""},
                 {"sure", true, false, ""},
                 {"why", false, true, ""}});
    for (std::size_t i = 0; i < std::min(found.peaks.size(), most_peaks); ++i) {
      const auto& peak = found.peaks[i];
      table.row({{units::show_number(peak.amplitude, Quantity::force, system, 2)},
                 {units::show(peak.share, Quantity::ratio, system, 2)},
                 {peak.order > 0 ? fmt::format("{:.2f}", peak.order) : "–"},
                 {peak.frequency > 0 ? units::show_number(peak.frequency, Quantity::frequency, system) : "–"},
                 {peak.by_order ? "turns" : "time"},
                 {source_of(peak), peak.source == PeakSource::unknown ? Ink::faint : Ink::plain},
                 {peak.source == PeakSource::unknown ? "–" : units::show(peak.confidence, Quantity::ratio, system, 2)},
                 {filled(peak.why, system)}});
    }
    sheet.table(table);
    if (found.peaks.size() > most_peaks)
      sheet.paragraph(fmt::format("{} peaks in all, the highest are shown.", found.peaks.size()), Ink::faint);
  }
  std::vector<Fact> facts;
  if (found.loop_frequency > 0)
    facts.push_back({"crossover of the loop, foretold", shown(found.loop_frequency, Quantity::frequency, system)});
  if (found.mode_frequency > 0)
    facts.push_back({"swing of roll and web, foretold", shown(found.mode_frequency, Quantity::frequency, system)});
  if (!facts.empty()) sheet.facts(facts);
}

void friction_text(Sheet& sheet, const Diagnosis& found) {
  const auto& friction = found.friction;
  if (friction.empty()) return;
  sheet.section("Friction, effective over nominal");
  std::vector<Fact> facts{
      {"level", fmt::format("{:.3f} ± {:.3f}", friction.level, friction.level_uncertainty)},
      {"over the log", fmt::format("{:.3f} to {:.3f}: {}{:.1f} % ± {:.1f} %", friction.first, friction.last,
                                   friction.change < 0 ? "−" : "+", 100 * std::abs(friction.change),
                                   100 * friction.change_uncertainty)}};
  if (friction.per_kelvin)
    facts.push_back({"with the disc's temperature", shown(*friction.per_kelvin, Quantity::fade, sheet.style().system)});
  sheet.facts(facts);
}

void hand_turns_table(Sheet& sheet, const Diagnosis& found) {
  if (found.hand_turns.empty()) return;
  const auto system = sheet.style().system;
  const auto bar = unit_head(Quantity::pressure, system);
  const auto force = unit_head(Quantity::force, system);
  std::vector<HandTurn> turns(
      found.hand_turns.begin(),
      found.hand_turns.begin() + static_cast<std::ptrdiff_t>(std::min(found.hand_turns.size(), most_turns)));
  const auto before = column_of(turns, &HandTurn::pressure_before, Quantity::pressure, system);
  const auto after = column_of(turns, &HandTurn::pressure_after, Quantity::pressure, system);
  const auto low = column_of(turns, &HandTurn::tension_before, Quantity::force, system);
  const auto high = column_of(turns, &HandTurn::tension_after, Quantity::force, system);
  Table table({{"at", true, false, ""},
               {"Ø\n" + unit_head(Quantity::short_length, system), true, false, ""},
               {"before\n" + bar, true, false, "pressure"},
               {"after\n" + bar, true, false, "pressure"},
               {"before\n" + force, true, false, "tension"},
               {"after\n" + force, true, false, "tension"}});
  for (std::size_t i = 0; i < turns.size(); ++i)
    table.row({{at_time(turns[i].time)},
               {turns[i].diameter ? units::show_number(*turns[i].diameter, Quantity::short_length, system) : "–"},
               {before[i]},
               {after[i]},
               {low[i]},
               {high[i]}});
  sheet.section("Settings of the pressure by hand");
  sheet.table(table);
  if (found.hand_turns_found > static_cast<double>(turns.size()))
    sheet.paragraph(fmt::format("{:.0f} settings in all, the first are shown.", found.hand_turns_found), Ink::faint);
}

void channels_table(Sheet& sheet, const Diagnosis& found) {
  if (found.channels.empty()) return;
  const auto system = sheet.style().system;
  Table table({{"channel", false, false, ""},
               {"readings", true, false, ""},
               {"missing", true, false, ""},
               {"dropouts", true, false, ""},
               {"stuck for", true, false, ""},
               {"lowest", true, false, ""},
               {"mean", true, false, ""},
               {"highest", true, false, ""}});
  for (const auto& each : found.channels) {
    const auto kind = kind_of(each.channel);
    const bool any = each.readings > 0;
    const auto value = [&](double si) { return any ? units::show(si, kind, system) : std::string("–"); };
    table.row({{std::string(key_of(each.channel))},
               {count_of(each.readings)},
               {count_of(each.missing)},
               {each.dropouts > 0 ? count_of(each.dropouts) : "–", each.dropouts > 0 ? Ink::warning : Ink::plain},
               {each.stuck > 0 ? at_time(each.stuck) : "–", each.stuck > 0 ? Ink::warning : Ink::plain},
               {value(each.lowest)},
               {value(each.mean)},
               {value(each.highest)}});
  }
  sheet.table(table);
}

std::string left_out_of(const LogReading& reading) {
  std::string text;
  for (const auto& each : reading.left_out)
    text += fmt::format("{}{:.0f}: {} (first in line {:.0f})", text.empty() ? "" : "; ", each.rows, each.why,
                        each.first_line);
  return text;
}

std::string gaps_of(const Diagnosis& found, System system) {
  std::string text =
      fmt::format("{:.0f}, the longest {}", found.gaps, shown(found.longest_gap, Quantity::duration, system));
  auto gaps = found.longest_gaps;
  std::sort(gaps.begin(), gaps.end(),
            [](const LogGap& a, const LogGap& b) { return a.end - a.begin > b.end - b.begin; });
  for (std::size_t i = 0; i < std::min(gaps.size(), most_gaps); ++i)
    text += fmt::format("{} {}", i == 0 ? ": at" : ",", at_time(gaps[i].begin));
  return text;
}

void reading_text(Sheet& sheet, const Diagnosis& found) {
  const auto system = sheet.style().system;
  const auto& reading = found.reading;
  sheet.section("What the log held");
  const bool is_dated = reading.first_stamp.find(':') != std::string::npos;  // else a number, which tells nothing
  const double rate = found.interval > 0 ? 1 / found.interval : 0;
  std::string length = fmt::format("{} over {}", counted(static_cast<int>(std::min(found.rows, 2e9)), "row"),
                                   at_time(found.end - found.begin));
  if (rate > 0) length += fmt::format(", usually {:.4g} a second", rate);
  sheet.paragraph(length + (is_dated ? ", from " + reading.first_stamp + " on" : ""));
  if (found.gaps > 0) sheet.paragraph("gaps: " + gaps_of(found, system), Ink::warning, 2, true);
  if (!reading.left_out.empty()) sheet.paragraph("rows left out: " + left_out_of(reading), Ink::warning, 2, true);
  channels_table(sheet, found);
}

}  // namespace

void diagnose_text(Sheet& sheet, const Answer& answer) {
  const auto& found = *answer.diagnosis;
  headline(sheet, found);
  causes_text(sheet, found);
  phases_table(sheet, found);
  changes_table(sheet, found);
  peaks_table(sheet, found);
  friction_text(sheet, found);
  hand_turns_table(sheet, found);
  reading_text(sheet, found);
  columns_text(sheet, answer.columns);
  auto assumptions = found.reading.assumptions;
  assumptions.insert(assumptions.end(), found.assumptions.begin(), found.assumptions.end());
  closing(sheet, answer.defaults, assumptions, found.cautions);
}

}  // namespace holdback::report
