#include "holdback/sizing/cooling_curve.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/physics/air.hpp"
#include "holdback/physics/cooling.hpp"
#include "holdback/physics/guard.hpp"
#include "holdback/sizing/disc.hpp"

namespace holdback::sizing {

namespace {

constexpr std::size_t coarse_steps = 48;
constexpr std::size_t fine_steps = 768;
constexpr std::size_t surface_steps = 64;
constexpr double reach = 1.5;            // over the rated speed
constexpr double shortest_stop = 0.05;   // [s]
constexpr double longest_stop = 1e5;     // [s]
constexpr double map_ambient = 293.15;   // [K] a data sheet's test room, at sea level and without guard
constexpr double map_pressure = 101325;  // [Pa]

/// Air and guard around a disc.
struct Surroundings {
  double ambient;   // [K]
  double pressure;  // [Pa] absolute
  physics::GuardBox box;
  std::optional<double> guard_factor;
  double seen;  // [1] share of its radiation that the disc loses
};

/// A wall between disc and room is a radiation shield: it halves what goes through it [incropera].
double share_seen(const physics::GuardBox& box) {
  if (!std::isfinite(box.opening_area) || box.wall_area <= 0) return 1;
  const double open = std::min(1.0, box.opening_area / box.wall_area);
  return open + (1 - open) / 2;
}

Surroundings of_map() { return {map_ambient, map_pressure, physics::default_guard_box(Guard::none, 1), {}, 1}; }

Surroundings of_site(const Site& site, double disc_diameter) {
  physics::GuardBox box = physics::default_guard_box(site.guard, disc_diameter);
  if (site.guard_opening && site.guard != Guard::none) box.opening_area = *site.guard_opening;
  return {site.ambient, site.air_pressure, box, site.guard_factor, share_seen(box)};
}

/// The physics of one disc at one speed: convection and radiation, and the share of free convection left by the guard.
struct Modelled {
  Shedding shedding;
  double guard_share;
};

Modelled model(const physics::DiscShape& shape, double speed, double rise, const Surroundings& around) {
  const physics::Air film = physics::air_at(around.pressure, around.ambient + rise / 2);
  const double free = physics::disc_conductance(shape, speed, film, rise);
  const double radiation = shape.emissivity * physics::stefan_boltzmann * physics::radiating_area(shape) * around.seen;
  if (around.guard_factor) return {{free * *around.guard_factor, radiation}, *around.guard_factor};
  const physics::Air room = physics::air_at(around.pressure, around.ambient);
  const double kept = physics::behind_guard(free, around.box, 2 * shape.outer_radius, speed, rise, room).conductance;
  return {{kept, radiation}, free > 0 ? kept / free : 1};
}

double shed(const Shedding& shedding, double ambient, double rise) {
  return physics::shed_power(ambient, rise, shedding.convection, shedding.radiation);
}

double mixed(double a, double b, double share) { return a + share * (b - a); }

Shedding mixed(const Shedding& a, const Shedding& b, double share) {
  return {mixed(a.convection, b.convection, share), mixed(a.radiation, b.radiation, share)};
}

/// Between the two grid points around a place.
template <class Value>
Value between(const std::vector<Value>& grid, double place) {
  const double kept = std::clamp(place, 0.0, static_cast<double>(grid.size() - 1) - 1e-9);
  const auto left = static_cast<std::size_t>(kept);
  return mixed(grid[left], grid[left + 1], kept - static_cast<double>(left));
}

}  // namespace

CoolingCurve::CoolingCurve(const Brake& brake, const Site& site)
    : step_(std::sqrt(reach * brake.rated_speed) / fine_steps),
      rated_rise_(brake.cooling.empty() ? brake.rated_temperature - site.ambient : brake.cooling_rise) {
  lay_out(brake, site);
  if (!brake.cooling.empty()) compare_with_map(brake);
  for (std::size_t k = 0; k <= surface_steps; ++k) {
    const double time =
        shortest_stop * std::exp(std::log(longest_stop / shortest_stop) * static_cast<double>(k) / surface_steps);
    surface_.push_back(std::log(surface_rise_per_watt(brake, time)));
  }
}

// The physics is slow and smooth, a map may have edges: the one is laid out coarsely, the other finely.
void CoolingCurve::lay_out(const Brake& brake, const Site& site) {
  const physics::DiscShape shape = disc_shape(brake);
  const Surroundings here = of_site(site, 2 * shape.outer_radius);
  const Surroundings there = of_map();
  const std::vector<CoolingPoint>& map = brake.cooling;
  // Nothing is known above the map's last point, so the disc is not taken to turn faster for the air.
  const auto known = [&](double root) { return map.empty() ? root * root : std::min(root * root, map.back().speed); };
  std::vector<Shedding> on_site;
  std::vector<double> in_test_room;  // [W] at the rated rise
  for (std::size_t k = 0; k <= coarse_steps; ++k) {
    const double speed = known(step_ * fine_steps / coarse_steps * static_cast<double>(k));
    const Modelled now = model(shape, speed, rated_rise_, here);
    on_site.push_back(now.shedding);
    guard_share_.push_back(now.guard_share);
    if (!map.empty())
      in_test_room.push_back(shed(model(shape, speed, rated_rise_, there).shedding, there.ambient, rated_rise_));
  }
  constexpr double coarse = static_cast<double>(coarse_steps) / fine_steps;
  for (std::size_t k = 0; k <= fine_steps; ++k) {
    const auto place = static_cast<double>(k);
    const Shedding now = between(on_site, place * coarse);
    if (map.empty()) {
      grid_.push_back(now);
      continue;
    }
    // Watts of the map over those of the model; below the map as at its first point.
    const double root = std::max(step_ * place, std::sqrt(map.front().speed));
    const double scale = physics::cooling_power(map, root * root) / between(in_test_room, root / step_ * coarse);
    grid_.push_back({scale * now.convection, scale * now.radiation});
  }
}

void CoolingCurve::compare_with_map(const Brake& brake) {
  const CoolingPoint& middle = brake.cooling[brake.cooling.size() / 2];
  const Surroundings there = of_map();
  const Shedding modelled = model(disc_shape(brake), middle.speed, rated_rise_, there).shedding;
  map_over_model_ = middle.power / shed(modelled, there.ambient, rated_rise_);
}

Shedding CoolingCurve::at(double rotational_speed) const {
  return between(grid_, std::sqrt(std::max(rotational_speed, 0.0)) / step_);
}

DiscOverRoll CoolingCurve::over(const Demand& demand, double ambient) const {
  DiscOverRoll over;
  for (std::size_t i = 0; i < over.convection.size(); ++i) {
    const Shedding here = at(demand.rotational_speed[i]);
    over.convection[i] = here.convection;
    over.radiation[i] = here.radiation;
    over.per_rated_watt[i] = 1 / shed(here, ambient, rated_rise_);
  }
  over.surface_per_watt = surface_per_watt(demand.emergency_stop_time);
  return over;
}

double CoolingCurve::surface_per_watt(double stop_time) const {
  const double whole = std::log(longest_stop / shortest_stop);
  return std::exp(between(surface_, std::log(stop_time / shortest_stop) / whole * surface_steps));
}

double CoolingCurve::guard_share(double rotational_speed) const {
  return between(guard_share_, std::sqrt(std::max(rotational_speed, 0.0)) / step_ * coarse_steps / fine_steps);
}

}  // namespace holdback::sizing
