// Names that are almost units: what to suggest instead.
#pragma once

#include <string>
#include <string_view>

namespace holdback::units {

/// A sentence for a name that is no unit, with a suggestion if one is near: "'bra' is not a known unit; did you mean
/// 'bar'?"
std::string unknown_unit(std::string_view name);

/// Single-character edits (insert, drop, replace, swap of neighbours) from one text to the other, counted in bytes.
std::size_t edit_distance(std::string_view a, std::string_view b);

}  // namespace holdback::units
