#include "holdback/physics/torque.hpp"

#include <algorithm>
#include <limits>

namespace holdback::physics {

namespace {
constexpr double infinity = std::numeric_limits<double>::infinity();
}

double lowest_tension(double floor_torque, double drag, double radius) { return (floor_torque + drag) / radius; }

double tension_step(double torque_step, double radius) { return torque_step / radius; }

// a_r = R (M_max + M_d)/J
double slack_deceleration(double torque, double drag, double inertia, double radius) {
  const double braking = torque + drag;
  if (inertia <= 0) return braking > 0 ? infinity : 0;
  return radius * braking / inertia;
}

// s = v²/2 · (1/a_r − 1/a_s), not below zero
double overrun_slack(double speed, double roll_deceleration, double line_deceleration) {
  if (speed <= 0 || roll_deceleration >= line_deceleration) return 0;
  if (roll_deceleration <= 0) return infinity;
  return std::max(0.0, speed * speed / 2 * (1 / roll_deceleration - 1 / line_deceleration));
}

// t = v J/(R (M_max + M_d − T R))
double shortest_stop(double speed, double tension_kept, double radius, double torque, double drag, double inertia) {
  const double spare = torque + drag - tension_kept * radius;
  if (spare <= 0) return infinity;
  return speed * inertia / (radius * spare);
}

// θ = J ω²/(2 M)
double coast_angle(double inertia, double rotational_speed, double torque) {
  if (rotational_speed == 0) return 0;
  if (torque <= 0) return infinity;
  return inertia * rotational_speed * rotational_speed / (2 * torque);
}

// t = J ω/M
double coast_time(double inertia, double rotational_speed, double torque) {
  if (rotational_speed == 0) return 0;
  if (torque <= 0) return infinity;
  return inertia * rotational_speed / torque;
}

}  // namespace holdback::physics
