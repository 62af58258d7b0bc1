// The torque balance of a braked unwind. The web leaves tangentially and carries its own momentum, so that
// J dω/dt = T R − M_b − M_d holds exactly: the terms of dJ/dt and of the outflow cancel.
// Symbols: T tension, R radius, M_b brake torque, M_d drag torque, J inertia, ω roll speed.
#pragma once

namespace holdback::physics {

/// Brake torque [N·m] that keeps `tension` [N] at `radius` [m]: M_b = T R − M_d − J dω/dt.
/// Negative where inertia and drag alone make more than the tension asked for: a brake cannot push.
inline double brake_torque(double tension, double radius, double drag, double inertia, double roll_acceleration) {
  return tension * radius - drag - inertia * roll_acceleration;
}

/// Tension [N] that inertia and drag make with the brake released: T = (J dω/dt + M_d)/R. At constant speed it is the
/// tension of threading by hand.
inline double released_tension(double inertia, double roll_acceleration, double drag, double radius) {
  return (inertia * roll_acceleration + drag) / radius;
}

/// Lowest tension [N] that can be held: T = (M_floor + M_d)/R, M_floor the brake torque at the lowest controllable
/// pressure.
double lowest_tension(double floor_torque, double drag, double radius);

/// Change of tension [N] by a change of brake torque [N·m]: δT = δM/R.
double tension_step(double torque_step, double radius);

/// Deceleration of the rim [m/s²] when the web is slack: a_r = R (M_max + M_d)/J. Without inertia infinite, or zero
/// without torque.
double slack_deceleration(double torque, double drag, double inertia, double radius);

/// Web thrown [m] when the roll stops at `roll_deceleration` and the line at a greater `line_deceleration` [m/s²]:
/// s = v²/2 · (1/a_r − 1/a_s); zero when the roll stops at least as fast, infinite when it never stops (a_r ≤ 0).
double overrun_slack(double speed, double roll_deceleration, double line_deceleration);

/// Shortest time [s] from `speed` [m/s] to standstill with `tension_kept` [N] in the web:
/// t = v J/(R (M_max + M_d − T R)), the thinning term left out (it eases the stop). Infinite when M_max + M_d ≤ T R.
double shortest_stop(double speed, double tension_kept, double radius, double torque, double drag, double inertia);

/// Angle [rad] a free roll turns after a web break: θ = J ω²/(2 M), `torque` M = M_b + M_d held constant. Infinite
/// without any torque, zero at rest.
double coast_angle(double inertia, double rotational_speed, double torque);

/// Time [s] of that coasting: t = J ω/M.
double coast_time(double inertia, double rotational_speed, double torque);

}  // namespace holdback::physics
