#include "holdback/sizing/facts.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/physics/brake.hpp"
#include "holdback/physics/heat.hpp"
#include "holdback/physics/torque.hpp"

namespace holdback::sizing {

namespace {

constexpr double seconds_per_week = 7 * 24 * 3600.0;
constexpr double seconds_per_hour = 3600.0;

// One diameter of the roll in steady run: what each case asks there, and how much friction the heat leaves.
struct Spot {
  double radius;         // [m]
  double omega;          // [rad/s]
  double inertia;        // [kg·m²] of all that turns
  double temperature;    // [K] of the disc
  double friction_left;  // [1]
  CaseTorques torques;
};

// One job on its fit with the pairs engaged, diameter by diameter.
class Braking {
 public:
  Braking(const Demand& demand, const Candidate& candidate, const Site& site, int pairs)
      : demand_(demand),
        candidate_(candidate),
        site_(site),
        pair_(candidate.pair),
        engaged_(candidate.brakes * pairs),
        drag_(site.drag + candidate.brakes * candidate.brake->drag) {}

  std::size_t count() const { return demand_.radius.size(); }
  double drag() const { return drag_; }

  Spot at(std::size_t i) const {
    const double omega = demand_.rotational_speed[i];
    const double inertia = demand_.inertia[i] + candidate_.brakes * candidate_.brake->disc_inertia;
    const CaseTorques torques = case_torques(demand_, site_.limits, i, inertia, drag_);
    const double temperature = disc_temperature(candidate_, site_, torques.run, omega);
    const double friction_left = physics::fade_factor(*candidate_.grade, temperature);
    return {demand_.radius[i], omega, inertia, temperature, friction_left, torques};
  }

  // Torque at the highest pressure [N·m]: at the low end of the friction band, and nominal.
  double weakest(const Spot& spot) const { return highest(spot) * (1 - candidate_.grade->friction_band); }
  double highest(const Spot& spot) const {
    const double slope = pair_.capacity * engaged_ * spot.friction_left;
    return physics::pad_torque(slope, pressure_ceiling(site_, *candidate_.brake), threshold());
  }
  // Torque at the lowest pressure [N·m], cold pads of the highest friction.
  double floor() const {
    const double slope = pair_.highest * engaged_ * (1 + candidate_.grade->friction_band);
    return physics::pad_torque(slope, pressure_floor(site_, *candidate_.brake), threshold());
  }
  // Pressure of the steady run at nominal friction [Pa].
  double pressure(const Spot& spot) const {
    return physics::pad_pressure_for(pair_.capacity * engaged_ * spot.friction_left, spot.torques.run, threshold());
  }

 private:
  double threshold() const { return candidate_.brake->threshold_pressure; }

