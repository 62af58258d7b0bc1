// What is said of jobs in depth: the tension window bound by bound, heat over rolls, the shaft, how likely it all
// holds.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

namespace {

using draw::Ink;

/// A time of seconds or hours as a person would say it: "40 s", "25 min", "3.2 h".
std::string spell(double seconds, units::System system) {
  if (seconds < 120) return units::show(seconds, Quantity::duration, system);
  if (seconds < 2 * 3600) return fmt::format("{:.0f} min", seconds / 60);
  return rounded(seconds, Quantity::running_time, system);
}

std::string in_words(Input input) { return std::string(key_of(input)); }

std::string share(double part) {
  if (part >= 1) return "100 %";
  if (part > 0.999) return ">99.9 %";
  return fmt::format("{:.{}f} %", 100 * part, part < 0.1 || part > 0.99 ? 1 : 0);
}

Ink ink_of_share(double part) { return part >= 0.99 ? Ink::good : part >= 0.9 ? Ink::warning : Ink::bad; }

std::string strongest(const Likelihood& likelihood) {
  std::string out;
  for (const Driver& driver : likelihood.drivers) {
    if (driver.total < 0.1) break;
    out += (out.empty() ? "" : ", ") + in_words(driver.input);
  }
  return out.empty() ? "–" : out;
}

Cell end_of(const std::optional<double>& tension, units::System system) {
  return {tension ? units::show_number(*tension, Quantity::force, system) : "–"};
}

Cell by(const std::optional<BoundId>& bound) { return {bound ? std::string(name_of(*bound)) : "not known"}; }

std::string known_in_words(Known known) {
  if (known == Known::formula) return "formula";
  if (known == Known::rating) return "maker's rating";
  return known == Known::setting ? "setting" : "common practice";
}

std::string where(const WindowBound& bound, units::System system) {
  std::string out(bound.part.empty() ? std::string{} : named(bound.part));
  if (bound.load_case != LoadCase::run) out += (out.empty() ? "" : ", ") + std::string(name_of(bound.load_case));
  const auto at = at_diameter(bound.diameter, system);
  return out + (out.empty() || at.empty() ? "" : " ") + at;
}

/// True when the window does not change from one row to the next.
bool all_alike(const std::vector<WindowAt>& ends) {
  return std::all_of(ends.begin(), ends.end(), [&](const WindowAt& end) {
    return end.low == ends.front().low && end.low_by == ends.front().low_by && end.high == ends.front().high &&
           end.high_by == ends.front().high_by;
  });
}

std::string in_words(const WindowAt& end, units::System system) {
  const auto one = [system](const std::optional<double>& tension, const std::optional<BoundId>& bound) {
    if (!tension) return std::string("not known");
    return shown(*tension, Quantity::force, system) + " (" + std::string(name_of(*bound)) + ")";
  };
  return "at least " + one(end.low, end.low_by) + ", at most " + one(end.high, end.high_by);
}

void ends_table(Sheet& sheet, const std::vector<WindowAt>& ends, const std::string& head, bool over_speed) {
  const auto system = sheet.style().system;
  if (all_alike(ends)) {
    sheet.paragraph("the same throughout: " + in_words(ends.front(), system), Ink::plain, 2, true);
    return;
  }
  const Quantity kind = over_speed ? Quantity::speed : Quantity::short_length;
  const std::string force = unit_head(Quantity::force, system);
  Table table({{head + "\n" + unit_head(kind, system), true, false, ""},
               {"at least\n" + force, true, false, ""},
               {"by", false, false, ""},
               {"at most\n" + force, true, false, ""},
               {"by", false, false, ""}});
  for (const WindowAt& end : ends)
    table.row({{units::show_number(over_speed ? end.speed : end.diameter, kind, system)},
               end_of(end.low, system),
               by(end.low_by),
               end_of(end.high, system),
               by(end.high_by)});
  sheet.table(table);
}

void windows_table(Sheet& sheet, const std::vector<JobFit>& jobs) {
  const auto system = sheet.style().system;
  const std::string force = unit_head(Quantity::force, system);
  Table table({{"job", false, true, ""},
               {"at least\n" + force, true, false, ""},
               {"by", false, true, ""},
               {"set\n" + force, true, false, ""},
               {"at most\n" + force, true, false, ""},
               {"by", false, true, ""}});
  for (const JobFit& job : jobs) {
    if (job.window.over_speed.empty()) continue;
    const WindowAt& end = job.window.over_speed.back();
    table.row({{job.job},
               end_of(end.low, system),
               by(end.low_by),
               {units::show_number(job.tension.setpoint, Quantity::force, system)},
               end_of(end.high, system),
               by(end.high_by)});
  }
  sheet.section("Tension window at the job's speed");
  sheet.table(table);
}

void heat_table(Sheet& sheet, const std::vector<JobFit>& jobs) {
  const auto system = sheet.style().system;
  const std::string warm = unit_head(Quantity::temperature, system);
  const auto kelvin = [system](double si) { return units::show_number(si, Quantity::temperature, system); };
  Table table({{"job", false, true, ""},
               {"disc\n" + warm, true, false, "rolls repeated"},
               {"pads\n" + warm, true, false, "rolls repeated"},
               {"face in\nan e-stop\n" + warm, true, false, ""},
               {"hot\nafter", true, false, ""},
               {"guard may\nopen after", true, false, ""},
               {"likely\nto hold", true, false, ""},
               {"driven by", false, true, ""}});
  for (const JobFit& job : jobs) {
    if (!job.thermal || !job.likelihood) continue;
    const ThermalFacts& heat = *job.thermal;
    table.row({{job.job},
               {kelvin(heat.disc_highest)},
               {kelvin(heat.pads_highest)},
               {kelvin(heat.surface_highest)},
               {spell(heat.time_to_hot, system)},
               {heat.never_cool         ? "never"
                : heat.time_to_open > 0 ? spell(heat.time_to_open, system)
                                        : "at once"},
               {share(job.likelihood->probability), ink_of_share(job.likelihood->probability)},
               {strongest(*job.likelihood)}});
  }
  sheet.section("Heat over rolls and change-overs, and how likely the limits hold");
  sheet.table(table);
}

}  // namespace

