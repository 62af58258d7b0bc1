// What readings show to be doubtful, though they give a tension.
#pragma once

#include "holdback/field/measure_inputs.hpp"

namespace holdback::field {

/// Warnings of one question: read once or twice, too coarse, a modulus that is not known, a push that strains the web
/// much or past its yield, a breakaway below the pull, no tare.
void warn_of_readings(const MeasureInput& input, const MeasureLines& lines, const Measurement& found,
                      Problems& problems);

/// A caution where the push stretched the web for good.
std::optional<Note> yield_caution(const MeasureInput& input, const Measurement& found);

}  // namespace holdback::field
