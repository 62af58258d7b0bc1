// The readings of a commissioning: pressures within every rating and the web's window, and the torque to expect.
#pragma once

#include "holdback/model/stand.hpp"
#include "holdback/results/commissioning.hpp"

namespace holdback::sizing {

/// Settings for the fit with its jobs assessed on it: each number of pairs, the least and the greatest of them at five
/// pressures up and down again, those between at two, and the released brake first. At the highest friction of the
/// grade, with the pressure off by the regulator's step, no setting exceeds the rated torque of a brake nor, on a
/// roll of `least_diameter` and more, the highest tension of the web. `step` [Pa] ≥ 0 is the grid of round pressures
/// that a person sets with ease; the regulator's resolution where that is too coarse. No points without a job.
/// M = N n K (p − p_0)⁺ + M_d, as physics/brake.hpp has it.
Commissioning commissioning(const Stand& stand, const FitResult& result, double step);

}  // namespace holdback::sizing
