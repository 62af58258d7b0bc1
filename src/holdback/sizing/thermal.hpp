// Heat over rolls and change-overs: the state that repeats, how long it takes to get there, and how long to cool.
#pragma once

#include "holdback/results/thermal.hpp"
#include "holdback/sizing/demand.hpp"

namespace holdback::sizing {

/// One job run over and over on one candidate with the pairs engaged.
ThermalFacts thermal_facts(const Demand& demand, const Candidate& candidate, const Site& site, int pairs);

}  // namespace holdback::sizing
