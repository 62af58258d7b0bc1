#include "holdback/sizing/choose.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "holdback/numerics/parallel_for.hpp"
#include "holdback/sizing/facts.hpp"
#include "holdback/sizing/likelihood.hpp"
#include "holdback/sizing/notes.hpp"
#include "holdback/sizing/remedies.hpp"
#include "holdback/sizing/thermal.hpp"
#include "holdback/sizing/window.hpp"

namespace holdback::sizing {

namespace {

// A mix of many jobs is sampled more thinly, so that it costs no time that anybody notices.
Sampling sampling_for(std::size_t jobs) {
  Sampling sampling;
  if (jobs > 100) sampling.base = 32;
  return sampling;
}

JobFit in_full(const Coverage& coverage, std::size_t fit, std::size_t job, const Site& site) {
  const Candidate& candidate = coverage.fits[fit];
  const Demand& demand = coverage.demands[job];
  const Survey found = survey(demand, candidate, site);
  return job_fit(demand, found, assess_best(demand, found, candidate, site), candidate, site);
}

void add_jobs(FitResult& result, const Coverage& coverage, std::size_t fit, const Site& site) {
  for (std::size_t j = 0; j < coverage.demands.size(); ++j) result.jobs.push_back(in_full(coverage, fit, j, site));
}

void add_standings(FitResult& result, const std::vector<Verdict>& verdicts) {
  for (const Verdict& verdict : verdicts)
    result.standings.push_back({verdict.state, verdict.binding, verdict.pairs, verdict.margin});
}

// The job asked for, or the one with least in hand: its picture tells most when none was asked for.
std::size_t job_in_depth(const FitResult& fit, const std::string& name) {
  const auto at =
      name.empty() ? std::min_element(fit.jobs.begin(), fit.jobs.end(),
                                      [](const JobFit& a, const JobFit& b) { return a.margin < b.margin; })
                   : std::find_if(fit.jobs.begin(), fit.jobs.end(), [&](const JobFit& job) { return job.job == name; });
  return static_cast<std::size_t>(at - fit.jobs.begin());
}

// What only the recommended fit is asked: the window, heat over rolls, how likely it all holds.
void add_depths(Choice& choice, const Stand& stand, const Coverage& coverage, std::size_t fit, const Site& site,
                int threads) {
  std::vector<JobFit>& jobs = choice.recommended->jobs;
  const Candidate& candidate = coverage.fits[fit];
  const Sampling sampling = sampling_for(jobs.size());
  std::vector<SampledJob> sampled(jobs.size());
  numerics::parallel_for(jobs.size(), static_cast<std::size_t>(std::max(threads, 0)), [&](std::size_t j) {
    const Demand& demand = coverage.demands[j];
    jobs[j].window = tension_window(stand.jobs[j], demand, site);
    jobs[j].thermal = thermal_facts(demand, candidate, site, jobs[j].pairs);
    sampled[j] = sample_job(demand, candidate, site, jobs[j].pairs, sampling);
    jobs[j].likelihood = sampled[j].likelihood;
  });
  std::vector<bool> covered;
  for (const JobFit& job : jobs) covered.push_back(job.state != State::fails);
  choice.likelihood = mix_of(sampled, covered, input_bands(candidate, site), sampling);
}

Note failing_in_words(const JobFit& job) {
  Note note;
  for (const Limit& limit : job.limits) {
    if (limit.state != State::fails) continue;
    const LimitInfo& about = info(limit.id);
    const std::size_t n = note.amounts.size();
    note.text += fmt::format("{}{} {{{}}} {} {{{}}}", note.text.empty() ? "" : "; ", about.name, n,
                             about.sense == Sense::at_most ? "above" : "below", n + 1);
    note.amounts.push_back({limit.value, about.kind});
    note.amounts.push_back({limit.bound, about.kind});
    if (limit.diameter <= 0) continue;
    note.text += fmt::format(" at {{{}}}", n + 2);
    note.amounts.push_back({limit.diameter, Quantity::short_length});
  }
  return note;
}

Uncovered uncovered(const JobFit& job, std::vector<Remedy> remedies) {
  Uncovered out;
  out.job = job.job;
  out.why = failing_in_words(job);
  std::copy_if(job.limits.begin(), job.limits.end(), std::back_inserter(out.failing),
               [](const Limit& limit) { return limit.state == State::fails; });
  out.remedies = std::move(remedies);
  return out;
}

// Looking for remedies is the long part of a mix that does not fit, and each job's search stands alone.
void add_uncovered(Choice& choice, const Stand& stand, const Site& site, const Coverage& coverage, std::size_t best,
                   const ChooseOptions& options) {
  const std::vector<JobFit>& jobs = choice.recommended->jobs;
  std::vector<std::size_t> failing;
  for (std::size_t j = 0; j < jobs.size(); ++j)
    if (jobs[j].state == State::fails) failing.push_back(j);
  choice.uncovered.resize(failing.size());
  numerics::parallel_for(failing.size(), static_cast<std::size_t>(std::max(options.threads, 0)), [&](std::size_t i) {
    std::vector<Remedy> found;
    if (!options.brief) found = remedies(stand, site, coverage, best, failing[i]);
    choice.uncovered[i] = uncovered(jobs[failing[i]], std::move(found));
  });
}

// In brief: the heat and the window of the one job that is looked at.
void add_depths_of_one(FitResult& result, const std::string& name, const Stand& stand, const Coverage& coverage,
                       std::size_t fit, const Site& site) {
  const std::size_t j = job_in_depth(result, name);
  if (j == result.jobs.size()) return;
  const Demand& demand = coverage.demands[j];
  result.jobs[j].window = tension_window(stand.jobs[j], demand, site);
  result.jobs[j].thermal = thermal_facts(demand, coverage.fits[fit], site, result.jobs[j].pairs);
}

void add_depth(Choice& choice, const std::string& name, const Site& site, const Coverage& coverage, std::size_t best) {
  const std::size_t j = job_in_depth(*choice.recommended, name);
  if (j == choice.recommended->jobs.size()) return;
  const JobFit& job = choice.recommended->jobs[j];
  if (!name.empty()) choice.job = job;
  choice.envelope = envelope(coverage.demands[j], coverage.fits[best], site, job.pairs);
}

}  // namespace

std::vector<Candidate> candidates(const Stand& stand, const Site& site, const ChooseOptions& options) {
  std::vector<Candidate> wanted = candidates(stand, site);
  const auto unwanted = [&](const Candidate& c) {
    return (options.brake && c.brake->name != *options.brake) || (options.grade && c.grade->name != *options.grade) ||
           (options.brakes && c.brakes != *options.brakes);
  };
  wanted.erase(std::remove_if(wanted.begin(), wanted.end(), unwanted), wanted.end());
  return wanted;
}

Choice choose(const Stand& stand, const ChooseOptions& options) {
  const Site site = site_of(stand);
  Choice choice;
  choice.title = stand.title;
  choice.currency = stand.currency;
  choice.brief = options.brief;
  choice.assumptions = assumptions(stand, site);
  choice.cautions = cautions(stand, site);

  const Coverage coverage = cover(stand, site, candidates(stand, site, options), options.threads);
  choice.fits_tried = static_cast<int>(coverage.fits.size());
  if (coverage.fits.empty()) return choice;

  std::vector<FitResult> results;
  for (std::size_t fit = 0; fit < coverage.fits.size(); ++fit) results.push_back(sum_up(coverage, fit, stand));
  const std::vector<std::size_t> order = rank(results, coverage.fits);
  for (const std::size_t fit : order) {
    choice.all.push_back(results[fit]);
    if (options.brief) add_standings(choice.all.back(), coverage.verdicts[fit]);
    if (options.all && !options.brief) add_jobs(choice.all.back(), coverage, fit, site);
  }
  const std::size_t best = order.front();
  choice.recommended = results[best];
  add_jobs(*choice.recommended, coverage, best, site);
  if (options.brief)
    add_depths_of_one(*choice.recommended, options.job, stand, coverage, best, site);
  else
    add_depths(choice, stand, coverage, best, site, options.threads);
  if (order.size() > 1) {
    choice.next = results[order[1]];
    choice.why = why(*choice.recommended, *choice.next, static_cast<int>(stand.jobs.size()));
  }
  add_uncovered(choice, stand, site, coverage, best, options);
  add_depth(choice, options.job, site, coverage, best);
  return choice;
}

}  // namespace holdback::sizing
