#include "holdback/sizing/worked_parts.hpp"

namespace holdback::sizing {

namespace {

WorkedTerm window_end(const char* symbol, const char* name, double value) {
  return {symbol, name, Quantity::force, value};
}

void add_recommended(WorkedSteps& steps, const WorkedCase& c) {
  const TensionTarget& tension = c.demand.tension;
  steps.add({"recommended_tension",
             "tension recommended for this web, none being asked for",
             "(T_least + T_most) / 2",
             {window_end("T_least", "low end of the recommended range", tension.recommended_low),
              window_end("T_most", "high end of the recommended range", tension.recommended_high)},
             c.tension(),
             "the top of the range is the lowest of table, strength and strain, here " + tension.governed_by,
             by_practice});
}

}  // namespace

void add_target(WorkedSteps& steps, const WorkedCase& c) {
  const TensionTarget& tension = c.demand.tension;
  if (!tension.asked) add_recommended(steps, c);
  steps.add({"tension_target",
             "tension per width",
             "T / w",
             {c.tension(), c.width()},
             {"q", "tension per width", Quantity::tension_per_width, tension.setpoint / c.job.web.width},
             "",
             by_definition});
  const WorkedTerm tolerance{"eps", "tolerance of the tension", Quantity::ratio, c.demand.tolerance};
  steps.add({"tension_target",
             "low end of the window",
             "T · (1 − eps)",
             {c.tension(), tolerance},
             window_end("T_low", "low end of the window", tension.low),
             "",
             by_definition});
  steps.add({"tension_target",
             "high end of the window",
             "T · (1 + eps)",
             {c.tension(), tolerance},
             window_end("T_high", "high end of the window", tension.high),
             "",
             by_definition});
}

}  // namespace holdback::sizing
