// The pressure plan: what to set, and how often a hand must set it.
#pragma once

namespace holdback::physics {

/// Pressure [Pa] that keeps a tension [N]: p(R) = p_0 + (T R − M_d)/K, and p_0 where drag alone is enough. Infinite for
/// K = 0 where drag is not enough.
double pressure_for_tension(double tension, double radius, double drag, double torque_per_pressure, double threshold);

/// Tension [N] that a pressure [Pa] makes: T = (K (p − p_0)⁺ + M_d)/R. At constant pressure it rises as 1/R.
double tension_at_pressure(double pressure, double radius, double drag, double torque_per_pressure, double threshold);

/// Fewest settings that keep tension within ±ε from full to core: ⌈ln(R/r)/ln((1+ε)/(1−ε))⌉, at diameters in geometric
/// progression. Follows from tension_at_pressure(); at least 1. INT_MAX for ε ≤ 0, which no count can keep.
int hand_settings(double full_radius, double core_radius, double tolerance);

}  // namespace holdback::physics
