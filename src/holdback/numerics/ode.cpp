#include "holdback/numerics/ode.hpp"

namespace holdback::numerics {

std::string_view describe(OdeFailure failure) {
  switch (failure) {
    case OdeFailure::none:
      return "none";
    case OdeFailure::step_too_small:
      return "the accuracy is not met with the smallest step";
    case OdeFailure::not_finite:
      return "the state or its derivative is not a finite number";
    case OdeFailure::too_many_steps:
      return "more steps than the run allows";
    case OdeFailure::too_many_events:
      return "more events than the run allows";
    case OdeFailure::no_progress:
      return "events follow each other without time going on";
  }
  return "none";
}

}  // namespace holdback::numerics
