#include "holdback/model/control.hpp"

#include "holdback/model/faults.hpp"

namespace holdback {

namespace {

/// A loop whose gain and integral time do not come from the same hand is rarely what is meant.
void check_gains(const Control& control, Faults& faults) {
  const bool is_loop = control.kind == ControlKind::load_cell || control.kind == ControlKind::dancer;
  if (!is_loop || control.gain.has_value() == control.integral_time.has_value()) return;
  if (control.gain) {
    faults.warning(
        "gain",
        {"A gain of {0} is given without an integral_time; the other is tuned.", {{*control.gain, Quantity::number}}},
        {"both, or neither"});
  } else {
    faults.warning("integral_time",
                   {"An integral time of {0} is given without a gain; the other is tuned.",
                    {{*control.integral_time, Quantity::duration}}},
                   {"both, or neither"});
  }
}

}  // namespace

Problems problems_of(const Control& control) {
  Faults faults("control");
  check_gains(control, faults);
  return faults.take();
}

}  // namespace holdback
