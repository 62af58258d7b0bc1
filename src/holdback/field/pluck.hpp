// The frequency of a plucked span out of its sound.
#pragma once

#include <optional>
#include <string>

#include "holdback/field/pluck_partials.hpp"
#include "holdback/model/problem.hpp"
#include "holdback/model/sound.hpp"
#include "holdback/results/measurement.hpp"

namespace holdback::field {

/// What is known of the span beside its sound.
struct PluckKnown {
  std::optional<double> expected{};  // [rad/s] what the job's tension would give; it decides nothing, it only warns
  PartialSpread spread{};            // of the partials of such a web over such a span
};

/// Frequency of the span [rad/s] with its standard uncertainty, and the peaks of the spectrum. The part after the tap
/// is looked at: Hann window, spectrum, peaks that noise would make once in ten thousand recordings, each found on a
/// parabola through the logarithms of its neighbours; then which partial of the span each one is (partials_of()), or
/// hum. The frequency is that of the lowest partial which is heard; `partial` says which. The uncertainty is the spread
/// over thirds of the part, how far the frequency glides while it dies away, and a fiftieth of the width of a line.
/// Frequencies from 2 Hz to 2 kHz. Warnings and errors go to `problems` under `name`; none when there is nothing to
/// hear or nothing but noise. Source: [harris1978].
std::optional<PluckSound> pluck_frequency(const Sound& sound, const PluckKnown& known, const std::string& name,
                                          Problems& problems);

}  // namespace holdback::field
