#include "holdback/sizing/worked_parts.hpp"

namespace holdback::sizing {

void add_inertia(WorkedSteps& steps, const WorkedCase& c, std::size_t i) {
  if (!steps.once("inertia " + std::to_string(i))) return;
  std::vector<WorkedTerm> terms{
      {"J_shaft", "inertia of the shaft", Quantity::inertia, c.site.shaft_inertia},
      c.brakes(),
      {"J_disc", "inertia of one disc", Quantity::inertia, c.brake.disc_inertia},
      {"m_core", "mass of the core", Quantity::mass, c.demand.core_mass},
      c.core_diameter(),
  };
  std::string formula = "J_shaft + N · J_disc + m_core · d_core^2 / 4";
  if (i == WorkedCase::full) {
    formula += " + m_web · (d_full^2 + d_core^2) / 8";
    terms.push_back({"m_web", "mass of the web", Quantity::mass, c.demand.web_mass});
    terms.push_back(c.full_diameter());
  } else if (i != WorkedCase::core) {
    formula += " + π · b · w · (d@^4 − d_core^4) / (32 · t)";
    for (const WorkedTerm& term : {c.basis_weight(), c.width(), c.diameter(i), c.caliper()}) terms.push_back(term);
  }
  const bool bare = i == WorkedCase::core;
  steps.add_at(i,
               {bare ? "core_inertia" : "web_inertia", "inertia of all that turns (" + c.place(i) + ")", formula, terms,
                c.inertia_term(i),
                bare ? "all mass of the core is taken at its outside, an upper bound" : "the web is a hollow cylinder",
                "meriam"});
}

void add_roll(WorkedSteps& steps, const WorkedCase& c) {
  const WorkedTerm length{"L", "web on the full roll", Quantity::web_length, c.fit.roll.length};
  steps.add({"roll_length",
             "web on the full roll",
             "π · (d_full^2 − d_core^2) / (4 · t)",
             {c.full_diameter(), c.core_diameter(), c.caliper()},
             length,
             "layers are taken as circles without air between them",
             "downey2023"});
  steps.add({"web_mass",
             "mass of the web",
             "b · w · L",
             {c.basis_weight(), c.width(), length},
             {"m_web", "mass of the web", Quantity::mass, c.demand.web_mass},
             "",
             by_definition});
  add_inertia(steps, c, WorkedCase::full);
  add_inertia(steps, c, WorkedCase::core);
}

}  // namespace holdback::sizing
