// Figures of an answer as files.
#pragma once

#include "holdback/model/stand.hpp"
#include "holdback/results/answer.hpp"
#include "holdback/units/units.hpp"
#include "settings.hpp"

namespace holdback::cli {

/// Writes the figures of the answer as SVG into the folder that --svg names, made when it is not there, and says on
/// standard error how many; with the stand that was sized also its elevation. Nothing without --svg, or when the input
/// was bad. Throws Refusal when the folder cannot be made or a file not be written.
void write_figures(const Answer& answer, const Settings& settings, units::System system, const Stand* stand = nullptr);

/// The traces of a simulation as CSV into the folder that --traces names, one file a control.
void write_traces(const Answer& answer, const Settings& settings, units::System system);

}  // namespace holdback::cli
