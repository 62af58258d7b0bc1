// Numbers that carry their slope: exact derivatives of any function that is written for any kind of number. One slope
// at a time, so that a column of a Jacobian costs one call. Boost's autodiff was not taken: it carries orders and
// variables that nothing here needs and takes seconds to compile in each file.
#pragma once

#include <cmath>

namespace holdback::numerics {

struct Dual {
  double value{};
  double slope{};

  constexpr Dual() = default;
  constexpr explicit Dual(double v, double s = 0) : value(v), slope(s) {}

  constexpr Dual& operator+=(const Dual& o) { return value += o.value, slope += o.slope, *this; }
  constexpr Dual& operator-=(const Dual& o) { return value -= o.value, slope -= o.slope, *this; }
  friend constexpr Dual operator+(Dual a, const Dual& b) { return a += b; }
  friend constexpr Dual operator-(Dual a, const Dual& b) { return a -= b; }
  friend constexpr Dual operator-(const Dual& a) { return Dual(-a.value, -a.slope); }
  friend constexpr Dual operator*(const Dual& a, const Dual& b) {
    return Dual(a.value * b.value, a.slope * b.value + a.value * b.slope);
  }
  friend constexpr Dual operator/(const Dual& a, const Dual& b) {
    const double quotient = a.value / b.value;
    return Dual(quotient, (a.slope - quotient * b.slope) / b.value);
  }
  friend constexpr Dual operator+(const Dual& a, double b) { return Dual(a.value + b, a.slope); }
  friend constexpr Dual operator+(double a, const Dual& b) { return b + a; }
  friend constexpr Dual operator-(const Dual& a, double b) { return Dual(a.value - b, a.slope); }
  friend constexpr Dual operator-(double a, const Dual& b) { return Dual(a - b.value, -b.slope); }
  friend constexpr Dual operator*(const Dual& a, double b) { return Dual(a.value * b, a.slope * b); }
  friend constexpr Dual operator*(double a, const Dual& b) { return b * a; }
  friend constexpr Dual operator/(const Dual& a, double b) { return Dual(a.value / b, a.slope / b); }
  friend constexpr Dual operator/(double a, const Dual& b) { return Dual(a) / b; }
  friend constexpr bool operator<(const Dual& a, const Dual& b) { return a.value < b.value; }
  friend constexpr bool operator>(const Dual& a, const Dual& b) { return a.value > b.value; }
  friend constexpr bool operator<(const Dual& a, double b) { return a.value < b; }
  friend constexpr bool operator>(const Dual& a, double b) { return a.value > b; }

  friend Dual sqrt(const Dual& a) {
    const double root = std::sqrt(a.value);
    return Dual(root, root > 0 ? a.slope / (2 * root) : 0);
  }
  friend Dual sin(const Dual& a) { return Dual(std::sin(a.value), a.slope * std::cos(a.value)); }
  friend Dual cos(const Dual& a) { return Dual(std::cos(a.value), -a.slope * std::sin(a.value)); }
};

}  // namespace holdback::numerics
