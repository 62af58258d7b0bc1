#include "holdback/physics/roll.hpp"

#include <cmath>
#include <numbers>

namespace holdback::physics {

using std::numbers::pi;

// L = π(R² − r²)/t, factored so that thin build-ups keep their digits.
double roll_length(double core_radius, double radius, double caliper) {
  return pi * (radius - core_radius) * (radius + core_radius) / caliper;
}

// R = √(r² + L t/π)
double roll_radius(double core_radius, double length, double caliper) {
  return std::sqrt(core_radius * core_radius + length * caliper / pi);
}

double web_mass(double basis_weight, double width, double length) { return basis_weight * width * length; }

// J = ½ b w L (R² + r²)
double web_inertia(double basis_weight, double width, double caliper, double core_radius, double radius) {
  const double mass = web_mass(basis_weight, width, roll_length(core_radius, radius, caliper));
  return mass * (radius * radius + core_radius * core_radius) / 2;
}

double core_inertia(double core_mass, double core_radius) { return core_mass * core_radius * core_radius; }

// dR/dt = −t v/(2πR)
double radius_rate(double caliper, double speed, double radius) { return -caliper * speed / (2 * pi * radius); }

// dω/dt = (a − ω dR/dt)/R = (a + t v²/(2πR²))/R
double roll_acceleration(double acceleration, double caliper, double speed, double radius) {
  const double thinning = caliper * speed * speed / (2 * pi * radius * radius);
  return (acceleration + thinning) / radius;
}

}  // namespace holdback::physics
