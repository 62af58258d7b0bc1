// Where the next reading tells the most.
#pragma once

#include <vector>

#include "holdback/field/brake_model.hpp"

namespace holdback::field {

/// Up to three readings, each the one that shrinks the intervals of slope and threshold most, the ones before it taken.
/// Nothing above the pressure that may be set, the torque for which the brake is rated, or what the web takes. Without
/// a fit (null) the places that a first fit needs, without intervals.
std::vector<NextReading> next_readings(const BrakeModel* model, const FitSetup& setup);

}  // namespace holdback::field
