// The dimension of a unit, and its size in SI as a quotient of two numbers.
#pragma once

#include <array>
#include <cstddef>

namespace holdback::units {

/// Powers of length, mass, time, temperature and angle. Angle counts as a dimension of its own, so that rev/min is a
/// rotational speed and 1/min is not; torque is N·m without an angle.
struct Dimension {
  std::array<int, 5> powers{};
  bool operator==(const Dimension&) const = default;
};

inline constexpr Dimension plain{};
inline constexpr Dimension length{{1, 0, 0, 0, 0}};
inline constexpr Dimension mass{{0, 1, 0, 0, 0}};
inline constexpr Dimension time{{0, 0, 1, 0, 0}};
inline constexpr Dimension temperature{{0, 0, 0, 1, 0}};
inline constexpr Dimension angle{{0, 0, 0, 0, 1}};

/// Dimension of a product of two quantities.
constexpr Dimension operator*(Dimension a, const Dimension& b) {
  for (std::size_t i = 0; i < a.powers.size(); ++i) a.powers[i] += b.powers[i];
  return a;
}

/// Dimension of a quotient of two quantities.
constexpr Dimension operator/(Dimension a, const Dimension& b) {
  for (std::size_t i = 0; i < a.powers.size(); ++i) a.powers[i] -= b.powers[i];
  return a;
}

/// SI per unit as numerator over denominator. Both are whole numbers for a unit with an exact decimal definition, so
/// that "35 %" is 35/100 and "12 um" is 12/1000000, each rounded once, and equal to the literals 0.35 and 12e-6.
struct Factor {
  double numerator{1};
  double denominator{1};
};

/// Factor of a product of two units.
constexpr Factor operator*(const Factor& a, const Factor& b) {
  return {a.numerator * b.numerator, a.denominator * b.denominator};
}

/// Factor of a quotient of two units.
constexpr Factor operator/(const Factor& a, const Factor& b) {
  return {a.numerator * b.denominator, a.denominator * b.numerator};
}

/// Factor of the second and of the third power of a unit.
constexpr Factor square(const Factor& a) { return a * a; }
constexpr Factor cube(const Factor& a) { return a * a * a; }

}  // namespace holdback::units
