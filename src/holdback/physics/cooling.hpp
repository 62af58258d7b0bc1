// What a disc sheds, as the limits see it: the cooling map of a data sheet, and the steady temperature of a disc that
// loses heat to moving air and by radiation. What stands behind the numbers without a map: convection.hpp, guard.hpp.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "holdback/model/brake.hpp"

namespace holdback::physics {

/// Power [W] that a map gives at a speed [rad/s]: monotone between its points [fritsch1984], held at its ends. What
/// lies below the first point is left to the caller. Zero without points.
double cooling_power(const std::vector<CoolingPoint>& map, double rotational_speed);

/// Stefan and Boltzmann's constant [W/(m²·K⁴)], CODATA 2018.
inline constexpr double stefan_boltzmann = 5.670374419e-8;

/// Power [W] that a disc sheds at a rise over the air ΔΘ [K]: hA ΔΘ + k_r ((Θ_a + ΔΘ)⁴ − Θ_a⁴), with convection hA
/// [W/K] and radiation k_r = ε σ A [W/K⁴] to surroundings as warm as the air.
inline double shed_power(double ambient, double rise, double convection, double radiation) {
  const double hot = ambient + rise;
  return rise * (convection + radiation * (hot + ambient) * (hot * hot + ambient * ambient));
}

/// Steady temperature [K] of a disc that takes `power` [W]: the root of shed_power() = Q. Ambient without power (or
/// less), infinite where nothing sheds. Found by two of Halley's steps without a branch, so that a loop over a roll
/// runs in wide registers: to 1e-6 of the rise, up to 3000 K.
inline double steady_temperature(double ambient, double power, double convection, double radiation) {
  const double taken = std::max(power, 0.0);
  const double cold = convection + 4 * radiation * ambient * ambient * ambient;
  const double fourth = ambient * ambient * ambient * ambient;
  const double by_radiation = std::sqrt(std::sqrt(fourth + taken / (radiation + 1e-300))) - ambient;
  const auto nearer = [&](double rise) {
    const double hot = ambient + rise;
    const double excess = shed_power(ambient, rise, convection, radiation) - taken;
    const double slope = convection + 4 * radiation * hot * hot * hot;
    return rise - 2 * excess * slope / (2 * slope * slope - excess * (12 * radiation * hot * hot));
  };
  // From the nearer of two upper bounds. Two steps, written out: a loop would keep the caller's from running in wide
  // registers.
  const double rise = nearer(nearer(std::min(taken / cold, by_radiation)));
  return cold > 0 ? ambient + rise : (taken > 0 ? std::numeric_limits<double>::infinity() : ambient);
}

}  // namespace holdback::physics
