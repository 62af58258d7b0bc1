// What was gathered from a log before it is judged.
#pragma once

#include <algorithm>
#include <optional>

#include "holdback/field/friction_track.hpp"
#include "holdback/field/log_stand.hpp"
#include "holdback/field/plateaus.hpp"
#include "holdback/field/swings.hpp"
#include "holdback/numerics/spectrum.hpp"
#include "holdback/results/diagnosis.hpp"

namespace holdback::field {

/// The steady running that was looked at for swings.
struct SteadyRun {
  double time{};                      // [s]
  double speed{};                     // [m/s] mean
  double slowest{1e300}, fastest{};   // [m/s]
  double radius{};                    // [m] mean; 0: not known
  double smallest{1e300}, largest{};  // [m]
  double rate{};                      // [1/s] of the rows

  /// How far a frequency that goes with the speed, or with the roll, wanders [1]: highest over lowest.
  double by_speed() const { return slowest > 0 && fastest > 0 ? fastest / slowest : 1; }
  double by_roll() const { return by_speed() * (radius > 0 ? largest / smallest : 1); }
};

struct LogFacts {
  SteadyRun steady{};
  numerics::Spectrum by_time{};   // [N²/Hz] over Hz
  numerics::Spectrum by_order{};  // over orders of the roll
  numerics::Spectrum by_web{};    // over cycles a metre
  std::vector<Swing> swings{};
  double stretch{};  // [s] of one of them
  PlateauFacts plateaus{};
  std::optional<FrictionLine> friction_line{};
  std::vector<FrictionStretch> friction{};
};

/// What swings by itself.
struct SwingVerdict {
  PeakSource source{PeakSource::unknown};  // loop, stick_slip, or unknown
  double confidence{};                     // [1]
  double frequency{};                      // [rad/s] median
  double lowest{}, highest{};              // [rad/s] of nine tenths of the stretches
  double amplitude{};                      // [N] median of the stretches that swing
  double share{};                          // [1] of all stretches that swing
  double slow_share{}, fast_share{};       // [1] of those below and above the middle speed; alike with one speed
  bool speeds{};                           // the log has speeds apart enough to tell
  double to_mode{};                        // [1] frequency over the mode's, median; 0: not known
  double to_turnover{};                    // [1] over that at which a loop too tight swings; 0: no loop
  double answer{};    // [1] pressure over tension, over what the loop as set would make; 0: no loop
  double pressure{};  // [Pa] amplitude of the pressure with it
  double second{};    // [1] second harmonic
  bool empty() const { return frequency <= 0; }
};

SwingVerdict judge_swings(const LogStand& stand, const LogFacts& facts);

/// Lines of the three spectra, each once, with what makes it; highest first.
std::vector<LogPeak> peaks_of(const LogStand& stand, const LogFacts& facts, const SwingVerdict& swing);

/// What is likely wrong, most likely first, from all that the diagnosis holds so far; never empty.
std::vector<LikelyCause> causes_of(const LogStand& stand, const LogFacts& facts, const SwingVerdict& swing,
                                   const Diagnosis& diagnosis);

}  // namespace holdback::field
