#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <variant>

#include "holdback/units/units.hpp"
#include "published/evaluators.hpp"

namespace holdback::published {

namespace {

/// The number at the start of a text and how much of the text it takes.
double leading_number(const std::string& text, std::size_t& length) {
  char* end = nullptr;
  const double value = std::strtod(text.c_str(), &end);
  length = static_cast<std::size_t>(end - text.c_str());
  if (length == 0) throw CaseFault("'" + text + "' does not begin with a number");
  return value;
}

/// Half a unit in the last digit of a printed number: "7.06e-4" → 5e-7.
double half_unit(const std::string& number) {
  const auto exponent_at = number.find_first_of("eE");
  const std::string mantissa = number.substr(0, exponent_at);
  const auto point = mantissa.find('.');
  const auto decimals = point == std::string::npos ? 0 : static_cast<int>(mantissa.size() - point - 1);
  const int exponent = exponent_at == std::string::npos ? 0 : std::atoi(number.c_str() + exponent_at + 1);
  return 0.5 * std::pow(10.0, exponent - decimals);
}

std::string written(double value) {
  char buffer[40];
  std::snprintf(buffer, sizeof buffer, "%.17g", value);
  return buffer;
}

}  // namespace

double read_quantity(const std::string& text, const Dimension& dimension) {
  if (!dimension.si_unit.empty()) {
    std::size_t length = 0;
    const double value = leading_number(text, length);
    if (text.substr(length) != " " + dimension.si_unit)
      throw CaseFault("'" + text + "' is not in " + dimension.si_unit);
    return value;
  }
  const units::Parsed parsed = units::parse(text, dimension.kind);
  if (const auto* fault = std::get_if<units::Fault>(&parsed)) throw CaseFault("'" + text + "': " + fault->what);
  return std::get<double>(parsed);
}

std::pair<double, double> read_printed(const std::string& text, const Dimension& dimension) {
  std::size_t length = 0;
  const double value = leading_number(text, length);
  const std::string unit = text.substr(length);
  const double half = half_unit(text.substr(0, length)) * (1 + 1e-9);
  return {read_quantity(written(value - half) + unit, dimension),
          read_quantity(written(value + half) + unit, dimension)};
}

double Arguments::operator()(const std::string& name, const Dimension& dimension) {
  return read_quantity(text(name), dimension);
}

double Arguments::or_else(const std::string& name, const Dimension& dimension, double otherwise) {
  return has(name) ? (*this)(name, dimension) : otherwise;
}

std::string Arguments::text(const std::string& name) {
  used_.insert(name);
  const auto found = given_.find(name);
  if (found == given_.end()) throw CaseFault("'" + name + "' is missing");
  return found->second;
}

void Arguments::expect_all_used() const {
  for (const auto& [name, value] : given_) {
    if (used_.count(name) == 0) throw CaseFault("'" + name + "' is not asked for");
  }
}

}  // namespace holdback::published
