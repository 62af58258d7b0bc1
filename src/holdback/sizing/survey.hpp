// One pass over the roll for one job on one candidate: where each case asks the most of the brake. What it finds does
// not depend on how many pairs are engaged, so that every number of pairs is then judged at no further cost
// (assess.hpp).
#pragma once

#include "holdback/sizing/cooling_curve.hpp"
#include "holdback/sizing/demand.hpp"
#include "holdback/sizing/site.hpp"

namespace holdback::sizing {

/// Inputs away from their nominal values, as uncertainty varies them. All shares are of the nominal value.
struct Variation {
  double friction{};   // [1] added share, in place of both ends of the band
  bool of_friction{};  // the friction above is meant; else each limit is judged at its own end of the band
  double pressure{};   // [1] added share of the pressure that is set
  double drag{1};      // [1]
  double tension{1};   // [1]
  double caliper{1};   // [1] at the same basis weight and diameters
  double ambient{};    // [K] added
  double cooling{1};   // [1]
};

/// An extreme over the roll and where it is.
struct Peak {
  double value{};
  double diameter{};  // [m]
};

/// An extreme of torque that hot pads must give. `value` is the torque over the share of friction that heat leaves at
/// that diameter: what cold pads would have to be good for.
struct HotPeak {
  double value{};          // [N·m]
  double diameter{};       // [m]
  double friction_left{};  // [1]
};

/// Where slip power comes closest to what one disc sheds at its rated rise.
struct HeatPeak {
  double power{};     // [W] of one disc
  double cooling{};   // [W] that it sheds there
  double diameter{};  // [m]
};

struct Survey {
  double drag{};          // [N·m] of shaft and released brakes
  double disc_inertia{};  // [kg·m²] of all discs
  double ambient{};       // [K]

  HotPeak run_hot{};
  HotPeak stop_hot{};
  HotPeak emergency_stop_hot{};
  HotPeak hold_hot{};

  Peak run_least{};  // [N·m] least steady torque; below zero when drag alone makes too much tension
  Peak torque{};     // [N·m] highest in any case
  LoadCase torque_case{};
  Peak released_tension{};    // [N] in a ramp with the brake released, highest
  Peak rotational_speed{};    // [rad/s] highest
  Peak slip_power{};          // [W] all brakes, highest
  HeatPeak heat_load{};       // steady run, one disc
  Peak temperature{};         // [K] steady, highest
  Peak stop_temperature{};    // [K] bulk after an emergency stop from the steady state, highest
  Peak stop_surface{};        // [K] of the disc's face in that stop, highest
  Peak hot_power{};           // [W] run_hot torque times roll speed, highest: pad pressure times sliding speed
  double wear_volume_rate{};  // [m³/s] of all pads, averaged over the web's length
};

/// Whether the diameters of the extremes are wanted too.
enum class Where { known, left_out };

/// The highest of each array of a pass, and the least steady torque.
struct PassExtremes {
  double run, stop, emergency_stop, hold, released, power, load_share, temperature, stop_temperature, stop_surface;
  double least_run;
};

/// What a pass over the roll finds, radius by radius. Does not depend on the friction grade.
struct alignas(64) Pass {
  OverRoll run, stop, emergency_stop, hold;              // [N·m]
  OverRoll released;                                     // [N] in a ramp with the brake released
  OverRoll power;                                        // [W] all brakes
  OverRoll load_share;                                   // [1] power over what is shed at the rated rise
  OverRoll temperature, stop_temperature, stop_surface;  // [K]
  double ambient;                                        // [K]
  double drag;                                           // [N·m]
  double disc_inertia;                                   // [kg·m²]
  double each_brake;                                     // [1] one over the number of brakes
  double cooling;                                        // [1] share of the nominal cooling
  PassExtremes extremes;
};

/// Goes over the roll once, for all grades of a brake and number.
void pass_over(const Demand& demand, const DiscOverRoll& disc, const Candidate& candidate, const Site& site,
               const Variation& variation, Pass& pass);

/// Finds the extremes of a pass for the candidate's grade.
Survey survey(const Demand& demand, const DiscOverRoll& disc, const Pass& pass, const Candidate& candidate,
              Where where);

/// The same at nominal values, with diameters.
Survey survey(const Demand& demand, const Candidate& candidate, const Site& site);

/// Steady disc temperature [K] of one disc of the candidate at a brake torque [N·m] and speed [rad/s].
double disc_temperature(const Candidate& candidate, const Site& site, double torque, double rotational_speed);

}  // namespace holdback::sizing
