// Air with altitude and temperature: ISO 2533 standard atmosphere below 11 km and the property formulas it is built on.
#pragma once

namespace holdback::physics {

/// Geopotential altitude [m] of a geometric one: H = r h/(r + h), r = 6 356 766 m. Source: [iso2533].
double geopotential_altitude(double altitude);

/// Standard temperature [K] at a geometric altitude [m], 0 … 11 000: 288.15 − 6.5 K/km · H. Source: [iso2533].
double standard_temperature(double altitude);

/// Standard pressure [Pa], absolute, at a geometric altitude [m]. Source: [iso2533].
double standard_pressure(double altitude);

/// Density of air [kg/m³] at an absolute pressure [Pa] and temperature [K]: ρ = p/(R T), R = 287.05287 J/(kg·K).
double air_density(double pressure, double temperature);

/// Dynamic viscosity of air [Pa·s]: 1.458e-6 T^1.5/(T + 110.4). Valid 100 … 1900 K. Source: [ussa1976].
double air_viscosity(double temperature);

/// Thermal conductivity of air [W/(m·K)]: 2.64638e-3 T^1.5/(T + 245.4 · 10^(−12/T)). Source: [ussa1976].
double air_conductivity(double temperature);

}  // namespace holdback::physics
