#include "holdback/sizing/facts.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/physics/brake.hpp"
#include "holdback/physics/heat.hpp"
#include "holdback/physics/pressure.hpp"
#include "holdback/physics/torque.hpp"
#include "holdback/physics/wear.hpp"

namespace holdback::sizing {

namespace {

constexpr double seconds_per_week = 7 * 24 * 3600.0;
constexpr double seconds_per_hour = 3600.0;

// Torque of the engaged pairs over the roll: at the ceiling and floor of pressure, at either end of the friction band.
class Capacity {
 public:
  Capacity(const Candidate& candidate, const Site& site, int pairs)
      : candidate_(candidate),
        site_(site),
        brake_(*candidate.brake),
        grade_(*candidate.grade),
        pair_(physics::pair_torque_per_pressure(brake_, grade_)),
        engaged_(candidate.brakes * pairs) {}

  double temperature(double run_torque, double omega) const {
    return disc_temperature(candidate_, site_, run_torque, omega);
  }
  double friction_left(double temperature) const { return physics::fade_factor(grade_, temperature); }
  double nominal_slope() const { return pair_.capacity * engaged_; }
  double threshold() const { return brake_.threshold_pressure; }
  double highest(double friction) const {
    return physics::pad_torque(pair_.capacity * engaged_ * friction, pressure_ceiling(site_, brake_), threshold());
  }
  double weakest_friction() const { return 1 - grade_.friction_band; }
  double floor() const {
    return physics::pad_torque(pair_.highest * engaged_ * (1 + grade_.friction_band), pressure_floor(site_, brake_),
                               threshold());
  }

