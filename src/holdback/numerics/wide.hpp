// Loops over fixed arrays that run in the widest registers the machine has. The same answer in any width: every lane
// does the same roundings, and sums are taken in a fixed order.
#pragma once

#include <cstddef>

// One function body, compiled for wide registers too; the right one is picked when the program starts.
#if defined(__GNUC__) && !defined(__clang__) && defined(__x86_64__) && defined(__ELF__) && \
    !defined(__SANITIZE_ADDRESS__)
#define HOLDBACK_WIDE __attribute__((target_clones("avx2", "default")))
#else
#define HOLDBACK_WIDE
#endif

// Before a loop whose arrays lie apart, which the compiler cannot see by itself.
#if defined(__GNUC__) && !defined(__clang__)
#define HOLDBACK_APART _Pragma("GCC ivdep")
#else
#define HOLDBACK_APART
#endif

namespace holdback::numerics {

/// Lanes that sums and extremes are kept in before they are put together.
inline constexpr std::size_t lanes = 8;

/// 2^x for x kept within 0 … 60, to 1e-9 of the value, without a branch or a call: e^(x ln 2/256) by its series,
/// squared eight times.
inline double power_of_two(double x) {
  const double kept = x < 0 ? 0 : (x > 60 ? 60 : x);
  const double z = kept * (0.69314718055994531 / 256);
  constexpr double third = 1.0 / 3;
  constexpr double fifth = 1.0 / 5;
  constexpr double sixth = 1.0 / 6;
  constexpr double seventh = 1.0 / 7;  // the compiler would divide by them
  double power =
      1 + z * (1 + z * 0.5 * (1 + z * third * (1 + z * 0.25 * (1 + z * fifth * (1 + z * sixth * (1 + z * seventh))))));
  power *= power;
  power *= power;
  power *= power;
  power *= power;
  power *= power;
  power *= power;
  power *= power;
  return power * power;
}

/// The highest of `count` values; `count` is a multiple of `lanes`, at least one.
inline double highest_of(const double* values, std::size_t count) {
  double best[lanes];
  for (std::size_t k = 0; k < lanes; ++k) best[k] = values[k];
  for (std::size_t i = lanes; i < count; i += lanes)
    for (std::size_t k = 0; k < lanes; ++k) best[k] = values[i + k] > best[k] ? values[i + k] : best[k];
  double highest = best[0];
  for (std::size_t k = 1; k < lanes; ++k) highest = best[k] > highest ? best[k] : highest;
  return highest;
}

/// The lowest of them.
inline double lowest_of(const double* values, std::size_t count) {
  double best[lanes];
  for (std::size_t k = 0; k < lanes; ++k) best[k] = values[k];
  for (std::size_t i = lanes; i < count; i += lanes)
    for (std::size_t k = 0; k < lanes; ++k) best[k] = values[i + k] < best[k] ? values[i + k] : best[k];
  double lowest = best[0];
  for (std::size_t k = 1; k < lanes; ++k) lowest = best[k] < lowest ? best[k] : lowest;
  return lowest;
}

/// The sum of a[i] · b[i].
inline double product_sum(const double* a, const double* b, std::size_t count) {
  double sum[lanes] = {};
  for (std::size_t i = 0; i < count; i += lanes)
    for (std::size_t k = 0; k < lanes; ++k) sum[k] += a[i + k] * b[i + k];
  return ((sum[0] + sum[1]) + (sum[2] + sum[3])) + ((sum[4] + sum[5]) + (sum[6] + sum[7]));
}

}  // namespace holdback::numerics
