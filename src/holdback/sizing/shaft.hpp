// The unwind shaft under a job: its beam, its whirl, its bearings over the roll, and the grip on the core.
#pragma once

#include "holdback/results/shaft.hpp"
#include "holdback/sizing/demand.hpp"

namespace holdback::sizing {

/// The shaft of the site, which must have one, with the roll of this job.
ShaftFacts shaft_facts(const Job& job, const Demand& demand, const Site& site);

}  // namespace holdback::sizing
