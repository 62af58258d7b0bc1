#include "holdback/physics/conduction.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "holdback/numerics/roots.hpp"

namespace holdback::physics {

namespace {

using std::numbers::inv_sqrtpi;
using std::numbers::pi;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double series_from = 0.3;  // [1] Fourier number; four terms of either form are then exact to a double
constexpr int terms = 4;

/// Within what no product of a few factors leaves the range of a double.
double bounded(double value) { return std::clamp(value, 0.0, 1e50); }

/// What a body without conduction or thickness does under a flux.
double without_end(double flux) { return flux == 0 ? 0 : std::copysign(infinity, flux); }

double signed_bounded(double value) { return std::clamp(value, -1e50, 1e50); }

// ∫_z^∞ erfc and its repeats: i^n = (i^(n−2) − 2z i^(n−1))/(2n)
double ierfc(double z) { return std::max(0.0, std::exp(-z * z) * inv_sqrtpi - z * std::erfc(z)); }

double i3erfc(double z) {
  const double first = ierfc(z);
  const double second = std::max(0.0, (std::erfc(z) - 2 * z * first) / 4);
  return std::max(0.0, (first - 2 * z * second) / 6);
}

/// Σ_n e^(−n²π²Fo)/n^power
double decaying_sum(double fourier, int power) {
  double sum = 0;
  for (int n = 1; n <= terms; ++n) sum += std::exp(-n * n * pi * pi * fourier) / std::pow(n, power);
  return sum;
}

// A slab of thickness, conductivity and diffusivity 1 under a flux 1, at its rubbed face, over the Fourier number:
// the rise, its rate, and its mean over time from the start.

// Fo + ⅓ − 2/π² Σ e^(−n²π²Fo)/n²  =  2√Fo (1/√π + 2 Σ ierfc(n/√Fo))
double unit_rise(double fourier) {
  if (fourier >= series_from) return fourier + 1.0 / 3 - 2 / (pi * pi) * decaying_sum(fourier, 2);
  const double root = std::sqrt(fourier);
  double sum = inv_sqrtpi;
  for (int n = 1; n <= terms; ++n) sum += 2 * ierfc(n / root);
  return 2 * root * sum;
}

// 1 + 2 Σ e^(−n²π²Fo)  =  (1 + 2 Σ e^(−n²/Fo))/√(π Fo)
double unit_rate(double fourier) {
  if (fourier >= series_from) return 1 + 2 * decaying_sum(fourier, 0);
  double sum = 1;
  for (int n = 1; n <= terms; ++n) sum += 2 * std::exp(-n * n / fourier);
  return sum * inv_sqrtpi / std::sqrt(fourier);
}

// Fo/2 + ⅓ − (1/45 − 2/π⁴ Σ e^(−n²π²Fo)/n⁴)/Fo  =  8√Fo (1/(6√π) + 2 Σ i³erfc(n/√Fo))
double unit_mean(double fourier) {
  if (fourier >= series_from) {
    const double gone = 1.0 / 45 - 2 / (pi * pi * pi * pi) * decaying_sum(fourier, 4);
    return fourier / 2 + 1.0 / 3 - gone / fourier;
  }
  const double root = std::sqrt(fourier);
  double sum = inv_sqrtpi / 6;
  for (int n = 1; n <= terms; ++n) sum += 2 * i3erfc(n / root);
  return 8 * root * sum;
}

/// Rise of that slab in a stop that lasts `stop`, at a share of it.
double unit_stop_rise(double stop, double share) { return unit_rise(share * stop) - share * unit_mean(share * stop); }

/// Zero, or within what has a quotient.
double divisor(double value) { return value > 0 ? std::clamp(value, 1e-50, 1e50) : 0; }

/// A slab that conducts, or not.
struct Slab {
  double conductivity{}, diffusivity{}, thickness{};
  Slab(double k, double a, double l) : conductivity(divisor(k)), diffusivity(divisor(a)), thickness(divisor(l)) {}
  bool conducts() const { return conductivity > 0 && diffusivity > 0 && thickness > 0; }
  double fourier(double time) const {
    return std::clamp(bounded(time) * diffusivity / thickness / thickness, 1e-200, 1e100);
  }
};

}  // namespace

// α = k/(ρ c)
double diffusivity(double conductivity, double density, double specific_heat) {
  const double capacity = bounded(density) * bounded(specific_heat);
  if (conductivity <= 0) return 0;
  return capacity > 0 ? bounded(conductivity) / capacity : infinity;
}

// e = √(k ρ c)
double effusivity(double conductivity, double density, double specific_heat) {
  return std::sqrt(bounded(conductivity) * bounded(density) * bounded(specific_heat));
}

// Fo = α t/l²
double fourier_number(double diffusivity, double time, double length) {
  const double way = bounded(diffusivity) * bounded(time);
  if (way <= 0) return 0;
  return length > 0 ? way / length / length : infinity;
}

// √(4 α t)
double heat_depth(double diffusivity, double time) { return std::sqrt(4 * bounded(diffusivity) * bounded(time)); }

// ΔΘ_0 erfc(x/√(4αt))
double half_space_step(double surface_rise, double depth, double time, double diffusivity) {
  const double reach = heat_depth(diffusivity, time);
  if (depth <= 0) return time < 0 ? 0 : surface_rise;
  return reach > 0 ? surface_rise * std::erfc(depth / reach) : 0;
}

// 2q√(αt)/k · ierfc(x/√(4αt))
double half_space_flux(double flux, double depth, double time, double conductivity, double diffusivity) {
  if (!(time > 0)) return 0;
  const double reach = heat_depth(diffusivity, time);
  if (conductivity <= 0 || reach <= 0) return without_end(flux);
  return signed_bounded(flux) * (reach / std::max(1e-50, conductivity)) * ierfc(bounded(depth) / reach);
}

// 2 q_0 √t/(√π e) · (1 − 2t/3t_s)
double stop_surface_rise(double flux, double stop_time, double time, double effusivity) {
  if (!(stop_time > 0) || !(time > 0)) return 0;
  if (effusivity <= 0) return without_end(flux);
  const double kept = std::min(time, stop_time);
  return signed_bounded(flux) * (2 * inv_sqrtpi * std::sqrt(kept) / std::max(1e-50, effusivity)) *
         (1 - 2 * (kept / stop_time) / 3);
}

// At t_s/2: √8/(3√π) · q_0 √t_s/e
double stop_surface_peak(double flux, double stop_time, double effusivity) {
  return stop_surface_rise(flux, stop_time, stop_time / 2, effusivity);
}

// q l/k · (Fo + (3x² − l²)/6l² − 2/π² Σ (−1)^n/n² e^(−n²π²Fo) cos(nπx/l)), x from the insulated face
// = 2q√(αt)/k · Σ_n (ierfc((2nl + d)/√(4αt)) + ierfc((2(n+1)l − d)/√(4αt))), d = l − x
double slab_flux_rise(double flux, double depth, double time, double conductivity, double diffusivity,
                      double thickness) {
  const Slab slab(conductivity, diffusivity, thickness);
  if (!(time > 0)) return 0;
  if (!slab.conducts()) return without_end(flux);
  const double fourier = slab.fourier(time);
  const double place = std::clamp(depth / slab.thickness, 0.0, 1.0);  // from the rubbed face, in thicknesses
  double rise = 0;
  if (fourier >= series_from) {
    rise = fourier + (1 - place) * (1 - place) / 2 - 1.0 / 6;
    for (int n = 1; n <= terms; ++n)
      rise -= 2 / (pi * pi) * std::exp(-n * n * pi * pi * fourier) / (n * n) * std::cos(n * pi * place);
  } else {
    const double reach = 2 * std::sqrt(fourier);
    for (int n = 0; n < terms; ++n)
      rise += reach * (ierfc((2 * n + place) / reach) + ierfc((2 * n + 2 - place) / reach));
  }
  return signed_bounded(flux) * (slab.thickness / slab.conductivity) * rise;
}

// ΔΘ = q_0 (U − V/t_s): U the rise under a constant flux 1, V its integral from the start
double slab_stop_rise(double flux, double stop_time, double time, double conductivity, double diffusivity,
                      double thickness) {
  const Slab slab(conductivity, diffusivity, thickness);
  if (!(stop_time > 0) || !(time > 0)) return 0;
  if (!slab.conducts()) return without_end(flux);
  const double rise = unit_stop_rise(slab.fourier(stop_time), std::min(1.0, time / stop_time));
  return signed_bounded(flux) * (slab.thickness / slab.conductivity) * rise;
}

// The rise is highest where q_0 (U' − U/t_s) = 0. U' falls and U rises, so there is one such time; U lies between t U'
// and 2t U', so it is in the second half of the stop.
double slab_stop_peak(double flux, double stop_time, double conductivity, double diffusivity, double thickness) {
  const Slab slab(conductivity, diffusivity, thickness);
  if (!(stop_time > 0)) return 0;
  if (!slab.conducts()) return without_end(flux);
  const double stop = slab.fourier(stop_time);
  const auto growth = [stop](double share) { return unit_rate(share * stop) * stop - unit_rise(share * stop); };
  const double share = growth(1) < 0 ? numerics::find_root(growth, 0.4, 1, 1e-9) : 1;
  return signed_bounded(flux) * (slab.thickness / slab.conductivity) * unit_stop_rise(stop, share);
}

// e_d/(e_d + cover · e_p)
double disc_heat_share(double disc_effusivity, double pad_effusivity, double cover) {
  const double disc = bounded(disc_effusivity);
  const double pad = std::clamp(cover, 0.0, 1.0) * bounded(pad_effusivity);
  return disc + pad > 0 ? disc / (disc + pad) : 1;
}

}  // namespace holdback::physics
