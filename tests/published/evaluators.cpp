#include "published/evaluators.hpp"

#include "holdback/physics/air.hpp"
#include "holdback/physics/brake.hpp"
#include "holdback/physics/cooling.hpp"
#include "holdback/physics/heat.hpp"
#include "holdback/physics/pressure.hpp"
#include "holdback/physics/roll.hpp"
#include "holdback/physics/tension.hpp"
#include "holdback/physics/torque.hpp"
#include "holdback/physics/wear.hpp"
#include "published/example_brake.hpp"

namespace holdback::published {

using namespace physics;
using Q = Quantity;

// ---- model values from arguments ------------------------------------------------------------------------------------

namespace {

// Kinds that no stand file has.
constexpr const char* angular_acceleration = "rad/s2";
constexpr const char* viscosity = "Pa s";
constexpr const char* kinematic_viscosity = "m2/s";
constexpr const char* thermal_conductivity = "W/(m K)";

/// A pad pair whose actuator pushes with `force`: piston of 1 m² at that many pascals.
struct PressedPair {
  Brake brake{};
  Grade grade{};
  double force{};
};

PressedPair pressed(const Pad& pad, Arguments& a) {
  PressedPair pair;
  pair.brake.pad = pad;
  pair.brake.piston_area = 1;
  pair.grade.friction = a("friction", Q::number);
  pair.force = a("force", Q::force);
  return pair;
}

SectorPad sector(Arguments& a) {
  return {a("inner_diameter", Q::short_length), a("outer_diameter", Q::short_length), 1};
}

RoundPad round_pad(Arguments& a) { return {a("pad_diameter", Q::short_length), a("centre_diameter", Q::short_length)}; }

/// Torque of one pair, two faces.
double pair_torque(const PressedPair& pair, bool highest) {
  const TorquePerPressure slope = pair_torque_per_pressure(pair.brake, pair.grade);
  return pad_torque(highest ? slope.highest : slope.capacity, pair.force, 0);
}

/// Sector pair with a force, or with a mean pressure on pads of an angle.
double sector_torque(Arguments& a, bool highest) {
  SectorPad pad = sector(a);
  if (a.has("force")) return pair_torque(pressed(pad, a), highest);
  pad.angle = a("angle", Q::angle);
  PressedPair pair;
  pair.brake.pad = pad;
  const double ring = (pad.outer_diameter * pad.outer_diameter - pad.inner_diameter * pad.inner_diameter) / 4;
  pair.brake.piston_area = pad.angle / 2 * ring;
  pair.grade.friction = a("friction", Q::number);
  pair.force = a("mean_pressure", Q::stress);
  return pair_torque(pair, highest);
}

double sector_power(Arguments& a, bool highest) {
  return slip_power(a("pairs", Q::count) * sector_torque(a, highest), a("speed", Q::rotational_speed));
}

Material material_called(const std::string& name) {
  static const std::map<std::string, Material> names{{"polyester", Material::polyester},
                                                     {"polypropylene", Material::polypropylene},
                                                     {"polyethylene", Material::polyethylene},
                                                     {"cellophane", Material::cellophane},
                                                     {"aluminium foil", Material::aluminium_foil},
                                                     {"paper", Material::paper},
                                                     {"board", Material::board}};
  const auto found = names.find(name);
  if (found == names.end()) throw CaseFault("no material is called '" + name + "'");
  return found->second;
}

Web web(Arguments& a) {
  Web made;
  made.material = material_called(a.text("material"));
  made.width = a("width", Q::short_length);
  made.caliper = a.or_else("caliper", Q::caliper, 1e-4);
  made.basis_weight = a.or_else("basis_weight", Q::basis_weight, 0.1);
  if (a.has("modulus")) made.modulus = a("modulus", Q::modulus);
  if (a.has("yield_strength")) made.yield_strength = a("yield_strength", Q::stress);
  return made;
}

TensionRange table(Arguments& a) {
  const auto range = table_tension(web(a));
  if (!range) throw CaseFault("the table has no such web");
  return *range;
}

RecommendedTension recommended(Arguments& a) {
  Limits limits;
  limits.yield_share = a("yield_share", Q::ratio);
  limits.strain_limit = a("strain_limit", Q::ratio);
  const auto tension = recommended_tension(web(a), limits);
  if (!tension) throw CaseFault("nothing to recommend from");
  return *tension;
}

const Grade& grade_called(const Brake& brake, const std::string& name) {
  for (const Grade& grade : brake.grades) {
    if (grade.name == name) return grade;
  }
  throw CaseFault("the example brake has no grade '" + name + "'");
}

double example_torque(Arguments& a) {
  const Brake brake = example_brake();
  const double slope = pair_torque_per_pressure(brake, grade_called(brake, a.text("grade"))).capacity;
  return a("pairs", Q::count) * pad_torque(slope, a("pressure", Q::pressure), brake.threshold_pressure);
}

/// Number of warnings and errors about one coefficient of friction.
double friction_doubts(Arguments& a) {
  Brake brake = example_brake();
  brake.grades.resize(1);
  brake.grades[0].friction = a("friction", Q::number);
  return static_cast<double>(problems_of(brake, "brake[0]").size());
}

/// Cooling of a map of two points, given as coefficients at speeds.
double two_point_cooling(Arguments& a) {
  const auto point = [&](const std::string& n) {
    return CoolingPoint{a("speed_" + n, Q::rotational_speed), a("coefficient_" + n, Q::number)};
  };
  return cooling_power({point("1"), point("2")}, a("speed", Q::rotational_speed));
}

// ---- the table, by topic
// ---------------------------------------------------------------------------------------------

// roll
Evaluators roll_evaluators() {
  return {
      {"roll_length",
       {Q::web_length,
        [](Arguments& a) {
          return roll_length(a("core_radius", Q::short_length), a("radius", Q::short_length), a("caliper", Q::caliper));
        }}},
      {"roll_radius",
       {Q::short_length,
        [](Arguments& a) {
          return roll_radius(a("core_radius", Q::short_length), a("length", Q::web_length), a("caliper", Q::caliper));
        }}},
      {"radius_rate",
       {Q::speed,
        [](Arguments& a) {
          return radius_rate(a("caliper", Q::caliper), a("speed", Q::speed), a("radius", Q::short_length));
        }}},
      {"web_mass",
       {Q::mass,
        [](Arguments& a) {
          return web_mass(a("basis_weight", Q::basis_weight), a("width", Q::short_length), a("length", Q::web_length));
        }}},
      {"web_inertia",
       {Q::inertia,
        [](Arguments& a) {
          return web_inertia(a("basis_weight", Q::basis_weight), a("width", Q::short_length), a("caliper", Q::caliper),
                             a("core_radius", Q::short_length), a("radius", Q::short_length));
        }}},
      {"core_inertia",
       {Q::inertia, [](Arguments& a) { return core_inertia(a("mass", Q::mass), a("radius", Q::short_length)); }}},
      {"roll_acceleration",
       {angular_acceleration,
        [](Arguments& a) {
          return roll_acceleration(a("acceleration", Q::acceleration), a("caliper", Q::caliper), a("speed", Q::speed),
                                   a("radius", Q::short_length));
        }}},
  };
}

// torque
Evaluators torque_evaluators() {
  return {
      {"brake_torque",
       {Q::torque,
        [](Arguments& a) {
          const double radius = a("radius", Q::short_length);
          const double rate = a.has("roll_acceleration")
                                  ? a("roll_acceleration", angular_acceleration)
                                  : roll_acceleration(a("acceleration", Q::acceleration), a("caliper", Q::caliper),
                                                      a("speed", Q::speed), radius);
          return brake_torque(a("tension", Q::force), radius, a("drag", Q::torque), a("inertia", Q::inertia), rate);
        }}},
      {"slack_deceleration",
       {Q::acceleration,
        [](Arguments& a) {
          return slack_deceleration(a("torque", Q::torque), a("drag", Q::torque), a("inertia", Q::inertia),
                                    a("radius", Q::short_length));
        }}},
      {"overrun_slack",
       {Q::short_length,
        [](Arguments& a) {
          return overrun_slack(a("speed", Q::speed), a("roll_deceleration", Q::acceleration),
                               a("line_deceleration", Q::acceleration));
        }}},
      {"shortest_stop",
       {Q::duration,
        [](Arguments& a) {
          return shortest_stop(a("speed", Q::speed), a("tension_kept", Q::force), a("radius", Q::short_length),
                               a("torque", Q::torque), a("drag", Q::torque), a("inertia", Q::inertia));
        }}},
      {"coast_angle",
       {Q::angle,
        [](Arguments& a) {
          return coast_angle(a("inertia", Q::inertia), a("speed", Q::rotational_speed), a("torque", Q::torque));
        }}},
      {"coast_time",
       {Q::duration,
        [](Arguments& a) {
          return coast_time(a("inertia", Q::inertia), a("speed", Q::rotational_speed), a("torque", Q::torque));
        }}},
  };
}

// brake
Evaluators brake_evaluators() {
  return {
      {"sector_radius_uniform_wear",
       {Q::short_length,
        [](Arguments& a) {
          return sector_radius_uniform_wear(a("inner_radius", Q::short_length), a("outer_radius", Q::short_length));
        }}},
      {"sector_radius_uniform_pressure",
       {Q::short_length,
        [](Arguments& a) {
          return sector_radius_uniform_pressure(a("inner_radius", Q::short_length), a("outer_radius", Q::short_length));
        }}},
      {"round_pad_factor", {Q::number, [](Arguments& a) { return round_pad_factor(a("ratio", Q::number)); }}},
      {"round_pad_factor_uniform_pressure",
       {Q::number, [](Arguments& a) { return round_pad_factor_uniform_pressure(a("ratio", Q::number)); }}},
      {"friction_radius.capacity",
       {Q::short_length, [](Arguments& a) { return friction_radius(round_pad(a)).capacity; }}},
      {"contact_pressure",
       {Q::stress,
        [](Arguments& a) {
          Brake brake;
          brake.piston_area = 1;
          brake.pad_area = a("pad_area", Q::area);
          return contact_pressure(brake, a("force", Q::force));
        }}},
  };
}

// combinations: one pair has two faces
Evaluators combination_evaluators() {
  return {
      {"sector_pair_torque.uniform_wear", {Q::torque, [](Arguments& a) { return sector_torque(a, false); }}},
      {"sector_pair_torque.uniform_pressure", {Q::torque, [](Arguments& a) { return sector_torque(a, true); }}},
      {"sector_face_torque.uniform_wear", {Q::torque, [](Arguments& a) { return sector_torque(a, false) / 2; }}},
      {"sector_power.uniform_wear", {Q::power, [](Arguments& a) { return sector_power(a, false); }}},
      {"sector_power.uniform_pressure", {Q::power, [](Arguments& a) { return sector_power(a, true); }}},
      {"round_pair_torque.capacity",
       {Q::torque, [](Arguments& a) { return pair_torque(pressed(round_pad(a), a), false); }}},
      {"round_face_torque.capacity",
       {Q::torque, [](Arguments& a) { return pair_torque(pressed(round_pad(a), a), false) / 2; }}},
      {"friction_doubts", {Q::count, friction_doubts}},
  };
}

// heat
Evaluators heat_evaluators() {
  return {
      {"slip_power",
       {Q::power, [](Arguments& a) { return slip_power(a("torque", Q::torque), a("speed", Q::rotational_speed)); }}},
      {"slip_power_of_web",
       {Q::power,
        [](Arguments& a) {
          const double radius = a("radius", Q::short_length);
          return slip_power(brake_torque(a("tension", Q::force), radius, 0, 0, 0), a("speed", Q::speed) / radius);
        }}},
      {"stop_energy",
       {Q::energy,
        [](Arguments& a) {
          return stop_energy(a("torque", Q::torque), a("speed", Q::rotational_speed), a("stop_time", Q::duration));
        }}},
      {"adiabatic_rise",
       {Q::temperature_difference,
        [](Arguments& a) {
          return adiabatic_rise(a("energy", Q::energy), a("mass", Q::mass), a("specific_heat", Q::specific_heat));
        }}},
      {"adiabatic_rise_of_a_stopped_ring",
       {Q::temperature_difference,
        [](Arguments& a) {
          const double inertia = core_inertia(a("ring_mass", Q::mass), a("radius_of_gyration", Q::short_length));
          const double energy = 1.0 * coast_angle(inertia, a("speed", Q::rotational_speed), 1.0);  // work of 1 N·m
          return adiabatic_rise(energy, a("mass", Q::mass), a("specific_heat", Q::specific_heat));
        }}},
  };
}

// cooling and air
Evaluators cooling_and_air_evaluators() {
  return {
      {"two_point_cooling", {Q::number, two_point_cooling}},
      {"steady_temperature",
       {Q::temperature,
        [](Arguments& a) {
          return steady_temperature(a("ambient", Q::temperature), a("power", Q::power),
                                    a("conductance", Q::conductance), 0);
        }}},
      {"geopotential_altitude",
       {Q::web_length, [](Arguments& a) { return geopotential_altitude(a("altitude", Q::web_length)); }}},
      {"standard_temperature",
       {Q::temperature, [](Arguments& a) { return standard_temperature(a("altitude", Q::web_length)); }}},
      {"standard_pressure",
       {Q::pressure, [](Arguments& a) { return standard_pressure(a("altitude", Q::web_length)); }}},
      {"standard_density",
       {Q::density,
        [](Arguments& a) {
          const double altitude = a("altitude", Q::web_length);
          return air_density(standard_pressure(altitude), standard_temperature(altitude));
        }}},
      {"air_viscosity", {viscosity, [](Arguments& a) { return air_viscosity(a("temperature", Q::temperature)); }}},
      {"air_conductivity",
       {thermal_conductivity, [](Arguments& a) { return air_conductivity(a("temperature", Q::temperature)); }}},
      {"air_kinematic_viscosity",
       {kinematic_viscosity,
        [](Arguments& a) {
          const double temperature = a("temperature", Q::temperature);
          return air_viscosity(temperature) / air_density(a("pressure", Q::pressure), temperature);
        }}},
  };
}

// wear
Evaluators wear_evaluators() {
  return {
      {"worn_volume",
       {Q::volume, [](Arguments& a) { return worn_volume(a("wear_rate", Q::wear_rate), a("energy", Q::energy)); }}},
      {"pad_life",
       {Q::running_time,
        [](Arguments& a) {
          return pad_life(a("usable_volume", Q::volume), a("wear_rate", Q::wear_rate), a("power", Q::power));
        }}},
  };
}

// tension and pressure
Evaluators tension_and_pressure_evaluators() {
  return {
      {"strain_tension",
       {Q::force,
        [](Arguments& a) {
          return strain_tension(a("strain", Q::ratio), a("modulus", Q::modulus), a("width", Q::short_length),
                                a("caliper", Q::caliper));
        }}},
      {"table_tension.low", {Q::force, [](Arguments& a) { return table(a).low; }}},
      {"table_tension.high", {Q::force, [](Arguments& a) { return table(a).high; }}},
      {"recommended_tension.low", {Q::force, [](Arguments& a) { return recommended(a).low; }}},
      {"recommended_tension.high", {Q::force, [](Arguments& a) { return recommended(a).high; }}},
      {"tension_at_pressure",
       {Q::force,
        [](Arguments& a) {
          return tension_at_pressure(a("pressure", Q::pressure), a("radius", Q::short_length), a("drag", Q::torque),
                                     a("torque_per_pressure", Q::torque_per_pressure), a("threshold", Q::pressure));
        }}},
      {"hand_settings",
       {Q::count,
        [](Arguments& a) {
          return static_cast<double>(hand_settings(a("full_radius", Q::short_length), a("core_radius", Q::short_length),
                                                   a("tolerance", Q::ratio)));
        }}},
  };
}

// the invented example brake
Evaluators example_brake_evaluators() {
  return {
      {"example_torque", {Q::torque, example_torque}},
      {"example_cooling",
       {Q::power,
        [](Arguments& a) { return cooling_power(example_brake().cooling, a("speed", Q::rotational_speed)); }}},
      {"example_problems",
       {Q::count, [](Arguments&) { return static_cast<double>(problems_of(example_brake(), "brake[0]").size()); }}},
  };
}

Evaluators all_evaluators() {
  Evaluators all;
  for (const auto topic :
       {roll_evaluators, torque_evaluators, brake_evaluators, combination_evaluators, heat_evaluators,
        cooling_and_air_evaluators, wear_evaluators, tension_and_pressure_evaluators, example_brake_evaluators,
        heat_depth_evaluators, window_evaluators, shaft_evaluators, control_evaluators, motion_evaluators,
        measure_evaluators, fit_evaluators, signal_evaluators})
    all.merge(topic());
  return all;
}

}  // namespace

const std::map<std::string, Evaluator>& evaluators() {
  static const std::map<std::string, Evaluator> all = all_evaluators();
  return all;
}

}  // namespace holdback::published
