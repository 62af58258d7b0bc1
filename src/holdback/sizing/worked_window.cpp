#include <algorithm>

#include "holdback/physics/tension.hpp"
#include "holdback/sizing/worked_parts.hpp"

namespace holdback::sizing {

namespace {

WorkedTerm window_end(const char* symbol, const char* name, double value) {
  return {symbol, name, Quantity::force, value};
}

/// "sigma_2" and the like: terms of the plies of a laminate.
std::string ply_symbol(const char* letter, std::size_t k) { return std::string(letter) + "_" + std::to_string(k + 1); }

/// E t of the web, summed over its plies where the web has no modulus of its own.
std::string stiffness_formula(const Web& web, std::vector<WorkedTerm>& terms) {
  std::string sum;
  for (std::size_t k = 0; k < web.plies.size(); ++k) {
    sum += (k == 0 ? "" : " + ") + ply_symbol("E", k) + " · " + ply_symbol("t", k);
    const std::string ply = "of ply " + std::to_string(k + 1);
    terms.push_back({ply_symbol("E", k), "modulus " + ply, Quantity::modulus, web.plies[k].modulus.value_or(0)});
    terms.push_back({ply_symbol("t", k), "caliper " + ply, Quantity::caliper, web.plies[k].caliper});
  }
  return "(" + sum + ")";
}

/// σ t of the web; of a laminate that of the ply which yields first, with all plies strained alike.
std::string yield_formula(const WorkedCase& c, std::vector<WorkedTerm>& terms) {
  const Web& web = c.job.web;
  if (web.yield_strength) {
    terms.push_back({"sigma_y", "yield strength", Quantity::stress, *web.yield_strength});
    terms.push_back(c.caliper());
    return "sigma_y · t";
  }
  const std::string stiffness = stiffness_formula(web, terms);
  const auto strain = [](const Ply& ply) { return ply.yield_strength.value_or(0) / ply.modulus.value_or(1); };
  const auto first = std::min_element(web.plies.begin(), web.plies.end(),
                                      [&](const Ply& a, const Ply& b) { return strain(a) < strain(b); });
  const auto k = static_cast<std::size_t>(first - web.plies.begin());
  terms.push_back({ply_symbol("sigma", k), "yield strength of the ply that yields first", Quantity::stress,
                   first->yield_strength.value_or(0)});
  return ply_symbol("sigma", k) + " / " + ply_symbol("E", k) + " · " + stiffness;
}

void add_yield(WorkedSteps& steps, const WorkedCase& c) {
  if (c.demand.tension.web_strength <= 0) return;
  std::vector<WorkedTerm> terms{c.width()};
  const std::string formula = yield_formula(c, terms) + " · w";
  steps.add({c.job.web.yield_strength ? "yield_tension" : "web_yield", "tension at which the whole width yields",
             formula, terms, window_end("T_yield", "tension at yield", c.demand.tension.web_strength),
             "under even stress; a real web carries it unevenly", derived_here});
}

void add_strength(WorkedSteps& steps, const WorkedCase& c, const WindowBound& bound) {
  steps.add({c.job.web.yield_strength ? "yield_tension" : "web_yield",
             "upper bound of the tension: strength",
             "s_y · T_yield",
             {{"s_y", "highest share of yield", Quantity::ratio, c.site.limits.yield_share},
              window_end("T_yield", "tension at yield", c.demand.tension.web_strength)},
             window_end("T_strength", "bound by strength", bound.tension),
             "",
             by_practice});
}

void add_strain(WorkedSteps& steps, const WorkedCase& c, const WindowBound& bound) {
  std::vector<WorkedTerm> terms{{"e_max", "highest strain", Quantity::ratio, c.site.limits.strain_limit}, c.width()};
  std::string stiffness = "E · t";
  if (c.job.web.modulus) {
    terms.push_back({"E", "modulus of the web", Quantity::modulus, *c.job.web.modulus});
    terms.push_back(c.caliper());
  } else {
    stiffness = stiffness_formula(c.job.web, terms);
  }
  steps.add({c.job.web.modulus ? "strain_tension" : "web_stiffness", "upper bound of the tension: strain",
             "e_max · " + stiffness + " · w", terms, window_end("T_strain", "bound by strain", bound.tension), "",
             by_practice});
}

void add_usual(WorkedSteps& steps, const WorkedCase& c, const WindowBound& bound) {
  Web metre = c.job.web;  // the table's range for each metre of width
  metre.width = 1;
  const physics::TensionRange range = physics::table_tension(metre).value_or(physics::TensionRange{});
  const bool least = bound.id == BoundId::usual_least;
  const std::string end = least ? "least" : "most";
  steps.add(
      {"table_tension",
       std::string(least ? "lower" : "upper") + " bound of the tension: usual in the trade",
       "q_" + end + " · w",
       {{"q_" + end, "tension per width of the table", Quantity::tension_per_width, least ? range.low : range.high},
        c.width()},
       {"T_usual_" + end, "usual tension, " + end, Quantity::force, bound.tension},
       "the table goes by material and by caliper or basis weight; a laminate is the sum of its plies",
       by_practice});
}

}  // namespace

void add_window(WorkedSteps& steps, const WorkedCase& c) {
  add_yield(steps, c);
  std::vector<WindowBound> bounds = c.demand.bounds;
  std::stable_sort(bounds.begin(), bounds.end(),
                   [](const WindowBound& a, const WindowBound& b) { return a.id < b.id; });
  for (const WindowBound& bound : bounds) {
    if (bound.id == BoundId::strength) add_strength(steps, c, bound);
    if (bound.id == BoundId::strain) add_strain(steps, c, bound);
    if (bound.id == BoundId::usual_least || bound.id == BoundId::usual_most) add_usual(steps, c, bound);
    add_path_bound(steps, c, bound);
  }
  add_cinching(steps, c);
}

}  // namespace holdback::sizing
