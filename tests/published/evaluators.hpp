// From the names in the case files to calls of physics/.
#pragma once

#include <functional>
#include <map>
#include <set>
#include <stdexcept>
#include <string>
#include <utility>

#include "holdback/model/quantity.hpp"

namespace holdback::published {

/// A text that a case states and that cannot be understood.
struct CaseFault : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// What a number is: a kind that units/ reads, or, for the few that no stand file has, a number and this SI unit.
struct Dimension {
  Quantity kind{Quantity::number};
  std::string si_unit{};
  Dimension(Quantity quantity) : kind(quantity) {}  // NOLINT(google-explicit-constructor)
  Dimension(const char* unit) : si_unit(unit) {}    // NOLINT(google-explicit-constructor)
};

/// SI value of a quantity as written; throws CaseFault.
double read_quantity(const std::string& text, const Dimension& dimension);

/// Half a unit in the last printed digit, as the low and high end [SI] of what the text can stand for.
std::pair<double, double> read_printed(const std::string& text, const Dimension& dimension);

/// The arguments of one evaluate line. Each is asked for by name; what nobody asked for is a fault.
class Arguments {
 public:
  explicit Arguments(const std::map<std::string, std::string>& given) : given_(given) {}
  double operator()(const std::string& name, const Dimension& dimension);
  double or_else(const std::string& name, const Dimension& dimension, double otherwise);
  bool has(const std::string& name) const { return given_.count(name) > 0; }
  std::string text(const std::string& name);
  void expect_all_used() const;

 private:
  const std::map<std::string, std::string>& given_;
  std::set<std::string> used_{};
};

struct Evaluator {
  Dimension result;
  std::function<double(Arguments&)> call;
};

using Evaluators = std::map<std::string, Evaluator>;

/// Those of heat in depth, of the tension window, of the shaft, of control, of loops of a whole unwind and of fits.
Evaluators heat_depth_evaluators();
Evaluators window_evaluators();
Evaluators shaft_evaluators();
Evaluators control_evaluators();
Evaluators motion_evaluators();
Evaluators fit_evaluators();
Evaluators signal_evaluators();

/// Those of the tension measured on site.
Evaluators measure_evaluators();

/// All evaluators by name.
const std::map<std::string, Evaluator>& evaluators();

}  // namespace holdback::published
