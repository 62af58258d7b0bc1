// The tension a job is run at and the window around it.
#pragma once

#include "holdback/model/job.hpp"
#include "holdback/model/stand.hpp"
#include "holdback/results/choice.hpp"

namespace holdback::sizing {

/// Tolerance [1] of a job: its own, else the stand's.
double tolerance_of(const Job& job, const Limits& limits);

/// Setpoint and window of a job: what the job asks, else what its web recommends. The window is the setpoint ±
/// tolerance. A job with neither has setpoint 0; plausibility refuses it beforehand.
TensionTarget tension_target(const Job& job, const Limits& limits);

}  // namespace holdback::sizing
