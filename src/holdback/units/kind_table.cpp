#include "holdback/units/kind_table.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <stdexcept>
#include <string>

namespace holdback::units {
namespace {

using Q = Quantity;

constexpr Kind table[] = {
    {Q::number, "number", "a plain number", "1", "", "", "0.8, 12"},
    {Q::ratio, "ratio", "a ratio", "1", "%", "%", "35 %, 0.35"},
    {Q::count, "count", "a whole number", "1", "", "", "4, 12"},
    {Q::price, "price", "a price", "1", "", "", "120, 85.50"},
    {Q::short_length, "short_length", "a length", "m", "mm", "in", "1200 mm, 1.2 m, 48 in"},
    {Q::caliper, "caliper", "a caliper", "m", "µm", "mil", "12 um, 0.1 mm, 2 mil, 18 pt"},
    {Q::web_length, "web_length", "a web length", "m", "m", "ft", "6000 m, 20000 ft"},
    {Q::area, "area", "an area", "m2", "cm²", "in²", "25 cm2, 4 in2"},
    {Q::volume, "volume", "a volume", "m3", "cm³", "in³", "40 cm3, 2.5 in3, 5 L"},
    {Q::speed, "speed", "a speed", "m/s", "m/min", "ft/min", "300 m/min, 1000 ft/min, 5 m/s"},
    {Q::acceleration, "acceleration", "an acceleration", "m/s2", "m/s²", "ft/s²", "0.5 m/s2, 1.5 ft/s2"},
    {Q::mass, "mass", "a mass", "kg", "kg", "lb", "80 kg, 180 lb"},
    {Q::basis_weight, "basis_weight", "a basis weight", "kg/m2", "g/m²", "lb/3000 ft²",
     "80 g/m2, 40 lb/3000 ft2, 20 lb/1300 ft2"},
    {Q::density, "density", "a density", "kg/m3", "kg/m³", "lb/ft³", "920 kg/m3, 0.92 g/cm3, 57 lb/ft3"},
    {Q::force, "force", "a force", "N", "N", "lbf", "150 N, 35 lbf"},
    {Q::tension_per_width, "tension_per_width", "a tension per width", "N/m", "N/m", "lbf/in",
     "200 N/m, 1.2 lbf/in, 1.2 pli"},
    {Q::stress, "stress", "a stress", "Pa", "MPa", "psi", "30 MPa, 4000 psi"},
    {Q::modulus, "modulus", "a modulus", "Pa", "GPa", "kpsi", "4.5 GPa, 650 kpsi"},
    {Q::pressure, "pressure", "a pressure", "Pa", "bar", "psi", "2.5 bar, 35 psi, 250 kPa"},
    {Q::torque, "torque", "a torque", "N*m", "N·m", "in·lbf", "50 N*m, 440 in*lbf, 37 ft*lbf"},
    {Q::torque_per_pressure, "torque_per_pressure", "a torque per pressure", "N*m/Pa", "N·m/bar", "in·lbf/psi",
     "40 N*m/bar, 24 in*lbf/psi"},
    {Q::inertia, "inertia", "an inertia", "kg*m2", "kg·m²", "lb·ft²", "0.5 kg*m2, 12 lb*ft2"},
    {Q::power, "power", "a power", "W", "W", "hp", "1500 W, 1.5 kW, 2 hp"},
    {Q::energy, "energy", "an energy", "J", "kJ", "ft·lbf", "20 kJ, 15000 ft*lbf"},
    {Q::temperature, "temperature", "a temperature", "K", "°C", "°F", "23 degC, 73 degF, 296 K"},
    {Q::temperature_difference, "temperature_difference", "a temperature difference", "K", "K", "°F",
     "60 K, 60 degC, 110 degF"},
    {Q::duration, "duration", "a duration", "s", "s", "s", "12 s, 250 ms, 1.5 min"},
    {Q::running_time, "running_time", "a running time", "s", "h", "h", "2000 h, 45 min"},
    {Q::calendar_time, "calendar_time", "a calendar time", "s", "weeks", "weeks", "26 weeks, 10 days"},
    {Q::rotational_speed, "rotational_speed", "a rotational speed", "rad/s", "rev/min", "rev/min",
     "300 rev/min, 300 rpm, 31 rad/s"},
    {Q::angle, "angle", "an angle", "rad", "°", "°", "90 deg, 1.57 rad"},
    {Q::turns, "turns", "a number of turns", "rad", "rev", "rev", "3 rev, 3 turns"},
    {Q::specific_heat, "specific_heat", "a specific heat", "J/(kg*K)", "J/(kg·K)", "Btu/(lb·°F)",
     "460 J/(kg*K), 0.11 Btu/(lb*degF)"},
    {Q::conductance, "conductance", "a thermal conductance", "W/K", "W/K", "Btu/(h·°F)", "4 W/K, 7.6 Btu/(h*degF)"},
    {Q::thermal_conductivity, "thermal_conductivity", "a thermal conductivity", "W/(m*K)", "W/(m·K)", "Btu/(h·ft·°F)",
     "48 W/(m*K), 28 Btu/(h*ft*degF)"},
    {Q::fade, "fade", "a fade", "1/K", "%/K", "%/°F", "0.1 %/K, 0.055 %/degF, 0.001/K"},
    {Q::wear_rate, "wear_rate", "a wear rate", "m3/J", "mm³/MJ", "in³/(hp·h)", "30 mm3/MJ, 0.005 in3/(hp*h)"},
    {Q::pressure_speed, "pressure_speed", "a pressure times speed", "Pa*m/s", "MPa·m/s", "psi·ft/min",
     "2 MPa*m/s, 57000 psi*ft/min"},
    {Q::friction_slope, "friction_slope", "a friction slope", "s/m", "%/(m/s)", "%/(ft/s)",
     "1.5 %/(m/s), 0.5 %/(ft/s), 0.015 s/m"},
    {Q::damping, "damping", "a damping", "N*s/m", "N·s/m", "lbf·s/ft", "100 N*s/m, 7 lbf*s/ft"},
    {Q::frequency, "frequency", "a frequency", "rad/s", "Hz", "Hz", "2.5 Hz, 150 1/min, 16 rad/s"},
};

constexpr std::size_t kinds = std::size(table);

constexpr bool follows_enumerators() {
  for (std::size_t i = 0; i < kinds; ++i) {
    if (static_cast<std::size_t>(table[i].quantity) != i) return false;
  }
  return true;
}
static_assert(follows_enumerators(), "the rows stand in the order of the enumerators, none left out");
static_assert(kinds == static_cast<std::size_t>(Q::frequency) + 1, "the last enumerator has a row");

Measure measure_of(std::string_view text) {
  if (text.empty()) return {Factor{}, plain, 0.0};
  const auto read = read_expression(text);
  if (const auto* expression = std::get_if<Expression>(&read)) return expression->measure;
  throw std::logic_error("kind_table: " + std::get<Unreadable>(read).what);
}

std::array<KindUnits, kinds> read_all() {
  std::array<KindUnits, kinds> out;
  std::transform(std::begin(table), std::end(table), out.begin(), [](const Kind& kind) {
    return KindUnits{measure_of(kind.si_unit).dimension, measure_of(kind.shown_si), measure_of(kind.shown_us)};
  });
  return out;
}

}  // namespace

std::span<const Kind> kind_table() { return table; }

const Kind& kind_of(Quantity quantity) {
  const auto index = static_cast<std::size_t>(quantity);
  if (index >= kinds) throw std::out_of_range("no such kind of quantity: " + std::to_string(index));
  return table[index];
}

bool takes_no_unit(Quantity quantity) { return kind_of(quantity).shown_si.empty(); }

const KindUnits& units_of(Quantity quantity) {
  static const auto all = read_all();
  kind_of(quantity);  // refuses a kind without a row
  return all[static_cast<std::size_t>(quantity)];
}

const Measure& shown_measure(Quantity quantity, System system) {
  const auto& units = units_of(quantity);
  return system == System::si ? units.si : units.us;
}

double offset_for(Quantity quantity, const Measure& measure) {
  return quantity == Quantity::temperature ? measure.offset.value_or(0) : 0;
}

}  // namespace holdback::units
