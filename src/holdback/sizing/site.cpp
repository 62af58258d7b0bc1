#include "holdback/sizing/site.hpp"

#include <algorithm>

#include "holdback/physics/air.hpp"
#include "holdback/sizing/cooling_curve.hpp"

namespace holdback::sizing {

Site site_of(const Stand& stand) {
  Site site;
  site.drag = stand.drag;
  site.shaft_inertia = stand.shaft_inertia;
  site.ambient = stand.ambient;
  site.air_pressure = physics::standard_pressure(stand.altitude);
  site.guard = stand.guard;
  site.guard_factor = stand.guard_factor;
  site.guard_opening = stand.guard_opening;
  site.air_ceiling = std::min(stand.air.supply_pressure, stand.air.highest_pressure);
  site.air_floor = stand.air.lowest_pressure;
  site.pressure_step = stand.air.resolution + stand.air.hysteresis;
  site.hysteresis = stand.air.hysteresis;
  site.limits = stand.limits;
  site.line = stand.line;
  site.path = stand.path;
  site.idlers = stand.idlers;
  site.shaft = stand.shaft;
  site.uncertainty = stand.uncertainty;
  return site;
}

Candidate candidate_of(const Brake& brake, const Grade& grade, int brakes, const Site& site, int order,
                       std::shared_ptr<const CoolingCurve> cooling) {
  if (!cooling) cooling = std::make_shared<const CoolingCurve>(brake, site);
  return {&brake,
          &grade,
          brakes,
          order,
          physics::pair_torque_per_pressure(brake, grade),
          physics::friction_radius(brake.pad).capacity,
          std::move(cooling)};
}

std::vector<Candidate> candidates(const Stand& stand, const Site& site) {
  std::vector<Candidate> all;
  int order = 0;
  for (const Brake& brake : stand.brakes) {
    const auto cooling = std::make_shared<const CoolingCurve>(brake, site);
    for (int brakes = 1; brakes <= brake.most_brakes; ++brakes)
      for (const Grade& grade : brake.grades) all.push_back(candidate_of(brake, grade, brakes, site, order, cooling));
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
