#include "holdback/files/decimal.hpp"

#include <cmath>
#include <cstdlib>
#include <string>

namespace holdback::files {
namespace {

__extension__ using Wide = unsigned __int128;  // g++, clang and emcc all have it

constexpr std::uint64_t power_of_ten(int exponent) {
  std::uint64_t power = 1;
  for (int i = 0; i < exponent; ++i) power *= 10;
  return power;
}

/// The nearest double of a number that is at least 2^62 and has `more` bits set
/// below its last one.
double rounded(std::uint64_t number, bool more) {
  return static_cast<double>(number | static_cast<std::uint64_t>(more));  // the cast rounds; `more` breaks a tie
}

}  // namespace

double scaled_decimal(std::uint64_t w, int power) {
  if (power >= 0) {
    const Wide product = Wide{w} * power_of_ten(power);
    const auto high = static_cast<std::uint64_t>(product >> 64U);
    if (high == 0) return static_cast<double>(static_cast<std::uint64_t>(product));
    const int shift = 64 - __builtin_clzll(high);
    const Wide lost = product & ((Wide{1} << static_cast<unsigned>(shift)) - 1);
    return std::ldexp(rounded(static_cast<std::uint64_t>(product >> static_cast<unsigned>(shift)), lost != 0), shift);
  }
  const std::uint64_t divisor = power_of_ten(-power);
  const int up = __builtin_clzll(w);
  const int divisor_up = __builtin_clzll(divisor);
  // Both with their highest bit set: the quotient of w·2^63 over the divisor
  // lies between 2^62 and 2^64.
  const Wide dividend = Wide{w << static_cast<unsigned>(up)} << 63U;
  const std::uint64_t by = divisor << static_cast<unsigned>(divisor_up);
  const Wide quotient = dividend / by;
  const bool more = dividend % by != 0;
  return std::ldexp(rounded(static_cast<std::uint64_t>(quotient), more), divisor_up - up - 63);
}

double decimal_by_library(const char* begin, const char* end, char point) {
  std::string text(begin, end);
  if (point != '.')
    if (const auto at = text.find(point); at != std::string::npos) text[at] = '.';
  // strtod follows the locale's decimal sign; no part of Holdback calls
  // setlocale, so that sign is the point.
  return std::strtod(text.c_str(), nullptr);
}

}  // namespace holdback::files
