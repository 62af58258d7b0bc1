// `history show`: what is kept of a stand, and when its pads are due.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "holdback/model/date.hpp"
#include "holdback/model/history_fields.hpp"
#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

namespace {

using draw::Ink;

constexpr std::size_t most_entries = 20;  // JSON and CSV hold all

std::string pad_name(const std::string& pad) { return pad.empty() ? "the thinnest pad" : pad; }

std::string capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

std::string percent(double share) { return kept_together(fmt::format("{:.0f} %", 100 * share)); }

/// An amount of use, as a person reads it.
std::string use_text(double use, UseBasis basis, units::System system) {
  const auto kind = kind_of(basis);
  if (basis == UseBasis::rolls) return kept_together(fmt::format("{:.0f} rolls", use));
  return rounded(use, kind, system);
}

/// "1200 to 2600 h, middle 1800 h"; an open end in words.
std::string span_text(const Interval& span, UseBasis basis, units::System system) {
  const auto show = [&](double use) { return use_text(use, basis, system); };
  if (!span.middle) return "more than " + show(span.low);
  return "about " + show(*span.middle) + " (" + show(span.low) +
         (span.high ? " to " + show(*span.high) : " or more, no end to be seen") + ")";
}

/// Amount of use over which a rate is told.
struct RateUnit {
  double use{};
  std::string words{};  // "in 1 000 h"
};
RateUnit rate_unit(UseBasis basis, units::System system) {
  constexpr double year = 365.25 * seconds_a_day;
  if (basis == UseBasis::calendar) return {year, "a year"};
  const double shown_use = basis == UseBasis::energy ? 1e6 : basis == UseBasis::rolls ? 100 : 1000;
  const double use = shown_use / units::in_display_unit(1, kind_of(basis), system);
  return {use, "in " + use_text(use, basis, system)};
}

/// The number alone, for a column whose head tells the unit.
std::string use_number(const std::optional<double>& use, UseBasis basis, units::System system) {
  if (!use) return "no end";
  auto text = basis == UseBasis::rolls ? fmt::format("{:.0f}", *use) : rounded(*use, kind_of(basis), system);
  const auto unit = kept_together(" " + units::unit_of(kind_of(basis), system));
  const auto at = text.rfind(unit);
  if (basis != UseBasis::rolls && at != std::string::npos && at + unit.size() == text.size()) text.erase(at);
  return text;
}

std::string dates_text(const DayInterval& date) {
  return "90 %: " + date_text(date.low) + (date.high ? " to " + date_text(*date.high) : " or later, no end to be seen");
}

void headline(Sheet& sheet, const History& history) {
  const auto& entries = history.entries;
  const auto [first, last] =
      std::minmax_element(entries.begin(), entries.end(), [](const auto& a, const auto& b) { return a.day < b.day; });
  std::string line = history.stand + ": history";
  if (!entries.empty()) {
    const auto count = entries.size();
    line += fmt::format(", {} {}", count, count == 1 ? "entry" : "entries");
    line += first->day == last->day ? " of " + date_text(first->day)
                                    : " from " + date_text(first->day) + " to " + date_text(last->day);
  }
  sheet.title(line);
  if (!history.title.empty() && history.title != history.stand)
    sheet.paragraph("stand file: " + history.title, Ink::faint);
}

bool worn(const PadCourse& course) {
  return !course.until && !course.points.empty() && !(course.points.back().depth > 0);
}

void answer_text(Sheet& sheet, const History& history) {
  const auto system = sheet.style().system;
  sheet.blank();
  for (const auto& course : history.courses)
    if (worn(course))
      sheet.paragraph("Change the pads now: " + pad_name(course.pad) + " is at the maker's limit.", Ink::bad, 2, true);
  if (!history.forecast) {
    sheet.paragraph("Next change of pads: cannot be told yet; see what to measure next.", Ink::strong, 2, true);
    return;
  }
  const auto& forecast = *history.forecast;
  const bool due = forecast.date.middle <= forecast.from;
  const auto when = due                        ? std::string("due now")
                    : forecast.beyond_calendar ? "after " + date_text(forecast.date.middle)
                                               : "about " + date_text(forecast.date.middle);
  sheet.paragraph("Next change of pads: " + when + " (" + dates_text(forecast.date) + "), " +
                      pad_name(forecast.governs) + (forecast.pads.size() > 1 ? " most likely first" : "") + ".",
                  due ? Ink::bad : Ink::strong, 2, true);
  std::string left = fmt::format("{} left from {} on: {}", capital(std::string(words_of(forecast.basis))),
                                 date_text(forecast.from), span_text(forecast.remaining, forecast.basis, system));
  if (forecast.running) left += "; running time " + span_text(*forecast.running, UseBasis::running_time, system);
  sheet.paragraph(left + ".", Ink::plain, 2, true);
  if (forecast.basis == UseBasis::calendar) return;
  const auto month = 30 * forecast.per_day;
  sheet.paragraph(fmt::format("Work: {} a month (± {} standard).", use_text(month, forecast.basis, system),
                              percent(forecast.per_day > 0 ? forecast.per_day_uncertainty / forecast.per_day : 0)),
                  Ink::plain, 2, true);
}

/// What the stand file expects beside what was found: the life of a new set at the rate of the governing pad.
void expectation(Sheet& sheet, const History& history) {
  if (!history.expected) return;
  const auto system = sheet.style().system;
  sheet.paragraph(fmt::format("The stand file expects a set of pads to last {} of running, {} of friction energy.",
                              rounded(history.expected->life, Quantity::running_time, system),
                              rounded(history.expected->energy, Quantity::energy, system)),
                  Ink::plain, 2, true);
}

std::string first_text(double share) {
  if (share > 0.995) return kept_together("> 99 %");
  return share < 0.005 ? kept_together("< 1 %") : percent(share);
}

void forecast_table(Sheet& sheet, const History& history) {
  if (!history.forecast) return;
  const auto system = sheet.style().system;
  const auto& forecast = *history.forecast;
  const auto per = rate_unit(forecast.basis, system);
  const auto kind = kind_of(forecast.basis);
  const auto left =
      forecast.basis == UseBasis::rolls ? std::string("until worn [rolls]") : "until worn " + unit_head(kind, system);
  const auto length = unit_head(Quantity::short_length, system);
  Table table({{"pad", false, true, ""},
               {"measured", true, false, ""},
               {"left now\n" + length, true, false, ""},
               {length, true, false, "wears " + per.words},
               {"±", true, false, "wears " + per.words},
               {"early", true, false, left},
               {"middle", true, false, left},
               {"late", true, false, left},
               {"first\nworn", true, false, ""}});
  const auto depth = column_of(forecast.pads, &PadForecast::depth_now, Quantity::short_length, system);
  const auto rate = column_of(
      forecast.pads, [&](const PadForecast& it) { return it.rate * per.use; }, Quantity::short_length, system);
  const auto spread = column_of(
      forecast.pads, [&](const PadForecast& it) { return it.rate_uncertainty * per.use; }, Quantity::short_length,
      system);
  for (std::size_t i = 0; i < forecast.pads.size(); ++i) {
    const auto& pad = forecast.pads[i];
    table.row({{pad_name(pad.pad)},
               {fmt::format("{} ×", pad.measured)},
               {depth[i], pad.depth_now > 0 ? Ink::plain : Ink::bad},
               {rate[i]},
               {spread[i]},
               {pad.remaining ? use_number(pad.remaining->low, forecast.basis, system) : "no end"},
               {use_number(pad.remaining ? pad.remaining->middle : std::nullopt, forecast.basis, system)},
               {use_number(pad.remaining ? pad.remaining->high : std::nullopt, forecast.basis, system)},
               {first_text(pad.first)}});
  }
  sheet.section("Pads in use (early and late: the 90 % interval)");
  sheet.table(table);
  expectation(sheet, history);
}

void courses_table(Sheet& sheet, const History& history) {
  const auto system = sheet.style().system;
  const auto closed = [](const PadCourse& course) { return course.until.has_value(); };
  if (std::none_of(history.courses.begin(), history.courses.end(), closed)) return;
  const auto length = unit_head(Quantity::short_length, system);
  Table table({{"pad", false, true, ""},
               {"from", false, false, ""},
               {"until", false, false, ""},
               {"days", true, false, ""},
               {"measured", true, false, ""},
               {"last depth\n" + length, true, false, ""}});
  std::vector<PadCourse> sets;
  std::copy_if(history.courses.begin(), history.courses.end(), std::back_inserter(sets), closed);
  const auto depth = column_of(
      sets, [](const PadCourse& it) { return it.points.empty() ? 0 : it.points.back().depth; }, Quantity::short_length,
      system);
  for (std::size_t i = 0; i < sets.size(); ++i) {
    const auto& set = sets[i];
    const auto fresh = std::count_if(set.points.begin(), set.points.end(), [](const auto& each) { return each.fresh; });
    const auto measured = static_cast<std::ptrdiff_t>(set.points.size()) - fresh;
    table.row({{pad_name(set.pad)},
               {(set.fitted ? "" : "before ") + date_text(set.since)},
               {date_text(*set.until)},
               {fmt::format("{}", *set.until - set.since)},
               {fmt::format("{} ×", measured)},
               {measured > 0 ? depth[i] : "–"}});
  }
  sheet.section("Sets that were changed");
  sheet.table(table);
}

/// The values of an entry in a line: "depth 6.40 mm, brake front".
std::string values_text(const HistoryEntry& entry, units::System system) {
  std::string out;
  for (const auto& field : history_fields()) {
    const auto value = value_of(entry, field);
    const auto* number = std::get_if<double>(&value);
    const auto* text = std::get_if<std::string>(&value);
    if (number == nullptr && text == nullptr) continue;
    const bool quantity = std::holds_alternative<std::optional<double> HistoryEntry::*>(field.target);
    std::string words(field.key);
    std::replace(words.begin(), words.end(), '_', ' ');
    if (text != nullptr) words = field.key == "text" ? *text : words + " " + *text;
    if (number != nullptr && quantity) words += " " + rounded(*number, field.kind, system);
    if (number != nullptr && field.key == "since") words += " " + date_text(static_cast<int>(*number));
    out += (out.empty() ? "" : ", ") + words;
  }
  return out;
}

void entries_table(Sheet& sheet, const History& history) {
  const auto system = sheet.style().system;
  const auto count = history.entries.size();
  const auto shown_count = sheet.style().all ? count : std::min(count, most_entries);
  Table table(
      {{"no.", true, false, ""}, {"date", false, false, ""}, {"kind", false, false, ""}, {"what", false, true, ""}});
  for (std::size_t i = count - shown_count; i < count; ++i) {
    const auto& entry = history.entries[i];
    auto what = values_text(entry, system);
    const auto add = [&](const std::string& words) { what += (what.empty() ? "" : "; ") + words; };
    if (entry.corrects != 0) add(fmt::format("instead of {}", entry.corrects));
    if (entry.corrected_by != 0) add(fmt::format("corrected by {}", entry.corrected_by));
    const auto ink = entry.corrected_by != 0 ? Ink::faint : Ink::plain;
    table.row({{std::to_string(entry.number), ink},
               {date_text(entry.day), ink},
               {std::string(key_of(entry.kind)), ink},
               {what, ink}});
  }
  sheet.section(shown_count < count
                    ? fmt::format("The last {} of {} entries (--all shows every one)", shown_count, count)
                    : "Entries");
  sheet.table(table);
}

std::string trend_value(const FrictionTrend& trend, double value, units::System system) {
  return shown(value, trend.kind, system);
}

void trends_text(Sheet& sheet, const History& history) {
  if (history.trends.empty()) return;
  const auto system = sheet.style().system;
  sheet.section("Fitted constants over time");
  for (const auto& trend : history.trends) {
    std::string words(trend.key);
    std::replace(words.begin(), words.end(), '_', ' ');
    if (!trend.brake.empty()) words += ", brake " + trend.brake;
    const double of = std::abs(trend.first) > 0 ? 1 / std::abs(trend.first) : 0;
    const auto yearly = [&](double slope) { return fmt::format("{:+.0f} %", 100 * slope * of); };
    const auto course =
        fmt::format("{} on {} to {} on {}", trend_value(trend, trend.first, system), date_text(trend.from),
                    trend_value(trend, trend.last, system), date_text(trend.until));
    const auto slope = of > 0 ? kept_together(yearly(trend.per_year)) +
                                    " a year (90 %: " + kept_together(yearly(trend.low)) + " to " +
                                    kept_together(yearly(trend.high)) + ")"
                              : std::string("from nothing");
    const auto verdict = trend.seen ? (trend.per_year > 0 ? "it rises" : "it falls") : "no drift to be seen";
    sheet.paragraph(fmt::format("– {}: {}: {} by {} fits, {}", words, verdict, course, trend.count, slope),
                    trend.seen ? Ink::warning : Ink::plain, 2, true);
  }
}

void next_text(Sheet& sheet, const History& history) {
  if (history.measure_next.empty()) return;
  sheet.section("What to measure next");
  notes(sheet, history.measure_next);
}

}  // namespace

void history_text(Sheet& sheet, const Answer& answer) {
  const auto& history = *answer.history;
  headline(sheet, history);
  answer_text(sheet, history);
  forecast_table(sheet, history);
  next_text(sheet, history);
  courses_table(sheet, history);
  trends_text(sheet, history);
  entries_table(sheet, history);
  closing(sheet, answer.defaults, history.assumptions, history.cautions);
}

}  // namespace holdback::report
