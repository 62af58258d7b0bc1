// Readings that the usual instruments would give on a web of a known tension.
#pragma once

#include "holdback/field/measure_inputs.hpp"
#include "holdback/field/pluck_partials.hpp"

namespace holdback::field {

struct Foretold {
  MeasureInput input{};  // a question of the method with made-up readings
  Note cannot{};         // why there are none; empty text when there are
};

/// `tension` [N] > 0. The span is that of the readings, else the stand's.
Foretold foretell(const MeasureInput& input, const MeasureMethod& method, double tension);

/// How far the partials of the span in question spread, by the air that its web carries; any spread where span, weight
/// and width are not all known.
PartialSpread partial_spread(const MeasureInput& input);

/// Mean of a key of the question; none when it was not read.
std::optional<double> read_value(const MeasureInput& input, const std::string& key);

}  // namespace holdback::field
