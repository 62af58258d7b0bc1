// What each method makes of its inputs: the tension and the values beside it, as functions of the inputs in their
// order.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/field/measure_inputs.hpp"

namespace holdback::field {

/// A value beside the tension.
struct PartModel {
  std::string key{};
  std::string name{};
  Quantity kind{};
  numerics::Model model{};
};

/// One method with the inputs that are there.
struct MeasureModel {
  numerics::Model tension{};
  std::vector<PartModel> parts{};
  std::string simple_formula{};  // in words; empty: there is no shorter one
  numerics::Model simple{};
  std::vector<Note> assumptions{};
};

/// The model of a method. May add an input of its own to `lines`: what is not known and only bounded.
MeasureModel model_of(const MeasureMethod& method, MeasureLines& lines);

/// What the readings show to be wrong together: a push deeper than the span is long, more force with the brake off than
/// on. To be asked before model_of().
Problems contradictions(const MeasureMethod& method, const MeasureLines& lines);

}  // namespace holdback::field
