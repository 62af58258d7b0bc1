#include "holdback/physics/control.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "holdback/numerics/frequency.hpp"
#include "holdback/numerics/roots.hpp"

namespace holdback::physics {

namespace {

using std::numbers::pi;
using Complex = std::complex<double>;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double most = 1e12;
constexpr double least = 1e-12;  // a mass, a length or a radius below it is none

double sized(double value) { return std::clamp(value, 0.0, most); }
double within(double value) { return std::clamp(value, -most, most); }
Complex within(Complex s) { return {within(s.real()), within(s.imag())}; }

/// The quotient, or infinity where it is no number.
Complex ratio(Complex above, Complex below) {
  if (below == Complex{}) return infinity;
  const Complex quotient = above / below;
  return std::isfinite(quotient.real()) && std::isfinite(quotient.imag()) ? quotient : Complex{infinity, 0};
}

/// A point whose values a machine could have, with what the formulas share.
struct Plant {
  double inertia, radius, span, speed, stiffness, slope;  // [SI] stiffness E' = EA − T₀
  double restoring;                                       // [N·m²] E' R² + D v

  explicit Plant(const UnwindPoint& point)
      : inertia(sized(point.inertia)),
        radius(sized(point.radius)),
        span(sized(point.span)),
        speed(sized(point.speed)),
        stiffness(std::max(0.0, sized(point.stiffness) - sized(point.wound_tension))),
        slope(within(point.torque_slope)),
        restoring(stiffness * radius * radius + slope * speed) {}

  bool can_swing() const { return inertia >= least && span >= least; }

