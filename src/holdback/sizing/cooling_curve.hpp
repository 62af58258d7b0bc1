// What one disc of a brake sheds on a site, against its speed: from the data sheet's map where there is one, brought to
// this guard, air and altitude by the physics of a turning disc, and from the physics alone where there is none.
#pragma once

#include <vector>

#include "holdback/sizing/demand.hpp"

namespace holdback::sizing {

/// Convection [W/K] and radiation [W/K⁴] of one disc, as steady_temperature() takes them.
struct Shedding {
  double convection{};
  double radiation{};
};

/// One disc over a roll: what it sheds, one over that at the rated rise [1/W], and how hot its face gets in an
/// emergency stop above the bulk for each watt with which the stop begins [K/W].
struct DiscOverRoll {
  OverRoll convection{};
  OverRoll radiation{};
  OverRoll per_rated_watt{};
  double surface_per_watt{};
};

class CoolingCurve {
 public:
  /// Lays the curve out over the speeds that the brake is rated for, and half as fast again. Points at nothing.
  CoolingCurve(const Brake& brake, const Site& site);

  Shedding at(double rotational_speed) const;
  DiscOverRoll over(const Demand& demand, double ambient) const;

  /// Rise [K] at which slip power is compared with what the disc sheds: that of the map, else up to the rating.
  double rated_rise() const { return rated_rise_; }

  /// The map's power at its middle point over what the disc's dimensions make plausible [1]; 1 without a map.
  double map_over_model() const { return map_over_model_; }

  /// How hot the face gets above the bulk in a stop of that time [s], for each watt with which the stop begins [K/W].
  double surface_per_watt(double stop_time) const;

  /// Convection behind the guard over that in free air [1] at a speed.
  double guard_share(double rotational_speed) const;

 private:
  void lay_out(const Brake& brake, const Site& site);
  void compare_with_map(const Brake& brake);

  std::vector<Shedding> grid_{};       // over the square root of speed
  double step_{};                      // of the grid [√(rad/s)]
  std::vector<double> guard_share_{};  // on a coarser grid
  std::vector<double> surface_{};      // logarithm of the rise over that of the stop time
  double rated_rise_{};
  double map_over_model_{1};
};

}  // namespace holdback::sizing
