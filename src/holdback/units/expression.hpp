// Unit expressions: "lbf/in", "N*m/bar", "lb/3000 ft2", "in³/(hp·h)".
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "holdback/units/dimension.hpp"

namespace holdback::units {

/// What a unit expression amounts to in SI.
struct Measure {
  Factor factor{};
  Dimension dimension{};
  std::optional<double> offset{};  // present only if the expression is one unit alone; not 0 for °C and °F
};

/// A read expression, with the symbols of the units in it for better faults.
struct Expression {
  Measure measure;
  std::vector<std::string_view> symbols;  // as in the table, whatever alias was written
};

/// A sentence that says why a text is no unit expression.
struct Unreadable {
  std::string what;
};

/// Reads a whole text as a unit expression. Products by * · ⋅ × . - or a space, quotients by /, whole powers as 2 ^2 ²,
/// brackets, plain factors, "sq" and "cu" before a unit. Left to right, but a number clings to the unit after it:
/// "lb/3000 ft2" is lb per (3000 ft2), as the trade writes a basis weight.
std::variant<Expression, Unreadable> read_expression(std::string_view text);

/// value · factor, plus `offset`; nothing if the result is not finite or a value vanished.
std::optional<double> to_si(double value, const Measure& measure, double offset);

/// The inverse of to_si(), up to rounding.
double from_si(double si, const Measure& measure, double offset);

}  // namespace holdback::units
