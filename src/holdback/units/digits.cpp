#include "holdback/units/digits.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace holdback::units {
namespace {

constexpr int most_digits = 17;
constexpr int least_exponent = -6;
constexpr int most_exponent = 15;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::size_t count_digits(std::string_view text, std::size_t at) {
  std::size_t end = at;
  while (end < text.size() && is_digit(text[end])) ++end;
  return end - at;
}

// Bytes of "e-3" at `at`; 0 if there is no complete exponent, since the letter may open the name of a unit.
std::size_t exponent_size(std::string_view text, std::size_t at) {
  if (at >= text.size() || (text[at] != 'e' && text[at] != 'E')) return 0;
  const bool has_sign = at + 1 < text.size() && (text[at + 1] == '+' || text[at + 1] == '-');
  const std::size_t prefix = has_sign ? 2 : 1;
  const std::size_t digits = count_digits(text, at + prefix);
  return digits == 0 ? 0 : prefix + digits;
}

// A decimal in scientific form, taken apart: 1.25e-3 is {"125", -3}.
struct Decimal {
  std::string digits;
  int exponent{};
};

Decimal decimal(double magnitude, int digits) {
  const auto text = fmt::format("{:.{}e}", magnitude, std::clamp(digits, 1, most_digits) - 1);
  const auto e = text.find('e');
  Decimal out{text.substr(0, e), std::atoi(text.c_str() + e + 1)};
  out.digits.erase(std::remove(out.digits.begin(), out.digits.end(), '.'), out.digits.end());
  return out;
}

std::string scientific(const Decimal& d) {
  const auto point = d.digits.size() > 1 ? "." : "";
  return fmt::format("{}{}{}e{}", d.digits.substr(0, 1), point, d.digits.substr(1), d.exponent);
}

std::string fixed(const Decimal& d) {
  if (d.exponent < 0) return "0." + std::string(static_cast<std::size_t>(-d.exponent - 1), '0') + d.digits;
  const auto before = static_cast<std::size_t>(d.exponent) + 1;
  if (before >= d.digits.size()) return d.digits + std::string(before - d.digits.size(), '0');
  return d.digits.substr(0, before) + "." + d.digits.substr(before);
}

}  // namespace

std::optional<ScannedNumber> scan_number(std::string_view text) {
  const std::size_t whole = count_digits(text, 0);
  std::size_t end = whole;
  if (end < text.size() && text[end] == '.') {
    const std::size_t fraction = count_digits(text, end + 1);
    if (whole + fraction > 0) end += 1 + fraction;
  }
  if (end == 0) return std::nullopt;
  const std::string_view mantissa = text.substr(0, end);
  end += exponent_size(text, end);
  // strtod follows the locale's decimal sign; no part of Holdback calls setlocale, so that sign is the point.
  const double value = std::strtod(std::string(text.substr(0, end)).c_str(), nullptr);
  const bool vanished = value == 0 && mantissa.find_first_of("123456789") != std::string_view::npos;
  return ScannedNumber{value, end, std::isfinite(value) && !vanished};
}

std::string significant(double value, int digits) {
  const auto d = decimal(std::fabs(value), digits);
  const bool ordinary = d.exponent >= least_exponent && d.exponent < most_exponent;
  const auto text = ordinary ? fixed(d) : scientific(d);
  return value < 0 ? "-" + text : text;
}

std::string readable(double value, int digits) {
  if (value == 0) return "0";
  const int before_point = decimal(std::fabs(value), most_digits).exponent + 1;
  const bool ordinary = before_point <= most_exponent;
  return significant(value, ordinary ? std::max(digits, before_point) : digits);
}

}  // namespace holdback::units
