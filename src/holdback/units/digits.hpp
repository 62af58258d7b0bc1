// Numbers as digits: read without a locale's help, written without exponents where people would not use them.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace holdback::units {

/// An unsigned decimal number at the start of a text.
struct ScannedNumber {
  double value{};
  std::size_t size{};  // bytes it takes
  bool in_range{};     // false if it overflows, or vanishes although a digit is not 0
};

/// Reads "12", "1.5", ".5", "5." or "1e-3" at the start of `text`; nothing if no digit stands there. No sign, no "inf".
std::optional<ScannedNumber> scan_number(std::string_view text);

/// A finite number with `digits` significant digits (1 to 17): "1.20", "0.0350", "1200000". An exponent is used only
/// below 1e-6 and from 1e15 on, where nobody counts zeros.
std::string significant(double value, int digits);

/// As significant(), but the digits before the point are never rounded away: 1234.5 with 3 digits is "1234". 0 is "0".
std::string readable(double value, int digits);

}  // namespace holdback::units
