// Heat: temperatures of every job against the ratings, and for jobs in depth over the roll and in the repeating state.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/draw/figures.hpp"
#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::selection {

namespace {

using Number = std::optional<double>;

auto of_heat(double ThermalFacts::*member) {
  return [member](const JobFit& job) { return job.thermal ? Number((*job.thermal).*member) : Number{}; };
}

std::string hot_after(const ThermalFacts& heat, units::System system) {
  return heat.hot_at_once ? "the first roll" : spell(heat.time_to_hot, system);
}

std::string open_after(const ThermalFacts& heat, units::System system) {
  if (heat.never_cool) return "never";
  return heat.time_to_open > 0 ? spell(heat.time_to_open, system) : "at once";
}

Table repeating(const std::vector<JobFit>& jobs, units::System system) {
  const auto words = [system](auto get) {
    return [get, system](const JobFit& job) { return job.thermal ? get(*job.thermal, system) : std::string("–"); };
  };
  Rows<JobFit> rows(jobs, system);
  rows.text("job", &JobFit::job)
      .result("disc, steady", Quantity::temperature, &JobFit::hottest)
      .result("disc, rolls repeated", Quantity::temperature, of_heat(&ThermalFacts::disc_highest))
      .result("pads", Quantity::temperature, of_heat(&ThermalFacts::pads_highest))
      .result("calipers", Quantity::temperature, of_heat(&ThermalFacts::calipers_highest))
      .result("hub", Quantity::temperature, of_heat(&ThermalFacts::hub_highest))
      .result("face, emergency stop", Quantity::temperature, of_heat(&ThermalFacts::surface_highest))
      .text("hot after", words(hot_after))
      .text("guard may open after", words(open_after));
  return rows.under("Highest temperatures; pads are the mean of a pad, the guard may be opened after standing so long");
}

Table against_ratings(const std::vector<JobFit>& jobs, units::System system) {
  Rows<JobFit> rows(jobs, system);
  rows.text("job", &JobFit::job);
  for (const auto id : {LimitId::slip_power, LimitId::disc_temperature, LimitId::pad_temperature,
                        LimitId::stop_temperature, LimitId::stop_surface, LimitId::pressure_speed}) {
    const auto checked = [id](const JobFit& job) { return report::find(job.limits, id) != nullptr; };
    if (std::any_of(jobs.begin(), jobs.end(), checked))
      rows.cells({std::string(info(id).name), "", true},
                 [id](const JobFit& job) { return in_hand_of(job.limits, id); });
  }
  return rows.under("In hand against the ratings of disc and pads");
}

void thermal_facts(Chapter& chapter, const ThermalFacts& heat) {
  const auto system = chapter.system();
  const auto warm = [system](double si) { return meant(si, Quantity::temperature, system); };
  chapter.facts({{"standstill between rolls", spell(heat.changeover, system)},
                 {"disc", fmt::format("{} to {}, hottest {}", warm(heat.disc_lowest), warm(heat.disc_highest),
                                      report::at_diameter(heat.highest_diameter, system))},
                 {"pads, mean, up to", warm(heat.pads_highest)},
                 {"calipers, up to", warm(heat.calipers_highest)},
                 {"hub, up to", warm(heat.hub_highest)},
                 {"face of the disc in an emergency stop", warm(heat.surface_highest)},
                 {"friction left when hottest", chance(heat.friction_left)},
                 {"slowest time constant", spell(heat.time_constant, system)},
                 {"hot (95 % of the rise) after", hot_after(heat, system)},
                 {"guard may be opened after standing for",
                  heat.never_cool ? "never: the air is too warm" : open_after(heat, system)}});
}

void one(Chapter& chapter, const Choice& choice) {
  const auto system = chapter.system();
  const auto& job = *choice.job;
  const auto fit = choice.recommended ? " · " + under(choice.recommended->fit, job.pairs) : std::string{};
  chapter.heading("Job " + report::named(job.job));
  if (choice.envelope && !choice.envelope->diameter.empty())
    chapter.figure(draw::temperature_figure(*choice.envelope, &job, job.job + fit, system));
  if (!job.thermal) return;
  thermal_facts(chapter, *job.thermal);
  if (!job.thermal->time.empty()) chapter.figure(draw::heat_figure(*job.thermal, &job, job.job + fit, system));
}

}  // namespace

void heat(Chapter& chapter, const Dossier& dossier) {
  const auto& jobs = jobs_on_fit(dossier);
  if (!jobs.empty()) {
    chapter.table(repeating(jobs, chapter.system()));
    chapter.table(against_ratings(jobs, chapter.system()));
  }
  for (const auto* choice : in_depth(dossier)) one(chapter, *choice);
}

}  // namespace holdback::papers::selection
