// One run in words: how it ended, its phases, the numbers that sum it up.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/draw/loop_words.hpp"
#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

namespace {

using draw::Ink;

constexpr std::size_t most_phases = 24;  // of the table; JSON holds all

std::string percent(double share, units::System system) { return shown(share, Quantity::ratio, system); }

/// "1.20 s, 3.1 % of the time that the line moves".
std::string outside_of(const MotionRun& run, units::System system) {
  if (!(run.outside > 0)) return "never";
  auto out = shown(run.outside, Quantity::duration, system);
  if (run.moving > 0) out += ", " + percent(run.outside / run.moving, system) + " of moving";
  return out;
}

std::string most_slack(const MotionRun& run, units::System system) {
  if (!(run.slack > 0)) return "none";
  return slack_of(run.slack, system) + " at " + shown(run.slack_time, Quantity::duration, system);
}

std::string times(double count) { return count == 1 ? "once" : fmt::format("{:.0f} times", count); }

std::string residual_of(const EnergyBooks& energy, units::System system) {
  if (!(energy.slipped > 0)) return shown(energy.residual, Quantity::energy, system);
  return percent(energy.residual / energy.slipped, system) + " of it";
}

Cell slack_cell(const PhaseFacts& phase, units::System system) {
  if (!(phase.slack > 0)) return {"–"};
  return {units::show_number(phase.slack, Quantity::short_length, system), Ink::bad};
}

Cell settling_cell(const PhaseFacts& phase, const std::string& time) {
  return phase.settles ? Cell{time} : Cell{"never", Ink::warning};
}

}  // namespace

void fault_text(Sheet& sheet, const MotionRun& run) {
  if (run.end != RunEnd::failed) return;
  const auto system = sheet.style().system;
  const auto what = run.fault.empty() ? "the steps failed" : run.fault;
  sheet.paragraph(fmt::format("The run with control by {} stopped at {}: {}. What is shown of it ends "
                              "there, and none of it is to be relied on.",
                              run.control, shown(run.fault_time, Quantity::duration, system), what),
                  Ink::bad, 2, true);
}

void verdict_text(Sheet& sheet, const MotionRun& run) {
  const auto why = filled(run.verdict, sheet.style().system);
  sheet.paragraph(draw::joined(std::string(key_of(run.state)), why), ink_of(run.state), 2, true);
  if (run.accident)
    sheet.paragraph("The scenario holds an accident: the web breaks or the air fails.", Ink::faint, 2, true);
}

void phases_text(Sheet& sheet, const std::vector<PhaseFacts>& all) {
  if (all.empty()) return;
  const auto system = sheet.style().system;
  const auto count = sheet.style().all ? all.size() : std::min(all.size(), most_phases);
  const std::vector<PhaseFacts> phases(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(count));
  const auto column = [&](auto get, Quantity kind) { return column_of(phases, get, kind, system); };
  const auto begin = column(&PhaseFacts::begin, Quantity::duration);
  const auto lasts = column([](const PhaseFacts& phase) { return phase.end - phase.begin; }, Quantity::duration);
  const auto diameter = column(&PhaseFacts::diameter, Quantity::short_length);
  const auto lowest = column(&PhaseFacts::lowest_tension, Quantity::force);
  const auto highest = column(&PhaseFacts::highest_tension, Quantity::force);
  const auto outside = column(&PhaseFacts::outside, Quantity::duration);
  const auto settling = column(&PhaseFacts::settling, Quantity::duration);
  const auto time = unit_head(Quantity::duration, system);
  const auto force = unit_head(Quantity::force, system);
  const auto length = unit_head(Quantity::short_length, system);
  Table table({{"phase", false, true, ""},
               {"begins\n" + time, true, false, ""},
               {"lasts\n" + time, true, false, ""},
               {"Ø\n" + length, true, false, ""},
               {"lowest\n" + force, true, false, "tension"},
               {"highest\n" + force, true, false, "tension"},
               {"outside\n" + time, true, false, ""},
               {"slack\n" + length, true, false, ""},
               {"settled\nafter\n" + time, true, false, ""}});
  for (std::size_t i = 0; i < count; ++i) {
    const auto& phase = phases[i];
    table.row({{phase.what},
               {begin[i]},
               {lasts[i]},
               {diameter[i]},
               {lowest[i]},
               {highest[i]},
               phase.outside > 0 ? Cell{outside[i], Ink::warning} : Cell{"–"},
               slack_cell(phase, system),
               settling_cell(phase, settling[i])});
  }
  sheet.table(table);
  if (count < all.size())
    sheet.paragraph(
        fmt::format("and {} more, which the JSON holds", counted(static_cast<int>(all.size() - count), "phase")),
        Ink::faint);
}

void run_text(Sheet& sheet, const MotionRun& run) {
  const auto system = sheet.style().system;
  const auto show = [system](double si, Quantity kind) { return units::show(si, kind, system); };
  std::vector<Fact> facts;
  if (run.run_highest > 0) {
    facts.push_back({"tension in steady run", units::show_number(run.run_lowest, Quantity::force, system) + " to " +
                                                  show(run.run_highest, Quantity::force)});
  }
  facts.push_back(
      {"highest of all", show(run.peak, Quantity::force) + " at " + show(run.peak_time, Quantity::duration)});
  facts.push_back({"outside of the window", outside_of(run, system)});
  if (run.steady_outside > 0) facts.push_back({"outside in steady run", percent(run.steady_outside, system)});
  facts.push_back({"most slack", most_slack(run, system)});
  facts.push_back({"settles within", run.settling > 0 ? show(run.settling, Quantity::duration) : "–"});
  facts.push_back({"hottest disc", show(run.disc_highest, Quantity::temperature)});
  facts.push_back({"hottest pads", show(run.pads_highest, Quantity::temperature)});
  facts.push_back({"highest pressure", show(run.highest_pressure, Quantity::pressure)});
  facts.push_back({"highest brake torque", show(run.highest_torque, Quantity::torque)});
  facts.push_back({"into brake and drag", show(run.energy.slipped, Quantity::energy)});
  facts.push_back({"energy unaccounted for", residual_of(run.energy, system)});
  facts.push_back({"pad wear", percent(run.pad_wear, system) + " of a pad"});
  if (run.sticks > 0) facts.push_back({"brake caught or let go", times(run.sticks)});
  if (run.dancer_stops > 0) facts.push_back({"dancer hit a stop", times(run.dancer_stops)});
  facts.push_back({"ran", show(run.line_time, Quantity::duration) + ", " + show(run.web_run, Quantity::web_length)});
  facts.push_back({"ended", std::string(key_of(run.end))});
  facts.push_back({"computed by", fmt::format("{:.0f} {} steps", run.steps, key_of(run.method))});
  sheet.facts(facts);
}

}  // namespace holdback::report
