// The linear model behind the fit of a brake, for one notion of which pairs bite.
#pragma once

#include <vector>

#include "holdback/field/fit_brake.hpp"
#include "holdback/numerics/robust.hpp"

namespace holdback::field {

/// Which constants stand in the model.
struct ModelParts {
  bool drag{};
  bool hysteresis{};
};

/// A fitted model: b = K, K·p_0, then drag, then K·g/2, as far as they stand in it.
struct BrakeModel {
  int dead{};  // the pair that does not bite, counted as they are engaged; 0: all bite
  ModelParts parts{};
  numerics::Design design{};        // of the readings that count
  numerics::LinearFit fit{};        // least squares without the outliers
  std::vector<double> residuals{};  // of all readings [N·m]
  std::vector<bool> outlier{};      // of all readings
  std::vector<bool> released{};     // of all readings: below the threshold
  double given_drag{};              // [N·m] taken off beforehand when drag stands not in the model
  double scale{};                   // [N·m] robust, of the readings

  double slope() const { return fit.coefficients[0]; }                                         // K [N·m/Pa]
  double threshold() const { return fit.coefficients[1] / fit.coefficients[0]; }               // p_0 [Pa]
  double drag() const { return parts.drag ? fit.coefficients[2] : given_drag; }                // [N·m]
  double gap() const { return parts.hysteresis ? 2 * fit.coefficients.back() / slope() : 0; }  // g [Pa]

  double slope_error() const;      // [N·m/Pa]
  double threshold_error() const;  // [Pa] to first order
  double threshold_slope_covariance() const;
  double gap_error() const;  // [Pa]
};

/// True for a reading without pressure: no pad presses then, wherever the fitted line meets zero torque.
inline bool is_vented(const BrakeReading& reading) { return !(reading.pressure > 0); }

/// A row of the design for one reading.
std::vector<double> model_row(const BrakeReading& reading, const FitSetup& setup, int dead, ModelParts parts,
                              bool released);

/// Pairs that bite on all brakes together, weighed with the friction that the disc's temperature leaves.
double biting_pairs(const BrakeReading& reading, const FitSetup& setup, int dead);

/// The model with as many of its constants as the readings carry; `fit.full_rank` is false when they carry none.
BrakeModel fit_model(const std::vector<BrakeReading>& readings, const FitSetup& setup, int dead);

/// Σ min(r²/scale², c²), c = 3.5.
double misfit_of(const BrakeModel& model, double scale);

/// Least scatter [N·m] that is believed, whatever the residuals say: 0.3 % of the highest torque.
double least_scatter(const std::vector<BrakeReading>& readings);

/// All drag that the file knows of [N·m].
double drag_in_file(const FitSetup& setup);

}  // namespace holdback::field
