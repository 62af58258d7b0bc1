// `fit`: what the real brake does, and the verdict with its evidence.
#include <fmt/format.h>

#include <cmath>

#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

namespace {

using draw::Ink;
using Q = Quantity;

Ink ink_of(BrakeCause cause) {
  if (cause == BrakeCause::as_expected) return Ink::good;
  return cause == BrakeCause::readings ? Ink::warning : Ink::bad;
}

std::string likelihood_of(const BrakeVerdict& verdict) {
  if (!verdict.share) return {};
  const double percent = 100 * *verdict.share;
  return percent > 99 ? " (more than 99 % likely)" : fmt::format(" ({:.0f} % likely)", percent);
}

void verdicts_text(Sheet& sheet, const BrakeFit& fit) {
  const auto system = sheet.style().system;
  bool first = true;
  for (const BrakeVerdict& verdict : fit.verdicts) {
    sheet.blank();
    const auto what = filled(verdict.what, system) + kept_together(likelihood_of(verdict));
    sheet.paragraph((first ? "" : "Or: ") + what, first ? ink_of(verdict.cause) : Ink::plain, 2, true);
    sheet.paragraph(filled(verdict.evidence, system), Ink::plain, 4);
    sheet.paragraph(filled(verdict.remedy, system), Ink::plain, 4);
    first = false;
  }
}

/// One row: fitted value, its interval, what the file says.
void row_of(Table& table, const std::string& name, const FittedNumber& number, Quantity kind,
            const std::string& in_file, units::System system, bool known = true) {
  const auto set = aligned_numbers({number.value, number.low, number.high}, kind, system);
  const std::string unit = units::unit_of(kind, system);
  table.row({{name}, {set[0]}, {known ? set[1] : "–"}, {known ? set[2] : "–"}, {unit}, {in_file}});
}

void constants_text(Sheet& sheet, const BrakeFit& fit) {
  if (fit.torque_per_pressure.value <= 0) return;
  const auto system = sheet.style().system;
  const auto in_file = [&](double value, Quantity kind) { return units::show_number(value, kind, system); };
  Table table({{"", false, true, ""},
               {"fitted", true, false, ""},
               {"from", true, false, "95 % interval"},
               {"to", true, false, "95 % interval"},
               {"unit", false, false, ""},
               {"in the file", false, false, ""}});
  const bool known = fit.torque_per_pressure.high > fit.torque_per_pressure.low;
  row_of(table, "torque per pressure, one pair", fit.torque_per_pressure, Q::torque_per_pressure,
         in_file(fit.torque_per_pressure.in_file, Q::torque_per_pressure), system, known);
  if (fit.friction)
    row_of(table, "effective friction", *fit.friction, Q::number, in_file(fit.friction->in_file, Q::number), system,
           known);
  row_of(table, "share of nominal friction", fit.friction_share, Q::ratio,
         fmt::format("band {} to {}", in_file(fit.band_low, Q::ratio), in_file(fit.band_high, Q::ratio)), system,
         known);
  row_of(table, "threshold", fit.threshold, Q::pressure, in_file(fit.threshold.in_file, Q::pressure), system, known);
  row_of(table, fit.drag_read ? "drag, shaft and brakes" : "drag (not read: the file's)", fit.drag, Q::torque,
         in_file(fit.drag.in_file, Q::torque), system, fit.drag_read);
  if (fit.hysteresis) row_of(table, "rising to falling pressure", *fit.hysteresis, Q::pressure, "", system, known);
  sheet.section("The brake as read");
  sheet.table(table);
  std::string under = fmt::format("Readings scatter by {} about the fit", shown(fit.scatter, Q::torque, system));
  if (fit.median_torque_per_pressure > 0)
    under += fmt::format("; repeated medians give {} of a pair",
                         shown(fit.median_torque_per_pressure, Q::torque_per_pressure, system));
  if (fit.hysteresis)
    under += fmt::format("; rising and falling differ by {} of the torque in the middle",
                         shown(fit.hysteresis_share, Q::ratio, system));
  sheet.paragraph(under + ".", Ink::faint);
}

void readings_text(Sheet& sheet, const BrakeFit& fit) {
  constexpr std::size_t most = 40;
  const auto system = sheet.style().system;
  const auto pressure = column_of(fit.readings, &FittedReading::pressure, Q::pressure, system);
  const auto torque = column_of(fit.readings, &FittedReading::torque, Q::torque, system);
  const auto fitted = column_of(fit.readings, &FittedReading::fitted, Q::torque, system);
  const auto residual = column_of(fit.readings, &FittedReading::residual, Q::torque, system);
  const bool has_fit = fit.torque_per_pressure.value > 0;
  Table table({{"row", true, false, ""},
               {"pressure\n" + unit_head(Q::pressure, system), true, false, ""},
               {"pairs", true, false, ""},
               {"moved", false, false, ""},
               {"torque\n" + unit_head(Q::torque, system), true, false, ""},
               {"fitted\n" + unit_head(Q::torque, system), true, false, ""},
               {"off by\n" + unit_head(Q::torque, system), true, false, ""},
               {"", false, false, ""}});
  for (std::size_t i = 0; i < fit.readings.size(); ++i) {
    const auto& each = fit.readings[i];
    if (fit.readings.size() > most && !each.outlier && i >= most && !sheet.style().all) continue;
    table.row({{std::to_string(each.row)},
               {pressure[i]},
               {std::to_string(each.pairs)},
               {each.course == PressureCourse::unknown ? "–" : std::string(key_of(each.course))},
               {torque[i]},
               {has_fit ? fitted[i] : "–"},
               {has_fit ? residual[i] : "–"},
               {each.outlier ? "left out" : "", Ink::warning}});
  }
  sheet.section(fmt::format("Readings ({}{})", fit.readings.size(),
                            fit.outliers > 0 ? fmt::format(", {} left out", fit.outliers) : ""));
  sheet.table(table);
}

std::string place_of(const NextReading& next, units::System system) {
  const std::string pairs = counted(next.pairs, "pair");
  if (next.pressure <= 0) return "the brake released";
  return fmt::format("{} with {} engaged", shown(next.pressure, Q::pressure, system), pairs);
}

void next_text(Sheet& sheet, const BrakeFit& fit) {
  if (fit.next.empty()) return;
  const auto system = sheet.style().system;
  sheet.section("Readings to take next");
  for (const NextReading& next : fit.next) {
    std::string text = fmt::format("– at {}: about {} is to be expected", place_of(next, system),
                                   shown(next.torque, Q::torque, system));
    if (next.slope_now > 0)
      text += fmt::format(
          "; the torque per pressure is then known to ±{} instead of ±{}, the threshold to ±{} instead "
          "of ±{}",
          shown(next.slope_then, Q::ratio, system), shown(next.slope_now, Q::ratio, system),
          shown(next.threshold_then, Q::pressure, system), shown(next.threshold_now, Q::pressure, system));
    else if (next.pressure <= 0)
      text += "; it tells the drag from the threshold";
    sheet.paragraph(text, Ink::plain, 2, true);
  }
  if (fit.next.front().slope_now > 0 || fit.next.back().slope_now > 0)
    sheet.paragraph("Each counts the ones before it; keep the tension of the reading inside what the web takes.",
                    Ink::faint);
}

void file_text(Sheet& sheet, const BrakeFit& fit) {
  const auto system = sheet.style().system;
  if (fit.refusal) {
    sheet.section("The stand file");
    sheet.paragraph("It is left as it is: " + filled(*fit.refusal, system) + ".", Ink::bad);
  }
  if (!fit.stand_file) return;
  sheet.section("The stand file");
  if (fit.changes.empty()) sheet.paragraph("It says so already; nothing is changed.");
  for (const FileChange& change : fit.changes)
    sheet.paragraph(fmt::format("– {}: {} = {} ({})", change.owner, change.key, change.after,
                                change.before.empty() ? "was not there" : "was " + change.before),
                    Ink::plain, 2, true);
}

}  // namespace

void fit_text(Sheet& sheet, const Answer& answer) {
  const auto& found = *answer.fit;
  sheet.title((found.title.empty() ? "" : found.title + ": ") + words_of(found.fit) + ", from readings");
  verdicts_text(sheet, found);
  constants_text(sheet, found);
  if (!found.not_told.empty()) {
    sheet.section("What these readings cannot tell apart");
    notes(sheet, found.not_told);
  }
  readings_text(sheet, found);
  next_text(sheet, found);
  file_text(sheet, found);
  columns_text(sheet, answer.columns);
  closing(sheet, answer.defaults, found.assumptions, found.cautions);
}

}  // namespace holdback::report
