// Text → SI: the number, the unit, and the faults that tell a person what to write instead.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>
#include <utility>

#include "holdback/units/digits.hpp"
#include "holdback/units/expression.hpp"
#include "holdback/units/kind_table.hpp"
#include "holdback/units/text.hpp"
#include "holdback/units/units.hpp"

namespace holdback::units {
namespace {

constexpr std::size_t longest_text = 200;

constexpr Dimension acceleration = length / (time * time);

Fault fault(std::string what, Quantity kind) { return {std::move(what), accepted_examples(kind)}; }

// What people call a dimension, by a unit of it.
struct Noun {
  std::string_view noun;
  std::string_view unit;
};
constexpr Noun nouns[] = {
    {"a plain number", "1"},
    {"a length", "m"},
    {"an area", "m2"},
    {"a volume", "m3"},
    {"a speed", "m/s"},
    {"an acceleration", "m/s2"},
    {"a mass", "kg"},
    {"a mass per length", "kg/m"},
    {"a basis weight", "kg/m2"},
    {"a density", "kg/m3"},
    {"a mass times length", "kg*m"},
    {"an inertia", "kg*m2"},
    {"a force", "N"},
    {"a force per width", "N/m"},
    {"a pressure", "Pa"},
    {"a torque or an energy", "N*m"},
    {"a power", "W"},
    {"a time", "s"},
    {"a rate", "1/s"},
    {"an angle", "rad"},
    {"a rotational speed or a frequency", "rad/s"},
    {"a temperature", "K"},
    {"a share per kelvin", "1/K"},
    {"a specific heat", "J/(kg*K)"},
    {"a thermal conductance", "W/K"},
    {"a damping", "N*s/m"},
    {"a share per speed", "s/m"},
};

bool has_dimension(const Noun& noun, const Dimension& dimension) {
  const auto read = read_expression(noun.unit);
  const auto* expression = std::get_if<Expression>(&read);
  return expression != nullptr && expression->measure.dimension == dimension;
}

// "'35 psi' is a pressure, not a speed"
std::string mismatch(std::string_view written, const Dimension& dimension, Quantity kind) {
  const auto* noun =
      std::find_if(std::begin(nouns), std::end(nouns), [&](const Noun& n) { return has_dimension(n, dimension); });
  const auto wanted = kind_of(kind).noun;
  if (noun == std::end(nouns)) return fmt::format("{} is not {}", quoted(written), wanted);
  return fmt::format("{} is {}, not {}", quoted(written), noun->noun, wanted);
}

struct MassAndForce {
  std::string_view mass;
  std::string_view force;
};
constexpr MassAndForce twins[] = {{"lb", "lbf"}, {"oz", "ozf"}, {"kg", "kgf"}, {"g", "gf"}};

bool uses(const Expression& expression, std::string_view symbol) {
  return std::find(expression.symbols.begin(), expression.symbols.end(), symbol) != expression.symbols.end();
}

// Pound-mass for pound-force and the like, the commonest slip of all, in either direction.
std::string twin_hint(const Expression& expression) {
  for (const auto& twin : twins) {
    if (uses(expression, twin.mass))
      return fmt::format("; '{}' is a mass, write '{}' for a force", twin.mass, twin.force);
    if (uses(expression, twin.force))
      return fmt::format("; '{}' is a force, write '{}' for a mass", twin.force, twin.mass);
  }
  return {};
}

std::string hint(const Expression& expression, const Dimension& wanted) {
  const auto& got = expression.measure.dimension;
  if (got * acceleration == wanted || got == wanted * acceleration) return twin_hint(expression);
  if (got * angle == wanted) return "; an angle is missing, write rev, deg or rad, as in rev/min";
  return {};
}

// A count a time is a frequency as it stands: one cycle is a whole turn of the phase. A rotational speed does not take
// it.
Measure in_cycles(Measure measure, Quantity kind) {
  if (kind != Quantity::frequency || measure.dimension * angle != units_of(kind).dimension) return measure;
  measure.factor = measure.factor * Factor{2 * std::numbers::pi};
  measure.dimension = units_of(kind).dimension;
  return measure;
}

// The measure of a unit text that fits the kind. `written` is the whole text that a fault should cite.
std::variant<Measure, Fault> fitting_measure(std::string_view unit, std::string_view written, Quantity kind) {
  if (unit.size() > longest_text) return fault(fmt::format("{} is too long for a unit", quoted(unit)), kind);
  const auto read = read_expression(unit);
  if (const auto* bad = std::get_if<Unreadable>(&read)) return fault(bad->what, kind);
  const auto& expression = std::get<Expression>(read);
  const auto measure = in_cycles(expression.measure, kind);
  const auto& wanted = units_of(kind).dimension;
  if (measure.dimension != wanted)
    return fault(mismatch(written, measure.dimension, kind) + hint(expression, wanted), kind);
  if (kind == Quantity::temperature && !measure.offset) {
    return fault(fmt::format("{} is no temperature scale; write degC, degF or K alone", quoted(unit)), kind);
  }
  return measure;
}

// A sign, as ASCII or as the Unicode minus; removed from the text.
double take_sign(std::string_view& text) {
  const auto c = code_point_at(text, 0);
  const bool minus = c.value == U'-' || c.value == 0x2212;
  if (minus || c.value == U'+') text.remove_prefix(c.size);
  return minus ? -1 : 1;
}

bool opens_number(std::string_view text) {
  return !text.empty() && ((text[0] >= '0' && text[0] <= '9') || text[0] == '.');
}

// What follows the value and a slash, as in "/K" or "1/K"; nothing if no slash stands there.
std::optional<std::string_view> after_slash(std::string_view unit) {
  if (!unit.empty() && unit[0] == '1') unit = trimmed(unit.substr(1));
  if (unit.empty() || unit[0] != '/') return std::nullopt;
  return trimmed(unit.substr(1));
}

// A value that goes on where the unit should begin. "35 000 N" read as a product would be 0, "1/2 %" read as a
// quotient would be 50.
std::string broken_number(std::string_view written, std::string_view unit) {
  const auto divisor = after_slash(unit);
  if (divisor && opens_number(*divisor)) return fmt::format("{} has a fraction; write a decimal", quoted(written));
  if (!divisor && opens_number(unit)) return fmt::format("{} has a gap in its number", quoted(written));
  return {};
}

std::string number_fault(std::string_view written, std::string_view rest, const std::optional<ScannedNumber>& number) {
  if (written.empty()) return "nothing is written";
  if (!number) return fmt::format("{} does not begin with a number", quoted(written));
  if (!number->in_range) return fmt::format("{} is too large or too small a number", quoted(written));
  if (rest.substr(0, 1) == ",") {
    return fmt::format(
        "the comma in {} could part thousands or decimals; write 1000 for a thousand and 1.5 with a point",
        quoted(written));
  }
  return broken_number(written, trimmed(rest));
}

Parsed bare_number(double value, std::string_view written, Quantity kind) {
  if (kind == Quantity::count && value != std::floor(value)) {
    return fault(fmt::format("{} is not a whole number", quoted(written)), kind);
  }
  if (takes_no_unit(kind) || kind == Quantity::ratio) return value;
  return fault(fmt::format("{} has no unit; {} needs one", quoted(written), kind_of(kind).noun), kind);
}

Parsed with_unit(double value, std::string_view unit, std::string_view written, Quantity kind) {
  const auto read = fitting_measure(unit, written, kind);
  if (const auto* bad = std::get_if<Fault>(&read)) return *bad;
  if (takes_no_unit(kind)) {
    return fault(fmt::format("{} has a unit; {} takes none", quoted(written), kind_of(kind).noun), kind);
  }
  const auto& measure = std::get<Measure>(read);
  const auto si = to_si(value, measure, offset_for(kind, measure));
  if (!si) return fault(fmt::format("{} is too large or too small a number", quoted(written)), kind);
  return *si;
}

}  // namespace

Parsed parse(std::string_view text, Quantity kind) {
  if (text.size() > longest_text) return fault(fmt::format("{} is too long for a quantity", quoted(text)), kind);
  const auto written = trimmed(text);
  auto rest = written;
  const double sign = take_sign(rest);
  const auto number = scan_number(rest);
  if (number) rest.remove_prefix(number->size);
  const auto bad = number_fault(written, rest, number);
  if (!bad.empty()) return fault(bad, kind);
  const double value = sign * number->value;
  const auto unit = trimmed(rest);
  return unit.empty() ? bare_number(value, written, kind) : with_unit(value, unit, written, kind);
}

std::variant<UnitValue, Fault> parse_unit(std::string_view unit, Quantity kind) {
  const auto text = trimmed(unit);
  const bool unitless = takes_no_unit(kind);
  if (text.empty()) {
    if (unitless || kind == Quantity::ratio) return UnitValue{1, 0};
    return fault(fmt::format("no unit is written; {} needs one", kind_of(kind).noun), kind);
  }
  const auto read = fitting_measure(text, text, kind);
  if (const auto* bad = std::get_if<Fault>(&read)) return *bad;
  if (unitless) return fault(fmt::format("{} is a unit; {} takes none", quoted(text), kind_of(kind).noun), kind);
  const auto& measure = std::get<Measure>(read);
  return UnitValue{measure.factor.numerator / measure.factor.denominator, offset_for(kind, measure)};
}

std::string accepted_examples(Quantity kind) { return std::string(kind_of(kind).examples); }

}  // namespace holdback::units
