#include "holdback/sizing/cover.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <tuple>

#include "holdback/numerics/parallel_for.hpp"

namespace holdback::sizing {

namespace {

double share_total(const Stand& stand) {
  double total = 0;
  for (const Job& job : stand.jobs) total += job.share;
  return total > 0 ? total : 1;
}

double running_seconds_per_year(const Line& line) {
  return line.hours_per_day * line.days_per_week * line.weeks_per_year * line.uptime * 3600;
}

// Margins closer than this are the same to anybody; the next criterion decides.
double in_per_mille(double margin) { return std::round(margin * 1000); }

std::string name(const Fit& fit) { return std::to_string(fit.brakes) + " × " + fit.brake + " with " + fit.grade; }

std::string jobs_text(int count) { return std::to_string(count) + (count == 1 ? " job" : " jobs"); }

}  // namespace

Verdict verdict_of(const Summary& summary, const Candidate& candidate) {
  const double pads = 2.0 * candidate.brakes * summary.pairs;
  return {summary.state, summary.binding, summary.pairs, summary.margin, pads / summary.pad_life};
}

Coverage cover(const Stand& stand, const Site& site, const std::vector<Candidate>& fits, int threads) {
  Coverage coverage;
  coverage.fits = fits;
  const std::size_t jobs = stand.jobs.size();
  coverage.demands.resize(jobs);
  coverage.verdicts.assign(fits.size(), std::vector<Verdict>(jobs));
  // A job at a time: its demand serves every fit, what a brake's disc sheds over its roll every fit with that brake,
  // and a pass over the roll every grade of a brake and number.
  const auto judge = [&](std::size_t j) {
    const Demand& demand = coverage.demands[j] = demand_of(stand.jobs[j], site);
    const CoolingCurve* curve = nullptr;
    const Candidate* passed = nullptr;
    DiscOverRoll disc;
    Pass pass;
    for (std::size_t f = 0; f < fits.size(); ++f) {
      const Candidate& fit = coverage.fits[f];
      if (fit.cooling.get() != curve) {
        curve = fit.cooling.get();
        disc = curve->over(demand, site.ambient);
      }
      if (passed == nullptr || passed->brake != fit.brake || passed->brakes != fit.brakes)
        pass_over(demand, disc, fit, site, {}, pass);
      passed = &fit;
      const Survey found = survey(demand, disc, pass, fit, Where::left_out);
      coverage.verdicts[f][j] = verdict_of(summarize_best(demand, found, fit, site), fit);
    }
  };
  numerics::parallel_for(jobs, static_cast<std::size_t>(std::max(threads, 0)), judge);
  return coverage;
}

FitResult sum_up(const Coverage& coverage, std::size_t fit, const Stand& stand) {
  const Candidate& candidate = coverage.fits[fit];
  FitResult result;
  result.fit = fit_of(candidate);
  const double shares = share_total(stand);
  double pads_per_second = 0;
  double failing_margins = 0;
  for (std::size_t j = 0; j < coverage.demands.size(); ++j) {
    const Verdict& verdict = coverage.verdicts[fit][j];
    pads_per_second += verdict.pads_per_second * stand.jobs[j].share / shares;
    if (verdict.state == State::fails) {
      failing_margins += verdict.margin;
      continue;
    }
    if (result.covered == 0 || verdict.margin < result.worst_margin) {
      result.worst_margin = verdict.margin;
      result.worst_limit = verdict.binding;
      result.worst_job = coverage.demands[j].job;
    }
    ++result.covered;
    result.tight += verdict.state == State::tight;
  }
  const int failing = static_cast<int>(coverage.demands.size()) - result.covered;
  if (failing > 0) result.failing_margin = failing_margins / failing;
  result.pads_per_year = pads_per_second * running_seconds_per_year(stand.line);
  if (candidate.brake->price) result.price = *candidate.brake->price * candidate.brakes;
  if (candidate.brake->pad_price) result.pad_cost_per_year = result.pads_per_year * *candidate.brake->pad_price;
  return result;
}

std::vector<std::size_t> rank(const std::vector<FitResult>& fits, const std::vector<Candidate>& candidates) {
  const bool priced = std::all_of(fits.begin(), fits.end(), [](const FitResult& f) { return f.price.has_value(); });
  const auto key = [&](std::size_t i) {
    const FitResult& fit = fits[i];
    const double nearest = fit.covered == 0 ? -fit.failing_margin : 0;
    const double size = priced ? *fit.price : candidates[i].brakes;
    return std::tuple(-fit.covered, nearest, fit.tight, size, priced ? 0 : candidates[i].order,
                      -in_per_mille(fit.worst_margin), fit.pads_per_year);
  };
  std::vector<std::size_t> order(fits.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return key(a) < key(b); });
  return order;
}

Note why(const FitResult& first, const FitResult& second, int jobs) {
  const std::string other = name(second.fit);
  if (first.covered != second.covered)
    return {"it covers " + std::to_string(first.covered) + " of " + jobs_text(jobs) + "; the next best, " + other +
            ", covers " + std::to_string(second.covered)};
  if (first.covered == 0) return {"it covers no job, as no fit does, but comes nearer to it than the next, " + other};
  if (first.tight != second.tight)
    return {"it covers as much as the next best, " + other + ", and keeps the reserve on " +
            (first.tight == 0 ? "all of them" : "all but " + jobs_text(first.tight)) + " where that one is tight on " +
            jobs_text(second.tight)};
  if (first.price && second.price && *first.price != *second.price)
    return {"it covers as much as the next best, " + other + ", for {0} instead of {1}",
            {{*first.price, Quantity::price}, {*second.price, Quantity::price}}};
  if (first.fit.brakes != second.fit.brakes)
    return {"it covers as much as the next best, " + other + ", with fewer brakes"};
  if (first.fit.brake != second.fit.brake)
    return {"it covers as much as the next best, " + other + ", with the brake that stands earlier in the file"};
  if (in_per_mille(first.worst_margin) != in_per_mille(second.worst_margin))
    return {"of the same brakes it keeps more in hand at its worst limit than " + other + ": {0} against {1}",
            {{first.worst_margin - 1, Quantity::ratio}, {second.worst_margin - 1, Quantity::ratio}}};
  return {"of the same brakes and as safe as " + other + ", it wears {0} pads a year instead of {1}",
          {{first.pads_per_year, Quantity::number}, {second.pads_per_year, Quantity::number}}};
}

}  // namespace holdback::sizing
