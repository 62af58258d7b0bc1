// Text to SI and SI to text. The only place in Holdback that knows the name of a unit.
//
// A quantity is a number and a unit: "1.2 lbf/in", "35 psi", "300 m/min", "12 um", "40 lb/3000 ft2", "23 degC".
// A unit may be a product and quotient of known units with whole powers and plain factors: "N*m/bar", "mm3/MJ",
// "in·lbf", "lb/(3000 ft2)". A number clings to the unit after it, so "lb/3000 ft2" means the same as the last one.
// Micro, degree, superscripts and the middle dot are read in ASCII and in Unicode.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "holdback/model/quantity.hpp"

namespace holdback::units {

enum class System { si, us };

/// Why a text is not a quantity of the wanted kind. `what` is a sentence, `accepted` lists examples of that kind.
struct Fault {
  std::string what;
  std::string accepted;
};

/// A read value [SI] or the reason why there is none.
using Parsed = std::variant<double, Fault>;

/// Reads `text` as a quantity of `kind`. Number and price take a bare number, count a bare whole one, ratio a bare
/// number or per cent; every other kind needs a unit, and a bare number is a Fault that shows the accepted units.
/// Temperatures are read on their scale ("20 degC" → 293.15), differences as steps ("20 degC" → 20).
/// Never throws for any text; non-finite and overflowing numbers are Faults. No domain is checked here.
Parsed parse(std::string_view text, Quantity kind);

/// The factor [SI per unit] of a unit text such as "lbf/in" for `kind`, and its offset for temperature scales:
/// SI = value · factor + offset. For table headers that carry the unit apart from the number.
struct UnitValue {
  double factor{};
  double offset{};
};
std::variant<UnitValue, Fault> parse_unit(std::string_view unit, Quantity kind);

/// The value in the reader's units, rounded to `digits` significant digits, with its unit: "1.20 lbf/in". Digits before
/// the point always stay (1234.5 with 3 digits is "1234"), a count is whole, and kinds without a unit are a number
/// alone. An infinite value shows as "∞", one that is not a number as "undefined"; every other shown text can be
/// parsed.
std::string show(double si, Quantity kind, System system, int digits = 3);
std::string show(const Amount& amount, System system, int digits = 3);

/// Number alone and unit alone, for tables: show_number(...) + " " + unit_of(...) == show(...).
std::string show_number(double si, Quantity kind, System system, int digits = 3);
std::string unit_of(Quantity kind, System system);

/// SI value → number in the display unit of `kind`, unrounded.
double in_display_unit(double si, Quantity kind, System system);

/// Text that parse() reads back to exactly `si`, for writing files: the fewest digits that do so in the display unit,
/// or in the SI unit where none do. What a person wrote in the display unit comes back unchanged. Throws
/// std::invalid_argument unless `si` is finite.
std::string write(double si, Quantity kind, System system);

/// The note's sentence with its amounts filled in. Braces that name no amount stay as they are.
std::string fill(const Note& note, System system);

/// Examples of accepted texts for a kind, as shown in errors and in the file-format page: "300 m/min, 1000 ft/min".
std::string accepted_examples(Quantity kind);

/// The key of a kind as in the schema: "tension_per_width"; and the name as a person reads it: "tension per width".
std::string_view key_of(Quantity kind);
std::string name_of(Quantity kind);

/// Coherent SI unit of a kind in ASCII, as JSON answers state it: "N/m", "K", "rad/s", "1".
std::string_view si_unit_of(Quantity kind);

}  // namespace holdback::units
