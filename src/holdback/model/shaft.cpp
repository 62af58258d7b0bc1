#include "holdback/model/shaft.hpp"

#include <algorithm>
#include <string>

#include "holdback/model/faults.hpp"

namespace holdback {

namespace {

void check_sections(const Shaft& shaft, Faults& faults) {
  if (shaft.sections.empty()) {
    faults.error("section", {"The shaft has no section."}, {"at least one [[shaft.section]]"});
  }
  for (std::size_t i = 0; i < shaft.sections.size(); ++i) {
    const ShaftSection& section = shaft.sections[i];
    if (section.bore < section.diameter) continue;
    faults.error("section[" + std::to_string(i) + "].bore",
                 {"The bore, {0}, is not smaller than the diameter, {1}: no wall is left.",
                  {{section.bore, Quantity::short_length}, {section.diameter, Quantity::short_length}}},
                 {"a bore below {0}", {{section.diameter, Quantity::short_length}}});
  }
}

/// The middle of the roll lies between the bearings, or beyond both.
void check_roll_centre(const Shaft& shaft, Faults& faults) {
  const bool within = shaft.roll_centre < shaft.bearing_span;
  const std::vector<Amount> seen{{shaft.roll_centre, Quantity::short_length},
                                 {shaft.bearing_span, Quantity::short_length}};
  const std::vector<Amount> span{{shaft.bearing_span, Quantity::short_length}};
  if (shaft.support == Support::between_bearings && !within) {
    faults.error("roll_centre",
                 {"The middle of the roll lies {0} from the first bearing, not before the second one at {1}.", seen},
                 {"a length below {0}, or support = \"cantilever\"", span});
  }
  if (shaft.support == Support::cantilever && (within || shaft.roll_centre == shaft.bearing_span)) {
    faults.error(
        "roll_centre",
        {"The roll of a cantilever shaft sits beyond both bearings, but its middle lies {0} from the first and "
         "the second stands at {1}.",
         seen},
        {"a length above {0}, or support = \"between bearings\"", span});
  }
}

bool has_step(const Shaft& shaft) {
  return std::any_of(shaft.sections.begin(), shaft.sections.end(),
                     [&](const ShaftSection& section) { return section.diameter != shaft.sections.front().diameter; });
}

/// A shoulder without a fillet's notch factor looks twice as strong as it is.
void check_notch_factor(const Shaft& shaft, Faults& faults) {
  if (!has_step(shaft) || shaft.notch_factor >= 1.2) return;
  faults.warning("notch_factor",
                 {"The shaft has a step, but a notch factor of {0}; a shoulder raises the stress to {1} with a large "
                  "fillet and to {2} with a sharp one [shigley].",
                  {{shaft.notch_factor, Quantity::number}, {1.7, Quantity::number}, {2.7, Quantity::number}}},
                 {"{0} to {1}", {{1.5, Quantity::number}, {2.7, Quantity::number}}});
}

/// Unit slips show in strength over modulus; the fatigue limit is that of steel.
void check_material(const Shaft& shaft, Faults& faults) {
  constexpr double strongest = 0.05;  // strength over modulus; a hard steel has 0.01
  constexpr double lowest = 180e9, highest = 220e9;
  if (shaft.tensile_strength > strongest * shaft.modulus) {
    faults.error("tensile_strength",
                 {"Tensile strength {0} is more than {1} of the modulus, {2}; no shaft is that strong.",
                  {{shaft.tensile_strength, Quantity::stress},
                   {strongest, Quantity::ratio},
                   {shaft.modulus, Quantity::modulus}}},
                 {"a strength below {0}", {{strongest * shaft.modulus, Quantity::stress}}});
  } else if (shaft.modulus < lowest || shaft.modulus > highest) {
    faults.warning("modulus",
                   {"A modulus of {0} is not that of steel, and the fatigue limit is that of steel: take the safety "
                    "against fatigue as unknown.",
                    {{shaft.modulus, Quantity::modulus}}},
                   {"{0} to {1} for steel", {{lowest, Quantity::modulus}, {highest, Quantity::modulus}}});
  }
}

}  // namespace

Problems problems_of(const Shaft& shaft) {
  Faults faults("shaft");
  check_sections(shaft, faults);
  check_roll_centre(shaft, faults);
  check_notch_factor(shaft, faults);
  check_material(shaft, faults);
  return faults.take();
}

}  // namespace holdback
