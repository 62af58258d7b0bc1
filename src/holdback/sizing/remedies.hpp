// The least change that would bring a failing job in. Nothing here is a rule of thumb: each change is applied to the
// stand and the whole check is run again.
#pragma once

#include <vector>

#include "holdback/results/choice.hpp"
#include "holdback/sizing/cover.hpp"

namespace holdback::sizing {

/// Remedies for one job on the chosen fit, least change first: those that cost no other job before those that do, then
/// in the order of RemedyKind. Single changes; two together only when no single one is enough. `chosen` is the index of
/// the fit and `job` of the job in the coverage, which must be that of `stand` and `site`.
std::vector<Remedy> remedies(const Stand& stand, const Site& site, const Coverage& coverage, std::size_t chosen,
                             std::size_t job);

}  // namespace holdback::sizing