  const Demand& demand_;
  const Candidate& candidate_;
  const Site& site_;
  physics::TorquePerPressure pair_;
  double engaged_;
  double drag_;
};

// A stop as it was asked for.
struct StopAsked {
  double time;                  // [s]
  double share;                 // [1] of the setpoint to be kept
  double CaseTorques::*torque;  // that the stop needs
  const Limit* limit;
};

void add_slack(StopFacts& stop, const Spot& spot, double speed, double torque, double drag) {
  const double roll = physics::slack_deceleration(torque, drag, spot.inertia, spot.radius);
  const double slack = physics::overrun_slack(speed, roll, speed / stop.time);
  const double taut = physics::shortest_stop(speed, 0, spot.radius, torque, drag, spot.inertia);
  if (!std::isfinite(slack) || !std::isfinite(taut)) {
    stop.runs_away = true;
    return;
  }
  stop.shortest_taut_stop = std::max(stop.shortest_taut_stop, taut);
  if (slack <= stop.slack) return;
  stop.slack = slack;
  stop.slack_diameter = 2 * spot.radius;
}

StopFacts stop_facts(const Demand& demand, const Braking& braking, const Candidate& candidate, const StopAsked& asked) {
  const Brake& brake = *candidate.brake;
  const int brakes = candidate.brakes;
  StopFacts stop;
  stop.time = asked.time;
  stop.torque_needed = asked.limit->value;
  stop.torque_available = asked.limit->bound;
  stop.diameter = asked.limit->diameter;
  const double kept = asked.share * demand.tension.setpoint;
  const double surface_per_watt = candidate.cooling->surface_per_watt(asked.time);
  for (std::size_t i = 0; i < braking.count(); ++i) {
    const Spot spot = braking.at(i);
    const double torque = braking.weakest(spot);
    const double energy = physics::stop_energy(std::max(spot.torques.*asked.torque, 0.0), spot.omega, asked.time);
    const double rise = physics::adiabatic_rise(energy, brakes * brake.disc_mass, brake.specific_heat);
    const double power = physics::slip_power(std::max(spot.torques.*asked.torque, 0.0), spot.omega) / brakes;
    stop.surface_temperature = std::max(stop.surface_temperature, spot.temperature + power * surface_per_watt);
    stop.energy = std::max(stop.energy, energy);
    stop.bulk_temperature = std::max(stop.bulk_temperature, spot.temperature + rise);
    add_slack(stop, spot, demand.speed, torque, braking.drag());
    const double keeping =
        physics::shortest_stop(demand.speed, kept, spot.radius, torque, braking.drag(), spot.inertia);
    if (!std::isfinite(keeping)) stop.never = true;
    if (std::isfinite(keeping)) stop.shortest_stop = std::max(stop.shortest_stop, keeping);
  }
  if (stop.never) stop.shortest_stop = 0;
  if (stop.runs_away) stop.slack = stop.slack_diameter = stop.shortest_taut_stop = 0;
  return stop;
}

WebBreakFacts web_break_facts(const Braking& braking) {
  WebBreakFacts facts;
  for (std::size_t i = 0; i < braking.count(); ++i) {
    const Spot spot = braking.at(i);
    const double torque = braking.weakest(spot) + braking.drag();
    const double angle = physics::coast_angle(spot.inertia, spot.omega, torque);
    if (!std::isfinite(angle)) return {0, 0, 0, true};
    if (angle <= facts.turns) continue;
    facts = {angle, physics::coast_time(spot.inertia, spot.omega, torque), 2 * spot.radius, false};
  }
  return facts;
}

WearFacts wear_facts(const Demand& demand, const Candidate& candidate, const Site& site, double life, int pairs) {
  const Line& line = site.line;
  WearFacts wear;
  wear.life = life;
  wear.web_length = life * demand.speed;
  wear.rolls = wear.web_length / demand.web_length;
  const double running_per_week = line.hours_per_day * line.days_per_week * line.uptime * seconds_per_hour;
  wear.weeks = running_per_week > 0 ? life / running_per_week * seconds_per_week : 0;
  const double running_per_year = running_per_week * line.weeks_per_year;
  wear.pads_per_year = 2.0 * candidate.brakes * pairs * running_per_year / life;
  if (candidate.brake->pad_price) wear.cost_per_year = wear.pads_per_year * *candidate.brake->pad_price;
  return wear;
}

void add_limits(JobFit& job, const Assessment& assessment) {
  for (std::size_t i = 0; i < assessment.limits.size(); ++i)
    if (assessment.present.test(i)) job.limits.push_back(assessment.limits[i]);
}

const Limit& limit(const Assessment& assessment, LimitId id) { return assessment.limits[static_cast<std::size_t>(id)]; }

void add_notes(JobFit& job, const Demand& demand, const Candidate& candidate, const Survey& survey) {
  const TensionTarget& tension = demand.tension;
  if (tension.asked && tension.recommended > 0 && tension.setpoint > tension.recommended_high)
    job.notes.push_back({"the tension asked for, {0}, is above the {1} recommended for this web",
                         {{tension.setpoint, Quantity::force}, {tension.recommended_high, Quantity::force}}});
  if (tension.asked && tension.recommended > 0 && tension.setpoint < tension.recommended_low)
    job.notes.push_back({"the tension asked for, {0}, is below the {1} recommended for this web",
                         {{tension.setpoint, Quantity::force}, {tension.recommended_low, Quantity::force}}});
  const auto& map = candidate.brake->cooling;
  if (map.empty()) return;
  if (survey.rotational_speed.value > map.back().speed)
    job.notes.push_back(
        {"the disc turns faster, {0}, than its cooling map reaches, {1}: cooling is held at the last point",
         {{survey.rotational_speed.value, Quantity::rotational_speed},
          {map.back().speed, Quantity::rotational_speed}}});
  if (demand.rotational_speed.back() < map.front().speed)
    job.notes.push_back(
        {"the full roll turns slower, {0}, than the cooling map starts, {1}: below it cooling follows the physics of "
         "the disc",
         {{demand.rotational_speed.back(), Quantity::rotational_speed},
          {map.front().speed, Quantity::rotational_speed}}});
}

}  // namespace

RollFacts roll_facts(const Demand& demand, double disc_inertia) {
  RollFacts roll;
  roll.length = demand.web_length;
  roll.mass = demand.web_mass + demand.core_mass;
  roll.inertia_full = demand.inertia.back() + disc_inertia;
  roll.inertia_core = demand.inertia.front() + disc_inertia;
  roll.running_time = demand.web_length / demand.speed;
  return roll;
}

JobFit job_fit(const Demand& demand, const Survey& survey, const Assessment& assessment, const Candidate& candidate,
               const Site& site) {
  const Braking braking(demand, candidate, site, assessment.pairs);
  JobFit job;
  job.job = demand.job;
  job.pairs = assessment.pairs;
  job.state = assessment.state;
  job.binding = assessment.binding;
  job.margin = assessment.margin;
  add_limits(job, assessment);
  job.pressure_full = braking.pressure(braking.at(braking.count() - 1));
  job.pressure_core = braking.pressure(braking.at(0));
  job.lowest_tension = limit(assessment, LimitId::lowest_tension).value;
  job.slip_power = survey.slip_power.value;
  job.hottest = survey.temperature.value;
  job.hottest_diameter = survey.temperature.diameter;
  job.tension = demand.tension;
  job.roll = roll_facts(demand, survey.disc_inertia);
  const auto& limits = site.limits;
  job.stop =
      stop_facts(demand, braking, candidate,
                 {demand.stop_time, limits.stop_tension, &CaseTorques::stop, &limit(assessment, LimitId::stop_torque)});
  job.emergency_stop = stop_facts(demand, braking, candidate,
                                  {demand.emergency_stop_time, limits.emergency_stop_tension,
                                   &CaseTorques::emergency_stop, &limit(assessment, LimitId::emergency_stop_torque)});
  job.web_break = web_break_facts(braking);
  job.shaft = demand.shaft;
  job.wear = wear_facts(demand, candidate, site, limit(assessment, LimitId::pad_life).value, assessment.pairs);
  add_notes(job, demand, candidate, survey);
  return job;
}

Envelope envelope(const Demand& demand, const Candidate& candidate, const Site& site, int pairs) {
  const Braking braking(demand, candidate, site, pairs);
  Envelope e;
  e.job = demand.job;
  for (std::size_t i = 0; i < braking.count(); ++i) {
    const Spot spot = braking.at(i);
    e.diameter.push_back(2 * spot.radius);
    e.run.push_back(spot.torques.run);
    e.ramp.push_back(std::max(spot.torques.ramp, 0.0));
    e.stop.push_back(spot.torques.stop);
    e.emergency_stop.push_back(spot.torques.emergency_stop);
    e.hold.push_back(spot.torques.hold);
    e.capacity_low.push_back(braking.weakest(spot));
    e.capacity_nominal.push_back(braking.highest(spot));
    e.floor.push_back(braking.floor());
    e.pressure.push_back(braking.pressure(spot));
    e.temperature.push_back(spot.temperature);
    e.rotational_speed.push_back(spot.omega);
  }
  return e;
}

}  // namespace holdback::sizing
