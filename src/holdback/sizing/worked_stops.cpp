#include <algorithm>

#include "holdback/physics/conduction.hpp"
#include "holdback/physics/heat.hpp"
#include "holdback/physics/torque.hpp"
#include "holdback/sizing/disc.hpp"
#include "holdback/sizing/worked_parts.hpp"

namespace holdback::sizing {

namespace {

constexpr LoadCase emergency = LoadCase::emergency_stop;

std::vector<WorkedTerm> with_power(const WorkedCase& c, std::size_t i, std::vector<WorkedTerm> terms) {
  for (const WorkedTerm& term : {c.torque_term(emergency, i), c.speed(), c.diameter(i)}) terms.push_back(term);
  return terms;
}

void add_bulk(WorkedSteps& steps, const WorkedCase& c) {
  const Limit* limit = c.limit(LimitId::stop_temperature);
  if (limit == nullptr) return;
  const std::size_t i = c.at(limit->diameter);
  const double torque = c.torque(emergency, i);
  if (torque <= 0) return;
  add_balance(steps, c, i);
  add_torque(steps, c, emergency, i);
  const WorkedTerm energy{"E_stop", "energy into all discs in the emergency stop", Quantity::energy,
                          physics::stop_energy(torque, c.demand.rotational_speed[i], c.demand.emergency_stop_time)};
  steps.add_at(i, {"stop_energy", "energy into all discs in the emergency stop (" + c.place(i) + ")",
                   "M_es@ · v / (d@ / 2) · t_es / 2", with_power(c, i, {c.emergency_stop_time()}), energy,
                   "the torque is constant and the speed falls evenly", derived_here});
  steps.add_at(i, {"adiabatic_rise",
                   "temperature of the disc after the emergency stop, highest over the roll",
                   "Theta@ + E_stop / (N · m_d · c_d)",
                   {c.temperature(i),
                    energy,
                    c.brakes(),
                    {"m_d", "mass of one disc", Quantity::mass, c.brake.disc_mass},
                    {"c_d", "specific heat of the disc", Quantity::specific_heat, c.brake.specific_heat}},
                   {"Theta_bulk", "disc after the emergency stop", Quantity::temperature, limit->value},
                   "nothing is lost during the stop",
                   "bhandari"});
}

/// The share of the heat that goes into the disc and the closed form for a deep disc, beside which the value read from
/// the slab's solution can be held.
void add_deep_disc(WorkedSteps& steps, const WorkedCase& c, std::size_t i) {
  const double ring = rubbed_ring(c.brake).area;
  const WorkedTerm conductivity{"k_d", "conductivity of the disc", Quantity::thermal_conductivity,
                                c.brake.disc_conductivity};
  const WorkedTerm density{"rho_d", "density of the disc", Quantity::density, c.brake.disc_density};
  const WorkedTerm heat{"c_d", "specific heat of the disc", Quantity::specific_heat, c.brake.specific_heat};
  const WorkedTerm share{"x_d", "share of the heat that goes into the disc", Quantity::ratio, heat_share(c.brake, 1)};
  steps.add({"disc_heat_share",
             "share of the friction heat that goes into the disc",
             "sqrt(k_d · rho_d · c_d) / (sqrt(k_d · rho_d · c_d) + chi · sqrt(k_p · rho_p · c_p))",
             {conductivity,
              density,
              heat,
              {"chi", "pad over rubbed ring", Quantity::ratio, std::min(1.0, c.brake.pad_area / ring)},
              {"k_p", "conductivity of the pad", Quantity::thermal_conductivity, pad_material.conductivity},
              {"rho_p", "density of the pad", Quantity::density, pad_material.density},
              {"c_p", "specific heat of the pad", Quantity::specific_heat, pad_material.specific_heat}},
             share,
             "with one pair, which leaves most to the disc: the safe side",
             "newcomb1960"});
  const double flux = share.value * physics::slip_power(c.torque(emergency, i), c.demand.rotational_speed[i]) /
                      c.candidate.brakes / (2 * ring);
  steps.add_at(i, {"stop_surface_peak",
                   "rise of the face above the bulk if the disc were very thick (" + c.place(i) + ")",
                   "2 · sqrt(2) / (3 · sqrt(π)) · x_d · M_es@ · v / (d@ / 2) / (N · 2 · A_ring) · sqrt(t_es) / "
                   "sqrt(k_d · rho_d · c_d)",
                   with_power(c, i,
                              {share,
                               c.brakes(),
                               {"A_ring", "rubbed ring of one face", Quantity::area, ring},
                               c.emergency_stop_time(),
                               conductivity,
                               density,
                               heat}),
                   {"dTheta_thick", "rise of the face of a thick disc", Quantity::temperature_difference,
                    physics::stop_surface_peak(
                        flux, c.demand.emergency_stop_time,
                        physics::effusivity(c.brake.disc_conductivity, c.brake.disc_density, c.brake.specific_heat))},
                   "closed form beside the rise that was used: a disc of its own thickness rises as much or more",
                   "newcomb1960"});
}

void add_face(WorkedSteps& steps, const WorkedCase& c) {
  const Limit* limit = c.limit(LimitId::stop_surface);
  if (limit == nullptr) return;
  const std::size_t i = c.at(limit->diameter);
  if (c.torque(emergency, i) <= 0) return;
  add_balance(steps, c, i);
  add_torque(steps, c, emergency, i);
  add_deep_disc(steps, c, i);
  steps.add_at(i, {"slab_stop_peak",
                   "temperature of the disc's face in the emergency stop, highest over the roll",
                   "Theta@ + M_es@ · v / (d@ / 2) / N · s_face",
                   with_power(c, i,
                              {c.temperature(i),
                               c.brakes(),
                               {"s_face", "rise of the face for each watt with which the stop begins, in K/W",
                                Quantity::number, c.disc.surface_per_watt}}),
                   {"Theta_face", "face of the disc in the emergency stop", Quantity::temperature, limit->value},
                   "s_face is read, for this time of the stop, from the solution of a slab rubbed on both faces",
                   "carslaw1959"});
}

// ---- slack and web break --------------------------------------------------------------------------------------------

/// What hot pads of the lowest friction give at the highest pressure [N·m].
double weakest_torque(const WorkedCase& c, std::size_t i) { return c.capacity().value * c.friction_left(i); }

void add_slack(WorkedSteps& steps, const WorkedCase& c, const StopFacts& stop, const char* which) {
  if (stop.slack <= 0 || stop.runs_away) return;
  const std::size_t i = c.at(stop.slack_diameter);
  add_inertia(steps, c, i);
  add_fade(steps, c, i);
  const std::string symbol = &stop == &c.fit.stop ? "t_s" : "t_es";
  const double braking = weakest_torque(c, i);
  const WorkedTerm rim{"a_r" + c.at_place(i), "deceleration of the roll's rim with the web slack",
                       Quantity::acceleration,
                       physics::slack_deceleration(braking, c.survey.drag, c.inertia(i), c.demand.radius[i])};
  steps.add_at(i, {"slack_deceleration",
                   "deceleration of the rim with the web slack (" + c.place(i) + ")",
                   "d@ / 2 · (M_cap · f@ + M_drag) / J@",
                   {c.diameter(i), c.capacity(), c.friction_left_term(i), c.drag(), c.inertia_term(i)},
                   rim,
                   "",
                   derived_here});
  steps.add_at(i, {"overrun_slack",
                   std::string("web thrown in the ") + which,
                   "v^2 / 2 · (1 / a_r@ − " + symbol + " / v)",
                   {c.speed(), rim, {symbol, std::string("time of the ") + which, Quantity::duration, stop.time}},
                   {"s_slack" + symbol.substr(1), "web thrown", Quantity::short_length, stop.slack},
                   "the stopping distance of the roll less that of the line",
                   derived_here});
}

void add_web_break(WorkedSteps& steps, const WorkedCase& c) {
  const WebBreakFacts& facts = c.fit.web_break;
  if (facts.runs_away || facts.turns <= 0) return;
  const std::size_t i = c.at(facts.diameter);
  add_inertia(steps, c, i);
  add_fade(steps, c, i);
  steps.add_at(i, {"coast_angle",
                   "angle that the roll coasts after a web break, most over the roll",
                   "J@ · (v / (d@ / 2))^2 / (2 · (M_cap · f@ + M_drag))",
                   {c.inertia_term(i), c.speed(), c.diameter(i), c.capacity(), c.friction_left_term(i), c.drag()},
                   {"theta_b", "angle until the roll stands", Quantity::turns, facts.turns},
                   "the energy of the roll is taken up by the brake and the drag",
                   "downey2023"});
}

}  // namespace

void add_stops(WorkedSteps& steps, const WorkedCase& c) {
  add_bulk(steps, c);
  add_face(steps, c);
  add_slack(steps, c, c.fit.stop, "stop");
  add_slack(steps, c, c.fit.emergency_stop, "emergency stop");
  add_web_break(steps, c);
}

}  // namespace holdback::sizing
