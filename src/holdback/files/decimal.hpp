// Decimal numbers of long tables: read at the speed of memory and rounded
// exactly as strtod does.
//
// Digits are taken eight at a time from one word of memory (the digits of a
// cell are few, so that a loop over them is mostly mispredicted branches). A
// number of at most 19 digits is an integer w times a power of ten: for w to
// 2^53 and small powers one division is exact (W. D. Clinger, "How to read
// floating point numbers accurately", PLDI 1990); for the rest a division of
// 128 bits gives 64 bits and whether anything is left over, which rounds right.
#pragma once

#include <cstdint>
#include <cstring>

namespace holdback::files {

/// Bytes that must be readable behind the text of scan_decimal().
inline constexpr std::size_t decimal_padding = 16;

/// The exact value of the text from `begin` to before `end`, a decimal literal
/// with `point` as its decimal sign; slow.
double decimal_by_library(const char* begin, const char* end, char point);

/// w · 10^power, rounded to the nearest double, halves to even. |power| ≤ 19; w
/// > 0.
double scaled_decimal(std::uint64_t w, int power);

namespace decimal {

inline constexpr double powers[] = {1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,  1e8,  1e9,  1e10, 1e11,
                                    1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};
inline constexpr std::uint64_t whole_powers[] = {1,       10,        100,        1'000,      10'000,
                                                 100'000, 1'000'000, 10'000'000, 100'000'000};

inline bool is_digit(char c) { return static_cast<unsigned char>(c - '0') < 10; }

/// How many of the lowest bytes of a word are digits. A byte is one when it is 0x30 to 0x3F and stays so with 6 added;
/// a carry out of a byte runs only into bytes behind one that is no digit, which do not count.
inline int leading_digits(std::uint64_t word) {
  const std::uint64_t high = 0xF0F0F0F0F0F0F0F0U;
  const std::uint64_t zeros = 0x3030303030303030U;
  const std::uint64_t other = ((word & high) ^ zeros) | (((word + 0x0606060606060606U) & high) ^ zeros);
  return other == 0 ? 8 : __builtin_ctzll(other) / 8;
}

/// The value of the lowest 1 to 8 bytes of a word, which are digits: pairs, then fours, then all eight.
inline std::uint64_t value_of_digits(std::uint64_t word, int digits) {
  word = (word << (8 * (8 - digits))) & 0x0F0F0F0F0F0F0F0FU;
  word = word * 10 + (word >> 8);
  const std::uint64_t pairs = 0x000000FF000000FFU;
  return (((word & pairs) * 0x000F424000000064U + ((word >> 16) & pairs) * 0x0000271000000001U) >> 32) & 0xFFFFFFFFU;
}

/// Eight bytes of text, the first one lowest: every host of ours is little-endian.
inline std::uint64_t eight_bytes(const char* p) {
  std::uint64_t word = 0;
  std::memcpy(&word, p, 8);
  return word;
}

/// The usual cell: at most seven digits and a point, in eight bytes with the byte behind them. The point is taken out
/// of the word and the rest read at one go. True when there is one; `p` is then behind it.
inline bool scan_short(const char*& p, char point, std::uint64_t& w, int& fraction) {
  const std::uint64_t word = eight_bytes(p);
  const int before = leading_digits(word);
  if (before > 6 || static_cast<char>(word >> (8 * before)) != point) return false;
  const std::uint64_t kept = (std::uint64_t{1} << (8 * before)) - 1;
  const std::uint64_t joined = (word & kept) | ((word >> 8) & ~kept);  // its highest byte is 0, no digit
  const int digits = leading_digits(joined);
  if (digits == 7 || digits == 0) return false;  // it may go on, or there is none
  w = value_of_digits(joined, digits);
  fraction = digits - before;
  p += digits + 1;
  return true;
}

/// Digits at `p`, which moves behind them, added to `w`; how many. More than 19 in all leave `w` without meaning.
inline int take_digits(const char*& p, std::uint64_t& w) {
  int all = 0;
  for (;;) {
    const std::uint64_t word = eight_bytes(p);
    const int digits = leading_digits(word);
    if (digits > 0) w = w * whole_powers[digits] + value_of_digits(word, digits);
    p += digits;
    all += digits;
    if (digits < 8) return all;
  }
}

/// An exponent at `p` ("e-3"), which moves behind it; 0 when there is none. Far
/// beyond any double it stops counting.
inline int take_exponent(const char*& p) {
  if (*p != 'e' && *p != 'E') return 0;
  const char* at = p + 1;
  const bool negative = *at == '-';
  if (*at == '-' || *at == '+') ++at;
  if (!is_digit(*at)) return 0;
  int exponent = 0;
  for (; is_digit(*at); ++at)
    if (exponent < 100'000) exponent = 10 * exponent + (*at - '0');
  p = at;
  return negative ? -exponent : exponent;
}

}  // namespace decimal

/// A decimal number at `p` with an optional sign, `point` or none, an optional
/// exponent. True when there is one: `p` is then behind it and `value` is what
/// strtod gives, bit for bit (infinite beyond the range of a double). At least
/// decimal_padding bytes behind the number must be readable.
inline bool scan_decimal(const char*& p, char point, double& value) {
  const char* const begin = p;
  const char* at = p;
  const bool negative = *at == '-';
  if (negative || *at == '+') ++at;
  std::uint64_t w = 0;
  int power = 0;
  if (decimal::scan_short(at, point, w, power) && *at != 'e' && *at != 'E') {
    value = static_cast<double>(w) / decimal::powers[power];
    if (negative) value = -value;
    p = at;
    return true;
  }
  at = begin + (negative || *begin == '+' ? 1 : 0);
  w = 0;
  int digits = decimal::take_digits(at, w);
  power = 0;
  if (*at == point) {
    ++at;
    const int fraction = decimal::take_digits(at, w);
    digits += fraction;
    power = -fraction;
  }
  if (digits == 0) return false;
  power += decimal::take_exponent(at);
  p = at;
  if (digits <= 19 && w <= (std::uint64_t{1} << 53U) && power <= 0 && power >= -22) {
    value = static_cast<double>(w) / decimal::powers[-power];
  } else if (digits <= 19 && w != 0 && power >= -19 && power <= 19) {
    value = scaled_decimal(w, power);
  } else {
    value = decimal_by_library(begin, at, point);
    return true;
  }
  if (negative) value = -value;
  return true;
}

}  // namespace holdback::files
