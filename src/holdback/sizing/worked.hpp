// One job's check written down, equation by equation, so that a person can follow it with a pocket calculator. Every
// value comes from the functions that made the check; this only says what they did.
#pragma once

#include "holdback/model/stand.hpp"
#include "holdback/results/choice.hpp"
#include "holdback/results/worked.hpp"

namespace holdback::sizing {

/// The steps of one job of the stand on one of its fits, with the pairs that `job` engages: roll, tension and its
/// window, torque, heat, brake, stops, wear, shaft, and last the margin of each limit of `job`. A topic that the stand
/// does not describe has no steps. Terms that an iteration or a table gave say so in the step's note, and a step shows
/// that both sides agree. `job` must come from choose() on this stand. Throws std::invalid_argument when the stand has
/// no job, brake or grade of these names.
WorkedJob worked_job(const Stand& stand, const JobFit& job, const Fit& fit);

}  // namespace holdback::sizing
