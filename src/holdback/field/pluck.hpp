// The frequency of a plucked span out of its sound.
#pragma once

#include <optional>
#include <string>

#include "holdback/model/problem.hpp"
#include "holdback/model/sound.hpp"
#include "holdback/results/measurement.hpp"

namespace holdback::field {

/// Frequency of the span [rad/s] with its standard uncertainty, and the peaks of the spectrum. The part after the tap
/// is looked at: Hann window, spectrum, the highest peak found on a parabola through the logarithms of its neighbours;
/// then whether it is the first of the partials 1 : 2 : 3, or one of hum. The uncertainty is the spread over thirds of
/// the part, how far the frequency glides while it dies away, and a fiftieth of the width of a line. `expected` [rad/s]
/// is what the job's tension would give; it decides nothing, it only warns. Frequencies from 2 Hz to 2 kHz. Warnings
/// and errors go to `problems` under `name`; none when there is nothing to hear. Source: [harris1978].
std::optional<PluckSound> pluck_frequency(const Sound& sound, std::optional<double> expected, const std::string& name,
                                          Problems& problems);

}  // namespace holdback::field
