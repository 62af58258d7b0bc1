#include "holdback/sizing/survey.hpp"

#include <algorithm>

#include "holdback/physics/brake.hpp"
#include "holdback/physics/cooling.hpp"
#include "holdback/physics/heat.hpp"
#include "holdback/physics/torque.hpp"
#include "holdback/physics/wear.hpp"

namespace holdback::sizing {

namespace {

void raise(Peak& peak, double value, double diameter, bool first) {
  if (first || value > peak.value) peak = {value, diameter};
}

void raise_hot(HotPeak& peak, double torque, double friction_left, double diameter, bool first) {
  if (first || torque / friction_left > peak.value) peak = {torque / friction_left, diameter, friction_left};
}

void raise_heat(HeatPeak& peak, const HeatPeak& here, bool first) {
  if (first || here.power * peak.cooling > peak.power * here.cooling) peak = here;
}

void lower(Peak& peak, double value, double diameter, bool first) {
  if (first || value < peak.value) peak = {value, diameter};
}

void survey_torques(Survey& s, const CaseTorques& torques, double friction_left, double diameter, bool first) {
  raise_hot(s.run_hot, torques.run, friction_left, diameter, first);
  raise_hot(s.stop_hot, torques.stop, friction_left, diameter, first);
  raise_hot(s.emergency_stop_hot, torques.emergency_stop, friction_left, diameter, first);
  raise_hot(s.hold_hot, torques.hold, friction_left, diameter, first);
  lower(s.run_least, torques.run, diameter, first);
  const std::pair<double, LoadCase> cases[] = {{torques.run, LoadCase::run},
                                               {torques.stop, LoadCase::stop},
                                               {torques.emergency_stop, LoadCase::emergency_stop},
                                               {torques.hold, LoadCase::hold}};
  for (const auto& [torque, load_case] : cases)
    if ((first && load_case == LoadCase::run) || torque > s.torque.value) {
      s.torque = {torque, diameter};
      s.torque_case = load_case;
    }
}

}  // namespace

double disc_temperature(const Candidate& candidate, const Site& site, double torque, double rotational_speed) {
  const double power = physics::slip_power(std::max(torque, 0.0), rotational_speed) / candidate.brakes;
  const double conductance =
      physics::cooling_conductance(*candidate.brake, rotational_speed, site.guard_factor, site.altitude_factor);
  return physics::steady_temperature(site.ambient, power, conductance);
}

Survey survey(const Demand& demand, const Candidate& candidate, const Site& site) {
  const Brake& brake = *candidate.brake;
  Survey s;
  s.drag = site.drag + candidate.brakes * brake.drag;
  s.disc_inertia = candidate.brakes * brake.disc_inertia;
  const double heat_capacity = candidate.brakes * brake.disc_mass;
  for (std::size_t i = 0; i < demand.radius.size(); ++i) {
    const bool first = i == 0;
    const double radius = demand.radius[i];
    const double diameter = 2 * radius;
    const double omega = demand.rotational_speed[i];
    const double inertia = demand.inertia[i] + s.disc_inertia;
    const CaseTorques torques = case_torques(demand, site.limits, i, inertia, s.drag);

    const double power = physics::slip_power(std::max(torques.run, 0.0), omega);
    const double conductance = physics::cooling_conductance(brake, omega, site.guard_factor, site.altitude_factor);
    const double temperature = physics::steady_temperature(site.ambient, power / candidate.brakes, conductance);
    const double friction_left = physics::fade_factor(*candidate.grade, temperature);
    survey_torques(s, torques, friction_left, diameter, first);

    raise(s.released_tension, physics::released_tension(inertia, demand.ramp_acceleration[i], s.drag, radius), diameter,
          first);
    raise(s.rotational_speed, omega, diameter, first);
    raise(s.slip_power, power, diameter, first);
    raise_heat(s.heat_load, {power / candidate.brakes, conductance * brake.cooling_rise, diameter}, first);
    raise(s.temperature, temperature, diameter, first);
    const double energy =
        physics::stop_energy(std::max(torques.emergency_stop, 0.0), omega, demand.emergency_stop_time);
    raise(s.stop_temperature, temperature + physics::adiabatic_rise(energy, heat_capacity, brake.specific_heat),
          diameter, first);
    raise(s.hot_power, std::max(torques.run, 0.0) / friction_left * omega, diameter, first);
    s.wear_volume_rate +=
        demand.share_of_length[i] * physics::worn_volume(physics::wear_rate_at(*candidate.grade, temperature), power);
  }
  return s;
}

}  // namespace holdback::sizing
