// Every limit of one job on one candidate with a number of engaged pairs. All limits are judged at the end of the
// friction band that is worst for them: low and hot where torque may be missing, high and cold where it may be too
// much.
#pragma once

#include <array>
#include <bitset>
#include <cstdint>

#include "holdback/results/limit.hpp"
#include "holdback/sizing/survey.hpp"

namespace holdback::sizing {

/// The limits of one job, by LimitId; one that does not apply (no data for it) is not present.
struct Assessment {
  int pairs{};
  std::array<Limit, limit_count> limits{};
  std::bitset<limit_count> present{};
  State state{State::holds};
  LimitId binding{};  // least margin
  double margin{};    // [1] of the binding limit
  int failing{};
};

/// The same in brief, for a large mix and for samples.
struct Summary {
  int pairs{};
  double margin{};          // [1] least
  LimitId binding{};        // of that margin
  std::uint32_t failing{};  // one bit a limit, by LimitId
  State state{};
  double pad_life{};  // [s]
};
static_assert(limit_count <= 32, "one bit a limit");

/// In brief: one number of pairs, and the pairs to engage as assess_best() finds them.
Summary summarize(const Demand& demand, const Survey& survey, const Candidate& candidate, const Site& site, int pairs,
                  const Variation& variation = {});
Summary summarize_best(const Demand& demand, const Survey& survey, const Candidate& candidate, const Site& site);

/// Judges one number of engaged pairs on each brake; away from nominal values when the survey was made so.
Assessment assess(const Demand& demand, const Survey& survey, const Candidate& candidate, const Site& site, int pairs,
                  const Variation& variation = {});

/// The pairs to engage: the fewest with which every limit holds; else the fewest with which none fails; else the number
/// that misses least. More pairs than needed only coarsen the control of tension.
Assessment assess_best(const Demand& demand, const Survey& survey, const Candidate& candidate, const Site& site);

/// survey() and assess_best() in one.
Assessment assess_job(const Demand& demand, const Candidate& candidate, const Site& site);

}  // namespace holdback::sizing
