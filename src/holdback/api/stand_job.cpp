#include "holdback/api/stand_job.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include "holdback/files/field_table.hpp"
#include "holdback/physics/brake.hpp"
#include "holdback/physics/control.hpp"
#include "holdback/physics/gravity.hpp"
#include "holdback/physics/roll.hpp"
#include "holdback/physics/tension.hpp"
#include "holdback/sizing/cooling_curve.hpp"
#include "holdback/sizing/thermal.hpp"

namespace holdback::api {

namespace {

constexpr std::size_t cooling_points = 48;  // over the root of speed

template <class T>
T usual(const std::vector<files::Field<T>>& fields) {
  T made{};
  for (const auto& field : fields)
    if (field.presence == files::Presence::defaulted) field.set(made, files::default_value(field));
  return made;
}

const Job* job_called(const Stand& stand, const std::string& name) {
  for (const Job& job : stand.jobs)
    if (job.name == name) return &job;
  return nullptr;
}

const Scenario* scenario_called(const Stand& stand, const std::string& name) {
  for (const Scenario& scenario : stand.scenarios)
    if (scenario.name == name) return &scenario;
  return nullptr;
}

Problem refused(std::string field, std::string value, Note what, Note accepted) {
  Problem problem;
  problem.field = std::move(field);
  problem.value = std::move(value);
  problem.what = std::move(what);
  problem.accepted = std::move(accepted);
  return problem;
}

void check_sensor(const Stand& stand, ControlKind kind, Problems& problems) {
  const auto miss = [&](bool there, const std::string& table, const std::string& what) {
    if (!there)
      problems.push_back(refused("--compare", std::string(key_of(kind)),
                                 {"The stand has no " + what + ", by which this control measures."},
                                 {"a " + table + " table in the stand file; an empty one takes the usual values"}));
  };
  if (kind == ControlKind::load_cell) miss(stand.load_cell.has_value(), "[load_cell]", "load cell");
  if (kind == ControlKind::dancer) miss(stand.dancer.has_value(), "[dancer]", "dancer");
  if (kind == ControlKind::diameter) miss(stand.diameter_sensor.has_value(), "[diameter_sensor]", "diameter sensor");
}

// The roll of this job under a scenario that was written for all.
void check_scenario(const Scenario& scenario, std::size_t index, const Roll& roll, Problems& problems) {
  const std::string path = "scenario[" + std::to_string(index) + "]";
  const auto within = [&](const std::optional<double>& diameter, const std::string& field) {
    if (!diameter || (*diameter > roll.core_diameter && *diameter <= roll.full_diameter)) return;
    problems.push_back(
        refused(field, "",
                {"The roll of this job goes from {0} to {1}: it never has {2}.",
                 {{roll.full_diameter, Quantity::short_length},
                  {roll.core_diameter, Quantity::short_length},
                  {*diameter, Quantity::short_length}}},
                {"a diameter above {0}, up to {1}",
                 {{roll.core_diameter, Quantity::short_length}, {roll.full_diameter, Quantity::short_length}}}));
  };
  within(scenario.start_diameter, path + ".start_diameter");
  for (std::size_t i = 0; i < scenario.events.size(); ++i)
    within(scenario.events[i].at_diameter, path + ".event[" + std::to_string(i) + "].at_diameter");
}

/// Line time [s] that a scenario may take at most: what it says, and the roll at its slowest speed.
double longest_run(const Job& job, const Scenario* scenario) {
  const double length = physics::roll_length(job.roll.core_radius(), job.roll.full_radius(), job.web.caliper);
  if (scenario == nullptr) return length / job.speed;
  if (scenario->end) return *scenario->end;
  double slowest = job.speed;
  double told = 0;
  for (const Event& event : scenario->events) {
    if (event.kind == EventKind::ramp && event.speed && *event.speed > 0) slowest = std::min(slowest, *event.speed);
    told = std::max(told, event.at.value_or(0)) + event.duration.value_or(0);
  }
  const bool waits = std::any_of(scenario->events.begin(), scenario->events.end(),
                                 [](const Event& event) { return event.at_diameter.has_value(); });
  return told + (waits ? length / slowest : 0);
}

// A minute of computing, about: beyond that a slip of the pen is likelier than a wish.
void check_length(const Stand& stand, const Job& job, const Scenario* scenario, Problems& problems) {
  constexpr double most_samples = 1e8;
  const double time = longest_run(job, scenario);
  if (time <= most_samples * stand.control.sample_time) return;
  problems.push_back(
      refused("control.sample_time", "",
              {"The scenario may last {0} of line time: more than a hundred million samples.",
               {{time, Quantity::running_time}}},
              {"a sample time of at least {0}, or a shorter scenario", {{time / most_samples, Quantity::duration}}}));
}

}  // namespace

LoadCell usual_load_cell() { return usual(files::load_cell_fields()); }
Dancer usual_dancer() { return usual(files::dancer_fields()); }
DiameterSensor usual_diameter_sensor() { return usual(files::diameter_sensor_fields()); }

Problems unmovable(const Stand& stand, const Request& request) {
  Problems problems;
  if (request.job.empty())
    problems.push_back(refused("--job", "", {"A job is needed: one roll of one job is run."},
                               {stand.jobs.empty() ? "" : "such as \"" + stand.jobs.front().name + "\""}));
  const Job* job = job_called(stand, request.job);
  if (job == nullptr) return problems;
  if (!physics::web_stiffness(job->web))
    problems.push_back(refused("web", job->web.name,
                               {"The web has no modulus, so that its tension cannot be followed: it would have no "
                                "stiffness."},
                               {"web.modulus, or the moduli of all its plies"}));
  for (const ControlKind kind : request.compare) check_sensor(stand, kind, problems);
  const Scenario* scenario = scenario_called(stand, request.scenario);
  check_length(stand, *job, scenario, problems);
  if (request.scenario.empty()) return problems;
  if (scenario != nullptr) {
    check_scenario(*scenario, static_cast<std::size_t>(scenario - stand.scenarios.data()), job->roll, problems);
    return problems;
  }
  std::string names = "usual";
  for (const Scenario& one : stand.scenarios) names += ", " + one.name;
  if (request.scenario != "usual")
    problems.push_back(
        refused("--scenario", request.scenario, {"The stand has no such scenario."}, {"one of: " + names}));
  return problems;
}

StandJob::StandJob(const Stand& stand, const Request& request)
    : stand_(stand), job_(job_called(stand, request.job)), site_(sizing::site_of(stand)) {
  const sizing::ChooseOptions options{request.job,   false,          request.brake,
                                      request.grade, request.brakes, request.threads};
  const Choice choice = sizing::choose(stand, options);
  if (!choice.recommended || !choice.job || job_ == nullptr) throw std::invalid_argument("no fit for this job");
  fit_ = choice.recommended->fit;
  facts_ = *choice.job;
  assumptions_ = choice.assumptions;
  cautions_ = choice.cautions;
  const auto brake =
      std::find_if(stand.brakes.begin(), stand.brakes.end(), [&](const Brake& b) { return b.name == fit_.brake; });
  const auto grade =
      std::find_if(brake->grades.begin(), brake->grades.end(), [&](const Grade& g) { return g.name == fit_.grade; });
  candidate_ = sizing::candidate_of(*brake, *grade, fit_.brakes, site_);
  demand_ = sizing::demand_of(*job_, site_);
  sizing::PlanOptions planned{options, {}};
  planned.choose.brake = fit_.brake;
  planned.choose.grade = fit_.grade;
  planned.choose.brakes = fit_.brakes;
  card_ = sizing::plan(stand, planned).jobs.front();
}

std::size_t StandJob::idler_called(const std::string& name, std::size_t otherwise) const {
  for (std::size_t i = 0; i < stand_.idlers.size(); ++i)
    if (stand_.idlers[i].name == name) return i + 1;
  return otherwise;
}

dynamics::Plant StandJob::plant(ControlKind kind, bool each) const {
  const Brake& brake = *candidate_.brake;
  const Grade& grade = *candidate_.grade;
  dynamics::Plant plant;
  dynamics::RollPlant& roll = plant.roll;
  roll.core_radius = job_->roll.core_radius();
  roll.caliper = job_->web.caliper;
  roll.fixed_inertia = site_.shaft_inertia + fit_.brakes * brake.disc_inertia +
                       physics::core_inertia(job_->roll.core_mass, roll.core_radius);
  roll.inertia_per_fourth = std::numbers::pi * job_->web.basis_weight * job_->web.width / (2 * job_->web.caliper);
  roll.runout = job_->roll.runout;
  roll.lobes = job_->roll.lobes;
  roll.gravity = roll.lobes == 1 ? physics::gravity : 0;
  plant.brake.torque_per_pressure = candidate_.pair.capacity * fit_.brakes * facts_.pairs;
  plant.brake.threshold = brake.threshold_pressure;
  plant.brake.static_ratio = grade.static_ratio;
  plant.brake.friction_slope = grade.friction_slope * candidate_.friction_radius;
  plant.brake.drag = stand_.drag + fit_.brakes * brake.drag;
  plant.air = {stand_.air.lag, stand_.air.dead_time, stand_.air.hysteresis};
  dynamics::PathPlant& path = plant.path;
  path.stiffness = *physics::web_stiffness(job_->web) * job_->web.width;
  path.wound_in = job_->web.wound_tension.value_or(0) * job_->web.width;
  path.spans.push_back(stand_.path.first_span);
  for (const Idler& idler : stand_.idlers) {
    path.idlers.push_back({idler.diameter / 2, std::max(idler.inertia, 1e-6), idler.drag});
    path.spans.push_back(idler.span);
  }
  if (stand_.load_cell) path.cell_span = idler_called(stand_.load_cell->idler, stand_.idlers.size());
  if (kind == ControlKind::dancer) {
    const Dancer dancer = stand_.dancer ? *stand_.dancer : usual_dancer();
    path.dancer = dynamics::DancerPlant{idler_called(dancer.idler, stand_.idlers.size() / 2),
                                        dancer.mass,
                                        dancer.travel / 2,
                                        dancer.damping,
                                        dancer.strands,
                                        dancer.taper};
  }
  path.retardation = retardation(plant);
  return each ? dynamics::with_fewer_idlers(plant) : dynamics::lumped(plant);
}

// A loss tangent holds at any frequency; a spring with a dashpot has it at one, here that of the roll against the web
// when it is half unwound by radius: τ = tan δ/ω.
double StandJob::retardation(const dynamics::Plant& plant) const {
  const double middle = (job_->roll.full_radius() + job_->roll.core_radius()) / 2;
  double length = 0;
  for (const double span : plant.path.spans) length += span;
  const physics::UnwindPoint point{
      dynamics::inertia_at(plant.roll, middle), middle, length, plant.path.stiffness, 0, plant.path.wound_in, 0};
  const double frequency = physics::unwind_mode(point).frequency;
  return std::isfinite(frequency) && frequency > 0 ? job_->web.loss / frequency : 0;
}

// The idlers' slowest swing against what shakes the web: the roll's own swing and its runout at the core. Three times
// faster, they follow within a tenth.
bool StandJob::idlers_matter(ControlKind kind) const {
  if (stand_.idlers.empty()) return false;
  constexpr double apart = 3;
  const auto stand =
      dynamics::linear_stand(plant(kind, true), job_->speed, tension().setpoint, job_->roll.full_radius(), 1);
  const double runout = job_->roll.runout > 0 ? job_->roll.lobes * job_->speed / job_->roll.core_radius() : 0;
  double own = 0;
  for (const numerics::Mode& mode : stand.modes) {
    if (!(mode.pole.imag() > 1e-9 * mode.frequency)) continue;
    if (own > 0) return mode.frequency < apart * std::max(own, runout);
    own = mode.frequency;
  }
  return false;
}

double StandJob::friction_left() const {
  if (!facts_.thermal || facts_.thermal->disc.empty()) return 1;
  double sum = 0;
  for (const double disc : facts_.thermal->disc) sum += physics::fade_factor(*candidate_.grade, disc);
  return sum / static_cast<double>(facts_.thermal->disc.size());
}

dynamics::Believed StandJob::believed() const {
  const dynamics::Plant plant = this->plant(ControlKind::hand, false);
  dynamics::Believed made;
  made.torque_per_pressure = plant.brake.torque_per_pressure * friction_left();
  made.threshold = plant.brake.threshold;
  made.drag = plant.brake.drag;
  made.fixed_inertia = plant.roll.fixed_inertia;
  made.inertia_per_fourth = plant.roll.inertia_per_fourth;
  made.core_radius = plant.roll.core_radius;
  made.inertia_compensation = stand_.control.inertia_compensation;
  return made;
}

dynamics::HeatPlant StandJob::heat() const {
  const Brake& brake = *candidate_.brake;
  dynamics::HeatPlant heat;
  heat.nodes = sizing::thermal_nodes(demand_, candidate_, site_, facts_.pairs);
  const double fastest = std::max(brake.rated_speed, demand_.rotational_speed.front());
  heat.root_step = std::sqrt(1.2 * fastest) / (cooling_points - 1);
  for (std::size_t i = 0; i < cooling_points; ++i) {
    const double root = static_cast<double>(i) * heat.root_step;
    heat.convection.push_back(candidate_.cooling->at(root * root).convection);
  }
  heat.ambient = stand_.ambient;
  heat.grade = *candidate_.grade;
  heat.brakes = fit_.brakes;
  heat.usable_volume = brake.pad_area * brake.usable_pad_depth;
  heat.pads = 2 * facts_.pairs;
  return heat;
}

dynamics::RigSetup StandJob::rig(ControlKind kind, bool each) const {
  dynamics::RigSetup setup;
  setup.plant = plant(kind, each);
  setup.heat = heat();
  if (facts_.thermal && !facts_.thermal->disc.empty())
    setup.temperatures = {facts_.thermal->disc.front(), facts_.thermal->pads.front(), facts_.thermal->calipers.front(),
                          facts_.thermal->hub.front()};
  setup.pairs = facts_.pairs;
  setup.setpoint = tension().setpoint;
  setup.radius = job_->roll.full_radius();
  setup.sample_time = stand_.control.sample_time;
  setup.cell = stand_.load_cell ? *stand_.load_cell : usual_load_cell();
  setup.diameter = stand_.diameter_sensor ? *stand_.diameter_sensor : usual_diameter_sensor();
  setup.mover.steps = dynamics::choose_method(setup.plant, setup.sample_time).steps;
  return setup;
}

std::optional<dynamics::LoopSettings> StandJob::settings_in_file(ControlKind kind) const {
  const Control& control = stand_.control;
  if (control.kind != kind || !control.gain || !control.integral_time) return std::nullopt;
  return dynamics::LoopSettings{
      *control.gain,       *control.integral_time,   control.derivative_time,
      control.sample_time, job_->roll.full_radius(), control.schedule == GainSchedule::diameter,
      control.authority};
}

dynamics::TuneRequest StandJob::tune_request(ControlKind kind) const {
  dynamics::TuneRequest request;
  request.plant = plant(kind, true);
  request.held = kind == ControlKind::dancer ? dynamics::Held::dancer_place : dynamics::Held::tension;
  request.speed = job_->speed;
  request.setpoint = tension().setpoint;
  request.full_radius = job_->roll.full_radius();
  request.core_radius = job_->roll.core_radius();
  request.brake_share = {friction_left()};
  request.believed = believed();
  request.delays.dead_time = stand_.air.dead_time;
  request.delays.sample_time = stand_.control.sample_time;
  request.delays.cell_lag = (stand_.load_cell ? *stand_.load_cell : usual_load_cell()).lag;
  request.derivative_time = stand_.control.kind == kind ? stand_.control.derivative_time : 0;
  return request;
}

std::optional<dynamics::LoopSettings> StandJob::settings(ControlKind kind) const {
  if (kind == ControlKind::hand || kind == ControlKind::diameter) return std::nullopt;
  if (const auto given = settings_in_file(kind)) return given;
  const dynamics::TuneRequest request = tune_request(kind);
  const bool scheduled = stand_.control.kind != kind || stand_.control.schedule == GainSchedule::diameter;
  return dynamics::tuned(request, dynamics::stands_over_roll(request), scheduled);
}

std::function<std::unique_ptr<dynamics::Controller>()> StandJob::controller(
    ControlKind kind, const std::optional<dynamics::LoopSettings>& settings) const {
  const Brake& brake = *candidate_.brake;
  dynamics::PressureRange range{stand_.air.lowest_pressure, sizing::pressure_ceiling(site_, brake),
                                stand_.control.output_step};
  const dynamics::Believed believed = this->believed();
  if (kind == ControlKind::hand) {
    range.step = stand_.air.resolution;
    std::vector<dynamics::HandLine> card;
    for (const HandSetting& line : card_.by_hand) card.push_back({line.from, line.pressure});
    const double setpoint = tension().setpoint;
    return [=] { return std::make_unique<dynamics::HandRegulator>(card, range, believed.threshold, setpoint); };
  }
  if (kind == ControlKind::diameter)
    return [=] { return std::make_unique<dynamics::DiameterFollower>(believed, range); };
  const auto held = kind == ControlKind::dancer ? dynamics::Held::dancer_place : dynamics::Held::tension;
  dynamics::LoopSettings chosen = settings.value_or(dynamics::LoopSettings{});
  chosen.authority = stand_.control.authority;
  if (chosen.gain <= 0) {  // nothing keeps the margins: the diameter is followed alone
    return [=] { return std::make_unique<dynamics::DiameterFollower>(believed, range); };
  }
  return [=] { return std::make_unique<dynamics::LoopController>(held, chosen, believed, range); };
}

dynamics::RunBounds StandJob::bounds() const {
  const Brake& brake = *candidate_.brake;
  dynamics::RunBounds bounds;
  bounds.low = tension().low / tension().setpoint;
  bounds.high = tension().high / tension().setpoint;
  bounds.stop_share = stand_.limits.stop_tension;
  bounds.emergency_stop_share = stand_.limits.emergency_stop_tension;
  bounds.web_strength = tension().web_strength;
  bounds.torque = brake.rated_torque * fit_.brakes + stand_.drag;
  bounds.pressure = brake.rated_pressure;
  bounds.disc = brake.rated_temperature;
  bounds.pads = candidate_.grade->temperature_limit;
  return bounds;
}

dynamics::LineHabits StandJob::habits() const {
  return {job_->speed, demand_.ramp_time, demand_.stop_time, demand_.emergency_stop_time, job_->roll.full_radius()};
}

Scenario StandJob::scenario(const std::string& name) const {
  if (const Scenario* found = scenario_called(stand_, name)) return *found;
  return dynamics::usual_scenario({facts_.stop.diameter, facts_.emergency_stop.diameter}, habits(),
                                  job_->roll.core_radius(), job_->web.caliper);
}

dynamics::RunRequest StandJob::run_request(ControlKind kind, const Scenario& scenario, bool each) const {
  dynamics::RunRequest request;
  request.rig = rig(kind, each);
  if (scenario.start_diameter) request.rig.radius = *scenario.start_diameter / 2;
  request.rig.line_speed = scenario.start_speed.value_or(0);
  request.controller = controller(kind, settings(kind));
  request.kind = kind;
  request.scenario = scenario;
  request.habits = habits();
  request.bounds = bounds();
  return request;
}

}  // namespace holdback::api
