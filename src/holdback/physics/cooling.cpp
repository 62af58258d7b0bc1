#include "holdback/physics/cooling.hpp"

#include <cmath>
#include <limits>

#include "holdback/numerics/monotone.hpp"
#include "holdback/physics/air.hpp"

namespace holdback::physics {

double cooling_power(const std::vector<CoolingPoint>& map, double rotational_speed) {
  if (map.empty() || rotational_speed <= 0) return 0;
  const CoolingPoint& first = map.front();
  if (rotational_speed < first.speed) return first.power * (rotational_speed / first.speed);
  return numerics::interpolate_monotone(map, &CoolingPoint::speed, &CoolingPoint::power, rotational_speed);
}

double default_guard_factor(Guard guard) {
  switch (guard) {
    case Guard::none:
    case Guard::mesh:
      return 1;
    case Guard::partly_closed:
      return 0.7;
    case Guard::closed:
      return 0.4;
  }
  return 0.4;
}

// (ρ/ρ_0)^0.8
double altitude_factor(double altitude) {
  const auto density = [](double at) { return air_density(standard_pressure(at), standard_temperature(at)); };
  return std::pow(density(altitude) / density(0), 0.8);
}

// hA = Q_c(n)/ΔΘ_rated · guard · altitude
double cooling_conductance(const Brake& brake, double rotational_speed, double guard_factor, double altitude_factor) {
  const double power = cooling_power(brake.cooling, rotational_speed);
  if (power <= 0) return 0;
  return power / brake.cooling_rise * guard_factor * altitude_factor;
}

// Θ = Θ_amb + Q/hA
double steady_temperature(double ambient, double power, double conductance) {
  if (power <= 0) return ambient;
  if (conductance <= 0) return std::numeric_limits<double>::infinity();
  return ambient + power / conductance;
}

}  // namespace holdback::physics
