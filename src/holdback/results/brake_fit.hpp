// What `fit` answers: what a real brake does, from readings of pressure and torque or tension, and what that shows.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "holdback/model/problem.hpp"
#include "holdback/results/choice.hpp"

namespace holdback {

/// Which way the pressure had been moved when a reading was taken.
enum class PressureCourse { unknown, rising, falling };

/// What the readings may show.
enum class BrakeCause { as_expected, wrong_grade, dead_pair, low_friction, worn, gauge_offset, unexplained, readings };

inline constexpr BrakeCause last_brake_cause = BrakeCause::readings;

/// The word of a course: "rising".
inline std::string_view key_of(PressureCourse course) {
  constexpr std::array<std::string_view, 3> keys{"unknown", "rising", "falling"};
  return keys[static_cast<std::size_t>(course)];
}

/// The word of a cause: "dead_pair".
inline std::string_view key_of(BrakeCause cause) {
  constexpr std::array<std::string_view, 8> keys{"as_expected", "wrong_grade",  "dead_pair",   "low_friction",
                                                 "worn",        "gauge_offset", "unexplained", "readings"};
  return keys[static_cast<std::size_t>(cause)];
}

/// One reading beside what the fitted brake would give.
struct FittedReading {
  int row{};          // of the table
  double pressure{};  // [Pa] as read
  int pairs{};        // engaged on each brake
  PressureCourse course{};
  double torque{};    // [N·m] at the shaft, drag included
  double fitted{};    // [N·m]
  double residual{};  // [N·m] torque − fitted
  bool outlier{};     // too far off to be counted
};

/// A number from the readings with the ends of its 95 % interval, and what the file says. Kind as the field tells.
struct FittedNumber {
  double value{};
  double low{};
  double high{};
  double in_file{};
};

/// A cause, how likely it is among all, and why.
struct BrakeVerdict {
  BrakeCause cause{};
  std::optional<double> share{};  // [1] of all causes together; none for a remark on the readings
  std::string grade{};            // of wrong_grade: the one that fits better
  int pair{};                     // of dead_pair: which one, counted as they are engaged; 0: not known
  Note what{};
  Note evidence{};
  Note remedy{};
};

/// A reading to take next, and what it would do to the intervals.
struct NextReading {
  double pressure{};        // [Pa]
  int pairs{};              // on each brake
  double torque{};          // [N·m] to expect
  double slope_now{};       // [1] half the interval of the torque per pressure, over its value; 0: not known
  double slope_then{};      // [1] with this reading and those listed before it
  double threshold_now{};   // [Pa] half the interval of the threshold; 0: not known
  double threshold_then{};  // [Pa]
};

/// A key of the stand file that the fit changes.
struct FileChange {
  std::string owner{};  // "brake \"D300\""
  std::string key{};
  std::string before{};  // as written; empty when the key was not there
  std::string after{};
};

/// The constants of a real brake, fitted to readings.
struct BrakeFit {
  std::string title{};  // of the stand
  Fit fit{};            // brake, number, grade and pairs that were read
  std::vector<FittedReading> readings{};
  int outliers{};
  bool sufficient{};                         // the readings carry a fit
  FittedNumber torque_per_pressure{};        // [N·m/Pa] of one pair
  double median_torque_per_pressure{};       // [N·m/Pa] by repeated medians, a check; 0: not to be had
  std::optional<FittedNumber> friction{};    // [1] effective; none for a brake known by its data sheet
  FittedNumber friction_share{};             // [1] of the grade's nominal
  double band_low{};                         // [1] of the grade's nominal
  double band_high{};                        // [1]
  FittedNumber threshold{};                  // [Pa] as the gauge shows it
  FittedNumber drag{};                       // [N·m] of shaft and brakes together
  bool drag_read{};                          // from the readings; else the file's
  std::optional<FittedNumber> hysteresis{};  // [Pa] between rising and falling at the same torque
  double hysteresis_share{};                 // [1] of the torque in the middle of the readings
  double scatter{};                          // [N·m] standard deviation of the readings about the fit
  std::vector<BrakeVerdict> verdicts{};      // most likely first
  std::vector<Note> not_told{};              // what these readings cannot tell apart
  std::vector<NextReading> next{};
  std::vector<FileChange> changes{};        // of the stand file, when asked for and carried
  std::optional<Note> refusal{};            // why the file is left as it is, when a change was asked for
  std::optional<std::string> stand_file{};  // the changed text
  std::vector<Note> assumptions{};
  std::vector<Note> cautions{};
};

}  // namespace holdback
