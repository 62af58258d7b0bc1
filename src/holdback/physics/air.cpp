#include "holdback/physics/air.hpp"

#include <cmath>

#include "holdback/physics/gravity.hpp"

namespace holdback::physics {

namespace {
constexpr double earth_radius = 6356766;          // [m]
constexpr double sea_level_temperature = 288.15;  // [K]
constexpr double sea_level_pressure = 101325;     // [Pa]
constexpr double lapse_rate = 0.0065;             // [K/m]
constexpr double gas_constant = 287.05287;        // [J/(kg·K)] of air
}  // namespace

// H = r h/(r + h)
double geopotential_altitude(double altitude) { return earth_radius * altitude / (earth_radius + altitude); }

// T = T_0 − β H
double standard_temperature(double altitude) {
  return sea_level_temperature - lapse_rate * geopotential_altitude(altitude);
}

// p = p_0 (T/T_0)^(g/(R β))
double standard_pressure(double altitude) {
  constexpr double exponent = gravity / (gas_constant * lapse_rate);
  return sea_level_pressure * std::pow(standard_temperature(altitude) / sea_level_temperature, exponent);
}

// ρ = p/(R T)
double air_density(double pressure, double temperature) { return pressure / (gas_constant * temperature); }

// η = 1.458e-6 T^1.5/(T + 110.4)
double air_viscosity(double temperature) { return 1.458e-6 * std::pow(temperature, 1.5) / (temperature + 110.4); }

// k = 2.64638e-3 T^1.5/(T + 245.4 · 10^(−12/T))
double air_conductivity(double temperature) {
  return 2.64638e-3 * std::pow(temperature, 1.5) / (temperature + 245.4 * std::pow(10.0, -12 / temperature));
}

}  // namespace holdback::physics
