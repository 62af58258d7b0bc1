// The stand in motion as numbers: a roll that gets smaller, a brake that sticks and slips, the air line, the web's path
// with its idlers and its dancer, and the line that pulls. Built once for a job on a fit; the equations stand in
// motion.hpp.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace holdback::dynamics {

/// The roll with what turns with it.
struct RollPlant {
  double core_radius{};         // [m] > 0
  double caliper{};             // [m] ≥ 0; 0 leaves the roll at its size
  double fixed_inertia{};       // [kg·m²] shaft, chucks, core and discs
  double inertia_per_fourth{};  // [kg/m²] inertia of the web is this times (R⁴ − r⁴): π b w/(2 t)
  double runout{};              // [m] ≥ 0, amplitude e of the surface, R + e cos nθ
  int lobes{1};                 // n ≥ 1
  double gravity{};             // [m/s²] ≥ 0, that pulls on a roll that is off centre; needs one lobe
};

/// The brakes on the shaft with the pairs engaged.
struct BrakePlant {
  double torque_per_pressure{};  // [N·m/Pa] sliding, at standstill's speed, cold
  double threshold{};            // [Pa]
  double static_ratio{1};        // [1] > 0, static over sliding friction
  double friction_slope{};       // [s/rad] share of friction gained with each rad/s of the disc; negative: stick-slip
  double drag{};                 // [N·m] ≥ 0, bearings, seals and released pads
};

/// The air between regulator and brake.
struct AirPlant {
  double lag{};         // [s] ≥ 0, time constant
  double dead_time{};   // [s] ≥ 0, kept by whoever sets the pressure (rig.hpp)
  double hysteresis{};  // [Pa] ≥ 0, play of the regulator, kept there too
};

/// A roller that the web turns.
struct IdlerPlant {
  double radius{};   // [m] > 0
  double inertia{};  // [kg·m²] > 0
  double drag{};     // [N·m] ≥ 0
};

/// A roller in a loop of web, pushed by a force.
struct DancerPlant {
  std::size_t span{};  // that it hangs in
  double mass{};       // [kg] > 0
  double reach{};      // [m] > 0, from its middle to a stop
  double damping{};    // [N·s/m] ≥ 0
  double strands{2};   // [1] > 0
  double taper{};      // [1] rise of the force from the middle to a stop
};

/// The web's path from the roll to the first driven nip: spans with idlers between them that turn as they must, and
/// idlers without states of their own that follow the line (what they take is counted behind the roll).
struct PathPlant {
  double stiffness{};                // [N] EA over the whole width, > 0
  double retardation{};              // [s] τ of the web's inner loss: T = EA (ε + τ dε/dt)
  double wound_in{};                 // [N] tension that the web still has inside the roll
  std::vector<double> spans{};       // [m] > 0 each; one more than idlers
  std::vector<IdlerPlant> idlers{};  // with states
  double following_drag{};           // [N] sum of drag torque over radius of the idlers that follow
  double following_mass{};           // [kg] sum of inertia over the square of the radius
  double cell_drag{};                // [N] that part of following_drag which lies before the load cell
  double cell_mass{};                // [kg] that part of following_mass
  std::size_t cell_span{};           // the load cell weighs this span and the one before it
  std::optional<DancerPlant> dancer{};
};

struct Plant {
  RollPlant roll{};
  BrakePlant brake{};
  AirPlant air{};
  PathPlant path{};
};

/// Path of one span without idlers.
PathPlant single_span(double length, double stiffness, double wound_in = 0);

/// The same stand with every idler following the line and one span as long as all of them: the model without the swings
/// of short spans between light idlers.
Plant lumped(const Plant& plant);

/// Fastest swing [rad/s] that the idlers can make between their spans: bound of all modes but the roll's own.
double fastest_idler_mode(const PathPlant& path);

/// Inertia [kg·m²] of all that turns at a radius [m].
double inertia_at(const RollPlant& roll, double radius);

/// Web on the roll [kg] at a radius [m].
double web_mass_at(const RollPlant& roll, double radius);

/// Torque [N·m] that the brake holds at standstill, and that it gives while the disc slips at a speed [rad/s]; `share`
/// [1] of the plant's torque per pressure is there.
double static_torque(const BrakePlant& brake, double pressure, double share);
double sliding_torque(const BrakePlant& brake, double pressure, double share, double rotational_speed);

}  // namespace holdback::dynamics
