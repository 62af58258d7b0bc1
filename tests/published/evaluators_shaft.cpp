// Evaluators of the shaft: beams, whirl, sections, fatigue, bearings and grip.
#include <numbers>

#include "holdback/physics/beam.hpp"
#include "holdback/physics/shaft.hpp"
#include "holdback/physics/whirl.hpp"
#include "published/evaluators.hpp"

namespace holdback::published {

using namespace physics;
using Q = Quantity;

namespace {

// Kinds that no stand file has.
constexpr const char* rigidity_unit = "N m2";
constexpr const char* angular_acceleration = "rad/s2";

double bore(Arguments& a) { return a.or_else("bore", Q::short_length, 0); }

/// A beam of one section on bearings `span` apart, perhaps with an overhang beyond the second one and with another
/// rigidity from `step` on. With `clamped_rigidity` there is a stiff stub without mass between the bearings and the
/// beam begins at the second one: a cantilever when the stub is stiff enough.
Beam beam(Arguments& a) {
  BeamStretch stretch;
  if (a.has("rigidity")) {
    stretch.rigidity = a("rigidity", rigidity_unit);
    stretch.mass_per_length = a.or_else("mass_per_length", "kg/m", 0);
  } else {
    const double diameter = a("diameter", Q::short_length), inside = bore(a);
    stretch.rigidity = bending_rigidity(a("modulus", Q::modulus), diameter, inside);
    const double area = std::numbers::pi / 4 * (diameter * diameter - inside * inside);
    stretch.mass_per_length = area * a.or_else("density", Q::density, 0);
  }
  Beam made;
  made.second_bearing = a("span", Q::short_length);
  const double overhang = a.or_else("overhang", Q::short_length, 0);
  if (a.has("clamped_rigidity")) {
    made.stretches.push_back({made.second_bearing, a("clamped_rigidity", rigidity_unit), 0});
    stretch.length = overhang;
  } else {
    stretch.length = made.second_bearing + overhang;
  }
  made.stretches.push_back(stretch);
  if (a.has("step")) {
    BeamStretch next = stretch;
    next.rigidity = a("rigidity_after_step", rigidity_unit);
    made.stretches.back().length = a("step", Q::short_length);
    next.length = stretch.length - made.stretches.back().length;
    made.stretches.push_back(next);
  }
  return made;
}

/// Loads that act downwards: force_1 at at_1, or from from_1 to to_1, and so on.
template <class Load, class Make>
std::vector<Load> numbered(Arguments& a, const std::string& name, const Dimension& dimension, Make make) {
  std::vector<Load> made;
  for (int i = 1; a.has(name + "_" + std::to_string(i)); ++i) {
    const std::string n = "_" + std::to_string(i);
    const double amount = a(name + n, dimension);
    const bool point = a.has("at" + n);
    const double begin = a((point ? "at" : "from") + n, Q::short_length);
    made.push_back(make(begin, point ? begin : a("to" + n, Q::short_length), amount));
  }
  return made;
}

BentBeam bent(Arguments& a) {
  const auto down = [](double begin, double end, double force) { return BeamLoad{begin, end, {0, -force}}; };
  return bend_beam(beam(a), numbered<BeamLoad>(a, "force", Q::force, down));
}

double whirl(Arguments& a) {
  const auto mass = [](double begin, double end, double amount) { return BeamMass{begin, end, amount}; };
  return beam_whirl(beam(a), numbered<BeamMass>(a, "mass", Q::mass, mass));
}

BearingKind kind(Arguments& a) {
  const std::string name = a.text("kind");
  if (name == "ball") return BearingKind::ball;
  if (name == "roller") return BearingKind::roller;
  throw CaseFault("'" + name + "' is no kind of bearing");
}

double bearing_hours(Arguments& a) {
  const double life = bearing_life(a("rating", Q::force), a("load", Q::force), kind(a));
  return bearing_running_time(life, a("speed", Q::rotational_speed));
}

double bearing_load(Arguments& a) {
  std::vector<BearingDuty> duties;
  for (int i = 1; a.has("load_" + std::to_string(i)); ++i) {
    const std::string n = "_" + std::to_string(i);
    duties.push_back({a("load" + n, Q::force), a("speed" + n, Q::rotational_speed), a("time" + n, Q::running_time)});
  }
  return equivalent_bearing_load(duties, kind(a));
}

/// DE-Goodman of a solid shaft from its alternating and steady moments and torques.
double notched_shaft_safety(Arguments& a) {
  const double diameter = a("diameter", Q::short_length);
  const double notch = a("notch_factor", Q::number), shear_notch = a("shear_notch_factor", Q::number);
  const auto stress = [&](const std::string& name) {
    return von_mises_stress(notch * bending_stress(a(name + "_moment", Q::torque), diameter, 0),
                            shear_notch * torsion_stress(a(name + "_torque", Q::torque), diameter, 0));
  };
  return fatigue_safety(stress("alternating"), stress("steady"), a("endurance_limit", Q::stress),
                        a("tensile_strength", Q::stress));
}

Evaluators beam_evaluators() {
  return {
      {"beam_deflection",
       {Q::short_length, [](Arguments& a) { return -bent(a).deflection(a("at", Q::short_length)).vertical; }}},
      {"beam_moment", {Q::torque, [](Arguments& a) { return bent(a).moment(a("at", Q::short_length)).vertical; }}},
      {"bend_beam.largest_deflection", {Q::short_length, [](Arguments& a) { return bent(a).largest_deflection; }}},
      {"bend_beam.largest_deflection_place",
       {Q::short_length, [](Arguments& a) { return bent(a).largest_deflection_place; }}},
      {"bend_beam.largest_moment", {Q::torque, [](Arguments& a) { return bent(a).largest_moment; }}},
      {"bend_beam.first_slope", {Q::angle, [](Arguments& a) { return bent(a).first_slope; }}},
      {"bend_beam.second_slope", {Q::angle, [](Arguments& a) { return bent(a).second_slope; }}},
      {"bend_beam.first_reaction", {Q::force, [](Arguments& a) { return bent(a).first_reaction.vertical; }}},
      {"bend_beam.second_reaction", {Q::force, [](Arguments& a) { return bent(a).second_reaction.vertical; }}},
      {"beam_whirl", {Q::rotational_speed, whirl}},
      {"uniform_whirl",
       {Q::rotational_speed,
        [](Arguments& a) {
          const Beam made = beam(a);
          return uniform_whirl(made.stretches[0].rigidity, made.stretches[0].mass_per_length, made.second_bearing);
        }}},
  };
}

Evaluators section_evaluators() {
  return {
      {"bending_rigidity",
       {rigidity_unit,
        [](Arguments& a) {
          return bending_rigidity(a("modulus", Q::modulus), a("diameter", Q::short_length), bore(a));
        }}},
      {"bending_stress",
       {Q::stress,
        [](Arguments& a) { return bending_stress(a("moment", Q::torque), a("diameter", Q::short_length), bore(a)); }}},
      {"torsion_stress",
       {Q::stress,
        [](Arguments& a) { return torsion_stress(a("torque", Q::torque), a("diameter", Q::short_length), bore(a)); }}},
      {"torsion_twist",
       {Q::angle,
        [](Arguments& a) {
          return torsion_twist(a("torque", Q::torque), a("length", Q::short_length), a("shear_modulus", Q::modulus),
                               a("diameter", Q::short_length), bore(a));
        }}},
      {"endurance_limit",
       {Q::stress,
        [](Arguments& a) {
          return endurance_limit(a("tensile_strength", Q::stress), a("diameter", Q::short_length));
        }}},
      {"notched_shaft_safety", {Q::number, notched_shaft_safety}},
  };
}

Evaluators bearing_evaluators() {
  return {
      {"bearing_life",
       {Q::number, [](Arguments& a) { return bearing_life(a("rating", Q::force), a("load", Q::force), kind(a)); }}},
      {"bearing_hours", {Q::running_time, bearing_hours}},
      {"equivalent_bearing_load", {Q::force, bearing_load}},
      {"grip_torque",
       {Q::torque,
        [](Arguments& a) {
          return grip_torque(a("tension", Q::force), a("radius", Q::short_length), a("outside_inertia", Q::inertia),
                             a("roll_deceleration", angular_acceleration));
        }}},
  };
}

}  // namespace

Evaluators shaft_evaluators() {
  Evaluators all = beam_evaluators();
  all.merge(section_evaluators());
  all.merge(bearing_evaluators());
  return all;
}

}  // namespace holdback::published
