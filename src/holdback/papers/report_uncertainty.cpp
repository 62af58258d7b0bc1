// How likely the limits hold when every input lies anywhere in its band, and which input drives it.
#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "holdback/draw/figures.hpp"
#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::selection {

namespace {

std::vector<JobFit> with_likelihood(const std::vector<JobFit>& jobs) {
  std::vector<JobFit> out;
  std::copy_if(jobs.begin(), jobs.end(), std::back_inserter(out),
               [](const JobFit& job) { return job.likelihood.has_value(); });
  return out;
}

Quantity kind_of(Input input) { return input == Input::ambient ? Quantity::temperature_difference : Quantity::ratio; }

void mix_likelihood(Chapter& chapter, const Choice& choice) {
  if (!choice.likelihood || choice.recommended->covered == 0) return;
  const auto system = chapter.system();
  const auto& mix = *choice.likelihood;
  chapter.say(
      fmt::format("{} hold every limit together in {} of {} samples, the same pads and air for all. The limits "
                  "are judged at the ends of friction alone; here every input below varies too.",
                  choice.uncovered.empty() ? "All jobs" : "The covered jobs", chance(mix.probability), mix.samples));
  Rows<InputBand> rows(mix.bands, system);
  rows.text("input", [](const InputBand& band) { return key_of(band.input); })
      .cells({"varied by ±", "", true}, [=](const InputBand& band) {
        return Cell{meant(band.half_width, kind_of(band.input), system, 2), Tone::normal, false, State::holds};
      });
  chapter.table(rows.under("How far inputs were varied, every value between as likely as another"));
}

std::string drivers(const Likelihood& likelihood) {
  std::string out;
  for (const auto& driver : likelihood.drivers)
    if (driver.total >= 0.1) out += (out.empty() ? "" : ", ") + std::string(key_of(driver.input));
  return out.empty() ? "–" : out;
}

std::string may_fail(const Likelihood& likelihood) {
  std::string out;
  for (const auto& limit : likelihood.limits)
    out += fmt::format("{}{} ({})", out.empty() ? "" : ", ", info(limit.id).name, chance(limit.probability));
  return out.empty() ? "none" : out;
}

Cell hand_cell(double margin) {
  return {report::kept_together(report::in_hand(margin)), Tone::normal, false, State::holds};
}

Table jobs_table(const std::vector<JobFit>& jobs, units::System system) {
  Rows<JobFit> rows(jobs, system);
  rows.text("job", &JobFit::job)
      .cells({"all limits hold", "", true},
             [](const JobFit& job) {
               return Cell{chance(job.likelihood->probability), Tone::normal, false, State::holds};
             })
      .cells({"in hand, middle", "", true}, [](const JobFit& job) { return hand_cell(job.likelihood->middle_margin); })
      .cells({"worst twentieth", "", true}, [](const JobFit& job) { return hand_cell(job.likelihood->low_margin); })
      .text("driven by", [](const JobFit& job) { return drivers(*job.likelihood); })
      .text("limits that may fail (likely to hold)", [](const JobFit& job) { return may_fail(*job.likelihood); });
  return rows.under("Likelihood of each job, and the least in hand over its samples");
}

void one(Chapter& chapter, const Choice& choice) {
  const auto& job = *choice.job;
  if (!job.likelihood) return;
  const auto fit = choice.recommended ? " · " + under(choice.recommended->fit, job.pairs) : std::string{};
  chapter.heading("Job " + report::named(job.job));
  chapter.figure(draw::drivers_figure(*job.likelihood, job.job + fit), 0.75);
}

}  // namespace

void uncertainty(Chapter& chapter, const Dossier& dossier) {
  if (recommended(dossier) != nullptr) mix_likelihood(chapter, *dossier.size.choice);
  const auto jobs = with_likelihood(jobs_on_fit(dossier));
  chapter.table(jobs_table(jobs, chapter.system()));
  for (const auto* choice : in_depth(dossier)) one(chapter, *choice);
}

}  // namespace holdback::papers::selection
