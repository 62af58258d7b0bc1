// What the readers of tables share about a cell: bare numbers, decimal commas, what a sheet shows instead of a value.
#pragma once

#include <string>

#include "holdback/files/field.hpp"

namespace holdback::files {

/// True for a number without a unit.
bool is_bare_number(const std::string& text);

/// True for a quantity that is not understood without a unit.
bool needs_unit(const FieldInfo& field);

/// "0,5" → "0.5": between two digits, when it is the only one and there is no point.
std::string with_decimal_point(std::string text);

/// True for what a sheet shows where a formula failed, such as "#N/A".
bool is_error_value(const std::string& text);

}  // namespace holdback::files
