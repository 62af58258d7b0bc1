#include "holdback/units/unit_table.hpp"

#include <algorithm>
#include <iterator>
#include <numbers>

namespace holdback::units {
namespace {

constexpr Dimension area = length * length;
constexpr Dimension volume = area * length;
constexpr Dimension speed = length / time;
constexpr Dimension force = mass * length / (time * time);
constexpr Dimension pressure = force / area;
constexpr Dimension energy = force * length;
constexpr Dimension power = energy / time;

// Exact by definition: the international inch, foot, yard and pound (1959) and standard gravity (CGPM 1901).
constexpr Factor inch{254, 10'000};
constexpr Factor foot{3048, 10'000};
constexpr Factor yard{9144, 10'000};
constexpr Factor mile{1'609'344, 1000};
constexpr Factor mil{254, 10'000'000};
constexpr Factor pound{45'359'237, 100'000'000};
constexpr Factor ounce = pound / Factor{16};
constexpr Factor gravity{980'665, 100'000};

constexpr Factor kilo{1000};
constexpr Factor mega{1'000'000};
constexpr Factor giga{1'000'000'000};
constexpr Factor centi{1, 100};
constexpr Factor milli{1, 1000};
constexpr Factor micro{1, 1'000'000};

constexpr Factor lbf = pound * gravity;
constexpr Factor psi = lbf / square(inch);
constexpr Factor hour{3600};
constexpr Factor horsepower = Factor{550} * foot * lbf;  // 550 ft·lbf/s, not the metric horsepower
// Liquid columns in their conventional densities, 1000 kg/m³ and 13595.1 kg/m³, under standard gravity.
constexpr Factor water = Factor{1000} * gravity;
constexpr Factor mercury = Factor{135'951, 10} * gravity;
constexpr Factor btu{105'505'585'262, 100'000'000};  // International Table Btu
constexpr Factor revolution{2 * std::numbers::pi};
constexpr Factor fahrenheit_step{5, 9};

constexpr Unit table[] = {
    {"%", "percent", plain, centi},
    // length
    {"m", "", length},
    {"mm", "", length, milli},
    {"cm", "", length, centi},
    {"um", "\u00b5m \u03bcm micron microns", length, micro},  // both Unicode micros: the sign and the Greek letter
    {"km", "", length, kilo},
    {"in", "\" \u2033 inch inches", length, inch},
    {"ft", "' \u2032 foot feet", length, foot},
    {"yd", "", length, yard},
    {"mi", "mile miles", length, mile},
    {"mil", "mils thou", length, mil},
    {"pt", "point points", length, mil},  // caliper of board; the printer's point has no place at an unwind
    // area and volume
    {"msf", "MSF", area, Factor{1000} * square(foot)},
    {"L", "l", volume, milli},
    {"mL", "ml cc", volume, micro},
    // mass
    {"kg", "", mass},
    {"g", "", mass, milli},
    {"mg", "", mass, micro},
    {"lb", "lbs lbm", mass, pound},
    {"oz", "", mass, ounce},
    {"t", "tonne tonnes", mass, kilo},
    // mass per area
    {"gsm", "GSM", mass / area, milli},
    // time
    {"s", "sec", time},
    {"ms", "", time, milli},
    {"min", "", time, Factor{60}},
    {"h", "hr hrs hour hours", time, hour},
    {"d", "day days", time, Factor{24} * hour},
    {"week", "weeks wk", time, Factor{7 * 24} * hour},
    // speed
    {"mpm", "MPM", speed, Factor{1, 60}},
    {"fpm", "FPM", speed, foot / Factor{60}},
    // force
    {"N", "", force},
    {"mN", "", force, milli},
    {"cN", "", force, centi},
    {"daN", "", force, Factor{10}},
    {"kN", "", force, kilo},
    {"lbf", "", force, lbf},
    {"ozf", "", force, ounce* gravity},
    {"kgf", "kp", force, gravity},
    {"gf", "", force, milli* gravity},
    // force per width
    {"pli", "PLI", force / length, lbf / inch},
    // pressure
    {"Pa", "", pressure},
    {"hPa", "", pressure, Factor{100}},
    {"kPa", "", pressure, kilo},
    {"MPa", "", pressure, mega},
    {"GPa", "", pressure, giga},
    {"bar", "barg", pressure, Factor{100'000}},
    {"mbar", "", pressure, Factor{100}},
    {"psi", "PSI psig PSIG", pressure, psi},
    {"kpsi", "ksi KSI", pressure, kilo* psi},
    {"Mpsi", "", pressure, mega* psi},
    {"inH2O", "inH\u2082O inWC", pressure, water* inch},
    {"mmH2O", "mmH\u2082O", pressure, water* milli},
    {"inHg", "", pressure, mercury* inch},
    {"mmHg", "", pressure, mercury* milli},
    {"at", "", pressure, gravity / square(centi)},
    // torque, energy, power
    {"Nm", "", energy},
    {"J", "", energy},
    {"kJ", "", energy, kilo},
    {"MJ", "", energy, mega},
    {"GJ", "", energy, giga},
    {"Wh", "", energy, hour},
    {"kWh", "", energy, kilo* hour},
    {"Btu", "BTU btu", energy, btu},
    {"W", "", power},
    {"kW", "", power, kilo},
    {"hp", "HP", power, horsepower},
    // angle and rotational speed
    {"rad", "", angle},
    {"deg", "\u00b0", angle, Factor{std::numbers::pi, 180}},
    {"rev", "revs turn turns", angle, revolution},
    {"rpm", "RPM", angle / time, revolution / Factor{60}},
    {"Hz", "", angle / time, revolution},  // cycles, of which one is a whole turn of the phase
    // temperature
    {"K", "", temperature},
    {"degC", "\u00b0C \u2103", temperature, Factor{1}, 273.15},
    {"degF", "\u00b0F \u2109", temperature, fahrenheit_step, 459.67 * 5 / 9},
};

}  // namespace

std::span<const Unit> unit_table() { return table; }

std::vector<std::string_view> names_of(const Unit& unit) {
  std::vector<std::string_view> names{unit.symbol};
  std::string_view rest = unit.aliases;
  while (!rest.empty()) {
    const auto end = std::min(rest.find(' '), rest.size());
    names.push_back(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return names;
}

namespace {

// Whether `name` is one of the space-parted words of `aliases`.
bool has_alias(std::string_view aliases, std::string_view name) {
  for (auto at = aliases.find(name); at != std::string_view::npos; at = aliases.find(name, at + 1)) {
    const auto end = at + name.size();
    const bool starts = at == 0 || aliases[at - 1] == ' ';
    const bool ends = end == aliases.size() || aliases[end] == ' ';
    if (starts && ends) return true;
  }
  return false;
}

}  // namespace

const Unit* find_unit(std::string_view name) {
  if (name.empty() || name.find(' ') != std::string_view::npos) return nullptr;
  const auto* found = std::find_if(std::begin(table), std::end(table), [name](const Unit& unit) {
    return unit.symbol == name || has_alias(unit.aliases, name);
  });
  return found == std::end(table) ? nullptr : found;
}

}  // namespace holdback::units