  /// (J s + D)(L s + v) + E' R²
  Complex characteristic(Complex s) const {
    return (inertia * s + slope) * (span * s + speed) + stiffness * radius * radius;
  }
};

double count(int lobes) { return std::clamp(lobes, 1, 1000000); }

}  // namespace

// ω² = (E' R² + D v)/(J L), 2 ζ ω = v/L + D/J
SwingMode unwind_mode(const UnwindPoint& point) {
  const Plant plant(point);
  if (!plant.can_swing()) return {infinity, 0};
  const double loss = plant.speed / plant.span + plant.slope / plant.inertia;
  if (plant.restoring < 0) return {0, -infinity};
  const double frequency = std::sqrt(plant.restoring / (plant.inertia * plant.span));
  if (frequency > 0) return {frequency, loss / (2 * frequency)};
  return {0, loss < 0 ? -infinity : infinity};
}

// E' R/(E' R² + D v)
double unwind_gain(const UnwindPoint& point) {
  const Plant plant(point);
  const double push = plant.stiffness * plant.radius;
  if (push <= 0) return 0;
  return plant.restoring > 0 ? push / plant.restoring : infinity;
}

// E' R/((J s + D)(L s + v) + E' R²)
Complex unwind_response(const UnwindPoint& point, Complex s) {
  const Plant plant(point);
  const double push = plant.stiffness * plant.radius;
  return push > 0 ? ratio(push, plant.characteristic(within(s))) : Complex{};
}

// M (dμ/dv)/μ r_e
double friction_torque_slope(double torque, double friction, double friction_slope, double friction_radius) {
  if (friction <= 0) return 0;
  return within(within(torque) * (within(friction_slope) / friction) * within(friction_radius));
}

// v = −L D/J
double stick_slip_onset(const UnwindPoint& point) {
  const Plant plant(point);
  if (plant.slope >= 0 || plant.span <= 0) return 0;
  return plant.inertia > 0 ? -plant.span * plant.slope / plant.inertia : infinity;
}

// |((J s + D) ω (E' − n² (T − T₀)) + E' R T)/((J s + D)(L s + v) + E' R²)| at s = i n ω, ω = v/R
double runout_tension(const UnwindPoint& point, double tension, int lobes) {
  const Plant plant(point);
  if (plant.radius < least) return infinity;
  const double turning = plant.speed / plant.radius, n = count(lobes), pull = within(tension);
  const Complex s{0, n * turning};
  const double entry = turning * (plant.stiffness - n * n * (pull - sized(point.wound_tension)));
  const Complex shake = (plant.inertia * s + plant.slope) * entry + plant.stiffness * plant.radius * pull;
  if (shake == Complex{}) return 0;
  return std::abs(ratio(shake, plant.characteristic(s)));
}

// n² J L v² − R² D v − R² E' R² = 0, its positive root without cancellation
double runout_resonance_speed(const UnwindPoint& point, int lobes) {
  const Plant plant(point);
  if (!plant.can_swing()) return infinity;
  const double n = count(lobes), area = plant.radius * plant.radius;
  const double a = n * n * plant.inertia * plant.span, b = area * plant.slope, c = area * area * plant.stiffness;
  const double root = std::sqrt(b * b + 4 * a * c);
  return b >= 0 ? (b + root) / (2 * a) : 2 * c / (root - b);
}

std::vector<double> runout_resonance_radii(const UnwindPoint& point, const std::function<double(double)>& inertia_at,
                                           double largest, double smallest, int lobes) {
  if (!(smallest > 0 && largest > smallest && largest <= most)) return {};
  const double n = count(lobes);
  // n² v² J L − R² (E' R² + D v): zero where they meet, and finite everywhere.
  const auto apart = [&](double log_radius) {
    UnwindPoint here = point;
    here.radius = std::exp(log_radius);
    here.inertia = inertia_at(here.radius);
    const Plant plant(here);
    const double turned = n * plant.speed;
    return turned * turned * plant.inertia * plant.span - plant.radius * plant.radius * plant.restoring;
  };
  constexpr int steps = 400;
  const double high = std::log(largest), low = std::log(smallest);
  std::vector<double> radii;
  double from = high, at_from = apart(from);
  for (int i = 1; i <= steps; ++i) {
    const double to = high + (low - high) * i / steps, at_to = apart(to);
    if ((at_from < 0) != (at_to < 0)) radii.push_back(std::exp(numerics::find_root(apart, from, to, 1e-13)));
    from = to;
    at_from = at_to;
  }
  return radii;
}

// e^(−πζ/√(1 − ζ²))
double step_overshoot(double damping) {
  if (damping >= 1) return 0;
  if (damping < 0) return infinity;
  return std::exp(-pi * damping / std::sqrt((1 - damping) * (1 + damping)));
}

// π/(ω √(1 − ζ²))
double step_peak_time(double frequency, double damping) {
  if (damping >= 1 || damping < 0 || frequency <= 0) return infinity;
  return pi / (frequency * std::sqrt((1 - damping) * (1 + damping)));
}

// e^(−sθ)/(τ s + 1)
Complex pneumatic_lag(Complex s, double time_constant, double dead_time) {
  const Complex at = within(s);
  return ratio(numerics::dead_time(at, sized(dead_time)), sized(time_constant) * at + 1.0);
}

namespace {

/// a/b, of b's sign and infinite where b is zero.
double over(double a, double b) { return b == 0 ? std::copysign(infinity, b) : a / b; }

}  // namespace

// K = τ/(k (τ_c + θ)), τ_I = min(τ, 4 (τ_c + θ))
PiSettings first_order_pi(double gain, double time_constant, double dead_time, double closed_loop_time) {
  const double lag = sized(time_constant), room = sized(closed_loop_time) + sized(dead_time);
  PiSettings settings;
  settings.gain = lag > 0 ? over(lag, gain * room) : 0;
  settings.integral_time = std::min(lag, 4 * room);
  settings.integral_gain = over(1, gain * room) * (lag > 4 * room ? over(lag, 4 * room) : 1);
  return settings;
}

// K = 1/(k' (τ_c + θ)), τ_I = 4 (τ_c + θ)
PiSettings integrating_pi(double slope, double dead_time, double closed_loop_time) {
  const double room = sized(closed_loop_time) + sized(dead_time);
  return {over(1, slope * room), 4 * room, over(1, slope * room) * over(1, 4 * room)};
}

// K + (K/τ_I)/s
Complex pi_response(const PiSettings& settings, Complex s) {
  const double gain = within(settings.gain), integral = within(settings.integral_gain);
  if (integral == 0) return gain;
  if (s == Complex{}) return std::copysign(infinity, integral);
  const Complex response = gain + ratio(integral, s);
  return std::isfinite(response.real()) && std::isfinite(response.imag()) ? response : Complex{infinity, 0};
}

}  // namespace holdback::physics
