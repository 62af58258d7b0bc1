// What the judge of a log is told of a stand: its brake, roll and line as numbers, and what the linear model foretells.
#pragma once

#include "holdback/api/stand_job.hpp"
#include "holdback/field/log_stand.hpp"

namespace holdback::api {

/// The job of a stand on its fit. A web without modulus, or a fit without a linear model, leaves the loop out.
field::LogStand log_stand_of(const Stand& stand, const StandJob& job);

}  // namespace holdback::api
