#include "holdback/sizing/target.hpp"

#include "holdback/physics/tension.hpp"

namespace holdback::sizing {

namespace {

const char* key_of(physics::TensionBound bound) {
  switch (bound) {
    case physics::TensionBound::strength:
      return "strength";
    case physics::TensionBound::strain:
      return "strain";
    case physics::TensionBound::table:
      return "table";
  }
  return "table";
}

}  // namespace

double tolerance_of(const Job& job, const Limits& limits) {
  return job.tension_tolerance.value_or(limits.tension_tolerance);
}

TensionTarget tension_target(const Job& job, const Limits& limits) {
  TensionTarget target;
  if (const auto recommended = physics::recommended_tension(job.web, limits)) {
    target.recommended = recommended->setpoint;
    target.recommended_low = recommended->low;
    target.recommended_high = recommended->high;
    target.governed_by = key_of(recommended->governed_by);
  }
  if (const auto yield = physics::web_yield(job.web)) target.web_strength = *yield * job.web.width;
  target.asked = job.tension.has_value();
  target.setpoint = job.tension.value_or(target.recommended);
  const double tolerance = tolerance_of(job, limits);
  target.low = target.setpoint * (1 - tolerance);
  target.high = target.setpoint * (1 + tolerance);
  return target;
}

}  // namespace holdback::sizing
