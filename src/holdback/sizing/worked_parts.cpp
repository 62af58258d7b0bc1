#include "holdback/sizing/worked_parts.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/physics/brake.hpp"

namespace holdback::sizing {

WorkedCase::WorkedCase(const Stand& stand, const Job& a_job, const JobFit& a_fit, const Candidate& a_candidate)
    : job(a_job),
      fit(a_fit),
      site(site_of(stand)),
      candidate(a_candidate),
      brake(*candidate.brake),
      grade(*candidate.grade),
      demand(demand_of(job, site)),
      disc(candidate.cooling->over(demand, site.ambient)),
      engaged(candidate.brakes * fit.pairs),
      weakest(candidate.pair.capacity * engaged * (1 - grade.friction_band)),
      strongest(candidate.pair.highest * engaged * (1 + grade.friction_band)) {
  pass_over(demand, disc, candidate, site, {}, pass);
  survey = sizing::survey(demand, disc, pass, candidate, Where::known);
}

const Limit* WorkedCase::limit(LimitId id) const {
  const auto found = std::find_if(fit.limits.begin(), fit.limits.end(), [&](const Limit& l) { return l.id == id; });
  return found == fit.limits.end() ? nullptr : &*found;
}

std::size_t WorkedCase::at(double diameter) const {
  const auto nearer = [&](double a, double b) { return std::abs(2 * a - diameter) < std::abs(2 * b - diameter); };
  return static_cast<std::size_t>(std::min_element(demand.radius.begin(), demand.radius.end(), nearer) -
                                  demand.radius.begin());
}

CaseTorques WorkedCase::torques(std::size_t i) const {
  return case_torques(demand, site.limits, i, inertia(i), survey.drag);
}

double WorkedCase::torque(LoadCase load_case, std::size_t i) const {
  const CaseTorques all = torques(i);
  switch (load_case) {
    case LoadCase::stop:
      return all.stop;
    case LoadCase::emergency_stop:
      return all.emergency_stop;
    case LoadCase::hold:
      return all.hold;
    case LoadCase::ramp:
      return all.ramp;
    default:
      return all.run;
  }
}

double WorkedCase::friction_left(std::size_t i) const { return physics::fade_factor(grade, pass.temperature[i]); }

std::string WorkedCase::place(std::size_t i) {
  if (i == full) return "full roll";
  return i == core ? "core" : "in between";
}

std::string WorkedCase::at_place(std::size_t i) {
  if (i == full) return "_full";
  return i == core ? "_core" : "_" + std::to_string(i);
}

namespace {

std::string filled(const std::string& text, const std::string& place) {
  std::string filled;
  for (const char letter : text) letter == '@' ? filled += place : filled += letter;
  return filled;
}

}  // namespace

void WorkedSteps::add_at(std::size_t i, WorkedStep step) {
  const std::string place = WorkedCase::at_place(i);
  step.formula = filled(step.formula, place);
  step.result.symbol = filled(step.result.symbol, place);
  std::vector<WorkedTerm> terms;  // a diameter may be the full roll's and the one in question
  for (WorkedTerm& term : step.terms) {
    term.symbol = filled(term.symbol, place);
    const auto same = [&](const WorkedTerm& other) { return other.symbol == term.symbol; };
    if (std::none_of(terms.begin(), terms.end(), same)) terms.push_back(std::move(term));
  }
  step.terms = std::move(terms);
  add(std::move(step));
}

WorkedTerm WorkedCase::tension() const {
  return {"T", "tension over the whole width", Quantity::force, demand.tension.setpoint};
}
WorkedTerm WorkedCase::speed() const { return {"v", "web speed", Quantity::speed, demand.speed}; }
WorkedTerm WorkedCase::width() const { return {"w", "width of the web", Quantity::short_length, job.web.width}; }
WorkedTerm WorkedCase::caliper() const { return {"t", "caliper of the web", Quantity::caliper, job.web.caliper}; }
WorkedTerm WorkedCase::basis_weight() const {
  return {"b", "basis weight of the web", Quantity::basis_weight, job.web.basis_weight};
}
WorkedTerm WorkedCase::full_diameter() const {
  return {"d_full", "diameter of the full roll", Quantity::short_length, 2 * demand.radius[full]};
}
WorkedTerm WorkedCase::core_diameter() const {
  return {"d_core", "diameter of the core", Quantity::short_length, 2 * demand.radius[core]};
}
WorkedTerm WorkedCase::diameter(std::size_t i) const {
  return {"d" + at_place(i), "diameter of the roll (" + place(i) + ")", Quantity::short_length, 2 * demand.radius[i]};
}
WorkedTerm WorkedCase::drag() const { return {"M_drag", "drag of shaft and brakes", Quantity::torque, survey.drag}; }
WorkedTerm WorkedCase::inertia_term(std::size_t i) const {
  return {"J" + at_place(i), "inertia of all that turns (" + place(i) + ")", Quantity::inertia, inertia(i)};
}
WorkedTerm WorkedCase::torque_term(LoadCase load_case, std::size_t i) const {
  const std::string symbol = load_case == LoadCase::emergency_stop ? "M_es" : "M_" + std::string(key_of(load_case));
  return {symbol + at_place(i), "brake torque, " + std::string(name_of(load_case)) + " (" + place(i) + ")",
          Quantity::torque, torque(load_case, i)};
}
WorkedTerm WorkedCase::brakes() const {
  return {"N", "brakes on the shaft", Quantity::count, static_cast<double>(candidate.brakes)};
}
WorkedTerm WorkedCase::pairs() const {
  return {"n", "pairs engaged on each brake", Quantity::count, static_cast<double>(fit.pairs)};
}
WorkedTerm WorkedCase::threshold() const {
  return {"p_0", "pressure below which pads give nothing", Quantity::pressure, brake.threshold_pressure};
}
WorkedTerm WorkedCase::ambient() const {
  return {"Theta_a", "temperature of the air", Quantity::temperature, survey.ambient};
}
WorkedTerm WorkedCase::temperature(std::size_t i) const {
  return {"Theta" + at_place(i), "steady temperature of the disc (" + place(i) + ")", Quantity::temperature,
          pass.temperature[i]};
}
WorkedTerm WorkedCase::friction_left_term(std::size_t i) const {
  return {"f" + at_place(i), "share of friction that heat leaves (" + place(i) + ")", Quantity::ratio,
          friction_left(i)};
}
WorkedTerm WorkedCase::weakest_term() const {
  return {"K_low", "torque per pressure of all engaged pairs at the lowest friction", Quantity::torque_per_pressure,
          weakest};
}
WorkedTerm WorkedCase::strongest_term() const {
  return {"K_high", "torque per pressure of all engaged pairs at the highest friction", Quantity::torque_per_pressure,
          strongest};
}
WorkedTerm WorkedCase::capacity() const {
  return {"M_cap", "torque at the highest pressure and the lowest friction, cold", Quantity::torque,
          physics::pad_torque(weakest, pressure_ceiling(site, brake), brake.threshold_pressure)};
}
WorkedTerm WorkedCase::emergency_stop_time() const {
  return {"t_es", "time of the emergency stop", Quantity::duration, demand.emergency_stop_time};
}
WorkedTerm WorkedCase::friction_radius_term() const {
  return {"r_e", "friction radius, the lower estimate", Quantity::short_length, candidate.friction_radius};
}
WorkedTerm WorkedCase::pair_term() const {
  return {"K", "torque per pressure of one pair, nominal friction", Quantity::torque_per_pressure,
          candidate.pair.capacity};
}

}  // namespace holdback::sizing