void depth_text(Sheet& sheet, const Choice& choice) {
  const auto& jobs = choice.recommended->jobs;
  if (jobs.empty()) return;
  windows_table(sheet, jobs);
  heat_table(sheet, jobs);
  if (!choice.likelihood || choice.recommended->covered == 0) return;
  const bool all = choice.uncovered.empty();
  sheet.paragraph(
      fmt::format("{} hold together in {} of {} samples, the same pads and air for all. The limits above are "
                  "judged at the ends of friction alone; here pressure, drag, tension, caliper, air and "
                  "cooling vary too ([uncertainty]).",
                  all ? "All jobs" : "The covered jobs", share(choice.likelihood->probability),
                  choice.likelihood->samples),
      ink_of_share(choice.likelihood->probability), 2, true);
}

void window_text(Sheet& sheet, const TensionWindow& window) {
  const auto system = sheet.style().system;
  if (window.bounds.empty()) return;
  Table table({{"bound", false, false, ""},
               {"tension", true, false, ""},
               {"where", false, true, ""},
               {"known by", false, false, ""}});
  for (const WindowBound& bound : window.bounds)
    table.row({{(is_lower(bound.id) ? "at least, " : "at most, ") + std::string(name_of(bound.id))},
               {units::show(bound.tension, Quantity::force, system)},
               {where(bound, system)},
               {known_in_words(bound.known)}});
  sheet.section("Tension window, bound by bound");
  sheet.table(table);
  sheet.section("The window over speed, hardest of the roll");
  ends_table(sheet, window.over_speed, "speed", true);
  sheet.section("The window over the roll, at the job's speed");
  ends_table(sheet, window.over_roll, "Ø", false);
}

