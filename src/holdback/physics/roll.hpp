// The roll of web: how much is on it, how it turns, how it gets smaller.
// Symbols: R radius, r core radius, t caliper, b basis weight, w width, v web speed, a = dv/dt.
#pragma once

namespace holdback::physics {

/// Web on a roll [m]: L = π(R² − r²)/t.
/// Valid for t ≪ r, no air between the layers (wound caliper = caliper). Source: [downey2023], ch. 24; an exact spiral
/// is longer by terms of t² only, 2e-9 of a usual roll (published check R-2). Negative for R < r.
double roll_length(double core_radius, double radius, double caliper);

/// Radius [m] of the roll when `length` of web [m] is still on it: R = √(r² + L t/π).
double roll_radius(double core_radius, double length, double caliper);

/// Mass of web [kg]: m = b w L.
double web_mass(double basis_weight, double width, double length);

/// Polar inertia of the web on the roll [kg·m²]: J = ½ m (R² + r²) with m = b w L(R). Hollow cylinder [meriam].
double web_inertia(double basis_weight, double width, double caliper, double core_radius, double radius);

/// Polar inertia of a thin core [kg·m²]: J = m r². Valid for a wall thin against r; else an upper bound, which is the
/// safe side for stops (more torque, more slack) and ramps (more tension). Hollow cylinder [meriam] with r_i → r.
double core_inertia(double core_mass, double core_radius);

/// Growth of the radius [m/s], negative on an unwind: dR/dt = −t v/(2πR). Source: [downey2023], ch. 24.
double radius_rate(double caliper, double speed, double radius);

/// Angular acceleration of the roll [rad/s²]: dω/dt = (a + t v²/(2πR²))/R, from ω = v/R and radius_rate().
/// The second term is the thinning roll that must speed up at constant web speed.
double roll_acceleration(double acceleration, double caliper, double speed, double radius);

}  // namespace holdback::physics
