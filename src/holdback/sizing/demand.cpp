#include "holdback/sizing/demand.hpp"

#include <cmath>

#include "holdback/physics/roll.hpp"
#include "holdback/physics/torque.hpp"
#include "holdback/sizing/shaft.hpp"
#include "holdback/sizing/target.hpp"
#include "holdback/sizing/window.hpp"

namespace holdback::sizing {

namespace {

// A line drive changes speed at one rate, so a time from top speed shrinks with the job's speed; a job's own time is
// its own.
double time_of(const std::optional<double>& own, double from_top, const Job& job, const Line& line) {
  return own.value_or(from_top * job.speed / line.top_speed);
}

void lay_out(Demand& demand, const Job& job, const Site& site) {
  const double core = job.roll.core_radius();
  const double full = job.roll.full_radius();
  const double base = site.shaft_inertia + physics::core_inertia(job.roll.core_mass, core);
  const double ramp = job.speed / demand.ramp_time;
  double radius_sum = 0;
  constexpr std::size_t last = radius_count - 1;
  for (std::size_t i = 0; i <= last; ++i) {
    const double radius = core + (full - core) * static_cast<double>(i) / last;
    demand.radius[i] = radius;
    demand.inverse_radius[i] = 1 / radius;
    demand.rotational_speed[i] = job.speed / radius;
    demand.web_inertia[i] = physics::web_inertia(job.web.basis_weight, job.web.width, job.web.caliper, core, radius);
    demand.inertia[i] = base + demand.web_inertia[i];
    demand.run_acceleration[i] = physics::roll_acceleration(0, job.web.caliper, job.speed, radius);
    demand.ramp_acceleration[i] = physics::roll_acceleration(ramp, job.web.caliper, job.speed, radius);
    demand.share_of_length[i] = radius * (i == 0 || i == last ? 0.5 : 1);  // dL ~ R dR, trapezoids
    radius_sum += demand.share_of_length[i];
  }
  for (double& share : demand.share_of_length) share /= radius_sum;
}

}  // namespace

Demand demand_of(const Job& job, const Site& site) {
  Demand demand;
  demand.job = job.name;
  demand.speed = job.speed;
  demand.tension = tension_target(job, site.limits);
  demand.tolerance = tolerance_of(job, site.limits);
  demand.stop_time = time_of(job.stop_time, site.line.stop_time, job, site.line);
  demand.emergency_stop_time = time_of(job.emergency_stop_time, site.line.emergency_stop_time, job, site.line);
  demand.ramp_time = time_of(job.ramp_time, site.line.ramp_time, job, site.line);
  demand.web_length = physics::roll_length(job.roll.core_radius(), job.roll.full_radius(), job.web.caliper);
  demand.web_mass = physics::web_mass(job.web.basis_weight, job.web.width, demand.web_length);
  demand.core_mass = job.roll.core_mass;
  lay_out(demand, job, site);
  demand.bounds = window_bounds(job, demand, site);
  demand.cinching = cinching(job, demand, site);
  if (site.shaft) demand.shaft = shaft_facts(job, demand, site);
  return demand;
}

CaseTorques case_torques(const Demand& demand, const Limits& limits, std::size_t i, double inertia, double drag) {
  const double radius = demand.radius[i];
  const double tension = demand.tension.setpoint;
  const auto stopping = [&](double share, double time) {
    const double acceleration = physics::roll_acceleration(-demand.speed / time, 0, 0, radius);
    return physics::brake_torque(share * tension, radius, drag, inertia, acceleration);
  };
  CaseTorques torques;
  torques.run = physics::brake_torque(tension, radius, drag, inertia, demand.run_acceleration[i]);
  torques.ramp = physics::brake_torque(tension, radius, drag, inertia, demand.ramp_acceleration[i]);
  torques.stop = stopping(limits.stop_tension, demand.stop_time);
  torques.emergency_stop = stopping(limits.emergency_stop_tension, demand.emergency_stop_time);
  // At standstill drag may pull either way, so it is not counted on.
  torques.hold = limits.hold_tension * tension * radius;
  return torques;
}

}  // namespace holdback::sizing
