// `measure`: the tension from readings on site, how sure it is, and what would make it surer; or how to take them.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

namespace {

using draw::Ink;

constexpr double least_share = 0.0005;  // of the variance: what is less has no row

/// A value rounded to the place that its uncertainty has two digits at, with its unit.
std::string rounded_to(double value, double uncertainty, Quantity kind, units::System system) {
  const double number = units::in_display_unit(value, kind, system);
  const double doubt = std::abs(units::in_display_unit(value + uncertainty, kind, system) - number);
  int decimals = 3;
  if (doubt > 0) decimals = std::clamp(1 - static_cast<int>(std::floor(std::log10(doubt))), 0, 9);
  const auto unit = units::unit_of(kind, system);
  return kept_together(fmt::format("{:.{}f}", number, decimals) + (unit.empty() ? "" : " " + unit));
}

/// An uncertainty with two digits, without a zero point: that of a temperature is a difference.
std::string doubt_of(double uncertainty, Quantity kind, units::System system) {
  return kept_together(units::show(uncertainty, kind, system, 2));
}

std::string title_of(const Measurement& found) {
  return found.instruction.title + (found.job.empty() ? "" : ": " + named(found.job));
}

Ink ink_of_state(const std::string& state) {
  if (state == "inside") return Ink::good;
  return state == "outside" ? Ink::bad : Ink::warning;
}

/// "149.9 N ± 2.4 N (95 %)", or the ends of the interval where it is that of the draws.
std::string interval_of(const Measurement& found, units::System system) {
  const auto at = [&](double value) { return rounded_to(value, *found.uncertainty, Quantity::force, system); };
  if (found.by_draws)
    return fmt::format("{}, 95 % between {} and {} by draws", at(*found.tension), at(*found.low), at(*found.high));
  return fmt::format("{} ± {} (95 %)", rounded_to(*found.tension, *found.expanded, Quantity::force, system),
                     doubt_of(*found.expanded, Quantity::force, system));
}

std::string factor_of(const Measurement& found) {
  const bool told = found.freedom.has_value();
  return fmt::format("{:.2f}", *found.coverage) +
         (told ? fmt::format(", {:.0f} degree{} of freedom", *found.freedom, *found.freedom < 1.5 ? "" : "s") : "");
}

void headline(Sheet& sheet, const Measurement& found) {
  const auto system = sheet.style().system;
  sheet.title(title_of(found));
  sheet.blank();
  sheet.paragraph("Tension " + interval_of(found, system), Ink::strong);
  std::vector<Fact> facts{
      {"standard uncertainty", doubt_of(*found.uncertainty, Quantity::force, system) +
                                   fmt::format(", {:.1f} %", 100 * *found.uncertainty / *found.tension)}};
  if (!found.by_draws) facts.push_back({"factor for 95 %", factor_of(found)});
  if (found.per_width)
    facts.insert(facts.begin(), {"per width", shown(*found.per_width, Quantity::tension_per_width, system)});
  sheet.facts(facts);
  if (found.window) {
    sheet.blank();
    sheet.paragraph(filled(found.window->verdict, system), ink_of_state(found.window->state));
  }
}

void budget_table(Sheet& sheet, const Measurement& found) {
  const auto system = sheet.style().system;
  Table table({{"input", false, false, ""},
               {"value", true, false, ""},
               {"standard\nuncertainty", true, false, ""},
               {"makes\n" + unit_head(Quantity::force, system), true, false, ""},
               {"share\n[%]", true, false, ""},
               {"from", false, true, ""}});
  for (const auto& line : found.budget) {
    const double uncertainty = line.uncertainty.value;
    const bool exact = !(uncertainty > 0);
    if (!exact && line.sensitivity == 0) continue;  // of a part beside the tension
    table.row(
        {{line.name},
         {exact ? units::show(line.value, system) : rounded_to(line.value.value, uncertainty, line.value.kind, system)},
         {exact ? "exact" : doubt_of(uncertainty, line.value.kind, system)},
         {exact ? "–" : units::show_number(line.contribution, Quantity::force, system, 2)},
         {line.share < least_share ? "–" : fmt::format("{:.1f}", 100 * line.share)},
         {filled(line.origin, system)}});
  }
  sheet.section("What makes the uncertainty");
  sheet.table(table);
  if (found.better) {
    const auto then = doubt_of(found.better->uncertainty, Quantity::force, system);
    sheet.paragraph("Best next step: " + filled(found.better->what, system) + "; the standard uncertainty falls from " +
                        doubt_of(*found.uncertainty, Quantity::force, system) + " to " + then + ".",
                    Ink::strong, 2, true);
  }
}

void drawn_text(Sheet& sheet, const Measurement& found) {
  if (!found.drawn) return;
  const auto& drawn = *found.drawn;
  const auto system = sheet.style().system;
  const auto at = [&](double value) { return rounded_to(value, *found.uncertainty, Quantity::force, system); };
  sheet.paragraph(
      fmt::format("Check by {} {} draws (seed {}): 95 % between {} and {}; the linear interval {} to {} {} within "
                  "{} of it.",
                  drawn.draws, drawn.points, drawn.seed, at(drawn.low), at(drawn.high), at(drawn.linear_low),
                  at(drawn.linear_high), drawn.agrees ? "is" : "is not",
                  doubt_of(drawn.tolerance, Quantity::force, system)),
      Ink::faint, 2, true);
}

void parts_text(Sheet& sheet, const Measurement& found) {
  if (found.parts.empty() && !found.simple) return;
  const auto system = sheet.style().system;
  sheet.section("Beside the tension");
  Table table({{"", false, true, ""}, {"", true, false, ""}, {"", false, false, ""}});
  for (const auto& part : found.parts)
    table.row(
        {{part.name},
         {part.uncertainty.value > 0 ? rounded_to(part.value.value, part.uncertainty.value, part.value.kind, system)
                                     : units::show(part.value, system)},
         {part.uncertainty.value > 0 ? "± " + doubt_of(part.uncertainty.value, part.value.kind, system) : ""}});
  if (!found.parts.empty()) sheet.table(table);
  if (!found.simple) return;
  const auto& simple = *found.simple;
  const auto size = std::abs(100 * simple.error_share);
  const auto much = kept_together(fmt::format("{:.{}f} %", size, size < 1 ? 2 : 1));
  sheet.paragraph(
      fmt::format("The short cut, {}, gives {}{}.", simple.formula, shown(simple.tension, Quantity::force, system),
                  size < 0.005 ? ", the same" : ": " + much + (simple.error > 0 ? " too high" : " too low")),
      size > 2 ? Ink::warning : Ink::plain, 2, true);
}

void sound_text(Sheet& sheet, const Measurement& found) {
  if (!found.sound) return;
  const auto system = sheet.style().system;
  const auto& sound = *found.sound;
  sheet.section("The recording");
  const auto which = sound.partial > 1 ? fmt::format(", which is its {}. partial", sound.partial) : std::string{};
  sheet.paragraph(fmt::format("{} after the tap were used; the span rings at {}{}, standard uncertainty {}.",
                              shown(sound.duration, Quantity::duration, system),
                              rounded_to(sound.frequency, sound.uncertainty, Quantity::frequency, system), which,
                              doubt_of(sound.uncertainty, Quantity::frequency, system)));
  Table table({{"tone\n" + unit_head(Quantity::frequency, system), true, false, ""},
               {"of the\nhighest", true, false, ""},
               {"partial", true, false, ""}});
  for (const auto& peak : sound.peaks)
    table.row({{units::show_number(peak.frequency, Quantity::frequency, system, 4)},
               {units::show(peak.level, Quantity::ratio, system, 2)},
               {peak.partial > 0 ? std::to_string(peak.partial) : "none"}});
  sheet.table(table);
}

void methods_text(Sheet& sheet, const Measurement& found) {
  if (found.methods.empty()) return;
  const auto system = sheet.style().system;
  Table table({{"method", false, false, ""},
               {"standard\nuncertainty", true, false, ""},
               {"of the\ntension", true, false, ""},
               {"why", false, true, ""}});
  for (const auto& method : found.methods)
    table.row({{method.method, method.method == found.method ? Ink::strong : Ink::plain},
               {method.possible ? doubt_of(method.uncertainty, Quantity::force, system) : "–"},
               {method.possible ? fmt::format("{:.1f} %", 100 * method.share) : "–"},
               {filled(method.why, system)}});
  sheet.section("Which method is best here, with usual instruments and one reading");
  sheet.table(table);
}

void numbered(Sheet& sheet, const std::vector<Note>& steps) {
  for (std::size_t i = 0; i < steps.size(); ++i)
    sheet.paragraph(fmt::format("{}. {}", i + 1, filled(steps[i], sheet.style().system)), Ink::plain, 2, true);
}

void fields_table(Sheet& sheet, const std::vector<ReadingField>& fields) {
  const auto system = sheet.style().system;
  Table table({{"reading", false, false, ""},
               {"needed", false, false, ""},
               {"read to", true, false, ""},
               {"what it is", false, true, ""}});
  for (const auto& field : fields)
    table.row({{field.key},
               {field.needed     ? "yes"
                : field.from_web ? "by the job"
                                 : "no"},
               {field.step ? units::show(*field.step, system, 1) : ""},
               {field.help}});
  sheet.section("What to write down");
  sheet.table(table);
}

void instruction_text(Sheet& sheet, const Measurement& found) {
  const auto& instruction = found.instruction;
  sheet.title(title_of(found));
  sheet.paragraph(instruction.idea);
  sheet.section("Heed this first");
  notes(sheet, instruction.cautions);
  sheet.section("Steps");
  numbered(sheet, instruction.steps);
  if (!instruction.expected.empty()) {
    sheet.blank();
    notes(sheet, instruction.expected);
  }
  fields_table(sheet, instruction.fields);
  methods_text(sheet, found);
}

}  // namespace

void measure_text(Sheet& sheet, const Answer& answer) {
  const auto& found = *answer.measurement;
  if (!found.tension) return instruction_text(sheet, found);
  headline(sheet, found);
  budget_table(sheet, found);
  drawn_text(sheet, found);
  parts_text(sheet, found);
  sound_text(sheet, found);
  methods_text(sheet, found);
  closing(sheet, {}, found.assumptions, found.cautions);  // what else the stand file leaves out is no matter here
}

}  // namespace holdback::report
