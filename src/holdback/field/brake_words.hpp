// What the fit of a brake says in words: verdicts with their evidence, what cannot be told, assumptions.
#pragma once

#include <vector>

#include "holdback/field/brake_causes.hpp"
#include "holdback/field/brake_model.hpp"

namespace holdback::field {

/// Fills in what is said of a cause. `cause` picks the model of a dead pair, and says how many grades look alike.
void tell(BrakeVerdict& verdict, const BrakeFit& fit, const std::vector<BrakeModel>& models, const WeighedCause& cause,
          const FitSetup& setup);

/// Adds to "as expected" that the fit may replace the file's constants.
void tell_may_replace(BrakeFit& fit);

/// Too few or badly placed readings.
BrakeVerdict too_few_words(const BrakeFit& fit, const BrakeModel& model, const std::vector<BrakeReading>& readings);

/// Torque that does not rise with pressure; with a `model` it may rise, and be lost in the scatter.
BrakeVerdict no_line_words(const BrakeModel* model, const std::vector<BrakeReading>& readings, const FitSetup& setup);

/// Assumptions of the model for these readings.
void tell_assumptions(BrakeFit& fit, const std::vector<BrakeReading>& readings, const FitSetup& setup);

/// What cannot be told apart, and cautions.
void tell_limits_of(BrakeFit& fit, const BrakeModel& model, const std::vector<BrakeReading>& readings,
                    const FitSetup& setup);

/// What to mind at the machine.
void tell_dangers(BrakeFit& fit, const FitSetup& setup);

}  // namespace holdback::field
