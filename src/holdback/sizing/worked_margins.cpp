#include "holdback/sizing/worked_parts.hpp"

namespace holdback::sizing {

namespace {

/// One side of a margin as arithmetic, with the terms in it.
struct Side {
  std::string formula{};
  std::vector<WorkedTerm> terms{};
};

/// Symbols of value and bound where steps before led to them.
struct Symbols {
  std::string value;
  std::string bound;
};

/// Of the torque available the step is left out where it is the capacity itself.
std::string available(const WorkedCase& c, const Limit& limit) {
  return c.friction_left(c.at(limit.diameter)) >= 1 ? "M_cap" : available_symbol(limit.load_case);
}

Symbols symbols_of(const WorkedCase& c, const Limit& limit) {
  const std::string place = limit.diameter > 0 ? WorkedCase::at_place(c.at(limit.diameter)) : "";
  const std::pair<LimitId, Symbols> known[] = {
      {LimitId::tension_window, {"T_high", "T_yield"}},
      {LimitId::highest_pressure, {"p_most", "p_high"}},
      {LimitId::lowest_pressure, {"p_least", "p_low"}},
      {LimitId::lowest_tension, {"T_floor", "T_low"}},
      {LimitId::tension_resolution, {"dT", ""}},
      {LimitId::ramp_tension, {"T_ramp", "T_high"}},
      {LimitId::stop_torque, {"M_stop" + place, available(c, limit)}},
      {LimitId::emergency_stop_torque, {"M_es" + place, available(c, limit)}},
      {LimitId::holding_torque, {"M_hold" + place, available_symbol(LoadCase::hold)}},
      {LimitId::torque_rating, {c.torque_term(limit.load_case, c.at(limit.diameter)).symbol, ""}},
      {LimitId::disc_speed, {"", "omega_rated"}},
      {LimitId::slip_power, {"Q_disc" + place, "Q_rated"}},
      {LimitId::disc_temperature, {"Theta" + place, "Theta_rated"}},
      {LimitId::pad_temperature, {"Theta" + place, "Theta_grade"}},
      {LimitId::stop_temperature, {"Theta_bulk", "Theta_least"}},
      {LimitId::stop_surface, {"Theta_face", "Theta_grade"}},
      {LimitId::pressure_speed, {"pv", "pv_grade"}},
      {LimitId::pad_life, {"t_life", "t_life_least"}},
      {LimitId::idler_traction, {"T_idler", "T_low"}},
      {LimitId::span_sag, {"T_sag", "T_low"}},
      {LimitId::roll_balance, {"T_balance", "T_low"}},
      {LimitId::cinching, {"M_c", ""}},
      {LimitId::core_grip, {"M_grip", "M_grip_most"}},
      {LimitId::shaft_fatigue, {"n_f", "n_f_least"}},
      {LimitId::bearing_life, {"t_b", "t_b_least"}},
  };
  for (const auto& [id, symbols] : known)
    if (id == limit.id) return symbols;
  return {};
}

/// The value, from its parts where no step came to it.
Side value_of(const WorkedCase& c, const Limit& limit, const std::string& symbol) {
  if (limit.id == LimitId::disc_speed || limit.id == LimitId::whirl_speed) {
    const WorkedTerm diameter = c.diameter(c.at(limit.diameter));
    return {"(v / (" + diameter.symbol + " / 2))", {c.speed(), diameter}};
  }
  return {symbol, {{symbol, std::string(info(limit.id).name) + ": value", info(limit.id).kind, limit.value}}};
}

/// The bound, the same.
Side bound_of(const WorkedCase& c, const Limit& limit, const std::string& symbol) {
  if (limit.id == LimitId::tension_resolution)
    return {"(eps · T)", {{"eps", "tolerance of the tension", Quantity::ratio, c.demand.tolerance}, c.tension()}};
  if (limit.id == LimitId::torque_rating)
    return {"(N · M_rated)",
            {c.brakes(), {"M_rated", "rated torque of one brake", Quantity::torque, c.brake.rated_torque}}};
  if (limit.id == LimitId::whirl_speed) {
    const ShaftFacts& shaft = *c.demand.shaft;
    const bool core = c.at(limit.diameter) == WorkedCase::core;
    return {"(s_w · omega_w)",
            {{"s_w", "highest share of the first whirl speed", Quantity::ratio, c.site.limits.whirl_share},
             {"omega_w", std::string("first whirl speed, ") + (core ? "roll at the core" : "full roll"),
              Quantity::rotational_speed, core ? shaft.whirl_speed : shaft.whirl_speed_full}}};
  }
  if (limit.id == LimitId::cinching) {
    const WorkedTerm diameter = c.diameter(c.at(limit.diameter));
    return {"(q_w · w · " + diameter.symbol + " / 2)",
            {{"q_w", "tension per width that the roll was wound with", Quantity::tension_per_width,
              c.job.web.wound_tension.value_or(0)},
             c.width(),
             diameter}};
  }
  const char* name = info(limit.id).sense == Sense::at_most ? ": most allowed" : ": least allowed";
  return {symbol, {{symbol, std::string(info(limit.id).name) + name, info(limit.id).kind, limit.bound}}};
}

std::string quotient(const WorkedCase& c, const Limit& limit, std::vector<WorkedTerm>& terms) {
  const Symbols symbols = symbols_of(c, limit);
  const Side value = value_of(c, limit, symbols.value);
  const Side bound = bound_of(c, limit, symbols.bound);
  terms = bound.terms;
  terms.insert(terms.end(), value.terms.begin(), value.terms.end());
  if (info(limit.id).kind == Quantity::temperature) {
    terms.push_back(c.ambient());
    return "(" + symbols.bound + " − Theta_a) / (" + symbols.value + " − Theta_a)";
  }
  if (info(limit.id).sense == Sense::at_most) return bound.formula + " / " + value.formula;
  return value.formula + " / " + bound.formula;
}

std::string note_of(const Limit& limit) {
  const std::string state(key_of(limit.state));
  if (limit.id == LimitId::whirl_speed)
    return state + "; the whirl speed is the lowest root of the beam's swings, found by iteration";
  if (info(limit.id).kind == Quantity::temperature)
    return state + "; by the rise above the air, which is what power and cooling govern";
  return state;
}

void add_margin(WorkedSteps& steps, const WorkedCase& c, const Limit& limit) {
  const std::string name = "margin: " + std::string(info(limit.id).name);
  const WorkedTerm margin{"margin", "margin, 1 is just kept", Quantity::number, limit.margin};
  std::vector<WorkedTerm> terms;
  std::string formula = quotient(c, limit, terms);
  std::string note = note_of(limit);
  if (limit.margin >= margin_cap || limit.margin <= 0) {
    formula = limit.margin > 0 ? "100" : "0";
    note += limit.margin > 0 ? "; a hundred times and more in hand are given as 100" : "; nothing of it is kept";
  }
  steps.add(
      {"assess", name, formula, terms, margin, note, limit.known == Known::practice ? by_practice : by_definition});
}

}  // namespace

void add_margins(WorkedSteps& steps, const WorkedCase& c) {
  for (const Limit& limit : c.fit.limits) add_margin(steps, c, limit);
}

}  // namespace holdback::sizing
