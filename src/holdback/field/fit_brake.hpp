// The real brake from readings: M = N n K (p − p_0 ∓ g/2)⁺ + M_d, with K the torque per pressure of one pair
// (physics/brake.hpp), N brakes with n pairs engaged, threshold p_0, gap g between rising and falling pressure, drag
// M_d of shaft and released brakes. See docs/method.md, "Fitting the real brake".
#pragma once

#include <optional>
#include <vector>

#include "holdback/model/brake.hpp"
#include "holdback/results/brake_fit.hpp"

namespace holdback::field {

/// One reading in SI: what the gauge showed, and the torque at the shaft, drag included.
struct BrakeReading {
  int row{};          // of the table
  double pressure{};  // [Pa] ≥ 0
  double torque{};    // [N·m] ≥ 0
  int pairs{};        // 1 … brake.pairs, engaged on each brake
  PressureCourse course{PressureCourse::unknown};
  std::optional<double> temperature{};  // [K] of the disc
};

/// What the readings were taken on.
struct FitSetup {
  Brake brake{};
  Grade grade{};
  int brakes{1};              // on the shaft
  double shaft_drag{};        // [N·m] without the brakes'
  double drag_band{};         // [1] ± of all drag, when it cannot be read
  double pressure_step{};     // [Pa] how far a setting may be off: resolution and hysteresis of the regulator
  double highest_pressure{};  // [Pa] that may be asked for: supply, regulator and rating
  std::optional<double> highest_torque{};  // [N·m] at the shaft that the web takes, drag included; none: not known
  std::optional<Note> noted{};             // how the brake was chosen
  std::optional<Note> web_noted{};         // of which web highest_torque is
};

/// Fits, judges, and says where to read next. Two readings at different pressures at least, else
/// std::invalid_argument. Fills all of the answer but the title and what concerns the file.
BrakeFit fit_brake(const std::vector<BrakeReading>& readings, const FitSetup& setup);

/// The changed constants of brake and grade; a refusal when the readings do not carry them.
struct FittedBrake {
  Brake brake{};  // with the grade among its grades
  Grade grade{};
  std::optional<Note> refusal{};
};
FittedBrake fitted_brake(const BrakeFit& fit, const FitSetup& setup);

}  // namespace holdback::field
