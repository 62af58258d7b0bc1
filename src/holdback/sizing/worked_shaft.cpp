#include <algorithm>
#include <cmath>
#include <numbers>

#include "holdback/physics/shaft.hpp"
#include "holdback/sizing/shaft.hpp"
#include "holdback/sizing/worked_parts.hpp"

namespace holdback::sizing {

namespace {

WorkedTerm grip_term(const WorkedCase& c) {
  return {"M_grip", "torque through the grip on the core", Quantity::torque, c.demand.shaft->grip_torque};
}

void add_grip(WorkedSteps& steps, const WorkedCase& c) {
  const std::size_t i = c.at(c.demand.shaft->grip_diameter);
  const double running = c.demand.tension.setpoint * c.demand.radius[i];
  const std::string name = "torque through the grip on the core, highest over the roll";
  if (c.demand.shaft->grip_torque <= running) {
    steps.add_at(i, {"grip_torque",
                     name,
                     "T · d@ / 2",
                     {c.tension(), c.diameter(i)},
                     grip_term(c),
                     "in steady run, which asks more than the emergency stop",
                     derived_here});
    return;
  }
  const double core = c.job.roll.core_mass * c.job.roll.core_radius() * c.job.roll.core_radius();
  steps.add_at(i, {"grip_torque",
                   name,
                   "s_es · T · d@ / 2 + J_o · v / t_es / (d@ / 2)",
                   {{"s_es", "share of the setpoint kept in an emergency stop", Quantity::ratio,
                     c.site.limits.emergency_stop_tension},
                    c.tension(),
                    c.diameter(i),
                    {"J_o", "inertia of web and core", Quantity::inertia, c.demand.web_inertia[i] + core},
                    c.speed(),
                    c.emergency_stop_time()},
                   grip_term(c),
                   "in the emergency stop",
                   derived_here});
}

/// The shaft's own mass and where it acts, its sections drawn out to the roll's ends where these lie beyond them.
struct OwnWeight {
  double mass{};   // [kg]
  double place{};  // [m] from the first bearing
};

OwnWeight own_weight(const Shaft& shaft, double width) {
  const double begin = std::min(0.0, shaft.roll_centre - width / 2);
  double sections = 0;
  for (const ShaftSection& section : shaft.sections) sections += section.length;
  const double end = std::max({sections, shaft.bearing_span, shaft.roll_centre + width / 2});
  OwnWeight weight;
  double moment = 0;
  double from = begin;
  double reached = 0;
  for (std::size_t k = 0; k < shaft.sections.size(); ++k) {
    const ShaftSection& section = shaft.sections[k];
    reached += section.length;
    const double to = k + 1 == shaft.sections.size() ? end : reached;
    const double area = std::numbers::pi / 4 * (section.diameter * section.diameter - section.bore * section.bore);
    const double mass = shaft.density * area * (to - from);
    weight.mass += mass;
    moment += mass * (from + to) / 2;
    from = to;
  }
  weight.place = weight.mass > 0 ? moment / weight.mass : 0;
  return weight;
}

/// Forces and moments of the shaft in balance, for the bearing that carries more.
void add_bearing_load(WorkedSteps& steps, const WorkedCase& c, const physics::ShaftState& state) {
  const Shaft& shaft = *c.site.shaft;
  const OwnWeight own = own_weight(shaft, c.job.web.width);
  const bool second = state.second_bearing_load >= state.first_bearing_load;
  const std::string roll = second ? "x_roll / l_b" : "(1 − x_roll / l_b)";
  const std::string self = second ? "x_shaft / l_b" : "(1 − x_shaft / l_b)";
  steps.add({"bend_beam",
             std::string("load on the ") + (second ? "second" : "first") + " bearing, full roll",
             "sqrt((T · cos(phi) · " + roll + ")^2 + (T · sin(phi) · " + roll + " − 9.80665 · (m_roll · " + roll +
                 " + m_shaft · " + self + "))^2)",
             {c.tension(),
              {"phi", "direction of the web's pull, from level", Quantity::angle, shaft.pull_angle},
              {"x_roll", "middle of the roll, from the first bearing", Quantity::short_length, shaft.roll_centre},
              {"l_b", "distance of the bearings", Quantity::short_length, shaft.bearing_span},
              {"m_roll", "mass of the full roll", Quantity::mass, c.fit.roll.mass},
              {"m_shaft", "mass of the shaft", Quantity::mass, own.mass},
              {"x_shaft", "middle of the shaft's weight", Quantity::short_length, own.place}},
             {"F_b", "load on the bearing", Quantity::force, c.demand.shaft->bearing_load},
             "balance of moments about the other bearing; bending follows from the same loads, stretch by stretch",
             "roark"});
}

void add_stresses(WorkedSteps& steps, const WorkedCase& c, const physics::ShaftState& state) {
  const ShaftFacts& facts = *c.demand.shaft;
  const ShaftSection& section = c.site.shaft->sections[state.worst_section];
  const WorkedTerm outside{"D", "diameter of the shaft there", Quantity::short_length, section.diameter};
  const WorkedTerm inside{"D_i", "bore of the shaft there", Quantity::short_length, section.bore};
  steps.add({"bending_stress",
             "bending stress where the shaft is safest by least, full roll",
             "32 · M_bend · D / (π · (D^4 − D_i^4))",
             {{"M_bend", "bending moment there", Quantity::torque, state.bending_moment}, outside, inside},
             {"sigma_b", "bending stress", Quantity::stress, facts.bending_stress},
             "M_bend is the largest of the beam under its loads, found stretch by stretch (bend_beam)",
             "shigley"});
  steps.add({"torsion_stress",
             "shear stress there",
             "16 · M_grip · D / (π · (D^4 − D_i^4))",
             {grip_term(c), outside, inside},
             {"tau", "shear stress", Quantity::stress, facts.torsion_stress},
             "the torque is taken to pass through the whole shaft",
             "gere"});
}

WorkedTerm endurance(const WorkedCase& c, double diameter) {
  return {"S_e", "endurance limit", Quantity::stress,
          physics::endurance_limit(c.site.shaft->tensile_strength, diameter)};
}

/// S_e = k_a k_b · 0.5 S_ut in the pieces that hold for this strength and diameter.
void add_endurance(WorkedSteps& steps, const WorkedCase& c, double diameter) {
  const double strength = c.site.shaft->tensile_strength;
  const bool smooth = 4.51 * std::pow(strength / 1e6, -0.265) >= 1;
  const bool capped = 0.5 * strength >= 700e6;
  const double millimetres = diameter * 1e3;
  std::string size = "(1.51 · (1000 · D)^(−0.157))";
  if (millimetres <= 51) size = "(1000 · D / 7.62)^(−0.107)";
  if (millimetres <= 2.79) size = "(2.79 / 7.62)^(−0.107)";
  std::vector<WorkedTerm> terms;
  if (!smooth || !capped) terms.push_back({"S_ut", "tensile strength", Quantity::stress, strength});
  if (millimetres > 2.79) terms.push_back({"D", "diameter of the shaft there", Quantity::short_length, diameter});
  steps.add({"endurance_limit", "endurance limit of the shaft",
             (smooth ? std::string() : "4.51 · (S_ut / 1000000)^(−0.265) · ") + size + " · " +
                 (capped ? "700000000" : "0.5 · S_ut"),
             terms, endurance(c, diameter), "surface as machined, size, and half of the tensile strength", "shigley"});
}

void add_fatigue(WorkedSteps& steps, const WorkedCase& c, double diameter) {
  const Shaft& shaft = *c.site.shaft;
  const ShaftFacts& facts = *c.demand.shaft;
  steps.add({"fatigue_safety",
             "safety of the shaft against fatigue",
             "1 / (K_f · sigma_b / S_e + sqrt(3) · K_f · tau / S_ut)",
             {{"K_f", "notch factor", Quantity::number, shaft.notch_factor},
              {"sigma_b", "bending stress", Quantity::stress, facts.bending_stress},
              endurance(c, diameter),
              {"tau", "shear stress", Quantity::stress, facts.torsion_stress},
              {"S_ut", "tensile strength", Quantity::stress, shaft.tensile_strength}},
             {"n_f", "safety", Quantity::number, facts.safety},
             "bending turns with the shaft and is reversed at each turn, torsion is steady (von_mises_stress)",
             "shigley"});
}

void add_bearings(WorkedSteps& steps, const WorkedCase& c) {
  const Shaft& shaft = *c.site.shaft;
  const ShaftFacts& facts = *c.demand.shaft;
  if (!facts.bearing_life || !shaft.bearing_rating) return;
  const BearingCourse course = bearing_course(c.job, c.demand, shaft);
  constexpr double no_end = 1e12;  // [s] shown for bearings that nothing loads
  constexpr std::size_t places = 5;
  if (!(course.load > 0) || *facts.bearing_life >= no_end || course.duties.size() != places) return;
  const WorkedTerm exponent{"p", "exponent of the life", Quantity::number,
                            shaft.bearing_kind == BearingKind::ball ? 3 : 10.0 / 3};
  std::vector<WorkedTerm> terms{exponent};
  for (std::size_t k = 0; k < places; ++k)
    terms.push_back({"F_" + std::to_string(k + 1),
                     "load at place " + std::to_string(k + 1) + " of 5 from core to full roll", Quantity::force,
                     course.duties[k].load});
  const WorkedTerm load{"P", "equivalent load of the harder loaded bearing", Quantity::force, course.load};
  steps.add({"equivalent_bearing_load", "equivalent load of the harder loaded bearing over the roll",
             "((F_1^p / 2 + F_2^p + F_3^p + F_4^p + F_5^p / 2) / 4)^(1 / p)", terms, load,
             "each layer of the web is one turn, so equal steps of radius weigh alike; the ends count half", "iso281"});
  steps.add({"bearing_life",
             "running time that the bearings last",
             "2 · π / omega · 1000000 · (C / P)^p",
             {{"omega", "speed of the shaft, mean over time", Quantity::rotational_speed, course.speed},
              {"C", "rating of one bearing", Quantity::force, *shaft.bearing_rating},
              load,
              exponent},
             {"t_b", "life of the bearings", Quantity::running_time, *facts.bearing_life},
             "reached by nine bearings out of ten (bearing_running_time)",
             "iso281"});
}

}  // namespace

void add_shaft(WorkedSteps& steps, const WorkedCase& c) {
  if (!c.demand.shaft || !c.site.shaft) return;
  add_grip(steps, c);
  const physics::ShaftState state =
      physics::shaft_state(*c.site.shaft, c.demand.core_mass + c.demand.web_mass, c.job.web.width,
                           c.demand.tension.setpoint, c.demand.shaft->grip_torque);
  if (!std::isfinite(state.bending_stress) || !std::isfinite(state.safety)) return;  // nothing bears it
  add_bearing_load(steps, c, state);
  add_stresses(steps, c, state);
  const double diameter = c.site.shaft->sections[state.worst_section].diameter;
  add_endurance(steps, c, diameter);
  add_fatigue(steps, c, diameter);
  add_bearings(steps, c);
}

}  // namespace holdback::sizing
