// What may hurt, and who decides.
#include <algorithm>

#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::selection {

namespace {

void add(std::vector<std::string>& said, const std::vector<Note>& notes, units::System system) {
  for (const auto& note : notes) {
    auto text = sentence(note, system);
    if (std::find(said.begin(), said.end(), text) == said.end()) said.push_back(std::move(text));
  }
}

std::vector<std::string> all_cautions(const Dossier& dossier) {
  const auto system = dossier.system;
  std::vector<std::string> said;
  if (dossier.size.choice) add(said, dossier.size.choice->cautions, system);
  if (dossier.plan.plan) add(said, dossier.plan.plan->cautions, system);
  for (const auto& answer : dossier.simulations)
    if (answer.simulation) add(said, answer.simulation->cautions, system);
  for (const auto& answer : dossier.tunings)
    if (answer.tuning) add(said, answer.tuning->cautions, system);
  return said;
}

/// Every caution of an answer tells of rolls, nips, discs or air, by which people die or are maimed; the one that tells
/// what a calculation is hurts nobody.
Signal signal_of(const std::string& caution) {
  return caution.rfind("This is a calculation", 0) == 0 ? Signal::notice : Signal::warning;
}

}  // namespace

void cautions(Chapter& chapter, const Dossier& dossier) {
  const auto& choice = dossier.size.choice;
  if (choice && !choice->uncovered.empty()) {
    std::vector<std::string> jobs;
    for (const auto& job : choice->uncovered) jobs.push_back(job.job);
    chapter.warning(Signal::warning, "Do not run on this fit without a change: " + report::names(jobs) +
                                         ". What fails stands in the chapter on what falls out.");
  }
  auto all = all_cautions(dossier);
  std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return signal_of(a) < signal_of(b); });
  for (const auto& caution : all) chapter.warning(signal_of(caution), caution);
  chapter.warning(Signal::notice,
                  "Local codes, makers' ratings and licensed practice decide; nothing in this report overrules them. "
                  "Whoever fits the brake checks it on the machine before people work near it.");
}

}  // namespace holdback::papers::selection
