// Heat into the face of a disc in a stop: the rubbed surface is hotter than the bulk until the heat has spread. One
// dimension, constant properties, even flux over the face, nothing lost to the air meanwhile.
//
// Rises [K] are over the temperature at the start. A body without conductivity, diffusivity or thickness rises without
// end; before time zero nothing rises.
#pragma once

namespace holdback::physics {

/// Thermal diffusivity [m²/s]: α = k/(ρ c), from W/(m·K), kg/m³, J/(kg·K). Infinite without ρ c. Source: [carslaw1959].
double diffusivity(double conductivity, double density, double specific_heat);

/// Thermal effusivity [J/(m²·K·√s)]: √(k ρ c). Zero where a factor is not positive. Source: [carslaw1959].
double effusivity(double conductivity, double density, double specific_heat);

/// Fourier number [1]: α t/l², time measured by what heat needs through a length l [m]. Infinite without length.
double fourier_number(double diffusivity, double time, double length);

/// How deep heat has gone after a time [m]: √(4 α t). A slab from whose middle this is less than the half thickness
/// behaves as a half-space (surface rise within 0.4 %). Source: [carslaw1959].
double heat_depth(double diffusivity, double time);

/// Rise at a depth [m] in a half-space whose surface was raised at time zero [K]: ΔΘ_0 erfc(x/√(4αt)). Source:
/// [holman2002], ex. 4.2.
double half_space_step(double surface_rise, double depth, double time, double diffusivity);

/// Rise at a depth [m] in a half-space under a constant flux [W/m²]: 2q√(αt)/k · ierfc(x/√(4αt)), ierfc(z) =
/// e^(−z²)/√π − z erfc z. Source: [holman2002], ex. 4.2.
double half_space_flux(double flux, double depth, double time, double conductivity, double diffusivity);

/// Surface rise in a stop, flux q_0 (1 − t/t_s) into a half-space of effusivity e [K]: 2 q_0 √t/(√π e) · (1 − 2t/3t_s).
/// Time [s] is kept within the stop. Source: [newcomb1960].
double stop_surface_rise(double flux, double stop_time, double time, double effusivity);

/// Highest of these, at half the stop [K]: √8/(3√π) · q_0 √t_s/e = 0.5319 q_0 √t_s/e. Source: [newcomb1960].
double stop_surface_peak(double flux, double stop_time, double effusivity);

/// Rise at a depth [m] from the rubbed face of a slab under a constant flux [W/m²], its other face, at `thickness` [m],
/// insulated: the half of a disc that is rubbed alike on both sides. Depth is kept within the slab. To 1e-14 of the
/// surface rise, by the series in e^(−n²π²Fo) or, below Fo 0.3, by images of the half-space. Source: [carslaw1959],
/// §3.8.
double slab_flux_rise(double flux, double depth, double time, double conductivity, double diffusivity,
                      double thickness);

/// Surface rise of such a slab in a stop, flux q_0 (1 − t/t_s) [K]: constant flux and Duhamel's integral. Time [s] is
/// kept within the stop. Source: [carslaw1959], §1.14, §3.8.
double slab_stop_rise(double flux, double stop_time, double time, double conductivity, double diffusivity,
                      double thickness);

/// Highest surface rise in such a stop [K], to 1e-12: between half the stop (thick slab: stop_surface_peak()) and its
/// end (thin slab: energy over ρ c l, and q_0 l/3k of gradient less and less). Source: derived from [carslaw1959].
double slab_stop_peak(double flux, double stop_time, double conductivity, double diffusivity, double thickness);

/// Share of the friction heat that goes into the disc [1], from the effusivities of disc and pad and the `cover`: pad
/// area over the rubbed area of the face [1], 0 … 1. e_d/(e_d + cover · e_p): both faces equally hot on average, both
/// as half-spaces. 1 when neither takes any. Source: [newcomb1960]; derived.
double disc_heat_share(double disc_effusivity, double pad_effusivity, double cover);

}  // namespace holdback::physics
