// Settings of a loop that keep their margins from the full roll to the core.
#pragma once

#include <vector>

#include "holdback/dynamics/linear.hpp"
#include "holdback/results/tuning.hpp"

namespace holdback::dynamics {

/// What is asked of a loop: usual values, [astrom2008], ch. 9 (gain margin 2 to 5, phase margin 30° to 60°).
struct AskedMargins {
  double gain{2.5};      // [1] factor
  double phase{0.7854};  // [rad] 45°
};

/// What a tuning needs to know of the stand.
struct TuneRequest {
  Plant plant{};
  Held held{};
  double speed{};                     // [m/s] > 0 of the job
  double setpoint{};                  // [N]
  double full_radius{};               // [m]
  double core_radius{};               // [m]
  std::vector<double> brake_share{};  // [1] friction left from full to core, evenly spaced in radius; empty: cold
  Believed believed{};                // brake and roll as the controller believes them to be
  LoopDelays delays{};
  double derivative_time{};  // [s]
  AskedMargins asked{};
};

/// Diameters at which the stand is made linear.
inline constexpr int tune_points = 13;

/// The stands from full to core.
std::vector<LinearStand> stands_over_roll(const TuneRequest& request);

/// Margins and modes over the roll with given settings.
LoopTuning tuning_of(const TuneRequest& request, const std::vector<LinearStand>& stands, const LoopSettings& settings);

/// The settings with the most integral gain, thus the best against slow disturbances, whose margins are kept at every
/// diameter: over a range of integral times the highest gain that keeps them. A gain of zero where nothing does.
LoopSettings tuned(const TuneRequest& request, const std::vector<LinearStand>& stands, bool scheduled);

/// How the tension shakes with the runout of the roll, loop closed with the settings (null: open).
RunoutMap runout_map(const TuneRequest& request, const LoopSettings* settings);

}  // namespace holdback::dynamics
