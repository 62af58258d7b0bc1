// The stand in motion as numbers: a roll that gets smaller, a brake that sticks and slips, the air line, one span of
// web with idlers, and the line that pulls. Built once for a job on a fit; the equations stand in motion.hpp.
#pragma once

namespace holdback::dynamics {

/// The roll with what turns with it.
struct RollPlant {
  double core_radius{};         // [m] > 0
  double caliper{};             // [m] ≥ 0; 0 leaves the roll at its size
  double fixed_inertia{};       // [kg·m²] shaft, chucks, core and discs
  double inertia_per_fourth{};  // [kg/m²] inertia of the web is this times (R⁴ − r⁴): π b w/(2 t)
  double runout{};              // [m] ≥ 0, amplitude of the surface, once a turn
};

/// The brakes on the shaft with the pairs engaged.
struct BrakePlant {
  double torque_per_pressure{};  // [N·m/Pa] sliding, at standstill's speed
  double threshold{};            // [Pa]
  double static_ratio{1};        // [1] > 0, static over sliding friction
  double friction_slope{};       // [s/rad] share of friction gained with each rad/s of the disc; negative: stick-slip
  double drag{};                 // [N·m] ≥ 0, bearings, seals and released pads
};

/// The air between regulator and brake.
struct AirPlant {
  double lag{};        // [s] ≥ 0, time constant
  double dead_time{};  // [s] ≥ 0, kept by whoever sets the pressure
};

/// One span from the roll to the first driven nip. Idlers follow the web; what they take of its pull is counted behind
/// the roll, between it and the nip.
struct SpanPlant {
  double length{};      // [m] > 0
  double stiffness{};   // [N] EA over the whole width
  double wound_in{};    // [N] tension that the web still has inside the roll
  double idler_drag{};  // [N] sum of drag torque over radius
  double idler_mass{};  // [kg] sum of inertia over the square of the radius
};

struct Plant {
  RollPlant roll{};
  BrakePlant brake{};
  AirPlant air{};
  SpanPlant span{};
};

/// Inertia [kg·m²] of all that turns at a radius [m].
double inertia_at(const RollPlant& roll, double radius);

/// Torque [N·m] that the brake holds at standstill, and that it gives while the disc slips at a speed [rad/s].
double static_torque(const BrakePlant& brake, double pressure);
double sliding_torque(const BrakePlant& brake, double pressure, double rotational_speed);

}  // namespace holdback::dynamics
