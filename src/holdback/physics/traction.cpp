#include "holdback/physics/traction.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "holdback/numerics/roots.hpp"

namespace holdback::physics {

namespace {

constexpr double foil_constant = 0.643;

// air_film() = film solved for the tension per width [N/m].
double tension_at_film(double radius, double viscosity, double speed, double film) {
  return 12 * viscosity * speed / std::pow(film / (foil_constant * radius), 1.5);
}

}  // namespace

// h = 0.643 R (12 η v/T')^(2/3)
double air_film(double radius, double viscosity, double speed, double tension_per_width) {
  if (speed <= 0) return 0;
  if (tension_per_width <= 0) return std::numeric_limits<double>::infinity();
  return foil_constant * radius * std::pow(12 * viscosity * speed / tension_per_width, 2.0 / 3.0);
}

// μ (3 − h/σ)/2 between h = σ and h = 3 σ
double film_friction(double friction, double film, double roughness) {
  if (film <= roughness) return friction;
  if (roughness <= 0) return 0;
  return friction * std::max(0.0, (3 - film / roughness) / 2);
}

// e^(μβ)
double capstan_ratio(double friction, double wrap) { return std::exp(friction * wrap); }

// M = T R (e^(μβ) − 1)
double traction_torque(double tension, double radius, double friction, double wrap) {
  return tension * radius * std::expm1(friction * wrap);
}

double idler_tension(const Idler& idler, const IdlerDuty& duty) {
  const double radius = idler.diameter / 2;
  const double asked = idler.drag + idler.inertia * duty.acceleration / radius;
  const auto spare = [&](double tension) {
    const double film = air_film(radius, duty.viscosity, duty.speed, tension / duty.width);
    return traction_torque(tension, radius, film_friction(idler.friction, film, idler.roughness), idler.wrap) - asked;
  };
  const double touching =
      duty.width * tension_at_film(radius, duty.viscosity, duty.speed, 3 * idler.roughness);  // h = 3 σ
  if (asked <= 0) return touching;
  const double without_air = asked / (radius * std::expm1(idler.friction * idler.wrap));
  if (spare(without_air * (1 + 1e-12)) >= 0) return without_air;
  const double pressed = std::sqrt(27.0) * touching;  // h = σ
  // Rounding may leave the root outside of its ends when they lie close together.
  const double low = std::max(touching, without_air);
  const double high = std::max(pressed, without_air);
  if (spare(low) >= 0) return low;
  if (spare(high) <= 0) return high;
  return numerics::find_root(spare, low, high, 1e-9 * high);
}

}  // namespace holdback::physics
