// What each method makes of its inputs: the tension and the values beside it, as functions of the inputs in their
// order.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "holdback/field/measure_inputs.hpp"

namespace holdback::field {

/// Values of all inputs, and what reads one of them or is made of them.
using Inputs = std::vector<double>;
using Get = std::function<double(const Inputs&)>;

/// Reads the input of a key that is there.
Get input_of(const MeasureLines& lines, const std::string& key);

/// The same, or what stands in for it.
Get input_or(const MeasureLines& lines, const std::string& key, Get otherwise);

/// A value beside the tension.
struct PartModel {
  std::string key{};
  std::string name{};
  Quantity kind{};
  numerics::Model model{};
  double scatter{};  // standard uncertainty beside that of the inputs: what readings in pairs scatter by
};

/// One method with the inputs that are there.
struct MeasureModel {
  numerics::Model tension{};
  std::vector<PartModel> parts{};
  std::string simple_formula{};  // in words; empty: there is no shorter one
  numerics::Model simple{};
  std::vector<Note> assumptions{};
};

/// The model of a question's method. May add an input of its own to `lines`: what is not known and only bounded, or
/// what readings scatter by that belong together one by one.
MeasureModel model_of(const MeasureInput& input, MeasureLines& lines);

/// The model of a pushed span; as model_of().
MeasureModel push_model(const MeasureInput& input, MeasureLines& lines);

/// What the readings show to be wrong together: a push deeper than the span is long, more force with the brake off than
/// on. To be asked before model_of().
Problems contradictions(const MeasureMethod& method, const MeasureLines& lines);

}  // namespace holdback::field
