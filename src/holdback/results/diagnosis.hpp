// What `diagnose` answers: how the tension of a log kept its window, what shakes it, and what is likely wrong.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "holdback/model/log.hpp"
#include "holdback/model/problem.hpp"
#include "holdback/results/choice.hpp"
#include "holdback/results/log_reading.hpp"

namespace holdback {

/// What the line does over a stretch of the log.
enum class LogPhase { standstill, ramp_up, steady, ramp_down, emergency_stop };
std::string_view key_of(LogPhase phase);  // "standstill", "ramp up", "steady run", "ramp down", "emergency stop"
inline constexpr LogPhase last_log_phase = LogPhase::emergency_stop;

std::string_view key_of(LogChannel channel);  // "time", "speed", …
inline constexpr LogChannel last_log_channel = LogChannel::pairs;

/// What one channel of the log held.
struct ChannelFacts {
  LogChannel channel{};
  double readings{};  // [1] cells with a number
  double missing{};   // [1] cells without one
  double dropouts{};  // [1] times that it fell to nothing, or to far outside, for a moment and came back
  double stuck{};     // [s] longest that it stood at one value while it should have moved; 0: never
  double lowest{};    // [SI] of the channel's kind, dropouts left out
  double highest{};
  double mean{};
};

/// A hole in the log's times.
struct LogGap {
  double begin{};  // [s]
  double end{};    // [s]
};

/// Tension over one kind of phase. Means and deviations are over time.
struct PhaseTension {
  LogPhase phase{};
  double time{};       // [s] in this phase with a reading of tension
  double share{};      // [1] of the log's time
  double inside{};     // [1] share of `time` inside the window
  double below{};      // [1] below it
  double above{};      // [1] above it
  double mean{};       // [N]
  double deviation{};  // [N] standard deviation
  double lowest{};     // [N]
  double highest{};    // [N]
};

/// One stop or ramp as it went.
struct LogChange {
  LogPhase phase{};  // ramp_up, ramp_down or emergency_stop
  double begin{};    // [s]
  double end{};      // [s]
  double from_speed{};
  double to_speed{};                 // [m/s]
  double rate{};                     // [m/s²] mean change of speed, negative when it slows
  std::optional<double> diameter{};  // [m] when known
  double lowest_tension{};           // [N]
  double highest_tension{};          // [N]
  double slack{};                    // [s] with next to no tension while web moved
  double settling{};                 // [s] from its end until the tension stays in the window; as far as was looked
  bool settles{};                    // it does before the next change
  State state{State::holds};         // tight: outside of the window for a while; fails: slack, or below a limit
  Note verdict{};                    // why, in words
};

/// Amplitudes of the tension in steady run, over frequency or over orders of the roll.
struct LogSpectrum {
  std::vector<double> place{};      // [rad/s] frequency, or [1] order; evenly spaced, at most about 2000
  std::vector<double> amplitude{};  // [N] of a sine at that place, mean over the segments; the highest of each group
  std::vector<double> floor{};      // [N] noise there: what chance alone makes
  double resolution{};              // [rad/s] or [1], width of one line before grouping
  double segments{};                // [1] stretches that were averaged
  bool empty() const { return place.empty(); }
};

/// What may make a peak.
enum class PeakSource { roll, idler, loop, stick_slip, regulator, hum, unknown };
std::string_view key_of(PeakSource source);  // "roll", "idler", "loop", "stick-slip", "regulator", "hum", "unknown"
inline constexpr PeakSource last_peak_source = PeakSource::unknown;

/// A line of a spectrum that stands out of the noise.
struct LogPeak {
  bool by_order{};       // found over orders; else over frequency
  double order{};        // [1] of the roll at the mean diameter of the steady run; 0 when the roll's turning is unknown
  double frequency{};    // [rad/s] at the mean speed and diameter of the steady run; 0 when unknown
  double amplitude{};    // [N]
  double share{};        // [1] of the setpoint
  double false_alarm{};  // [1] chance that noise alone makes one so high somewhere in this spectrum
  PeakSource source{PeakSource::unknown};
  double confidence{};  // [1] 0..1 in `source`
  int harmonic{1};      // of the source: 1 fundamental
  std::string idler{};  // name of the stand's idler meant; else empty
  double diameter{};    // [m] of the roller that fits; 0: none
  Note why{};           // what speaks for the source
};

/// Friction that the log shows, T D/2 less drag and inertia over what nominal friction gives at that pressure.
struct FrictionTrack {
  std::vector<double> time{};          // [s] of a stretch of steady run; at most about 400
  std::vector<double> ratio{};         // [1] effective over nominal friction with the pairs believed engaged
  std::vector<double> diameter{};      // [m]
  std::vector<double> temperature{};   // [K] of the disc; empty when not logged
  double level{};                      // [1] median of the ratios
  double level_uncertainty{};          // [1] standard uncertainty of it, from scatter alone
  double first{};                      // [1] at the beginning, by the fitted line
  double last{};                       // [1] at the end, by the fitted line
  double change{};                     // [1] last − first
  double change_uncertainty{};         // [1] standard uncertainty of it
  std::optional<double> per_kelvin{};  // [1/K] change of the ratio with the disc's temperature, when logged
  bool empty() const { return time.empty(); }
};

/// A new setting of the pressure by hand: it stood, was turned, and stood again.
struct HandTurn {
  double time{};                     // [s]
  double pressure_before{};          // [Pa]
  double pressure_after{};           // [Pa]
  std::optional<double> diameter{};  // [m]
  double tension_before{};           // [N]
  double tension_after{};            // [N]
};

/// What may be wrong.
enum class CauseKind {
  none,            // nothing wrong is seen
  runout,          // roll out of round
  off_centre,      // weight off the axis, or a core or chuck that sits off it
  idler,           // a roller out of round or with a bad bearing
  hunting,         // the loop is too tight
  loose_loop,      // the loop is too loose: errors stay
  stick_slip,      // friction that falls with speed
  dead_pair,       // a pad pair that does not engage
  wrong_grade,     // level of friction of another grade, or unlike any
  glazing,         // friction that falls as time goes on: glaze, oil, dust
  fade,            // friction that falls with heat
  regulator,       // steps, hysteresis or a regulator that sticks
  pressure_gauge,  // offset of the pressure reading
  sensor,          // dropouts or a stuck sensor
  hand_card,       // pressure that is not turned down as the roll shrinks
  hum              // mains hum in a signal
};
std::string_view key_of(CauseKind cause);  // "nothing wrong", "runout", …
inline constexpr CauseKind last_cause_kind = CauseKind::hum;

/// A likely cause.
struct LikelyCause {
  CauseKind kind{};
  double confidence{};           // [1] 0..1
  Note what{};                   // a sentence: what it is and how much it does
  std::vector<Note> evidence{};  // what in the log speaks for it, and what against
  std::vector<Note> to_try{};    // what to look at or change first
  Note to_tell_apart{};          // reading that would decide between it and one that looks the same here; may be empty
};

/// The log thinned out for a figure: every list has one entry for each stretch of equal length, at most about 1200.
/// A channel that is not logged has an empty list; a stretch without a reading is not-a-number.
struct LogTrace {
  std::vector<double> time{};             // [s] middle of the stretch
  std::vector<double> speed{};            // [m/s] mean
  std::vector<double> tension{};          // [N] mean
  std::vector<double> lowest_tension{};   // [N]
  std::vector<double> highest_tension{};  // [N]
  std::vector<double> pressure{};         // [Pa] mean
  std::vector<double> diameter{};         // [m] logged, or estimated
};

/// Where the diameter of the roll comes from.
enum class DiameterSource { unknown, logged, turns, web_run };
std::string_view key_of(DiameterSource source);  // "unknown", "logged", "from speed and turns", "from the web run"
inline constexpr DiameterSource last_diameter_source = DiameterSource::web_run;

/// A log, read and judged.
struct Diagnosis {
  std::string title{};  // of the stand
  std::string log{};    // name of the log
  std::string job{};    // that the log was held against
  TensionTarget tension{};
  std::string control{};      // of the stand: "hand", "diameter", "load cell", "dancer"
  int pairs{};                // believed engaged on each brake; the most often logged, when logged
  State state{State::holds};  // of the tension in steady run, the stops and the ramps
  Note verdict{};             // the first cause in a sentence

