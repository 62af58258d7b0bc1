// The tension window of a job, bound by bound.
#pragma once

#include <vector>

#include "holdback/results/window.hpp"
#include "holdback/sizing/demand.hpp"

namespace holdback::sizing {

/// Every bound that is known of a job, at its speed, each where it binds hardest over the roll.
std::vector<WindowBound> window_bounds(const Job& job, const Demand& demand, const Site& site);

/// Where cinching is nearest, in steady run and in stops; none when the tension the roll was wound with is not known.
std::optional<Cinching> cinching(const Job& job, const Demand& demand, const Site& site);

/// The bounds with what they leave over speed and over the roll.
TensionWindow tension_window(const Job& job, const Demand& demand, const Site& site);

}  // namespace holdback::sizing
