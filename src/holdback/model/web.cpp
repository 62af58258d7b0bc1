#include "holdback/model/web.hpp"

#include <algorithm>

#include "holdback/model/faults.hpp"

namespace holdback {

namespace {

/// Caliper × density against basis weight: the commonest wrong input is the caliper.
void check_weight(const Web& web, Faults& faults) {
  if (!web.density) return;
  const double expected = web.caliper * *web.density;
  const double low = std::min(expected, web.basis_weight);
  const double high = std::max(expected, web.basis_weight);
  if (high <= 1.05 * low) return;
  const Note what{"Caliper times density makes {0}, but the basis weight is {1}; one of the three is wrong.",
                  {{expected, Quantity::basis_weight}, {web.basis_weight, Quantity::basis_weight}}};
  const Note accepted{"basis weight, caliper and density that agree within {0}; best give two and leave one out",
                      {{0.05, Quantity::ratio}}};
  if (high > 1.2 * low) {
    faults.error("basis_weight", what, accepted);
  } else {
    faults.warning("basis_weight", what, accepted);
  }
}

/// Basis weight over caliper is a density: no sheet is lighter than a foam or heavier than lead.
void check_implied_density(const Web& web, Faults& faults) {
  constexpr double lightest = 20;     // [kg/m³]
  constexpr double heaviest = 12000;  // [kg/m³]
  if (web.density || web.caliper <= 0) return;
  const double density = web.basis_weight / web.caliper;
  if (density >= lightest && density <= heaviest) return;
  faults.warning("caliper",
                 {"Basis weight over caliper makes a density of {0}, which no usual web has; check the caliper's unit.",
                  {{density, Quantity::density}}},
                 {"{0} to {1}", {{lightest, Quantity::density}, {heaviest, Quantity::density}}});
}

void check_yield_strain(const Web& web, Faults& faults) {
  if (!web.yield_strength || !web.modulus) return;
  const double strain = *web.yield_strength / *web.modulus;
  const Note what{
      "Yield strength {0} over modulus {1} makes a strain at yield of {2}.",
      {{*web.yield_strength, Quantity::stress}, {*web.modulus, Quantity::modulus}, {strain, Quantity::ratio}}};
  const Note accepted{"a modulus well above the yield strength; films and papers yield at {0} to {1} of strain",
                      {{0.005, Quantity::ratio}, {0.15, Quantity::ratio}}};
  if (strain >= 1) {
    faults.error("yield_strength", what, accepted);
  } else if (strain > 0.15) {
    faults.warning("yield_strength", what, accepted);
  }
}

void check_wound_tension(const Web& web, Faults& faults) {
  if (!web.yield_strength || !web.wound_tension) return;
  const double strength = *web.yield_strength * web.caliper;
  if (*web.wound_tension <= strength) return;
  faults.error("wound_tension",
               {"The roll cannot have been wound with {0}: the web yields at {1}.",
                {{*web.wound_tension, Quantity::tension_per_width}, {strength, Quantity::tension_per_width}}},
               {"a tension below {0}", {{strength, Quantity::tension_per_width}}});
}

/// The plies make up the web, but for adhesive and ink.
void check_plies(const Web& web, Faults& faults) {
  if (web.plies.empty()) return;
  double caliper = 0;
  for (const Ply& ply : web.plies) caliper += ply.caliper;
  if (caliper <= 1.02 * web.caliper && caliper >= 0.8 * web.caliper) return;
  faults.warning("caliper",
                 {"The plies are {0} thick together, but the web's caliper is given as {1}.",
                  {{caliper, Quantity::caliper}, {web.caliper, Quantity::caliper}}},
                 {"a caliper from {0} to {1}, or plies that make it up",
                  {{caliper / 1.02, Quantity::caliper}, {caliper / 0.8, Quantity::caliper}}});
}

}  // namespace

Problems problems_of(const Web& web, const std::string& path) {
  Faults faults(path);
  check_weight(web, faults);
  check_implied_density(web, faults);
  check_yield_strain(web, faults);
  check_wound_tension(web, faults);
  check_plies(web, faults);
  return faults.take();
}

}  // namespace holdback
