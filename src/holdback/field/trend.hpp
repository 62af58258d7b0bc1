// Whether fitted constants of a brake drift over the months.
#pragma once

#include <vector>

#include "holdback/results/history.hpp"

namespace holdback::field {

/// A straight line by least squares through values [SI] at days, with the 90 % interval of its slope by Student's t
/// [@jcgm100, G.3]. At least three values at two different days (std::invalid_argument).
FrictionTrend trend(const std::vector<int>& day, const std::vector<double>& value);

/// The trends of the fits among the entries in force: torque per pressure, friction, threshold and drag, by brake;
/// those with at least three fits.
std::vector<FrictionTrend> trends_of(const std::vector<HistoryEntry>& held);

}  // namespace holdback::field
