// The table of quantity kinds: their SI unit, the units they are shown in, and texts that show how to write them.
#pragma once

#include <cstddef>
#include <span>
#include <string_view>

#include "holdback/model/quantity.hpp"
#include "holdback/units/expression.hpp"
#include "holdback/units/units.hpp"

namespace holdback::units {

/// One kind of quantity.
struct Kind {
  Quantity quantity;
  std::string_view key;      // as in the schema
  std::string_view noun;     // with its article, for faults
  std::string_view si_unit;  // coherent, ASCII; "1" if there is none
  std::string_view shown_si;
  std::string_view shown_us;
  std::string_view examples;  // accepted texts, parted by ", "
};

/// Every kind, in the order of the enumerators.
std::span<const Kind> kind_table();

/// The row of a kind.
const Kind& kind_of(Quantity quantity);

/// Whether a kind is a bare number that takes no unit at all.
bool takes_no_unit(Quantity quantity);

/// The units of a kind, read once from the texts of its row.
struct KindUnits {
  Dimension dimension;
  Measure si;
  Measure us;
};
const KindUnits& units_of(Quantity quantity);

/// The measure in which `system` shows a kind.
const Measure& shown_measure(Quantity quantity, System system);

/// Offset [K] of a unit when it states `quantity`: that of its scale for a temperature, 0 for all else.
double offset_for(Quantity quantity, const Measure& measure);

}  // namespace holdback::units
