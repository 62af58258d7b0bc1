// The tension from readings taken on site, how sure it is, and what would make it surer.
#pragma once

#include <optional>

#include "holdback/field/measure_inputs.hpp"

namespace holdback::field {

/// Draws for the check of the linear propagation, and their seed.
inline constexpr int measure_draws = 32768;
inline constexpr std::uint32_t measure_seed = 20240607;

/// The tension by a method. What is wrong is added to `problems`; none when an error is among them. Linear propagation
/// [jcgm100] with a check by draws [jcgm101]; where these reject the linear interval, interval and window are theirs.
std::optional<Measurement> measure(const MeasureInput& input, Problems& problems);

/// Only how to take the readings, and which method would be best, when a job's web and tension are known.
Measurement instruct(const MeasureInput& input);

/// What each method would be worth on this web and span at about this tension, the best first: readings of the usual
/// instruments are made up for it and carried through as real ones are.
std::vector<MethodOutlook> outlooks(const MeasureInput& input, double tension);

/// Steps, cautions and fields of a method, and what to expect on the job's web.
Instruction instruction_of(const MeasureInput& input);

}  // namespace holdback::field
