// Covering the mix: every job on every candidate fit, and the order of preference among the fits.
#pragma once

#include <vector>

#include "holdback/results/choice.hpp"
#include "holdback/sizing/assess.hpp"

namespace holdback::sizing {

/// One job on one fit, in brief.
struct Verdict {
  State state{};
  LimitId binding{};
  int pairs{};
  double margin{};           // [1]
  double pads_per_second{};  // worn while this job runs
};

/// The mix on every fit: verdicts[fit][job].
struct Coverage {
  std::vector<Candidate> fits{};
  std::vector<Demand> demands{};
  std::vector<std::vector<Verdict>> verdicts{};
};

/// Judges every job on every fit; on `threads` threads (0: all), with the same answer on any number.
Coverage cover(const Stand& stand, const Site& site, const std::vector<Candidate>& fits, int threads);

/// One job on one fit.
Verdict verdict_of(const Summary& summary, const Candidate& candidate);

/// A fit summed up over the mix, without its jobs.
FitResult sum_up(const Coverage& coverage, std::size_t fit, const Stand& stand);

/// Indices of the fits, best first: fewest failing jobs (when all fail, those that miss by least); fewest jobs inside
/// the reserve; lowest price when every brake has one, else fewest brakes and then the order of the file; most in hand
/// at the worst limit; fewest pads worn a year.
std::vector<std::size_t> rank(const std::vector<FitResult>& fits, const std::vector<Candidate>& candidates);

/// Why the first fit is preferred to the second: the first of rank()'s criteria in which they differ, in words.
Note why(const FitResult& first, const FitResult& second, int jobs);

}  // namespace holdback::sizing
