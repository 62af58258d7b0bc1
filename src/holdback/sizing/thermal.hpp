// Heat over rolls and change-overs: the state that repeats, how long it takes to get there, and how long to cool.
#pragma once

#include "holdback/physics/thermal.hpp"
#include "holdback/results/thermal.hpp"
#include "holdback/sizing/demand.hpp"

namespace holdback::sizing {

/// One job run over and over on one candidate with the pairs engaged.
ThermalFacts thermal_facts(const Demand& demand, const Candidate& candidate, const Site& site, int pairs);

/// The bodies of one brake of the candidate with the pairs engaged, as thermal_facts() takes them on this job.
physics::ThermalNodes thermal_nodes(const Demand& demand, const Candidate& candidate, const Site& site, int pairs);

}  // namespace holdback::sizing
