// `size --job`: one job in depth on the recommended fit.
#include <fmt/format.h>

#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

namespace {

using draw::Ink;

std::string known_by(Known known) {
  if (known == Known::practice) return "practice";
  return known == Known::formula ? "formula" : known == Known::rating ? "maker's rating" : "setting";
}

std::string where(const Limit& limit, units::System system) {
  const auto at = at_diameter(limit.diameter, system);
  return std::string(name_of(limit.load_case)) + (at.empty() ? "" : " " + at);
}

void limits_table(Sheet& sheet, const std::vector<Limit>& limits) {
  const auto system = sheet.style().system;
  Table table({{"limit", false, false, ""},
               {"value", true, false, ""},
               {"bound", true, false, ""},
               {"unit", false, false, ""},
               {"in hand", true, false, ""},
               {"where", false, false, ""},
               {"bound by", false, false, ""},
               {"state", false, false, ""}});
  for (const auto& limit : limits) {
    const auto& about = info(limit.id);
    table.row({{std::string(about.name)},
               {units::show_number(limit.value, about.kind, system)},
               {(about.sense == Sense::at_most ? "≤ " : "≥ ") + units::show_number(limit.bound, about.kind, system)},
               {units::unit_of(about.kind, system)},
               {in_hand(limit.margin), ink_of(limit.state)},
               {where(limit, system)},
               {known_by(limit.known)},
               cell_of(limit.state)});
  }
  sheet.section("Limits");
  sheet.table(table);
}

void state_line(Sheet& sheet, const JobFit& job) {
  const auto system = sheet.style().system;
  const auto* limit = find(job.limits, job.binding);
  const auto what = limit != nullptr ? words_of(*limit, system) : std::string(info(job.binding).name);
  sheet.paragraph(fmt::format("{}: {} in hand, {}", key_of(job.state), kept_together(in_hand(job.margin)), what),
                  ink_of(job.state), 2, true);
}

void tension_facts(Sheet& sheet, const JobFit& job) {
  const auto system = sheet.style().system;
  const auto& tension = job.tension;
  const auto force = [system](double si) { return units::show(si, Quantity::force, system); };
  std::vector<Fact> facts{
      {"setpoint", force(tension.setpoint) + (tension.asked ? ", as the job asks" : ", as recommended")},
      {"window", force(tension.low) + " to " + force(tension.high)},
      {"lowest that can be reached", force(job.lowest_tension) + " at the core"}};
  if (tension.recommended > 0) {
    const auto source = tension.governed_by.empty() ? std::string{} : ", by " + tension.governed_by;
    facts.push_back({"recommended", force(tension.recommended) + source});
    facts.push_back({"recommended window", force(tension.recommended_low) + " to " + force(tension.recommended_high)});
  }
  if (tension.web_strength > 0) facts.push_back({"web yields at", force(tension.web_strength)});
  sheet.section("Tension, whole width");
  sheet.facts(facts);
}

void run_facts(Sheet& sheet, const JobFit& job) {
  const auto system = sheet.style().system;
  const auto show = [system](double si, Quantity kind) { return units::show(si, kind, system); };
  sheet.section("Running");
  sheet.facts(
      {{"pairs engaged", std::to_string(job.pairs) + " on each brake"},
       {"pressure, full roll", show(job.pressure_full, Quantity::pressure)},
       {"pressure, core", show(job.pressure_core, Quantity::pressure)},
       {"slip power, highest", show(job.slip_power, Quantity::power)},
       {"hottest disc", show(job.hottest, Quantity::temperature) + " " + at_diameter(job.hottest_diameter, system)},
       {"web on the full roll", show(job.roll.length, Quantity::web_length)},
       {"full roll, with core", show(job.roll.mass, Quantity::mass)},
       {"inertia, full roll", show(job.roll.inertia_full, Quantity::inertia)},
       {"inertia, core", show(job.roll.inertia_core, Quantity::inertia)},
       {"one roll runs", show(job.roll.running_time, Quantity::running_time)}});
}

std::string shortest(const StopFacts& stop, units::System system) {
  return stop.never ? "never" : units::show(stop.shortest_stop, Quantity::duration, system);
}

std::string taut(const StopFacts& stop, units::System system) {
  return stop.runs_away ? "never" : units::show(stop.shortest_taut_stop, Quantity::duration, system);
}

void stops_table(Sheet& sheet, const JobFit& job) {
  const auto system = sheet.style().system;
  Table table({{"", false, false, ""}, {"normal stop", true, false, ""}, {"emergency stop", true, false, ""}});
  const auto row = [&](std::string name, double StopFacts::*member, Quantity kind) {
    table.row({{std::move(name)},
               {units::show(job.stop.*member, kind, system)},
               {units::show(job.emergency_stop.*member, kind, system)}});
  };
  row("time asked", &StopFacts::time, Quantity::duration);
  row("torque needed", &StopFacts::torque_needed, Quantity::torque);
  row("torque available, lowest friction", &StopFacts::torque_available, Quantity::torque);
  row("hardest at Ø", &StopFacts::diameter, Quantity::short_length);
  const auto slack = [&](const StopFacts& stop) {
    if (stop.runs_away) return Cell{"without end", Ink::bad};
    return stop.slack > 0 ? Cell{slack_of(stop.slack, system), Ink::bad} : Cell{"none"};
  };
  table.row({{"slack thrown"}, slack(job.stop), slack(job.emergency_stop)});
  table.row({{"shortest stop, web just taut"}, {taut(job.stop, system)}, {taut(job.emergency_stop, system)}});
  table.row({{"shortest stop, tension kept"}, {shortest(job.stop, system)}, {shortest(job.emergency_stop, system)}});
  row("energy into the discs, highest", &StopFacts::energy, Quantity::energy);
  row("disc after the stop", &StopFacts::bulk_temperature, Quantity::temperature);
  row("face of the disc, hottest", &StopFacts::surface_temperature, Quantity::temperature);
  sheet.section("Stops");
  sheet.table(table);
  const WebBreakFacts& coast = job.web_break;
  if (coast.runs_away) {
    sheet.paragraph("After a web break nothing stops the roll.", Ink::bad);
    return;
  }
  sheet.paragraph(fmt::format("After a web break the roll coasts {} in {} {}.",
                              shown(coast.turns, Quantity::turns, system),
                              shown(coast.time, Quantity::duration, system), at_diameter(coast.diameter, system)));
}

void wear_facts(Sheet& sheet, const WearFacts& wear, const std::string& currency) {
  const auto system = sheet.style().system;
  std::vector<Fact> facts{{"pads last", rounded(wear.life, Quantity::running_time, system)},
                          {"at the line's shifts", rounded(wear.weeks, Quantity::calendar_time, system)},
                          {"web until then", rounded(wear.web_length, Quantity::web_length, system)},
                          {"rolls until then", rounded(wear.rolls, Quantity::number, system)},
                          {"pads a year", rounded(wear.pads_per_year, Quantity::number, system)}};
  if (wear.cost_per_year)
    facts.push_back({"cost a year",
                     rounded(*wear.cost_per_year, Quantity::price, system) + (currency.empty() ? "" : " " + currency)});
  sheet.section("Wear, this job run alone");
  sheet.facts(facts);
}

}  // namespace

