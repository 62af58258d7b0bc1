// Pressure over the roll: for the jobs in depth the curve of automatic control and the card of a hand on the regulator.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/draw/figures.hpp"
#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::selection {

namespace {

constexpr std::size_t most_rows = 12;  // of the curve's table
constexpr double figure_share = 0.7;   // leaves room for both tables beneath it

std::vector<PlanPoint> thinned(const std::vector<PlanPoint>& points) {
  if (points.size() <= most_rows) return points;
  std::vector<PlanPoint> out;
  for (std::size_t i = 0; i < most_rows; ++i) out.push_back(points[i * (points.size() - 1) / (most_rows - 1)]);
  return out;
}

Table curve(const std::vector<PlanPoint>& points, units::System system) {
  Rows<PlanPoint> rows(points, system);
  rows.result("Ø", Quantity::short_length, &PlanPoint::diameter)
      .result("pressure", Quantity::pressure, &PlanPoint::pressure)
      .result("brake torque", Quantity::torque, &PlanPoint::torque)
      .result("tension", Quantity::force, &PlanPoint::tension);
  return rows.under("For automatic control, nominal friction");
}

Table card(const JobPlan& plan, units::System system) {
  Rows<HandSetting> rows(plan.by_hand, system);
  rows.result("set at Ø", Quantity::short_length, &HandSetting::from)
      .result("until Ø", Quantity::short_length, &HandSetting::to)
      .input("pressure", Quantity::pressure, &HandSetting::pressure)
      .result("tension at start", Quantity::force, &HandSetting::tension_from)
      .result("tension at end", Quantity::force, &HandSetting::tension_to);
  return rows.under(fmt::format("By hand, tension within ±{}", meant(plan.tolerance, Quantity::ratio, system, 2)));
}

void one(Chapter& chapter, const JobPlan& plan) {
  const auto system = chapter.system();
  chapter.heading("Job " + report::named(plan.job));
  if (plan.state == State::fails)
    chapter.verdict(State::fails, fmt::format("fails: the limit of {}; do not run the job by these settings",
                                              info(plan.binding).name));
  chapter.figure(draw::pressure_figure(plan, system), figure_share);
  chapter.table(curve(thinned(plan.automatic), system));
  chapter.table(card(plan, system));
  std::vector<std::string> notes;
  for (const auto& note : plan.notes) notes.push_back(report::filled(note, system));
  chapter.items(std::move(notes));
}

Table all_jobs(const std::vector<JobPlan>& jobs, units::System system) {
  using Number = std::optional<double>;
  const auto first = [](const JobPlan& plan) {
    return plan.automatic.empty() ? Number{} : Number(plan.automatic.front().pressure);
  };
  const auto last = [](const JobPlan& plan) {
    return plan.automatic.empty() ? Number{} : Number(plan.automatic.back().pressure);
  };
  Rows<JobPlan> rows(jobs, system);
  rows.text("job", &JobPlan::job)
      .input("pairs on", Quantity::count, &JobPlan::pairs)
      .result("tension", Quantity::force, [](const JobPlan& plan) { return plan.tension.setpoint; })
      .result("pressure, full", Quantity::pressure, first)
      .result("pressure, core", Quantity::pressure, last)
      .result("by hand within ±", Quantity::ratio, &JobPlan::tolerance, 2)
      .input("settings by hand", Quantity::count,
             [](const JobPlan& plan) { return static_cast<int>(plan.by_hand.size()); })
      .state("state", &JobPlan::state);
  return rows.under("Every job; the set-up cards hold each setting");
}

}  // namespace

void pressure(Chapter& chapter, const Dossier& dossier) {
  if (!dossier.plan.plan || dossier.plan.plan->jobs.empty()) return;
  chapter.say(
      "Pressures of even running at the job's speed: drag and the thinning roll, which turns faster all the time, hold "
      "part of the web's tension, the brake the rest.");
  chapter.table(all_jobs(dossier.plan.plan->jobs, chapter.system()));
  for (const auto* choice : in_depth(dossier))
    if (const auto* plan = plan_of(dossier, choice->job->job)) one(chapter, *plan);
}

}  // namespace holdback::papers::selection
