// What is reported of a job on its fit beside the limits: the roll, the stops, a web break, wear, and the torque
// envelope.
#pragma once

#include "holdback/results/choice.hpp"
#include "holdback/sizing/assess.hpp"

namespace holdback::sizing {

/// The full record of one job on one candidate.
JobFit job_fit(const Demand& demand, const Survey& survey, const Assessment& assessment, const Candidate& candidate,
               const Site& site);

/// The roll of a demand with the candidate's discs on its shaft (disc_inertia 0: without).
RollFacts roll_facts(const Demand& demand, double disc_inertia);

/// Torque asked for and given over the roll, with pressure and temperature.
Envelope envelope(const Demand& demand, const Candidate& candidate, const Site& site, int pairs);

}  // namespace holdback::sizing
