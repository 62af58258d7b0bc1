// The table of units: every name that a text may use, its dimension and its exact size.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "holdback/units/dimension.hpp"

namespace holdback::units {

/// One unit: SI = value · factor + offset. Only temperature scales have an offset [K].
struct Unit {
  std::string_view symbol;
  std::string_view aliases;  // further names, parted by spaces
  Dimension dimension;
  Factor factor{};
  double offset{0};
};

/// Every unit, in the order in which near misses are suggested.
std::span<const Unit> unit_table();

/// Symbol and aliases of a unit.
std::vector<std::string_view> names_of(const Unit& unit);

/// The unit called `name`, exactly as spelled; nullptr if there is none.
const Unit* find_unit(std::string_view name);

}  // namespace holdback::units
