// The kinds of quantity that a person writes or reads. A kind fixes the dimension and the unit it is shown in; the
// names of units live in units/ alone. Values are SI doubles everywhere inside.
#pragma once

#include <string>
#include <vector>

namespace holdback {

enum class Quantity {
  number,                  // plain number, no unit
  ratio,                   // fraction of one; shown in per cent
  count,                   // whole number
  price,                   // plain number in the stand's own currency
  short_length,            // m: widths, diameters, slack, slides
  caliper,                 // m: thickness of a web
  web_length,              // m: web on a roll, altitude
  area,                    // m²
  volume,                  // m³
  speed,                   // m/s: web speed
  acceleration,            // m/s²
  mass,                    // kg
  basis_weight,            // kg/m²
  density,                 // kg/m³
  force,                   // N
  tension_per_width,       // N/m
  stress,                  // Pa: strength of a material, pad pressure
  modulus,                 // Pa
  pressure,                // Pa gauge: air in the brake line
  torque,                  // N·m
  torque_per_pressure,     // N·m/Pa
  inertia,                 // kg·m²
  power,                   // W
  energy,                  // J
  temperature,             // K
  temperature_difference,  // K
  duration,                // s: ramps, stops
  running_time,            // s, shown in hours
  calendar_time,           // s, shown in weeks
  rotational_speed,        // rad/s, shown in rev/min
  angle,                   // rad
  turns,                   // rad, shown in revolutions
  specific_heat,           // J/(kg·K)
  conductance,             // W/K
  thermal_conductivity,    // W/(m·K)
  fade,                    // 1/K: share of friction lost per kelvin
  wear_rate,               // m³/J: worn volume per friction energy
  pressure_speed,          // Pa·m/s: pad pressure times sliding speed
  friction_slope,          // s/m: share of friction gained for each m/s of sliding
  damping,                 // N·s/m
  frequency,               // rad/s, shown in Hz: oscillations
};

/// A value [SI] with its kind, so that a writer can show it in the reader's units.
struct Amount {
  double value{};
  Quantity kind{Quantity::number};
  bool operator==(const Amount&) const = default;
};

/// A sentence with places {0}, {1}, … for amounts. It stays free of units until a writer fills it in.
struct Note {
  std::string text;
  std::vector<Amount> amounts{};
  bool operator==(const Note&) const = default;
};

}  // namespace holdback
