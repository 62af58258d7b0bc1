// `plan`: pressure over the roll for automatic control, and the card for a hand on the regulator.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/draw/cells.hpp"
#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

namespace {

using draw::Ink;
using Lines = std::vector<std::string>;

constexpr std::size_t most_rows = 10;  // of the automatic table; JSON and CSV hold all points

/// At most most_rows points, spread evenly, the first and the last among them.
std::vector<PlanPoint> thinned(const std::vector<PlanPoint>& points) {
  if (points.size() <= most_rows) return points;
  std::vector<PlanPoint> out;
  for (std::size_t i = 0; i < most_rows; ++i) out.push_back(points[i * (points.size() - 1) / (most_rows - 1)]);
  return out;
}

Lines automatic_lines(const JobPlan& plan, const Style& style) {
  const auto system = style.system;
  const auto points = thinned(plan.automatic);
  const auto diameter = column_of(points, &PlanPoint::diameter, Quantity::short_length, system);
  const auto pressure = column_of(points, &PlanPoint::pressure, Quantity::pressure, system);
  const auto torque = column_of(points, &PlanPoint::torque, Quantity::torque, system);
  const auto tension = column_of(points, &PlanPoint::tension, Quantity::force, system);
  Table table({{"Ø\n" + unit_head(Quantity::short_length, system), true, false, ""},
               {"pressure\n" + unit_head(Quantity::pressure, system), true, false, ""},
               {"torque\n" + unit_head(Quantity::torque, system), true, false, ""},
               {"tension\n" + unit_head(Quantity::force, system), true, false, ""}});
  for (std::size_t i = 0; i < points.size(); ++i) table.row({{diameter[i]}, {pressure[i]}, {torque[i]}, {tension[i]}});
  Lines lines = table.lines(style.width, style.colour);
  lines.insert(lines.begin(), draw::inked("For automatic control", Ink::strong, style.colour));
  return lines;
}

Lines hand_lines(const JobPlan& plan, const Style& style) {
  const auto system = style.system;
  const auto& settings = plan.by_hand;
  Lines lines{draw::inked(
      fmt::format("By hand, tension within ±{}: {}", units::show(plan.tolerance, Quantity::ratio, system, 2),
                  counted(static_cast<int>(settings.size()), "setting")),
      Ink::strong, style.colour)};
  if (settings.empty()) return lines;
  const auto from = column_of(settings, &HandSetting::from, Quantity::short_length, system);
  const auto to = column_of(settings, &HandSetting::to, Quantity::short_length, system);
  const auto pressure = column_of(settings, &HandSetting::pressure, Quantity::pressure, system);
  const auto first = column_of(settings, &HandSetting::tension_from, Quantity::force, system);
  const auto last = column_of(settings, &HandSetting::tension_to, Quantity::force, system);
  const auto force = unit_head(Quantity::force, system);
  const auto length = unit_head(Quantity::short_length, system);
  Table table({{"", true, false, ""},
               {"set at Ø\n" + length, true, false, ""},
               {"until Ø\n" + length, true, false, ""},
               {"pressure\n" + unit_head(Quantity::pressure, system), true, false, ""},
               {"at start\n" + force, true, false, "tension"},
               {"at end\n" + force, true, false, "tension"}});
  for (std::size_t i = 0; i < settings.size(); ++i) {
    table.row({{std::to_string(i + 1)}, {from[i]}, {to[i]}, {pressure[i]}, {first[i]}, {last[i]}});
  }
  for (auto& line : table.lines(style.width, style.colour)) lines.push_back(std::move(line));
  return lines;
}

int widest(const Lines& lines) {
  int most = 0;
  for (const auto& line : lines) most = std::max(most, draw::columns(line));
  return most;
}

void job_plan(Sheet& sheet, const JobPlan& plan) {
  const auto& style = sheet.style();
  const auto force = [&](double si) { return shown(si, Quantity::force, style.system); };
  sheet.section(named(plan.job));
  sheet.paragraph(fmt::format("{}; {} engaged{}; tension {} ({} to {})", words_of(plan.fit),
                              counted(plan.pairs, "pair"), plan.fit.brakes > 1 ? " on each" : "",
                              force(plan.tension.setpoint), force(plan.tension.low), force(plan.tension.high)),
                  Ink::plain, 2, true);
  const auto limit = info(plan.binding).name;
  sheet.paragraph(fmt::format("{}{}", key_of(plan.state),
                              plan.state == State::holds ? "" : fmt::format(": the limit of {}", limit)),
                  ink_of(plan.state));
  if (plan.state == State::fails) {
    sheet.paragraph("This fit does not keep a limit of this job: do not run the job by these settings.", Ink::bad, 2,
                    true);
  }
  sheet.blank();
  constexpr int gap = 6;
  const auto automatic = automatic_lines(plan, style);
  const auto hand = hand_lines(plan, style);
  if (2 + widest(automatic) + gap + widest(hand) <= style.width) {
    sheet.block(beside(automatic, hand, gap));
  } else {
    sheet.block(automatic);
    sheet.blank();
    sheet.block(hand);
  }
  if (!plan.notes.empty()) sheet.blank();
  notes(sheet, plan.notes);
}

}  // namespace

void plan_text(Sheet& sheet, const Answer& answer) {
  const auto& plan = *answer.plan;
  sheet.title(plan.title.empty() ? "Pressures over the roll" : plan.title + ": pressures over the roll");
  for (const auto& job : plan.jobs) job_plan(sheet, job);
  columns_text(sheet, answer.columns);
  closing(sheet, answer.defaults, plan.assumptions, plan.cautions);
}

}  // namespace holdback::report
