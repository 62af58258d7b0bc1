// A guard as a resistance to heat: the disc warms the air in the box, which leaves through the openings and gives heat
// to the walls. This replaces one factor for every speed and disc by what the box's openings let through.
//
// Left out: the swirl of the air in the box, which takes some of the disc's own convection (the hopeful side, small
// beside the resistance of a closed box), and radiation from the disc, which the caller counts apart.
// Values below zero count as zero, and nothing above 1e12 is believed, except an opening without end: no guard.
#pragma once

#include "holdback/model/stand.hpp"
#include "holdback/physics/convection.hpp"

namespace holdback::physics {

/// Box around a disc.
struct GuardBox {
  double wall_area{};     // [m²] outside of the walls
  double opening_area{};  // [m²] clear area of all openings; infinite: no guard
};

/// From the box's walls to the room [W/(m²·K)]: natural convection and radiation of a warm sheet. Common practice. The
/// stirred air inside is taken as cooling to the walls without resistance.
inline constexpr double default_wall_coefficient = 8;

/// Usual box around a disc of a diameter [m]: square, 1.15 diameters wide and high, 0.4 deep. Share of its walls that
/// is open: mesh with open base 0.65, partly closed 0.03, closed 0.003 (leakage at joints and shaft); without guard an
/// opening without end. Common practice, no source: a stand with its own guard should state its areas.
GuardBox default_guard_box(Guard kind, double disc_diameter);

/// Air through the openings [m³/s]: V = C_d A/2 · √(Δp/ρ), half of the area in, half out, one after the other, C_d 0.6
/// of a sharp edge. Δp = 0.1 · ½ρ(ωR)² + ρ g H ΔΘ/Θ. The disc makes the air of the box swirl: between close walls at
/// 0.43 of its speed [daily1960], in a wider box at about a third, and the swirl's centrifugal pressure is that share
/// squared, about 0.1. Buoyancy: stack of one disc diameter [m], rise of the box's air over ambient [K]; `air` is
/// ambient. Zero without openings, infinite without guard. Source: [incropera] for the ideal gas; shares common
/// practice.
double guard_flow(const GuardBox& box, double disc_diameter, double rotational_speed, double air_rise, const Air& air);

/// Conductance from disc to ambient behind the guard [W/K]: disc to box air in series with ρ c V + U A_wall. Never
/// above `disc_convection` [W/K]; equal to it without guard, whatever the flow. `flow` in m³/s, `wall_coefficient` in
/// W/(m²·K).
double guarded_conductance(double disc_convection, const GuardBox& box, double flow, const Air& air,
                           double wall_coefficient);

/// What the disc gives to the room through the air of its box.
struct GuardedDisc {
  double conductance{};  // [W/K] disc to ambient
  double air_rise{};     // [K] of the box's air over ambient
};

/// The balance in which the air that rises in the box is as warm as the disc makes it: conductance and air rise for a
/// disc with a rise [K] over ambient `air`. Rises with speed [rad/s] and opening. Without rise of the disc only its
/// pumping moves the air.
GuardedDisc behind_guard(double disc_convection, const GuardBox& box, double disc_diameter, double rotational_speed,
                         double disc_rise, const Air& air, double wall_coefficient = default_wall_coefficient);

}  // namespace holdback::physics
