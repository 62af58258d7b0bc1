#include "holdback/physics/cooling.hpp"

#include "holdback/numerics/monotone.hpp"

namespace holdback::physics {

double cooling_power(const std::vector<CoolingPoint>& map, double rotational_speed) {
  return numerics::interpolate_monotone(map, &CoolingPoint::speed, &CoolingPoint::power, rotational_speed);
}

}  // namespace holdback::physics
