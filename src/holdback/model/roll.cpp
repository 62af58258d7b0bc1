#include "holdback/model/roll.hpp"

#include "holdback/model/faults.hpp"

namespace holdback {

namespace {

void check_core(const Roll& roll, Faults& faults) {
  if (roll.core_diameter < roll.full_diameter) return;
  faults.error("core_diameter",
               {"The core, {0}, is not smaller than the full roll, {1}.",
                {{roll.core_diameter, Quantity::short_length}, {roll.full_diameter, Quantity::short_length}}},
               {"a core below {0}", {{roll.full_diameter, Quantity::short_length}}});
}

/// Half the build-up: beyond it the web would nearly touch the core on one side.
void check_runout(const Roll& roll, Faults& faults) {
  const double most = (roll.full_radius() - roll.core_radius()) / 2;
  if (most <= 0 || roll.runout <= most) return;
  faults.error("runout",
               {"A runout of {0} is more than half the web's build-up on the core, {1}.",
                {{roll.runout, Quantity::short_length}, {2 * most, Quantity::short_length}}},
               {"at most {0}", {{most, Quantity::short_length}}});
}

}  // namespace

Problems problems_of(const Roll& roll, const std::string& path) {
  Faults faults(path);
  check_core(roll, faults);
  check_runout(roll, faults);
  return faults.take();
}

}  // namespace holdback