void job_text(Sheet& sheet, const Answer& answer) {
  const auto& choice = *answer.choice;
  const auto& job = *choice.job;
  sheet.title((choice.title.empty() ? "" : choice.title + ": ") + "job " + named(job.job));
  if (choice.recommended) {
    const auto& fit = choice.recommended->fit;
    sheet.paragraph(fmt::format("on {}; {} of {} engaged", words_of(fit), job.pairs, counted(fit.pairs, "pair")));
  }
  state_line(sheet, job);
  limits_table(sheet, job.limits);
  tension_facts(sheet, job);
  window_text(sheet, job.window);
  run_facts(sheet, job);
  stops_table(sheet, job);
  if (job.thermal) thermal_text(sheet, *job.thermal);
  wear_facts(sheet, job.wear, choice.currency);
  if (job.shaft) shaft_text(sheet, *job.shaft);
  if (job.likelihood) likelihood_text(sheet, *job.likelihood);
  if (choice.envelope) picture_text(sheet, *choice.envelope, job.job);
  bool heading = false;
  for (const auto& uncovered : choice.uncovered) {
    if (uncovered.job != job.job) continue;
    if (!heading) sheet.section("What falls out");
    heading = true;
    uncovered_text(sheet, uncovered);
  }
  auto assumptions = choice.assumptions;
  assumptions.insert(assumptions.end(), job.notes.begin(), job.notes.end());
  columns_text(sheet, answer.columns);
  closing(sheet, answer.defaults, assumptions, choice.cautions);
}

}  // namespace holdback::report
