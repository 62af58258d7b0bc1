#include "holdback/physics/guard.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "holdback/numerics/roots.hpp"
#include "holdback/physics/gravity.hpp"

namespace holdback::physics {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double discharge = 0.6;      // [1] sharp-edged opening
constexpr double pumping_share = 0.1;  // [1] of ½ρ(ωR)²

double bounded(double value) { return std::clamp(value, 0.0, 1e12); }

bool stands_open(const GuardBox& box) { return std::isinf(box.opening_area) && box.opening_area > 0; }

/// Share of the walls that is open [1].
double open_share(Guard kind) {
  switch (kind) {
    case Guard::none:
      return infinity;
    case Guard::mesh:
      return 0.65;
    case Guard::partly_closed:
      return 0.03;
    case Guard::closed:
      return 0.003;
  }
  return 0.003;
}

}  // namespace

GuardBox default_guard_box(Guard kind, double disc_diameter) {
  const double diameter = std::max(1e-12, bounded(disc_diameter));
  const double side = 1.15 * diameter;
  const double depth = 0.4 * diameter;
  const double walls = 2 * side * side + 4 * side * depth;
  return {walls, open_share(kind) * walls};
}

// V = C_d A/2 · √(Δp/ρ), Δp/ρ = 0.1 · ½(ωR)² + g H ΔΘ/Θ
double guard_flow(const GuardBox& box, double disc_diameter, double rotational_speed, double air_rise, const Air& air) {
  if (stands_open(box)) return infinity;
  const double diameter = bounded(disc_diameter);
  const double rim_speed = bounded(std::abs(rotational_speed)) * diameter / 2;
  const double pumping = pumping_share * rim_speed * rim_speed / 2;
  const double buoyancy = gravity * diameter * bounded(air_rise) / std::max(1.0, bounded(air.temperature));
  return discharge * bounded(box.opening_area) / 2 * std::sqrt(pumping + buoyancy);
}

// 1/(1/G_disc + 1/(ρ c V + U A))
double guarded_conductance(double disc_convection, const GuardBox& box, double flow, const Air& air,
                           double wall_coefficient) {
  const double disc = bounded(disc_convection);
  if (stands_open(box)) return disc;
  const double outward = bounded(air.density) * bounded(air.specific_heat) * bounded(flow) +
                         bounded(wall_coefficient) * bounded(box.wall_area);
  if (disc <= 0 || outward <= 0) return 0;
  return disc * (outward / (disc + outward));
}

// ΔΘ_air from ΔΘ_air (G_disc + G_out(ΔΘ_air)) = ΔΘ_disc G_disc: the left side only rises, so there is one.
GuardedDisc behind_guard(double disc_convection, const GuardBox& box, double disc_diameter, double rotational_speed,
                         double disc_rise, const Air& air, double wall_coefficient) {
  const double disc = bounded(disc_convection);
  const double rise = bounded(disc_rise);
  const auto conductance_at = [&](double air_rise) {
    const double flow = guard_flow(box, disc_diameter, rotational_speed, air_rise, air);
    return guarded_conductance(disc, box, flow, air, wall_coefficient);
  };
  if (stands_open(box)) return {disc, 0};
  if (disc <= 0) return {};
  // The box's air is warmer than ambient by what the disc-side resistance leaves of the disc's rise.
  const auto excess = [&](double air_rise) { return air_rise - rise * (1 - conductance_at(air_rise) / disc); };
  const double air_rise = rise > 1e-9 ? numerics::find_root(excess, 0, rise, 1e-12 * rise) : 0;
  return {conductance_at(air_rise), air_rise};
}

}  // namespace holdback::physics