  LogReading reading{};                  // what was read and what was left out
  double rows{};                         // [1] judged
  double begin{};                        // [s]
  double end{};                          // [s]
  double interval{};                     // [s] usual time between two rows
  double longest_gap{};                  // [s] between two rows that follow on each other
  double gaps{};                         // [1] how many
  std::vector<LogGap> longest_gaps{};    // at most 20, in the order of time
  std::vector<ChannelFacts> channels{};  // those that the log has

  DiameterSource diameter_source{DiameterSource::unknown};
  double first_diameter{};   // [m]; 0: unknown
  double last_diameter{};    // [m]; 0: unknown
  double web_run{};          // [m] by the speed logged
  double steady_speed{};     // [m/s] mean in steady run
  double steady_diameter{};  // [m] mean in steady run; 0: unknown

  std::vector<PhaseTension> phases{};  // those that occur, in the order of LogPhase
  std::vector<LogChange> changes{};    // stops and ramps, in the order of time; at most 500
  double changes_found{};              // [1] all of them
  LogSpectrum by_frequency{};
  LogSpectrum by_order{};
  std::vector<LogPeak> peaks{};  // highest first, at most 30
  double loop_frequency{};       // [rad/s] predicted crossover of the loop at the mean diameter; 0: no loop
  double mode_frequency{};       // [rad/s] predicted swing of roll against web there; 0: not known
  FrictionTrack friction{};
  std::vector<HandTurn> hand_turns{};  // at most 200
  double hand_turns_found{};           // [1] all of them
  std::vector<LikelyCause> causes{};   // most likely first; never empty
  LogTrace trace{};
  std::vector<Note> assumptions{};
  std::vector<Note> cautions{};
};

}  // namespace holdback
