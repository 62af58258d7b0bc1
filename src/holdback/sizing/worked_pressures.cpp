#include "holdback/physics/brake.hpp"
#include "holdback/sizing/worked_parts.hpp"

namespace holdback::sizing {

namespace {

/// p = p_0 + M/K with a name for K and, where heat takes friction, its share; p_0 for a released brake.
void add_pressure(WorkedSteps& steps, const WorkedCase& c, std::size_t i, const std::string& name,
                  const std::string& slope, std::vector<WorkedTerm> terms, bool hot, const WorkedTerm& result,
                  const std::string& note) {
  add_torque(steps, c, LoadCase::run, i);
  const bool fades = hot && c.friction_left(i) < 1;
  if (fades) add_fade(steps, c, i);
  if (c.torque(LoadCase::run, i) <= 0) {
    steps.add({"pad_pressure_for", name, "p_0", {c.threshold()}, result, "drag alone makes the tension", derived_here});
    return;
  }
  terms.push_back(c.threshold());
  terms.push_back(c.torque_term(LoadCase::run, i));
  if (fades) terms.push_back(c.friction_left_term(i));
  steps.add_at(i, {"pad_pressure_for", name, "p_0 + M_run@ / " + (fades ? "(" + slope + " · f@)" : slope), terms,
                   result, note, derived_here});
}

void add_needed(WorkedSteps& steps, const WorkedCase& c) {
  const auto nominal = [&](std::size_t i, const char* symbol, double value) {
    add_pressure(steps, c, i, "pressure in steady run at nominal friction (" + c.place(i) + ")", "(K · N · n)",
                 {c.pair_term(), c.brakes(), c.pairs()}, true,
                 {symbol, "pressure in steady run (" + c.place(i) + ")", Quantity::pressure, value},
                 "what is set at this diameter");
  };
  nominal(WorkedCase::full, "p_full", c.fit.pressure_full);
  nominal(WorkedCase::core, "p_core", c.fit.pressure_core);
  if (const Limit* limit = c.limit(LimitId::highest_pressure))
    add_pressure(steps, c, c.at(limit->diameter), "pressure needed at the lowest friction, highest over the roll",
                 "K_low", {c.weakest_term()}, true,
                 {"p_most", "highest pressure needed", Quantity::pressure, limit->value}, "on pads as hot as they run");
  if (const Limit* limit = c.limit(LimitId::lowest_pressure))
    add_pressure(steps, c, c.at(limit->diameter), "pressure needed at the highest friction, lowest over the roll",
                 "K_high", {c.strongest_term()}, false,
                 {"p_least", "lowest pressure needed", Quantity::pressure, limit->value}, "on cold pads");
}

std::string ceiling_name(const WorkedCase& c) {
  if (c.brake.rated_pressure < c.site.air_ceiling) return "highest pressure: the brake's rating";
  return "highest pressure: the lower of supply and regulator";
}

std::string floor_name(const WorkedCase& c) {
  if (c.site.air_floor >= c.brake.threshold_pressure + c.site.hysteresis)
    return "lowest pressure: the regulator's floor";
  return "lowest pressure: the brake's threshold and the hysteresis";
}

void add_capacity(WorkedSteps& steps, const WorkedCase& c) {
  const double ceiling = pressure_ceiling(c.site, c.brake);
  const WorkedTerm capacity = c.capacity();
  if (ceiling <= c.brake.threshold_pressure) {
    steps.add({"pad_torque", capacity.name, "0", {}, capacity, "the air does not reach the threshold", derived_here});
  } else {
    steps.add({"pad_torque",
               capacity.name,
               "K_low · (p_high − p_0)",
               {c.weakest_term(), {"p_high", ceiling_name(c), Quantity::pressure, ceiling}, c.threshold()},
               capacity,
               "",
               derived_here});
  }
  const auto available = [&](LimitId id, LoadCase load_case) {
    const bool at_rest = load_case == LoadCase::hold;
    const Limit* limit = c.limit(id);
    if (limit == nullptr) return;
    const std::size_t i = c.at(limit->diameter);
    if (c.friction_left(i) >= 1 && !at_rest) return;  // the capacity itself
    add_fade(steps, c, i);
    std::vector<WorkedTerm> terms{capacity, c.friction_left_term(i)};
    if (at_rest) terms.push_back({"x_s", "static over kinetic friction", Quantity::number, c.grade.static_ratio});
    steps.add_at(i, {"pad_torque",
                     "torque available, " + std::string(name_of(load_case)) + " (" + c.place(i) + ")",
                     at_rest ? "M_cap · f@ · x_s" : "M_cap · f@",
                     terms,
                     {available_symbol(load_case), "torque available, " + std::string(name_of(load_case)),
                      Quantity::torque, limit->bound},
                     at_rest ? "pads at rest hold by static friction" : "on pads as hot as they run there",
                     derived_here});
  };
  available(LimitId::stop_torque, LoadCase::stop);
  available(LimitId::emergency_stop_torque, LoadCase::emergency_stop);
  available(LimitId::holding_torque, LoadCase::hold);
}

void add_floor(WorkedSteps& steps, const WorkedCase& c) {
  const double floor = pressure_floor(c.site, c.brake);
  const WorkedTerm least{"M_floor", "torque at the lowest pressure and the highest friction", Quantity::torque,
                         physics::pad_torque(c.strongest, floor, c.brake.threshold_pressure)};
  steps.add({"pad_torque",
             least.name,
             "K_high · (p_low − p_0)",
             {c.strongest_term(), {"p_low", floor_name(c), Quantity::pressure, floor}, c.threshold()},
             least,
             "cold pads",
             derived_here});
  if (const Limit* limit = c.limit(LimitId::lowest_tension))
    steps.add({"lowest_tension",
               "lowest tension that can be held, at the core",
               "(M_floor + M_drag) / (d_core / 2)",
               {least, c.drag(), c.core_diameter()},
               {"T_floor", "lowest tension", Quantity::force, limit->value},
               "",
               derived_here});
  if (const Limit* limit = c.limit(LimitId::tension_resolution))
    steps.add({"tension_step",
               "change of tension by one step of the pressure, at the core",
               "K_high · dp / (d_core / 2)",
               {c.strongest_term(),
                {"dp", "resolution and hysteresis of the regulator", Quantity::pressure, c.site.pressure_step},
                c.core_diameter()},
               {"dT", "step of the tension", Quantity::force, limit->value},
               "",
               derived_here});
}

void add_pressure_speed(WorkedSteps& steps, const WorkedCase& c) {
  const Limit* limit = c.limit(LimitId::pressure_speed);
  if (limit == nullptr) return;
  const std::size_t i = c.at(limit->diameter);
  if (c.torque(LoadCase::run, i) <= 0) return;
  add_torque(steps, c, LoadCase::run, i);
  add_fade(steps, c, i);
  steps.add_at(i, {"contact_pressure",
                   "pressure on the pad's face times sliding speed, highest over the roll",
                   "A_p · eta · M_run@ / (K_low · f@) / A_pad · r_e · v / (d@ / 2)",
                   {{"A_p", "piston area of one pair", Quantity::area, c.brake.piston_area},
                    {"eta", "efficiency of the actuator", Quantity::ratio, c.brake.actuator_efficiency},
                    c.torque_term(LoadCase::run, i),
                    c.weakest_term(),
                    c.friction_left_term(i),
                    {"A_pad", "face of one pad", Quantity::area, c.brake.pad_area},
                    c.friction_radius_term(),
                    c.speed(),
                    c.diameter(i)},
                   {"pv", "pressure times speed", Quantity::pressure_speed, limit->value},
                   "M/(K_low f) is the pressure above the threshold, r_e v/R the sliding speed (sliding_speed)",
                   "khurmi2009"});
}

}  // namespace

void add_pressures(WorkedSteps& steps, const WorkedCase& c) {
  add_needed(steps, c);
  add_capacity(steps, c);
  add_floor(steps, c);
  add_pressure_speed(steps, c);
}

}  // namespace holdback::sizing
