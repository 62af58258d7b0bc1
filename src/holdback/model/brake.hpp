// A candidate brake: one disc with its calipers. Pad pairs are engaged by valve; all engaged pairs share one pressure.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "holdback/model/problem.hpp"

namespace holdback {

/// A friction grade: what is glued to the pads. One grade is fitted to a whole stand.
struct Grade {
  std::string name{};
  std::optional<double> friction{};         // [1] nominal kinetic coefficient; needed when pads are given by geometry
  std::optional<double> torque_per_pair{};  // [N·m] at the brake's torque_pressure; needed for data-sheet brakes
  double friction_band{};                   // [1] 0..1, ± around nominal
  double static_ratio{};                    // [1] > 0, static over kinetic friction
  double friction_slope{};                  // [s/m] share of friction gained for each m/s of sliding; < 0: falls
  std::optional<double> fade_start{};       // [K] temperature from which friction falls; none: no fade
  double fade_rate{};                       // [1/K] ≥ 0, share of friction lost per kelvin above fade_start
  double temperature_limit{};               // [K]
  double wear_rate{};                       // [m³/J] > 0, worn volume per friction energy
  std::optional<double> wear_knee{};        // [K] temperature from which wear rises; none: constant
  double wear_doubling{};                   // [K] > 0, rise above the knee that doubles the wear rate
  std::optional<double> pressure_speed_limit{};  // [Pa·m/s] pad pressure times sliding speed
  bool operator==(const Grade&) const = default;
};

/// A pad that is a sector of an annulus.
struct SectorPad {
  double inner_diameter{};  // [m] > 0
  double outer_diameter{};  // [m] > inner_diameter
  double angle{};           // [rad] > 0, included angle of one pad
  bool operator==(const SectorPad&) const = default;
};

/// A round pad (button).
struct RoundPad {
  double pad_diameter{};     // [m] > 0
  double centre_diameter{};  // [m] > pad_diameter, circle on which the pad's centre runs
  bool operator==(const RoundPad&) const = default;
};

/// A pad known only by what a data sheet says of it; its effective diameter serves sliding speed.
struct DataSheetPad {
  double torque_pressure{};     // [Pa] gauge, pressure at which torque_per_pair was stated
  double effective_diameter{};  // [m] > 0
  bool operator==(const DataSheetPad&) const = default;
};

using Pad = std::variant<SectorPad, RoundPad, DataSheetPad>;

/// One point of a cooling map: the power a disc sheds at a speed, at the map's rated temperature rise, in free air.
struct CoolingPoint {
  double speed{};  // [rad/s] > 0
  double power{};  // [W] > 0
  bool operator==(const CoolingPoint&) const = default;
};

struct Brake {
  std::string name{};
  Pad pad{};
  int pairs{1};                            // ≥ 1, pad pairs fitted to one disc; 1 … pairs can be engaged
  int most_brakes{1};                      // ≥ 1, how many such brakes the shaft can take
  double piston_area{};                    // [m²] > 0 of one pair's actuator (geometry route)
  double actuator_efficiency{1};           // [1] 0..1
  double threshold_pressure{};             // [Pa] ≥ 0: below it the pads give no torque
  double pad_area{};                       // [m²] > 0, friction face of one pad
  double usable_pad_depth{};               // [m] > 0, thickness that may wear away
  double drag{};                           // [N·m] ≥ 0 of one brake with its pads released
  double disc_mass{};                      // [kg] > 0
  double disc_inertia{};                   // [kg·m²] ≥ 0
  double specific_heat{};                  // [J/(kg·K)] > 0
  std::optional<double> disc_diameter{};   // [m] > 0 outside; needed without a cooling map, else taken from the pads
  std::optional<double> disc_bore{};       // [m] > 0 inside of the friction ring; else taken from the pads
  std::optional<double> disc_thickness{};  // [m] > 0 overall; else from mass, density and diameters
  std::optional<double> vent_gap{};        // [m] > 0 between the two plates of a vented disc; none: a solid disc
  int vents{30};                           // radial passages of a vented disc
  double disc_density{};                   // [kg/m³] > 0
  double disc_conductivity{};              // [W/(m·K)] > 0
  double emissivity{};                     // [1] 0..1, of disc and rim in use
  double caliper_mass{};                   // [kg] > 0, caliper of one pair
  double hub_mass{};                       // [kg] > 0, what the disc is bolted to
  double hub_conductance{};                // [W/K] ≥ 0, disc to hub
  std::vector<CoolingPoint> cooling{};     // by rising speed; empty: cooling follows from the disc's dimensions
  double cooling_rise{};                   // [K] > 0, temperature rise at which the map was taken; 0 without a map
  double rated_pressure{};                 // [Pa] gauge, maker's rating
  double rated_torque{};                   // [N·m] of one brake, maker's rating
  double rated_speed{};                    // [rad/s] maker's rating
  double rated_temperature{};              // [K] disc, maker's rating
  std::optional<double> price{};           // in the stand's currency, one brake
  std::optional<double> pad_price{};       // in the stand's currency, one pad
  std::vector<Grade> grades{};             // at least one
  bool operator==(const Brake&) const = default;
};

Problems problems_of(const Brake& brake, const std::string& path);

}  // namespace holdback
