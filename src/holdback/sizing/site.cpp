#include "holdback/sizing/site.hpp"

#include <algorithm>

#include "holdback/physics/cooling.hpp"

namespace holdback::sizing {

Site site_of(const Stand& stand) {
  Site site;
  site.drag = stand.drag;
  site.shaft_inertia = stand.shaft_inertia;
  site.ambient = stand.ambient;
  site.guard_factor = stand.guard_factor.value_or(physics::default_guard_factor(stand.guard));
  site.altitude_factor = physics::altitude_factor(stand.altitude);
  site.air_ceiling = std::min(stand.air.supply_pressure, stand.air.highest_pressure);
  site.air_floor = stand.air.lowest_pressure;
  site.pressure_step = stand.air.resolution + stand.air.hysteresis;
  site.hysteresis = stand.air.hysteresis;
  site.limits = stand.limits;
  site.line = stand.line;
  return site;
}

std::vector<Candidate> candidates(const Stand& stand) {
  std::vector<Candidate> all;
  int order = 0;
  for (const Brake& brake : stand.brakes) {
    for (int brakes = 1; brakes <= brake.most_brakes; ++brakes)
      for (const Grade& grade : brake.grades) all.push_back({&brake, &grade, brakes, order});
    ++order;
  }
  return all;
}

Fit fit_of(const Candidate& candidate) {
  return {candidate.brake->name, candidate.grade->name, candidate.brakes, candidate.brake->pairs};
}

double pressure_ceiling(const Site& site, const Brake& brake) {
  return std::min(site.air_ceiling, brake.rated_pressure);
}

double pressure_floor(const Site& site, const Brake& brake) {
  return std::max(site.air_floor, brake.threshold_pressure + site.hysteresis);
}

}  // namespace holdback::sizing
