// Sine and cosine together, inline: for loops that ask for both at every step and must not depend on whose library
// computes them.
#pragma once

#include <cmath>

namespace holdback::numerics {

struct SineCosine {
  double sine, cosine;
};

/// To 2e-16 for |x| < 1e6, the library's beyond. The turn is taken off in quarters by two constants; then the
/// polynomials of minimal error on ±π/4 (the coefficients of the public fdlibm).
[[gnu::always_inline]] inline SineCosine sine_and_cosine(double x) {
  if (!(std::abs(x) < 1e6)) return {std::sin(x), std::cos(x)};
  constexpr double quarters = 0.63661977236758134308;    // 2/π
  constexpr double first = 1.57079632673412561417e+00;   // π/2, its first 33 bits: exact products
  constexpr double second = 6.07710050650619224932e-11;  // what is left of it
  constexpr double whole = 6755399441055744.0;           // 1.5·2⁵²: adding it rounds to a whole number
  const double k = (x * quarters + whole) - whole;
  const double r = (x - k * first) - k * second;
  const double z = r * r;
  const double zz = z * z;  // the sums in pairs, so that they need not wait for each other
  const double sine = r + r * z *
                              ((-1.66666666666666324348e-01 + z * 8.33333333332248946124e-03) +
                               zz * ((-1.98412698298579493134e-04 + z * 2.75573137070700676789e-06) +
                                     zz * (-2.50507602534068634195e-08 + z * 1.58969099521155010221e-10)));
  const double cosine =
      (1 - 0.5 * z) + zz * ((4.16666666666666019037e-02 + z * -1.38888888888741095749e-03) +
                            zz * ((2.48015872894767294178e-05 + z * -2.75573143513906633035e-07) +
                                  zz * (2.08757232129817482790e-09 + z * -1.13596475577881948265e-11)));
  const auto quarter = static_cast<long long>(k);
  const bool odd = (quarter & 1) != 0;
  const double a = odd ? cosine : sine;
  const double b = odd ? sine : cosine;
  return {(quarter & 2) != 0 ? -a : a, ((quarter + 1) & 2) != 0 ? -b : b};
}

}  // namespace holdback::numerics