void thermal_text(Sheet& sheet, const ThermalFacts& heat) {
  const auto system = sheet.style().system;
  const auto kelvin = [system](double si) { return units::show(si, Quantity::temperature, system); };
  sheet.section(fmt::format("Heat, roll after roll with {} between", spell(heat.changeover, system)));
  std::vector<Fact> facts{
      {"disc", kelvin(heat.disc_lowest) + " to " + kelvin(heat.disc_highest) + ", hottest " +
                   at_diameter(heat.highest_diameter, system)},
      {"pads, mean, up to", kelvin(heat.pads_highest)},
      {"calipers, up to", kelvin(heat.calipers_highest)},
      {"hub, up to", kelvin(heat.hub_highest)},
      {"face of the disc in an emergency stop", kelvin(heat.surface_highest)},
      {"friction left when hottest", share(heat.friction_left)},
      {"pads last, wear followed through it", rounded(heat.pad_life, Quantity::running_time, system)},
      {"slowest time constant", spell(heat.time_constant, system)},
      {"hot (95 % of the rise) after", spell(heat.time_to_hot, system)},
      {"guard may be opened after standing for",
       heat.never_cool ? "never: the air is too warm" : spell(heat.time_to_open, system)}};
  sheet.facts(facts);
}

void shaft_text(Sheet& sheet, const ShaftFacts& shaft) {
  const auto system = sheet.style().system;
  const auto show = [system](double si, Quantity kind) { return units::show(si, kind, system); };
  std::vector<Fact> facts{{"largest deflection, full roll", show(shaft.deflection, Quantity::short_length)},
                          {"slope at the bearings", show(shaft.slope_first, Quantity::angle) + " and " +
                                                        show(shaft.slope_second, Quantity::angle)},
                          {"bending stress", show(shaft.bending_stress, Quantity::stress)},
                          {"torsion stress", show(shaft.torsion_stress, Quantity::stress)},
                          {"safety against fatigue", units::show(shaft.safety, Quantity::number, system)},
                          {"first whirl speed, at the core", show(shaft.whirl_speed, Quantity::rotational_speed)},
                          {"first whirl speed, full roll", show(shaft.whirl_speed_full, Quantity::rotational_speed)},
                          {"runs up to", show(shaft.top_speed, Quantity::rotational_speed)},
                          {"load of the harder loaded bearing", show(shaft.bearing_load, Quantity::force)},
                          {"torque through the grip on the core",
                           show(shaft.grip_torque, Quantity::torque) + " " + at_diameter(shaft.grip_diameter, system)}};
  if (shaft.bearing_life)
    facts.push_back({"bearings last (90 % of them)", rounded(*shaft.bearing_life, Quantity::running_time, system)});
  sheet.section("Shaft and core");
  sheet.facts(facts);
}

void likelihood_text(Sheet& sheet, const Likelihood& likelihood) {
  sheet.section("How likely the limits hold, every input anywhere in its band");
  sheet.paragraph(
      fmt::format("every limit holds in {} of {} samples; least in hand {} in the middle, {} in the worst "
                  "twentieth",
                  share(likelihood.probability), likelihood.samples, kept_together(in_hand(likelihood.middle_margin)),
                  kept_together(in_hand(likelihood.low_margin))),
      ink_of_share(likelihood.probability), 2, true);
  if (!likelihood.limits.empty()) {
    Table table({{"limit", false, false, ""}, {"likely to hold", true, false, ""}});
    for (const Chance& chance : likelihood.limits)
      table.row({{std::string(info(chance.id).name)}, {share(chance.probability), ink_of_share(chance.probability)}});
    sheet.table(table);
  }
  if (likelihood.drivers.empty()) return;
  Table table({{"driven by", false, false, ""}, {"alone", true, false, ""}, {"in all", true, false, ""}});
  for (const Driver& driver : likelihood.drivers)
    table.row({{in_words(driver.input)}, {share(driver.alone)}, {share(driver.total)}});
  sheet.table(table);
}

}  // namespace holdback::report
