// Stops and web break: torque needed against available, slack, the shortest stops, energy and temperatures.
#include <fmt/format.h>

#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::selection {

namespace {

using Which = StopFacts JobFit::*;

Cell plain_cell(std::string text) { return {std::move(text), Tone::normal, false, State::holds}; }
Cell failing_cell(std::string text) { return {std::move(text), Tone::strong, false, State::fails}; }

Cell slack(const StopFacts& stop, units::System system) {
  if (stop.runs_away) return failing_cell("without end");
  if (!(stop.slack > 0)) return plain_cell("none");
  return failing_cell(
      fmt::format("{} {}", report::slack_of(stop.slack, system), report::at_diameter(stop.slack_diameter, system)));
}

Cell shortest(bool never, double time, units::System system) {
  return never ? failing_cell("never") : plain_cell(meant(time, Quantity::duration, system));
}

Table torque_table(const std::vector<JobFit>& jobs, Which which, LimitId limit, const std::string& caption,
                   units::System system) {
  const auto of = [which](double StopFacts::*member) {
    return [which, member](const JobFit& job) { return (job.*which).*member; };
  };
  Rows<JobFit> rows(jobs, system);
  rows.text("job", &JobFit::job)
      .input("asked in", Quantity::duration, of(&StopFacts::time))
      .result("torque needed", Quantity::torque, of(&StopFacts::torque_needed))
      .result("torque available", Quantity::torque, of(&StopFacts::torque_available))
      .result("closest at Ø", Quantity::short_length, of(&StopFacts::diameter))
      .cells({"in hand", "", true}, [limit](const JobFit& job) { return in_hand_of(job.limits, limit); })
      .cells({"slack", "", false}, [=](const JobFit& job) { return slack(job.*which, system); })
      .cells({"web taut from", "", true},
             [=](const JobFit& job) {
               const auto& stop = job.*which;
               return shortest(stop.runs_away, stop.shortest_taut_stop, system);
             })
      .cells({"tension kept from", "", true}, [=](const JobFit& job) {
        const auto& stop = job.*which;
        return shortest(stop.never, stop.shortest_stop, system);
      });
  return rows.under(caption);
}

Table heat_table(const std::vector<JobFit>& jobs, units::System system) {
  const auto of = [](Which which, double StopFacts::*member) {
    return [which, member](const JobFit& job) { return (job.*which).*member; };
  };
  Rows<JobFit> rows(jobs, system);
  rows.text("job", &JobFit::job);
  for (const auto& [which, name] :
       {std::pair{&JobFit::stop, "normal"}, std::pair{&JobFit::emergency_stop, "emergency"}})
    rows.result(std::string(name) + ": energy", Quantity::energy, of(which, &StopFacts::energy))
        .result("disc after it", Quantity::temperature, of(which, &StopFacts::bulk_temperature))
        .result("face of the disc", Quantity::temperature, of(which, &StopFacts::surface_temperature));
  return rows.under("Energy into all discs and temperatures, each stop from the steady state");
}

Table break_table(const std::vector<JobFit>& jobs, units::System system) {
  using Number = std::optional<double>;
  const auto of = [](double WebBreakFacts::*member) {
    return [member](const JobFit& job) { return job.web_break.runs_away ? Number{} : Number(job.web_break.*member); };
  };
  Rows<JobFit> rows(jobs, system);
  rows.text("job", &JobFit::job)
      .result("turns", Quantity::turns, of(&WebBreakFacts::turns))
      .result("time", Quantity::duration, of(&WebBreakFacts::time))
      .result("longest at Ø", Quantity::short_length, of(&WebBreakFacts::diameter))
      .cells({"the roll", "", false}, [](const JobFit& job) {
        return job.web_break.runs_away ? failing_cell("nothing stops it") : plain_cell("comes to rest");
      });
  return rows.under(
      "After a web break at running speed the roll coasts, braked at the highest pressure and the lowest friction");
}

}  // namespace

void stops(Chapter& chapter, const Dossier& dossier) {
  const auto& jobs = jobs_on_fit(dossier);
  if (jobs.empty()) return;
  const auto system = chapter.system();
  const auto& limits = dossier.stand.limits;
  chapter.say(fmt::format(
      "Torque needed is that of the stop with {} of the setpoint kept in a normal stop and {} in an emergency stop, at "
      "the diameter where it comes closest to what the fit gives at its highest pressure and its lowest friction. "
      "Slack is web that is thrown when the brake cannot hold the roll back. The last two columns are the shortest "
      "stops "
      "that leave the web taut, and that keep this share of the setpoint.",
      given(limits.stop_tension, Quantity::ratio, system),
      given(limits.emergency_stop_tension, Quantity::ratio, system)));
  chapter.table(torque_table(jobs, &JobFit::stop, LimitId::stop_torque, "Normal stop", system));
  chapter.table(torque_table(jobs, &JobFit::emergency_stop, LimitId::emergency_stop_torque, "Emergency stop", system));
  chapter.table(heat_table(jobs, system));
  chapter.table(break_table(jobs, system));
}

}  // namespace holdback::papers::selection
