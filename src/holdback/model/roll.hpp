// The roll: core and full diameter, and what is known of it beside its web.
#pragma once

#include <optional>
#include <string>

#include "holdback/model/problem.hpp"

namespace holdback {

struct Roll {
  std::string name{};
  double core_diameter{};          // [m] > 0, outside of the core: the roll at its end
  double full_diameter{};          // [m] > core_diameter
  double core_mass{};              // [kg] ≥ 0, core with chucks or adapters that turn with it
  double runout{};                 // [m] ≥ 0, out-of-round amplitude of the surface
  int lobes{1};                    // ≥ 1, how often a turn the surface comes out: 1 off centre, 2 oval
  std::optional<double> length{};  // [m] > 0, web on the full roll as its label says; checked against the diameters
  std::optional<double> mass{};    // [kg] > 0, web mass as its label says; checked against basis weight and width
  double core_radius() const { return core_diameter / 2; }
  double full_radius() const { return full_diameter / 2; }
  bool operator==(const Roll&) const = default;
};

Problems problems_of(const Roll& roll, const std::string& path);

}  // namespace holdback
