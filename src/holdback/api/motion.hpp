// `simulate` and `tune`: a job of a stand put in motion, and its loop.
#pragma once

#include "holdback/api/answer.hpp"
#include "holdback/model/stand.hpp"
#include "holdback/results/motion.hpp"
#include "holdback/results/tuning.hpp"

namespace holdback::api {

/// Runs a scenario under the stand's control, or under several side by side, best first. The request must have passed
/// unmovable().
Simulation simulate(const Stand& stand, const Request& request);

/// Tunes the stand's loop; for a hand or for following the diameter, which have none, that of a load cell. Runs the
/// usual scenario with the advised settings, and tries the other controls where the present one does not hold.
Tuning tune(const Stand& stand, const Request& request);

}  // namespace holdback::api
