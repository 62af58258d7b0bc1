#include "holdback/sizing/worked_parts.hpp"

namespace holdback::sizing {

namespace {

constexpr const char* balance_note =
    "the balance J dω/dt = T R − M − M_drag; negative where drag and inertia alone make more tension than is asked "
    "for; "
    "the last term is the roll that turns faster as it thins";

/// The share of the setpoint that a case keeps, and the time in which it comes to rest.
struct StopTerms {
  WorkedTerm share;
  WorkedTerm time;
};

StopTerms stop_terms(const WorkedCase& c, LoadCase load_case) {
  const Limits& limits = c.site.limits;
  if (load_case == LoadCase::stop)
    return {{"s_stop", "share of the setpoint kept in a stop", Quantity::ratio, limits.stop_tension},
            {"t_s", "time of the stop", Quantity::duration, c.demand.stop_time}};
  return {{"s_es", "share of the setpoint kept in an emergency stop", Quantity::ratio, limits.emergency_stop_tension},
          c.emergency_stop_time()};
}

void add_ramp(WorkedSteps& steps, const WorkedCase& c) {
  const Limit* limit = c.limit(LimitId::ramp_tension);
  if (limit == nullptr) return;
  const std::size_t i = c.at(limit->diameter);
  add_inertia(steps, c, i);
  steps.add_at(i, {"released_tension",
                   "tension in a ramp with the brake released, highest over the roll",
                   "(J@ · (v / t_r + t · v^2 / (2 · π · (d@ / 2)^2)) / (d@ / 2) + M_drag) / (d@ / 2)",
                   {c.inertia_term(i),
                    c.speed(),
                    {"t_r", "time of the ramp", Quantity::duration, c.demand.ramp_time},
                    c.caliper(),
                    c.diameter(i),
                    c.drag()},
                   {"T_ramp", "tension in the ramp", Quantity::force, limit->value},
                   "at the end of the ramp, where the thinning of the roll (roll_acceleration) adds most",
                   derived_here});
}

}  // namespace

void add_torque(WorkedSteps& steps, const WorkedCase& c, LoadCase load_case, std::size_t i) {
  if (!steps.once("torque " + std::string(key_of(load_case)) + std::to_string(i))) return;
  const std::string name = "brake torque, " + std::string(name_of(load_case)) + " (" + c.place(i) + ")";
  if (load_case == LoadCase::hold) {
    steps.add_at(i,
                 {"brake_torque",
                  name,
                  "s_hold · T · d@ / 2",
                  {{"s_hold", "share of the setpoint held at standstill", Quantity::ratio, c.site.limits.hold_tension},
                   c.tension(),
                   c.diameter(i)},
                  c.torque_term(load_case, i),
                  "at standstill drag may pull either way and is not counted on",
                  derived_here});
    return;
  }
  add_inertia(steps, c, i);
  if (load_case == LoadCase::run) {
    steps.add_at(i, {"brake_torque",
                     name,
                     "T · d@ / 2 − M_drag − J@ · t · v^2 / (2 · π · (d@ / 2)^3)",
                     {c.tension(), c.diameter(i), c.drag(), c.inertia_term(i), c.caliper(), c.speed()},
                     c.torque_term(load_case, i),
                     i == WorkedCase::full ? balance_note : "",
                     derived_here});
    return;
  }
  const StopTerms stop = stop_terms(c, load_case);
  steps.add_at(i, {"brake_torque",
                   name,
                   stop.share.symbol + " · T · d@ / 2 − M_drag + J@ · v / " + stop.time.symbol + " / (d@ / 2)",
                   {stop.share, c.tension(), c.diameter(i), c.drag(), c.inertia_term(i), c.speed(), stop.time},
                   c.torque_term(load_case, i),
                   "the thinning of the roll is left out, which is the safe side",
                   derived_here});
}

void add_torques(WorkedSteps& steps, const WorkedCase& c) {
  steps.add({"brake_torque",
             "drag of shaft and brakes",
             "M_shaft + N · M_released",
             {{"M_shaft", "drag of the shaft", Quantity::torque, c.site.drag},
              c.brakes(),
              {"M_released", "drag of one brake with its pads released", Quantity::torque, c.brake.drag}},
             c.drag(),
             "",
             by_definition});
  add_torque(steps, c, LoadCase::run, WorkedCase::full);
  add_torque(steps, c, LoadCase::run, WorkedCase::core);
  add_ramp(steps, c);
  const std::pair<LimitId, LoadCase> cases[] = {{LimitId::stop_torque, LoadCase::stop},
                                                {LimitId::emergency_stop_torque, LoadCase::emergency_stop},
                                                {LimitId::holding_torque, LoadCase::hold}};
  for (const auto& [id, load_case] : cases)
    if (const Limit* limit = c.limit(id)) add_torque(steps, c, load_case, c.at(limit->diameter));
  if (const Limit* limit = c.limit(LimitId::torque_rating))
    add_torque(steps, c, limit->load_case, c.at(limit->diameter));
}

}  // namespace holdback::sizing
