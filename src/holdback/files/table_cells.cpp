#include "holdback/files/table_cells.hpp"

#include <set>

#include "holdback/units/units.hpp"

namespace holdback::files {

bool is_bare_number(const std::string& text) {
  return std::holds_alternative<double>(units::parse(text, Quantity::number));
}

bool needs_unit(const FieldInfo& field) {
  return field.form == Form::quantity && std::holds_alternative<units::Fault>(units::parse_unit("", field.kind));
}

std::string with_decimal_point(std::string text) {
  const std::size_t comma = text.find(',');
  const bool one = comma != std::string::npos && text.find(',', comma + 1) == std::string::npos &&
                   text.find('.') == std::string::npos;
  const auto is_digit = [&](std::size_t i) { return i < text.size() && text[i] >= '0' && text[i] <= '9'; };
  if (one && comma > 0 && is_digit(comma - 1) && is_digit(comma + 1)) text[comma] = '.';
  return text;
}

bool is_error_value(const std::string& text) {
  static const std::set<std::string> errors{"#N/A",   "#REF!", "#VALUE!", "#DIV/0!",      "#NAME?",
                                            "#NULL!", "#NUM!", "#SPILL!", "#GETTING_DATA"};
  return errors.count(text) != 0;
}

}  // namespace holdback::files
