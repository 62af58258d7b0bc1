// Readings as a person writes them, "force=6.4 N", into values with what their instrument can show.
#pragma once

#include <vector>

#include "holdback/api/site_requests.hpp"
#include "holdback/model/measure_method.hpp"
#include "holdback/model/problem.hpp"

namespace holdback::api {

/// The readings of a method by key, in the order of its table. A value may carry its limits ("6.4 N ± 0.2 N", "4.5 GPa
/// ± 10 %", also +- and +/-); "force.resolution" states what the instrument shows; else the digits written tell it, or
/// the usual instrument. A key of no meaning, a text that is no such quantity, limits below zero and the like are added
/// to `problems`.
std::vector<KeyReadings> read_readings(const MeasureMethod& method, const std::vector<Reading>& readings,
                                       Problems& problems);

}  // namespace holdback::api
