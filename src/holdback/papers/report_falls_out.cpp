// Each job that is not covered: what fails, and the changes that were computed to bring it in.
#include <fmt/format.h>

#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::selection {

namespace {

std::vector<std::string> failing(const Uncovered& job, units::System system) {
  std::vector<std::string> out;
  for (const auto& limit : job.failing)
    out.push_back(fmt::format("{}; {} in hand, by {}", report::words_of(limit, system),
                              report::kept_together(report::in_hand(limit.margin)), known_by(limit.known)));
  if (out.empty()) out.push_back(report::filled(job.why, system));
  return out;
}

std::string change(const Remedy& remedy, units::System system) {
  auto out = fmt::format("{}: then {}, {} in hand ({})", report::filled(remedy.what, system), key_of(remedy.state),
                         report::kept_together(report::in_hand(remedy.margin)), info(remedy.binding).name);
  if (!remedy.jobs_won.empty()) out += "; also brings in " + report::names(remedy.jobs_won);
  if (!remedy.jobs_lost.empty()) out += "; but loses " + report::names(remedy.jobs_lost);
  return out;
}

void one(Chapter& chapter, const Uncovered& job) {
  const auto system = chapter.system();
  chapter.heading(report::named(job.job) + " fails");
  chapter.items(failing(job, system));
  if (job.remedies.empty()) return chapter.say("None of the changes that were tried brings it in.");
  chapter.say("What would bring it in, the least change first:");
  std::vector<std::string> changes;
  for (const auto& remedy : job.remedies) changes.push_back(change(remedy, system));
  chapter.items(std::move(changes), true);
}

}  // namespace

void falls_out(Chapter& chapter, const Dossier& dossier) {
  const auto& choice = dossier.size.choice;
  if (!choice || choice->uncovered.empty()) return;
  chapter.say(
      "Each change was computed by changing the stand and running the whole check again. Until one is made, "
      "these jobs must not be run on this fit.");
  for (const auto& job : choice->uncovered) one(chapter, job);
}

}  // namespace holdback::papers::selection
