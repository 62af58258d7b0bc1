// What the fit does for each job, and which limits have less in hand than the reserve.
#include <algorithm>

#include "holdback/draw/figures.hpp"
#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::selection {

namespace {

Table jobs_table(const std::vector<JobFit>& jobs, units::System system) {
  Rows<JobFit> rows(jobs, system);
  rows.text("job", &JobFit::job)
      .state("state", &JobFit::state)
      .text("in hand", [](const JobFit& job) { return report::kept_together(report::in_hand(job.margin)); })
      .text("binding limit", [](const JobFit& job) { return info(job.binding).name; })
      .input("pairs on", Quantity::count, &JobFit::pairs)
      .result("pressure, full", Quantity::pressure, &JobFit::pressure_full)
      .result("pressure, core", Quantity::pressure, &JobFit::pressure_core)
      .result("lowest tension", Quantity::force, &JobFit::lowest_tension)
      .result("slip power", Quantity::power, &JobFit::slip_power)
      .result("hottest disc", Quantity::temperature, &JobFit::hottest)
      .result("at Ø", Quantity::short_length, &JobFit::hottest_diameter);
  return rows.under("Each job on this fit; pressures at nominal friction, pairs on each brake");
}

/// A limit with the job that it is of.
struct Near {
  const JobFit* job{};
  const Limit* limit{};
};

std::vector<Near> near_limits(const std::vector<JobFit>& jobs) {
  std::vector<Near> out;
  for (const auto& job : jobs)
    for (const auto& limit : job.limits)
      if (limit.state != State::holds) out.push_back({&job, &limit});
  return out;
}

Cell value_of(const Limit& limit, double value, units::System system) {
  return {meant(value, info(limit.id).kind, system), Tone::normal, false, State::holds};
}

Table near_table(const std::vector<Near>& near, units::System system) {
  Rows<Near> rows(near, system);
  rows.text("job", [](const Near& each) { return each.job->job; })
      .text("limit", [](const Near& each) { return info(each.limit->id).name; })
      .cells({"value", "", true}, [=](const Near& each) { return value_of(*each.limit, each.limit->value, system); })
      .cells({"bound", "", true},
             [=](const Near& each) {
               auto cell = value_of(*each.limit, each.limit->bound, system);
               cell.text.insert(0, sign_of(info(each.limit->id).sense));
               return cell;
             })
      .text("in hand", [](const Near& each) { return report::kept_together(report::in_hand(each.limit->margin)); })
      .text("where", [=](const Near& each) { return where(*each.limit, system); })
      .state("state", [](const Near& each) { return each.limit->state; });
  return rows.under("Limits that are tight or fail");
}

}  // namespace

void fit(Chapter& chapter, const Dossier& dossier) {
  const auto& jobs = jobs_on_fit(dossier);
  if (jobs.empty()) return;
  const auto system = chapter.system();
  chapter.say(
      "A limit holds with at least the reserve in hand, is tight when it is kept inside the reserve, and fails "
      "when it is not kept. The binding limit is the one with the least in hand beyond its reserve. A limit "
      "that is a maker's rating fails beyond the rating; nothing overrules it.");
  chapter.table(jobs_table(jobs, system));
  const auto near = near_limits(jobs);
  if (near.empty())
    chapter.say("Every limit of every job holds with at least its reserve in hand.");
  else
    chapter.table(near_table(near, system));
  chapter.figure(draw::coverage_figure(*dossier.size.choice, {35, 7}));
}

}  // namespace holdback::papers::selection
