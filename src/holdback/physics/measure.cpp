#include "holdback/physics/measure.hpp"

#include <cmath>
#include <limits>
#include <numbers>

#include "holdback/physics/gravity.hpp"

namespace holdback::physics {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

// √(a² + δ²) − a without loss of digits
double longer(double part, double push) { return push * push / (std::hypot(part, push) + part); }

// sin φ_a + sin φ_b
double sines(const PushedSpan& span, double push) {
  return push / std::hypot(span.place, push) + push / std::hypot(span.span - span.place, push);
}

double held_strain(const PushedSpan& span, double push) { return push_lengthening(span, push) / span.held; }

}  // namespace

// ΔL = √(a² + δ²) − a + √(b² + δ²) − b
double push_lengthening(const PushedSpan& span, double push) {
  return longer(span.place, push) + longer(span.span - span.place, push);
}

// T = F/(sin φ_a + sin φ_b)
double pushed_tension(const PushedSpan& span, double push, double force) { return force / sines(span, push); }

// T₀ = (T − EA ΔL/h)/(1 + ΔL/h)
double tension_before_push(const PushedSpan& span, double push, double force, double stiffness) {
  const double strain = held_strain(span, push);
  return (pushed_tension(span, push, force) - stiffness * strain) / (1 + strain);
}

// F = (T₀ (1 + ΔL/h) + EA ΔL/h) (sin φ_a + sin φ_b)
double push_force(const PushedSpan& span, double push, double tension, double stiffness) {
  const double strain = held_strain(span, push);
  return (tension * (1 + strain) + stiffness * strain) * sines(span, push);
}

// F/(δ/a + δ/b)
double simple_push_tension(const PushedSpan& span, double push, double force) {
  return force / (push / span.place + push / (span.span - span.place));
}

namespace {

// s/S = sinh²(u/2)/u, u = S/2c; rises from 0 without end. Newton on the logarithm, from the parabola u = 4 s/S, which
// lies above the root for any sag that the catenary makes shallower.
double half_angle_of_sag(double share) {
  double u = share < 1 ? 4 * share : 2 * std::asinh(std::sqrt(share * std::log1p(8 * share)));
  for (int i = 0; i < 100; ++i) {
    const double sh = std::sinh(u / 2);
    const double miss = std::log(sh * sh / u) - std::log(share);
    const double slope = 1 / std::tanh(u / 2) - 1 / u;
    const double step = miss / slope;
    u = step < u ? u - step : u / 2;
    if (std::abs(step) <= 1e-15 * u) break;
  }
  return u;
}

}  // namespace

// s = c (cosh(S/2c) − 1)
Catenary catenary_of_sag(double weight_per_length, double span, double sag) {
  const double u = half_angle_of_sag(sag / span);
  const double c = span / (2 * u);
  return {weight_per_length * c, weight_per_length * (c + sag), 2 * c * std::sinh(u), std::atan(std::sinh(u))};
}

// T = w c cosh(S/2c): cosh(u)/u = 2 T/(w S); the flat catenary has the smaller u
double catenary_sag(double weight_per_length, double span, double tension) {
  constexpr double turning = 1.1996786402577338;  // u tanh u = 1, where cosh(u)/u is least
  const double asked = 2 * tension / (weight_per_length * span);
  if (!(asked >= std::cosh(turning) / turning)) return infinity;
  double low = 0;
  double high = turning;
  for (int i = 0; i < 200 && high - low > 1e-16 * high; ++i) {
    const double u = (low + high) / 2;
    (std::cosh(u) > asked * u ? low : high) = u;
  }
  const double u = (low + high) / 2;
  const double sh = std::sinh(u / 2);
  return span / u * sh * sh;
}

// ρ W ((π/4)^(−3/2) + (2 S/(π W))^(−3/2))^(−2/3)
double carried_air(double width, double span, double air_density) {
  const double narrow = std::numbers::pi / 4;
  const double wide = 2 * span / (std::numbers::pi * width);
  return air_density * width * std::pow(std::pow(narrow, -1.5) + std::pow(wide, -1.5), -2.0 / 3);
}

// f = n/(2 S) √(T'/m)
double span_frequency(double tension_per_width, double mass_per_area, double span, int partial) {
  return partial / (2 * span) * std::sqrt(tension_per_width / mass_per_area);
}

// T' = m (2 S f/n)²
double plucked_tension(double frequency, double mass_per_area, double span, int partial) {
  const double speed = 2 * span * frequency / partial;
  return mass_per_area * speed * speed;
}

PullParts pull_parts(const ScalePull& pull) {
  const double running = (pull.forward + pull.back) / 2;
  const double drag = (pull.released + pull.released_back) / 2;
  return {running, drag, running - drag, (pull.forward - pull.back) / 2};
}

// 2 T sin(β/2)
double cell_resultant(double tension, double wrap) { return 2 * tension * std::sin(wrap / 2); }

// (π − β)/2
double cell_resultant_angle(double wrap) { return (std::numbers::pi - wrap) / 2; }

// m g cos τ
double roller_tare(double mass, double tilt) { return mass * gravity * std::cos(tilt); }

// (F − tare)/(2 sin(β/2) cos α)
double cell_tension(double reading, double tare, double wrap, double axis) {
  return (reading - tare) / (2 * std::sin(wrap / 2) * std::cos(axis));
}

}  // namespace holdback::physics
