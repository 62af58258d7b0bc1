// `plan`: the pressures to run at, by a controller that knows the diameter or by hand from a card.
#pragma once

#include <optional>
#include <string>

#include "holdback/results/plan.hpp"
#include "holdback/sizing/choose.hpp"

namespace holdback::sizing {

struct PlanOptions {
  ChooseOptions choose{};             // which fit: the recommended one of those it leaves
  std::optional<double> tolerance{};  // [1] 0 … 1, ±ε of the hand card; else each job's own
};

/// Plans every job, or only `options.choose.job`. Empty of jobs when no candidate is left.
Plan plan(const Stand& stand, const PlanOptions& options);

}  // namespace holdback::sizing