 private:
  const Candidate& candidate_;
  const Site& site_;
  const Brake& brake_;
  const Grade& grade_;
  physics::TorquePerPressure pair_;
  double engaged_;
};

struct StopAsked {
  double time;
  double share;
  const Limit* limit;
  double stop_temperature;
  bool emergency;
};

StopFacts stop_facts(const Demand& demand, const Survey& survey, const Capacity& capacity, const Site& site,
                     const StopAsked& asked) {
  StopFacts stop;
  stop.time = asked.time;
  stop.torque_needed = asked.limit->value;
  stop.torque_available = asked.limit->bound;
  stop.diameter = asked.limit->diameter;
  stop.bulk_temperature = asked.stop_temperature;
  const double kept = asked.share * demand.tension.setpoint;
  for (std::size_t i = 0; i < demand.radius.size(); ++i) {
    const double radius = demand.radius[i];
    const double omega = demand.rotational_speed[i];
    const double inertia = demand.inertia[i] + survey.disc_inertia;
    const CaseTorques torques = case_torques(demand, site.limits, i, inertia, survey.drag);
    const double hot = capacity.friction_left(capacity.temperature(torques.run, omega));
    const double most = capacity.highest(capacity.weakest_friction() * hot);
    const double needed = asked.emergency ? torques.emergency_stop : torques.stop;
    stop.energy = std::max(stop.energy, physics::stop_energy(std::max(needed, 0.0), omega, asked.time));
    const double roll = physics::slack_deceleration(most, survey.drag, inertia, radius);
    if (roll > 0)
      stop.slack = std::max(stop.slack, physics::overrun_slack(demand.speed, roll, demand.speed / asked.time));
    const double taut = physics::shortest_stop(demand.speed, 0, radius, most, survey.drag, inertia);
    const double keeping = physics::shortest_stop(demand.speed, kept, radius, most, survey.drag, inertia);
    if (!std::isfinite(taut) || !std::isfinite(keeping)) stop.never = true;
    if (std::isfinite(taut)) stop.shortest_taut_stop = std::max(stop.shortest_taut_stop, taut);
    if (std::isfinite(keeping)) stop.shortest_stop = std::max(stop.shortest_stop, keeping);
  }
  if (stop.never) stop.shortest_stop = 0;
  return stop;
}

WebBreakFacts web_break_facts(const Demand& demand, const Survey& survey, const Capacity& capacity, const Site& site) {
  WebBreakFacts facts;
  for (std::size_t i = 0; i < demand.radius.size(); ++i) {
    const double inertia = demand.inertia[i] + survey.disc_inertia;
    const double run = case_torques(demand, site.limits, i, inertia, survey.drag).run;
    const double hot = capacity.friction_left(capacity.temperature(run, demand.rotational_speed[i]));
    const double torque = capacity.highest(capacity.weakest_friction() * hot) + survey.drag;
    const double angle = physics::coast_angle(inertia, demand.rotational_speed[i], torque);
    if (!std::isfinite(angle) || angle <= facts.turns) continue;
    facts = {angle, physics::coast_time(inertia, demand.rotational_speed[i], torque), 2 * demand.radius[i]};
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

double pressure_at(const Demand& demand, const Survey& survey, const Capacity& capacity, const Site& site,
                   std::size_t i) {
  const double inertia = demand.inertia[i] + survey.disc_inertia;
  const double run = case_torques(demand, site.limits, i, inertia, survey.drag).run;
  const double hot = capacity.friction_left(capacity.temperature(run, demand.rotational_speed[i]));
  return physics::pad_pressure_for(capacity.nominal_slope() * hot, run, capacity.threshold());
}

void add_limits(JobFit& job, const Assessment& assessment) {
  for (std::size_t i = 0; i < assessment.limits.size(); ++i)
    if (assessment.present.test(i)) job.limits.push_back(assessment.limits[i]);
}

const Limit& limit(const Assessment& assessment, LimitId id) { return assessment.limits[static_cast<std::size_t>(id)]; }

void add_notes(JobFit& job, const Demand& demand, const Candidate& candidate, const Survey& survey) {
  const TensionTarget& tension = demand.tension;
  if (tension.asked && tension.recommended > 0 && tension.setpoint > tension.recommended_high)
    job.notes.push_back({"the tension asked for, {0}, is above the {1} that is usual for this web",
                         {{tension.setpoint, Quantity::force}, {tension.recommended_high, Quantity::force}}});
  if (tension.asked && tension.recommended > 0 && tension.setpoint < tension.recommended_low)
    job.notes.push_back({"the tension asked for, {0}, is below the {1} that is usual for this web",
                         {{tension.setpoint, Quantity::force}, {tension.recommended_low, Quantity::force}}});
  const auto& map = candidate.brake->cooling;
  if (survey.rotational_speed.value > map.back().speed)
    job.notes.push_back(
        {"the disc turns faster, {0}, than its cooling map reaches, {1}: cooling is held at the last point",
         {{survey.rotational_speed.value, Quantity::rotational_speed},
          {map.back().speed, Quantity::rotational_speed}}});
  if (demand.rotational_speed.back() < map.front().speed)
    job.notes.push_back(
        {"the full roll turns slower, {0}, than the cooling map starts, {1}: cooling falls in proportion to speed",
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
  const Capacity capacity(candidate, site, assessment.pairs);
  JobFit job;
  job.job = demand.job;
  job.pairs = assessment.pairs;
  job.state = assessment.state;
  job.binding = assessment.binding;
  job.margin = assessment.margin;
  add_limits(job, assessment);
  job.pressure_full = pressure_at(demand, survey, capacity, site, demand.radius.size() - 1);
  job.pressure_core = pressure_at(demand, survey, capacity, site, 0);
  job.lowest_tension = limit(assessment, LimitId::lowest_tension).value;
  job.slip_power = survey.slip_power.value;
  job.hottest = survey.temperature.value;
  job.hottest_diameter = survey.temperature.diameter;
  job.tension = demand.tension;
  job.roll = roll_facts(demand, survey.disc_inertia);
  const auto& limits = site.limits;
  job.stop = stop_facts(demand, survey, capacity, site,
                        {demand.stop_time, limits.stop_tension, &limit(assessment, LimitId::stop_torque), 0, false});
  job.stop.bulk_temperature =
      survey.temperature.value + physics::adiabatic_rise(job.stop.energy, candidate.brakes * candidate.brake->disc_mass,
                                                         candidate.brake->specific_heat);
  job.emergency_stop =
      stop_facts(demand, survey, capacity, site,
                 {demand.emergency_stop_time, limits.emergency_stop_tension,
                  &limit(assessment, LimitId::emergency_stop_torque), survey.stop_temperature.value, true});
  job.web_break = web_break_facts(demand, survey, capacity, site);
  job.wear = wear_facts(demand, candidate, site, limit(assessment, LimitId::pad_life).value, assessment.pairs);
  add_notes(job, demand, candidate, survey);
  return job;
}

Envelope envelope(const Demand& demand, const Candidate& candidate, const Site& site, int pairs) {
  const Capacity capacity(candidate, site, pairs);
  const double drag = site.drag + candidate.brakes * candidate.brake->drag;
  const double discs = candidate.brakes * candidate.brake->disc_inertia;
  Envelope e;
  e.job = demand.job;
  for (std::size_t i = 0; i < demand.radius.size(); ++i) {
    const double omega = demand.rotational_speed[i];
    const CaseTorques torques = case_torques(demand, site.limits, i, demand.inertia[i] + discs, drag);
    const double temperature = capacity.temperature(torques.run, omega);
    const double hot = capacity.friction_left(temperature);
    e.diameter.push_back(2 * demand.radius[i]);
    e.run.push_back(torques.run);
    e.ramp.push_back(std::max(torques.ramp, 0.0));
    e.stop.push_back(torques.stop);
    e.emergency_stop.push_back(torques.emergency_stop);
    e.hold.push_back(torques.hold);
    e.capacity_low.push_back(capacity.highest(capacity.weakest_friction() * hot));
    e.capacity_nominal.push_back(capacity.highest(hot));
    e.floor.push_back(capacity.floor());
    e.pressure.push_back(physics::pad_pressure_for(capacity.nominal_slope() * hot, torques.run, capacity.threshold()));
    e.temperature.push_back(temperature);
    e.rotational_speed.push_back(omega);
  }
  return e;
}

}  // namespace holdback::sizing
