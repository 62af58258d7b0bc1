// What the fit of a brake says in words: verdicts with their evidence, what cannot be told, assumptions.
#pragma once

#include <optional>
#include <vector>

#include "holdback/field/brake_model.hpp"

namespace holdback::field {

/// Fills in what is said of a cause. `dead` picks the model of a dead pair.
void tell(BrakeVerdict& verdict, const BrakeFit& fit, const std::vector<BrakeModel>& models, int dead,
          const FitSetup& setup);

/// Too few or badly placed readings.
BrakeVerdict too_few_words(const BrakeFit& fit, const BrakeModel& model, const std::vector<BrakeReading>& readings);

/// Torque that does not rise with pressure.
BrakeVerdict no_line_words();

/// Assumptions of the model for these readings.
void tell_assumptions(BrakeFit& fit, const std::vector<BrakeReading>& readings, const FitSetup& setup);

/// What cannot be told apart, and cautions.
void tell_limits_of(BrakeFit& fit, const BrakeModel& model, const std::vector<BrakeReading>& readings,
                    const FitSetup& setup);

/// Why the file is to be left as it is; nothing when the fit may go in.
std::optional<Note> refusal_of(const BrakeFit& fit);

}  // namespace holdback::field
