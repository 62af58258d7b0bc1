// What people call the columns of a mix, by common practice of the trade. Words that mean two things stand under both
// columns, so that only a unit can decide; words that mean something else are refused, with the reason.
#include "holdback/files/job_column_names.hpp"

namespace holdback::files {

const std::vector<ColumnAlias>& job_column_aliases() {
  static const std::vector<ColumnAlias> aliases{
      {"name", {"job", "job name", "job number", "job id"}, ""},
      {"web", {"web name", "web type", "substrate", "stock"}, ""},
      {"roll", {"roll name", "roll type", "reel", "reel type", "parent roll"}, ""},
      {"speed",
       {"web speed", "line speed", "machine speed", "running speed", "run speed", "production speed", "operating speed",
        "job speed"},
       ""},
      {"speed", {"fpm"}, "ft/min"},
      {"speed", {"mpm"}, "m/min"},
      {"tension",
       {"web tension", "unwind tension", "running tension", "tension setpoint", "tension set point", "total tension",
        "pull"},
       ""},
      {"tension_per_width",
       {"tension per width", "tension per unit width", "specific tension", "tension", "web tension", "unwind tension",
        "running tension", "tension setpoint", "tension set point"},
       ""},
      {"tension_per_width", {"pli"}, "pli"},
      {"tension_tolerance", {"tolerance", "tension tol"}, ""},
      {"ramp_time", {"ramp", "ramp up time", "acceleration time", "run up time"}, ""},
      {"stop_time", {"normal stop time", "stopping time", "deceleration time", "ramp down time"}, ""},
      {"emergency_stop_time", {"emergency stop", "e stop", "e stop time", "fast stop time", "quick stop time"}, ""},
      {"share",
       {"shift share", "time share", "mix share", "share of mix", "share of time", "share of shift",
        "share of running time", "weighting"},
       ""},
      {"share", {"% share", "% of time", "% of shift"}, "%"},
      {"width", {"web width", "reel width", "roll width", "slit width", "material width", "working width"}, ""},
      {"web.caliper",
       {"caliper", "thickness", "web thickness", "film thickness", "foil thickness", "paper thickness",
        "material thickness", "total thickness", "gauge", "web gauge", "film gauge"},
       ""},
      {"web.basis_weight",
       {"basis weight", "base weight", "area weight", "areal weight", "grammage", "substance", "ream weight",
        "paper weight", "weight per area", "weight"},
       ""},
      {"web.basis_weight", {"gsm"}, "g/m2"},
      {"web.density", {"density", "material density", "film density"}, ""},
      {"web.density", {"specific gravity"}, "g/cm3"},
      {"web.modulus", {"modulus", "youngs modulus", "elastic modulus", "modulus of elasticity", "e modulus"}, ""},
      {"web.yield_strength", {"yield strength", "yield stress", "yield point"}, ""},
      {"web.wound_tension", {"wound tension", "wound in tension", "winding tension", "rewind tension"}, ""},
      {"web.material", {"material", "material type", "material family"}, ""},
      {"roll.core_diameter",
       {"core diameter", "core", "core outer diameter", "diameter of core", "minimum diameter", "minimum roll diameter",
        "end diameter", "diameter", "outer diameter"},
       ""},
      {"roll.full_diameter",
       {"full diameter", "full roll diameter", "roll diameter", "roll outer diameter", "reel diameter",
        "maximum diameter", "maximum roll diameter", "maximum reel diameter", "unwind diameter", "unwind roll diameter",
        "parent roll diameter", "start diameter", "diameter", "outer diameter"},
       ""},
      {"roll.core_mass", {"core mass", "core weight", "core", "mass", "weight"}, ""},
      {"roll.runout", {"runout", "run out", "out of round"}, ""},
      {"roll.length", {"web length", "roll length", "length on roll", "length per roll", "web on roll"}, ""},
      {"roll.mass", {"roll mass", "roll weight", "reel weight", "net weight", "net mass", "mass", "weight"}, ""},
  };
  return aliases;
}

const std::vector<RefusedName>& refused_column_names() {
  static const std::vector<RefusedName> refused{
      {{"core id", "core inner diameter", "core inside diameter", "core bore", "core size", "nominal core"},
       "the roll ends at the outside of its core, and this names the inside",
       "roll.core_diameter"},
  };
  return refused;
}

const std::vector<WordAlias>& word_aliases() {
  static const std::vector<WordAlias> words{
      {"polyester", {"pet", "bopet"}},
      {"polypropylene", {"pp", "opp", "bopp", "cpp"}},
      {"polyethylene", {"pe", "ldpe", "lldpe", "hdpe"}},
      {"aluminium foil", {"aluminum foil", "al foil", "alu foil", "aluminium", "aluminum"}},
      {"cellophane", {"cellulose film"}},
      {"board", {"paperboard", "carton", "carton board", "cardboard"}},
  };
  return words;
}

}  // namespace holdback::files
