#include "holdback/api/log_stand.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "holdback/physics/brake.hpp"
#include "holdback/physics/roll.hpp"
#include "holdback/physics/tension.hpp"

namespace holdback::api {

namespace {

using field::LogStand;

template <class Named>
const Named& called(const std::vector<Named>& all, const std::string& name) {
  return *std::find_if(all.begin(), all.end(), [&](const Named& one) { return one.name == name; });
}

/// Friction left when the roll is down to a diameter [m], in the state that repeats; 1 without heat.
double friction_left(const JobFit& facts, const Grade& grade, double diameter) {
  if (!facts.thermal || facts.thermal->disc.empty()) return 1;
  const ThermalFacts& thermal = *facts.thermal;
  std::size_t i = 0;
  while (i + 1 < thermal.disc.size() && i + 1 < thermal.diameter.size() && thermal.diameter[i] > diameter) ++i;
  return physics::fade_factor(grade, thermal.disc[i]);
}

void describe_brake(const Stand& stand, const StandJob& job, LogStand& made) {
  const Brake& brake = called(stand.brakes, job.fit().brake);
  const Grade& grade = called(brake.grades, job.fit().grade);
  made.pairs = job.pairs();
  made.brakes = job.fit().brakes;
  const double pair = physics::pair_torque_per_pressure(brake, grade).capacity;
  made.torque_per_pressure = pair * made.pairs * made.brakes;
  made.threshold = brake.threshold_pressure;
  made.drag = stand.drag + made.brakes * brake.drag;
  made.friction_band = grade.friction_band;
  made.fade_start = grade.fade_start;
  made.fade_rate = grade.fade_rate;
  made.rated_disc = brake.rated_temperature;
  made.grade = grade.name;
  for (const Grade& other : brake.grades) {
    const double torque = physics::pair_torque_per_pressure(brake, other).capacity;
    if (other.name != grade.name && pair > 0 && torque > 0) made.grades.push_back({other.name, torque / pair});
  }
  made.fixed_inertia = stand.shaft_inertia + made.brakes * brake.disc_inertia +
                       physics::core_inertia(job.job().roll.core_mass, job.job().roll.core_radius());
}

void describe_line(const Stand& stand, const StandJob& job, LogStand& made) {
  const dynamics::LineHabits habits = job.habits();
  const auto rate = [&](double time) { return time > 0 ? habits.speed / time : 0; };
  made.top_speed = std::max(stand.line.top_speed, habits.speed);
  made.ramp_rate = rate(habits.ramp_time);
  made.stop_rate = rate(habits.stop_time);
  made.emergency_rate = rate(habits.emergency_stop_time);
  made.stop_share = stand.limits.stop_tension;
  made.emergency_share = stand.limits.emergency_stop_tension;
  made.speed = habits.speed;
}

/// Idlers, and what their drag adds up to where the tension is measured: at the load cell, else behind the roll.
void describe_path(const Stand& stand, LogStand& made) {
  const std::string cell = stand.load_cell ? stand.load_cell->idler : "";
  bool before = stand.load_cell.has_value();
  for (std::size_t i = 0; i < stand.idlers.size(); ++i) {
    const Idler& idler = stand.idlers[i];
    made.idlers.push_back({idler.name, idler.diameter});
    const bool here = cell.empty() ? i + 1 == stand.idlers.size() : idler.name == cell;
    // A cell weighs the mean of the spans to either side of its roller.
    if (before && idler.diameter > 0) made.cell_offset += (here ? 0.5 : 1) * idler.drag / (idler.diameter / 2);
    if (here) before = false;
  }
}

/// The job's loop from the full roll to the core: where it crosses over, where it would swing, what else does.
void foretell(const Stand& stand, const StandJob& job, LogStand& made) {
  const Brake& brake = called(stand.brakes, job.fit().brake);
  const Grade& grade = called(brake.grades, job.fit().grade);
  const ControlKind kind = stand.control.kind;
  const dynamics::TuneRequest request = job.tune_request(kind);
  const auto settings = job.settings(kind);
  const bool closed = settings && settings->gain > 0;
  made.air_lag = stand.air.lag;
  made.cell_lag = request.delays.cell_lag;
  if (closed && request.held == dynamics::Held::tension) made.integral_time = settings->integral_time;
  for (const dynamics::LinearStand& at : dynamics::stands_over_roll(request)) {
    field::LoopPoint point;
    point.radius = at.radius;
    point.mode = dynamics::slowest_swing(at).frequency;
    point.friction_left = friction_left(job.facts(), grade, 2 * at.radius);
    const double runout = job.job().roll.runout;
    if (runout > 0)
      point.runout_tension = runout * dynamics::runout_tension_of(at, request.held, closed ? &*settings : nullptr,
                                                                  request.delays, request.believed, request.setpoint);
    if (closed) {
      const numerics::LoopMargins margins =
          dynamics::margins_of(at, request.held, *settings, request.delays, request.believed, request.setpoint);
      if (std::isfinite(margins.phase_margin_frequency)) point.crossover = margins.phase_margin_frequency;
      if (std::isfinite(margins.gain_margin_frequency)) point.turnover = margins.gain_margin_frequency;
      dynamics::LoopSettings still = *settings;
      still.integral_time = 1e6;
      const numerics::LoopMargins quick =
          dynamics::margins_of(at, request.held, still, request.delays, request.believed, request.setpoint);
      if (std::isfinite(quick.gain_margin_frequency)) point.quick_turnover = quick.gain_margin_frequency;
      if (request.held == dynamics::Held::tension)
        point.proportional = settings->gain * dynamics::gain_arm(request.held, *settings, request.believed, at.radius) /
                             request.believed.torque_per_pressure;
    }
    made.loop.push_back(point);
  }
}

}  // namespace

LogStand log_stand_of(const Stand& stand, const StandJob& job) {
  LogStand made;
  made.title = stand.title;
  made.job = job.job().name;
  made.tension = job.tension();
  made.control = stand.control.kind;
  const Roll& roll = job.job().roll;
  const Web& web = job.job().web;
  made.core_radius = roll.core_radius();
  made.full_radius = roll.full_radius();
  made.caliper = web.caliper;
  made.inertia_per_fourth = std::numbers::pi * web.basis_weight * web.width / (2 * web.caliper);
  made.lobes = roll.lobes;
  made.resolution = stand.air.resolution;
  made.hysteresis = stand.air.hysteresis;
  describe_brake(stand, job, made);
  describe_line(stand, job, made);
  describe_path(stand, made);
  const bool has_sensor = stand.control.kind != ControlKind::dancer || stand.dancer;
  if (physics::web_stiffness(web) && has_sensor) foretell(stand, job, made);
  return made;
}

}  // namespace holdback::api
