#include "holdback/sizing/shaft.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/physics/torque.hpp"

namespace holdback::sizing {

namespace {

constexpr std::size_t last = radius_count - 1;
constexpr std::size_t load_steps = 5;  // places over the roll at which bearings are loaded
constexpr double no_end = 1e12;        // [s] shown for bearings that nothing loads
constexpr double no_deflection = 1e3;  // [m] shown for a shaft that bears nothing
constexpr double most_shown = 1e6;     // shown for what has no bound

double finite(double value, double most) { return std::isfinite(value) ? std::min(value, most) : most; }

double roll_mass(const Demand& demand, std::size_t i) {
  const double core = demand.radius[0] * demand.radius[0];
  const double here = demand.radius[i] * demand.radius[i] - core;
  return demand.core_mass + demand.web_mass * here / (demand.radius[last] * demand.radius[last] - core);
}

/// What the grip passes: the kept tension and all that turns outside of it.
void add_grip(ShaftFacts& facts, const Job& job, const Demand& demand, const Site& site) {
  const double kept = site.limits.emergency_stop_tension * demand.tension.setpoint;
  const double core = job.roll.core_mass * job.roll.core_radius() * job.roll.core_radius();
  for (std::size_t i = 0; i <= last; ++i) {
    const double radius = demand.radius[i];
    const double rate = demand.speed / demand.emergency_stop_time / radius;
    const double stopping = physics::grip_torque(kept, radius, demand.web_inertia[i] + core, rate);
    const double torque = std::max(stopping, demand.tension.setpoint * radius);
    if (torque <= facts.grip_torque) continue;
    facts.grip_torque = torque;
    facts.grip_diameter = 2 * radius;
  }
}

void add_bearings(ShaftFacts& facts, const Job& job, const Demand& demand, const Shaft& shaft) {
  if (!shaft.bearing_rating) return;
  const BearingCourse course = bearing_course(job, demand, shaft);
  const double revolutions = physics::bearing_life(*shaft.bearing_rating, course.load, shaft.bearing_kind);
  facts.bearing_life = finite(physics::bearing_running_time(revolutions, course.speed), no_end);
}

}  // namespace

BearingCourse bearing_course(const Job& job, const Demand& demand, const Shaft& shaft) {
  std::vector<physics::BearingDuty> first;
  std::vector<physics::BearingDuty> second;
  for (std::size_t k = 0; k < load_steps; ++k) {
    const std::size_t i = k * last / (load_steps - 1);
    const auto state = physics::shaft_state(shaft, roll_mass(demand, i), job.web.width, demand.tension.setpoint, 0);
    const double time = demand.radius[i] * (k == 0 || k == load_steps - 1 ? 0.5 : 1);  // the web's length there
    first.push_back({state.first_bearing_load, demand.rotational_speed[i], time});
    second.push_back({state.second_bearing_load, demand.rotational_speed[i], time});
  }
  const double first_load = physics::equivalent_bearing_load(first, shaft.bearing_kind);
  const double second_load = physics::equivalent_bearing_load(second, shaft.bearing_kind);
  double turned = 0;
  double time = 0;
  for (const physics::BearingDuty& duty : first) {
    turned += duty.speed * duty.duration;
    time += duty.duration;
  }
  return {first_load < second_load ? second : first, std::max(first_load, second_load), turned / time};
}

ShaftFacts shaft_facts(const Job& job, const Demand& demand, const Site& site) {
  const Shaft& shaft = *site.shaft;
  ShaftFacts facts;
  add_grip(facts, job, demand, site);
  const double full = roll_mass(demand, last);
  const auto state = physics::shaft_state(shaft, full, job.web.width, demand.tension.setpoint, facts.grip_torque);
  facts.deflection = finite(state.deflection, no_deflection);
  facts.slope_first = finite(state.first_slope, 1);
  facts.slope_second = finite(state.second_slope, 1);
  facts.bending_stress = finite(state.bending_stress, 1e15);
  facts.torsion_stress = finite(state.torsion_stress, 1e15);
  facts.safety = finite(state.safety, most_shown);
  facts.bearing_load = finite(std::max(state.first_bearing_load, state.second_bearing_load), 1e15);
  facts.whirl_speed = finite(physics::first_whirl(shaft, roll_mass(demand, 0), job.web.width), most_shown);
  facts.whirl_speed_full = finite(physics::first_whirl(shaft, full, job.web.width), most_shown);
  facts.top_speed = demand.rotational_speed.front();
  add_bearings(facts, job, demand, shaft);
  return facts;
}

}  // namespace holdback::sizing
