// The result in short: how it ended, the fit and why, the runner-up, what falls out.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::selection {

namespace {

constexpr std::size_t most_fits = 12;  // of the table of fits tried

int count_of(const FitResult& fit) { return static_cast<int>(fit.jobs.size()); }

void verdict_of(Chapter& chapter, const FitResult& best) {
  const int failing = count_of(best) - best.covered;
  const auto fit = report::words_of(best.fit);
  if (failing == 0 && best.tight == 0)
    return chapter.verdict(State::holds, fmt::format("holds: every job is covered by {}", fit));
  if (failing == 0)
    return chapter.verdict(State::tight, fmt::format("tight: every job is covered by {}, {} of {} with less in hand "
                                                     "than the reserve",
                                                     fit, best.tight, mix_in_words(best.jobs.size())));
  if (best.covered == 0)
    return chapter.verdict(State::fails, fmt::format("fails: no fit covers a job; {} comes nearest", fit));
  chapter.verdict(State::fails, fmt::format("fails: {} of {} {} not covered by {}", failing,
                                            mix_in_words(best.jobs.size()), failing == 1 ? "is" : "are", fit));
}

std::string least_in_hand(const FitResult& fit) {
  if (fit.covered == 0) return {};
  return fmt::format("{}: {}, job {}", report::kept_together(report::in_hand(fit.worst_margin)),
                     info(fit.worst_limit).name, report::named(fit.worst_job));
}

std::string money(const std::optional<double>& amount, const std::string& currency, units::System system) {
  if (!amount) return {};
  return meant(*amount, Quantity::price, system) + (currency.empty() ? "" : "\u00A0" + currency);
}

std::string jobs_covered(const FitResult& fit) {
  auto out = fmt::format("{} of {}", fit.covered, mix_in_words(fit.jobs.size()));
  if (fit.tight > 0) out += fmt::format(", {} of them tight", fit.tight);
  return out;
}

void in_short(Chapter& chapter, const Choice& choice) {
  const auto system = chapter.system();
  const auto& best = *choice.recommended;
  chapter.facts({{best.covered > 0 ? "recommended fit" : "nearest fit", report::words_of(best.fit)},
                 {"why", sentence(choice.why, system)},
                 {"jobs covered", jobs_covered(best)},
                 {"least in hand", least_in_hand(best)},
                 {"pads a year", meant(best.pads_per_year, Quantity::number, system, 2)},
                 {"pads, cost a year", money(best.pad_cost_per_year, choice.currency, system)},
                 {"price of the brakes", money(best.price, choice.currency, system)},
                 {"runner-up", choice.next ? report::words_of(choice.next->fit) : std::string{}},
                 {"chosen from", report::counted(choice.fits_tried, "fit")}},
                1);
}

/// The fits in a table: the recommended first, then the others as they rank.
std::vector<FitResult> ranked(const Choice& choice) {
  if (!choice.all.empty())
    return {choice.all.begin(),
            choice.all.begin() + static_cast<std::ptrdiff_t>(std::min(choice.all.size(), most_fits))};
  std::vector<FitResult> out{*choice.recommended};
  if (choice.next) out.push_back(*choice.next);
  return out;
}

void fits_table(Chapter& chapter, const Choice& choice) {
  const auto fits = ranked(choice);
  if (fits.size() < 2) return;
  const auto of_covered = [](auto get) {
    return [get](const FitResult& fit) { return fit.covered > 0 ? std::string(get(fit)) : std::string("–"); };
  };
  Rows<FitResult> rows(fits, chapter.system());
  rows.text("fit", [](const FitResult& fit) { return report::words_of(fit.fit); })
      .input("covered", Quantity::count, &FitResult::covered)
      .input("tight", Quantity::count, &FitResult::tight)
      .text("in hand", of_covered([](const FitResult& fit) { return report::in_hand(fit.worst_margin); }))
      .text("least in", of_covered([](const FitResult& fit) { return info(fit.worst_limit).name; }))
      .text("job", of_covered([](const FitResult& fit) { return fit.worst_job; }))
      .result("pads a year", Quantity::number, &FitResult::pads_per_year, 2)
      .result("pads, cost a year", Quantity::price, &FitResult::pad_cost_per_year)
      .input("price", Quantity::price, &FitResult::price);
  chapter.heading("The fits that were tried");
  chapter.table(
      rows.under(choice.currency.empty() ? "Fits, best first" : "Fits, best first; costs in " + choice.currency));
  if (choice.all.size() > fits.size())
    chapter.say(fmt::format("{} more were tried and rank behind these.", choice.all.size() - fits.size()), Tone::muted);
}

std::string least_change(const Uncovered& job, units::System system) {
  if (job.remedies.empty()) return "none of the changes that were tried";
  const auto& remedy = job.remedies.front();
  return report::filled(remedy.what, system) +
         (remedy.jobs_lost.empty() ? "" : fmt::format("; loses {}", report::names(remedy.jobs_lost)));
}

void uncovered_table(Chapter& chapter, const Choice& choice) {
  if (choice.uncovered.empty()) return;
  const auto system = chapter.system();
  chapter.heading("What falls out");
  chapter.say(
      "These jobs must not be run on this fit without a change. All that fails and all changes are listed in "
      "the chapter on what falls out.",
      Tone::strong);
  Rows<Uncovered> rows(choice.uncovered, system);
  rows.text("job", &Uncovered::job)
      .state("state", [](const Uncovered&) { return State::fails; })
      .text("why", [system](const Uncovered& job) { return report::filled(job.why, system); })
      .text("least change that brings it in", [system](const Uncovered& job) { return least_change(job, system); });
  chapter.table(rows.under("Jobs that are not covered"));
}

void nothing_recommended(Chapter& chapter, const Answer& answer) {
  chapter.verdict(State::fails, "fails: nothing is recommended");
  if (!answer.choice) {
    chapter.say("The stand file has no answer: what is wrong with it stands under the assumptions.");
    return;
  }
  chapter.say("The stand has no brake to choose from, so no job of the mix is covered.");
  chapter.items({"add a candidate brake with its friction grades to the stand file; any job can only come in by one",
                 "then answer again: every job is checked on every fit of that brake"},
                true);
}

/// A job that fails in motion is named beside the verdict of the limits, which do not see it.
void in_motion(Chapter& chapter, const std::vector<Answer>& simulations) {
  for (const auto& answer : simulations) {
    if (!answer.simulation) continue;
    for (const auto& run : answer.simulation->runs)
      if (run.state == State::fails || run.end == RunEnd::failed)
        chapter.verdict(State::fails,
                        fmt::format("fails in motion: job {} with control by {}: {}",
                                    report::named(answer.simulation->job), run.control,
                                    run.end == RunEnd::failed ? "the run stopped by a fault"
                                                              : report::filled(run.verdict, chapter.system())));
  }
}

}  // namespace

void result(Chapter& chapter, const Dossier& dossier) {
  if (recommended(dossier) == nullptr) return nothing_recommended(chapter, dossier.size);
  const auto& choice = *dossier.size.choice;
  verdict_of(chapter, *choice.recommended);
  in_motion(chapter, dossier.simulations);
  in_short(chapter, choice);
  uncovered_table(chapter, choice);
  fits_table(chapter, choice);
}

}  // namespace holdback::papers::selection
