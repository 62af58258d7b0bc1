// How the brake pressure is set while the web runs, and what the control measures with.
#pragma once

#include <optional>
#include <string>

#include "holdback/model/problem.hpp"

namespace holdback {

/// What sets the pressure: a hand that follows the card, the measured diameter alone, or a loop that measures the
/// tension with a load cell or by the place of a dancer.
enum class ControlKind { hand, diameter, load_cell, dancer };

/// One gain for the whole roll, or one that falls with the diameter.
enum class GainSchedule { fixed, diameter };

/// Gains are pure numbers: the correction of brake torque over the torque of the setpoint at the full roll, for an
/// error of the whole setpoint (load cell) or of half the travel (dancer). Scheduled, the gain follows the
/// measured diameter as the stand does: for a load cell with the radius, for a dancer with inertia over radius.
struct Control {
  ControlKind kind{ControlKind::hand};
  double sample_time{};                   // [s] > 0
  std::optional<double> gain{};           // [1] > 0; none: Holdback tunes the loop
  std::optional<double> integral_time{};  // [s] > 0; none: Holdback tunes the loop
  double derivative_time{};               // [s] ≥ 0
  GainSchedule schedule{GainSchedule::diameter};
  double authority{};             // [1] > 0, most that a loop corrects, over the torque of the setpoint
  double inertia_compensation{};  // [1] 0..1, share of the roll's inertia torque that is added in ramps and stops
  double output_step{};           // [Pa] ≥ 0, smallest step of pressure that a controller sets
  bool operator==(const Control&) const = default;
};

/// Faults that only two fields together show. Whether the stand has the sensor is in problems_of(const Stand&).
Problems problems_of(const Control& control);

/// A roller that weighs the tension.
struct LoadCell {
  std::string idler{};  // it sits on this idler; empty: on the last before the nip
  double lag{};         // [s] ≥ 0, filter
  double resolution{};  // [N] ≥ 0
  double noise{};       // [N] ≥ 0, standard deviation of a reading
  bool operator==(const LoadCell&) const = default;
};

/// A roller that hangs in a loop of web, pushed by a cylinder whose air keeps the tension.
struct Dancer {
  std::string idler{};  // it hangs behind this idler; empty: in the middle of the path
  double mass{};        // [kg] > 0, moving: roller, and arm and piston brought to the roller's path
  double travel{};      // [m] > 0, from stop to stop
  double damping{};     // [N·s/m] ≥ 0
  double strands{};     // [1] > 0, web that it takes up for each metre that it moves; 2 for half a turn of wrap
  double taper{};       // [1] ≥ 0, rise of the loading force from the middle to a stop, over that in the middle
  bool operator==(const Dancer&) const = default;
};

/// How the diameter is measured: by sound from the surface, or from web speed over counted turns.
enum class DiameterMethod { ultrasonic, turns };

struct DiameterSensor {
  DiameterMethod method{DiameterMethod::ultrasonic};
  double lag{};         // [s] ≥ 0, filter
  double resolution{};  // [m] ≥ 0
  double noise{};       // [m] ≥ 0, standard deviation of a reading
  bool operator==(const DiameterSensor&) const = default;
};

}  // namespace holdback
