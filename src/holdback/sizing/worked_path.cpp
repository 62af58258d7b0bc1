#include <algorithm>

#include "holdback/physics/air.hpp"
#include "holdback/physics/traction.hpp"
#include "holdback/sizing/worked_parts.hpp"

namespace holdback::sizing {

namespace {

struct IdlerCase {
  const Idler& idler;
  double acceleration;  // [m/s²]
  double viscosity;     // [Pa·s]
  double film;          // [m]
  double friction;      // [1] that the film leaves
  double asked;         // [N·m]
  WorkedTerm tension;
  WorkedTerm diameter;
};

IdlerCase idler_case(const WorkedCase& c, const WindowBound& bound) {
  const auto at = std::find_if(c.site.idlers.begin(), c.site.idlers.end(),
                               [&](const Idler& idler) { return idler.name == bound.part; });
  const Idler& idler = at == c.site.idlers.end() ? c.site.idlers.front() : *at;
  const double radius = idler.diameter / 2;
  const double acceleration = c.demand.speed / std::min(c.demand.stop_time, c.demand.ramp_time);
  const double viscosity = physics::air_viscosity(c.site.ambient);
  const double film = physics::air_film(radius, viscosity, c.demand.speed, bound.tension / c.job.web.width);
  return {idler,
          acceleration,
          viscosity,
          film,
          physics::film_friction(idler.friction, film, idler.roughness),
          idler.drag + idler.inertia * acceleration / radius,
          {"T_idler", "lowest tension that drives the idler", Quantity::force, bound.tension},
          {"d_idler", "diameter of the idler", Quantity::short_length, idler.diameter}};
}

WorkedTerm film_term(const IdlerCase& i) { return {"h", "film of air under the web", Quantity::caliper, i.film}; }

void add_film(WorkedSteps& steps, const WorkedCase& c, const IdlerCase& i) {
  const WorkedTerm viscosity{"eta_air", "viscosity of the air, in Pa·s", Quantity::number, i.viscosity};
  steps.add({"air_viscosity",
             "viscosity of the air, in Pa·s",
             "1.458 · 10^(−6) · Theta_a^1.5 / (Theta_a + 110.4)",
             {c.ambient()},
             viscosity,
             "",
             "ussa1976"});
  steps.add({"air_film",
             "film of air between web and idler (" + i.idler.name + ")",
             "0.643 · d_idler / 2 · (12 · eta_air · v · w / T_idler)^(2 / 3)",
             {i.diameter, viscosity, c.speed(), c.width(), i.tension},
             film_term(i),
             i.asked > 0 ? "at the lowest tension that still drives the idler, which was found by iteration"
                         : "the idler asks for nothing; at this tension the film is three times the roughness",
             "knox1971"});
}

void add_friction_left_by_film(WorkedSteps& steps, const IdlerCase& i) {
  std::string formula = "mu_idler";
  std::vector<WorkedTerm> terms{
      {"mu_idler", "friction of web on idler, without air", Quantity::number, i.idler.friction}};
  if (i.film > i.idler.roughness) {
    formula = "mu_idler · (3 − h / rms) / 2";
    terms.push_back(film_term(i));
    terms.push_back({"rms", "roughness of web and idler", Quantity::caliper, i.idler.roughness});
  }
  steps.add({"film_friction",
             "friction that the film leaves (" + i.idler.name + ")",
             formula,
             terms,
             {"mu_h", "friction through the film", Quantity::number, i.friction},
             "all of it up to a film of the roughness, none from three times that",
             "ducotey1999"});
}

void add_idler_balance(WorkedSteps& steps, const WorkedCase& c, const IdlerCase& i) {
  steps.add({"traction_torque",
             "torque that the web puts into the idler (" + i.idler.name + ")",
             "T_idler · d_idler / 2 · (exp(mu_h · beta) − 1)",
             {i.tension,
              i.diameter,
              {"mu_h", "friction through the film", Quantity::number, i.friction},
              {"beta", "wrap", Quantity::angle, i.idler.wrap}},
             {"M_in", "torque into the idler", Quantity::torque,
              physics::traction_torque(i.tension.value, i.idler.diameter / 2, i.friction, i.idler.wrap)},
             "one side of the balance from which T_idler was found; the next step is the other",
             "beer2010"});
  const WorkedTerm change = c.demand.stop_time < c.demand.ramp_time
                                ? WorkedTerm{"t_s", "time of the stop", Quantity::duration, c.demand.stop_time}
                                : WorkedTerm{"t_r", "time of the ramp", Quantity::duration, c.demand.ramp_time};
  steps.add({"idler_tension",
             "torque that the idler asks for (" + i.idler.name + ")",
             "M_idler + J_idler · v / " + change.symbol + " / (d_idler / 2)",
             {{"M_idler", "drag of the idler", Quantity::torque, i.idler.drag},
              {"J_idler", "inertia of the idler", Quantity::inertia, i.idler.inertia},
              c.speed(),
              change,
              i.diameter},
             {"M_asked", "torque asked for", Quantity::torque, i.asked},
             "equal to the torque that the web puts in: T_idler is the lowest tension that drives this idler",
             derived_here});
}

void add_traction(WorkedSteps& steps, const WorkedCase& c, const WindowBound& bound) {
  if (c.site.idlers.empty()) return;
  const IdlerCase i = idler_case(c, bound);
  if (!(i.tension.value > 0)) return;  // an idler that asks for nothing at rest
  add_film(steps, c, i);
  if (i.asked <= 0) return;
  add_friction_left_by_film(steps, i);
  add_idler_balance(steps, c, i);
}

// ---- sag, balance, cinching -----------------------------------------------------------------------------------------

void add_sag(WorkedSteps& steps, const WorkedCase& c, const WindowBound& bound) {
  steps.add({"sag_tension",
             "lower bound of the tension: sag of the longest span",
             "b · w · 9.80665 · l / (8 · s_sag)",
             {c.basis_weight(),
              c.width(),
              {"l", "longest level span", Quantity::short_length, c.site.path.longest_span.value_or(0)},
              {"s_sag", "sag over span that is accepted", Quantity::ratio, c.site.path.most_sag}},
             {"T_sag", "bound by sag", Quantity::force, bound.tension},
             "the span hangs as a parabola; its weight for each metre is b w g (web_weight)",
             "beer2010"});
}

void add_balance_bound(WorkedSteps& steps, const WorkedCase& c, const WindowBound& bound) {
  const std::size_t i = c.at(bound.diameter);
  steps.add_at(i, {"balance_tension",
                   "lower bound of the tension: balance at standstill, hardest over the roll",
                   "m_web · (d@^2 − d_core^2) / (d_full^2 − d_core^2) · 9.80665 · e_r / (d@ / 2)",
                   {{"m_web", "mass of the web", Quantity::mass, c.demand.web_mass},
                    c.diameter(i),
                    c.core_diameter(),
                    c.full_diameter(),
                    {"e_r", "runout of the roll", Quantity::short_length, c.job.roll.runout}},
                   {"T_balance", "bound by balance", Quantity::force, bound.tension},
                   "the centre of mass lies off the axis by the runout",
                   derived_here});
}

}  // namespace

void add_path_bound(WorkedSteps& steps, const WorkedCase& c, const WindowBound& bound) {
  if (bound.id == BoundId::traction) add_traction(steps, c, bound);
  if (bound.id == BoundId::sag) add_sag(steps, c, bound);
  if (bound.id == BoundId::balance) add_balance_bound(steps, c, bound);
}

void add_cinching(WorkedSteps& steps, const WorkedCase& c) {
  const Limit* limit = c.limit(LimitId::cinching);
  if (limit == nullptr || !c.demand.cinching) return;
  const Cinching& cinching = *c.demand.cinching;
  const std::size_t i = c.at(cinching.diameter);
  const WorkedTerm put{"M_c", "torque through the innermost layer", Quantity::torque, limit->value};
  const WorkedTerm high{"T_high", "high end of the window", Quantity::force, c.demand.tension.high};
  if (cinching.load_case == LoadCase::run) {
    steps.add_at(i, {"cinching_tension",
                     "torque through the innermost layer of the roll",
                     "T_high · d@ / 2",
                     {high, c.diameter(i)},
                     put,
                     "in steady run",
                     by_practice});
    return;
  }
  const bool emergency = cinching.load_case == LoadCase::emergency_stop;
  const Limits& limits = c.site.limits;
  const WorkedTerm share =
      emergency ? WorkedTerm{"s_es", "share of the tension kept in an emergency stop", Quantity::ratio,
                             limits.emergency_stop_tension}
                : WorkedTerm{"s_stop", "share of the tension kept in a stop", Quantity::ratio, limits.stop_tension};
  const WorkedTerm time = emergency ? c.emergency_stop_time()
                                    : WorkedTerm{"t_s", "time of the stop", Quantity::duration, c.demand.stop_time};
  steps.add_at(i, {"cinching_tension",
                   "torque through the innermost layer of the roll",
                   share.symbol + " · T_high · d@ / 2 + J_web@ · v / " + time.symbol + " / (d@ / 2)",
                   {share,
                    high,
                    c.diameter(i),
                    {"J_web@", "inertia of the web alone", Quantity::inertia, c.demand.web_inertia[i]},
                    c.speed(),
                    time},
                   put,
                   "the web outside of that layer has to be stopped through it",
                   by_practice});
}

}  // namespace holdback::sizing
