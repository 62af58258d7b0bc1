// SI → text: shown for a reader, or written so that it reads back to the same double.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "holdback/units/digits.hpp"
#include "holdback/units/expression.hpp"
#include "holdback/units/kind_table.hpp"
#include "holdback/units/units.hpp"

namespace holdback::units {
namespace {

constexpr int most_digits = 17;  // of a double: enough for every value

std::string with_unit(const std::string& number, std::string_view unit) {
  return unit.empty() ? number : fmt::format("{} {}", number, unit);
}

// Whether the text of `number` in this unit reads back to exactly `si`.
bool reads_back(const std::string& text, double si, const Measure& measure, double offset) {
  const bool negative = text[0] == '-';
  const auto number = scan_number(std::string_view(text).substr(negative ? 1 : 0));
  if (!number || !number->in_range) return false;
  const auto read = to_si(negative ? -number->value : number->value, measure, offset);
  return read && *read == si;
}

// Fewest digits of the number in this unit that read back to `si`. Not every double is the product of a double and the
// unit's factor, rounded; then there are none. (Trying the neighbours of the number saves one value in 250.)
std::string exact_digits(double si, const Measure& measure, double offset) {
  const double number = from_si(si, measure, offset);
  if (!std::isfinite(number)) return {};
  for (int digits = 1; digits <= most_digits; ++digits) {
    auto text = significant(number, digits);
    if (reads_back(text, si, measure, offset)) return text;
  }
  return {};
}

// "{12}" at `at`: the number inside and the bytes it takes; size 0 if no place stands there.
struct Place {
  std::size_t index{};
  std::size_t size{};
};
Place place_at(std::string_view text, std::size_t at) {
  Place place{0, 1};
  while (at + place.size < text.size() && place.size < 4) {
    const char c = text[at + place.size];
    if (c == '}') return place.size > 1 ? Place{place.index, place.size + 1} : Place{};
    if (c < '0' || c > '9') break;
    place.index = 10 * place.index + static_cast<std::size_t>(c - '0');
    ++place.size;
  }
  return {};
}

}  // namespace

double in_display_unit(double si, Quantity kind, System system) {
  const auto& measure = shown_measure(kind, system);
  return from_si(si, measure, offset_for(kind, measure));
}

std::string show_number(double si, Quantity kind, System system, int digits) {
  const double number = in_display_unit(si, kind, system);
  if (std::isnan(number)) return "undefined";
  if (std::isinf(number)) return number > 0 ? "∞" : "-∞";
  if (kind == Quantity::count) return readable(std::round(number), 1);
  return readable(number, digits);
}

std::string unit_of(Quantity kind, System system) {
  const auto& row = kind_of(kind);
  return std::string(system == System::si ? row.shown_si : row.shown_us);
}

std::string show(double si, Quantity kind, System system, int digits) {
  return with_unit(show_number(si, kind, system, digits), unit_of(kind, system));
}

std::string show(const Amount& amount, System system, int digits) {
  return show(amount.value, amount.kind, system, digits);
}

std::string write(double si, Quantity kind, System system) {
  if (!std::isfinite(si)) throw std::invalid_argument("write: only a finite value has a text that reads back");
  const auto& measure = shown_measure(kind, system);
  const auto digits = exact_digits(si, measure, offset_for(kind, measure));
  if (!digits.empty()) return with_unit(digits, unit_of(kind, system));
  const auto unit = si_unit_of(kind);
  return with_unit(exact_digits(si, Measure{}, 0), unit == "1" ? "" : unit);
}

std::string fill(const Note& note, System system) {
  std::string out;
  for (std::size_t at = 0; at < note.text.size();) {
    const auto place = note.text[at] == '{' ? place_at(note.text, at) : Place{};
    // A brace that names no amount stays as it is: it may belong to a name that the user gave.
    if (place.size == 0 || place.index >= note.amounts.size()) {
      out += note.text[at++];
    } else {
      out += show(note.amounts[place.index], system);
      at += place.size;
    }
  }
  return out;
}

std::string_view key_of(Quantity kind) { return kind_of(kind).key; }

std::string name_of(Quantity kind) {
  std::string name(kind_of(kind).key);
  std::replace(name.begin(), name.end(), '_', ' ');
  return name;
}

std::string_view si_unit_of(Quantity kind) { return kind_of(kind).si_unit; }

}  // namespace holdback::units
