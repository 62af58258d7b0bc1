// What the fitted constants may show: each cause with how likely it is among all.
#pragma once

#include <string>
#include <vector>

#include "holdback/field/brake_model.hpp"

namespace holdback::field {

/// A cause with its share of the likelihood.
struct WeighedCause {
  BrakeCause cause{};
  double share{};       // [1] of all
  std::string grade{};  // of wrong_grade
  int pair{};           // of dead_pair; 0: not told apart
  int alike{};          // other grades, or other pairs, whose share is counted in
};

/// How far the readings' own scatter and the file's drag leave the two constants open.
struct ConstantsKnown {
  double slope_share{};      // [1] K over the grade's nominal
  double slope_deviation{};  // [1] standard deviation of it
  double shift{};            // [Pa] p_0 less the file's
  double shift_deviation{};  // [Pa]
  double correlation{};      // [1] between the two
};
ConstantsKnown constants_known(const BrakeModel& model, const FitSetup& setup);

/// Torque per pressure that the grade may have: shares of its nominal, friction band and friction radius together.
struct GradeBand {
  double low{};
  double high{};
};
GradeBand band_of(const Brake& brake, const Grade& grade, double nominal);

/// [Pa] shift of the threshold, either way, that is no news: a third of it, what a setting may be off, and 2 kPa.
double usual_shift(const FitSetup& setup);

/// All causes, the likeliest first; the shares add up to one. `models` has one entry a notion of which pair is dead,
/// the first with none. Grades, and dead pairs, too unlikely to be told one by one (below `least`) count with the
/// likeliest of them: many a small share must not hide that it is another grade.
std::vector<WeighedCause> weigh_causes(const std::vector<BrakeModel>& models, const FitSetup& setup, double least);

}  // namespace holdback::field
