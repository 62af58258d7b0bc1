// Interpolation that never rises where its points do not: a table of a data sheet stays as monotone as it was printed.
//
// Piecewise cubic Hermite polynomials with the slopes of Fritsch and Butland (the weighted harmonic mean), as PCHIP
// uses them: between two points nothing overshoots. Points must stand by rising x. The slopes need only the neighbours
// of the interval, so nothing is stored or allocated. Source: [fritsch1984].
#pragma once

#include <cstddef>
#include <functional>

namespace holdback::numerics {

/// Slope at an inner point from the interval before it (width `h0`, secant slope `d0`) and after it (`h1`, `d1`):
/// zero where the secants differ in sign, else (w0 + w1)/(w0/d0 + w1/d1), w0 = 2h1 + h0, w1 = h1 + 2h0.
double monotone_inner_slope(double h0, double d0, double h1, double d1);

/// Slope at an end point from its own interval (`h0`, `d0`) and the next inwards (`h1`, `d1`): three-point formula
/// ((2h0 + h1) d0 − h0 d1)/(h0 + h1), cut to 0 … 3 d0 so that the end stays monotone.
double monotone_end_slope(double h0, double d0, double h1, double d1);

/// Cubic Hermite value at `s` in 0 … 1 of an interval of width `h` from y0 (slope m0) to y1 (slope m1).
double hermite(double s, double h, double y0, double m0, double y1, double m1);

/// Value at `x` of the monotone curve through `points`; `x_of` and `y_of` pick the coordinates of a point (a pointer to
/// member serves). Outside the points the end values hold. Zero without points; one point gives a constant.
template <class Points, class X, class Y>
double interpolate_monotone(const Points& points, X x_of, Y y_of, double x) {
  const std::size_t count = points.size();
  const auto px = [&](std::size_t i) { return std::invoke(x_of, points[i]); };
  const auto py = [&](std::size_t i) { return std::invoke(y_of, points[i]); };
  if (count == 0) return 0;
  if (x <= px(0)) return py(0);
  if (!(x < px(count - 1))) return py(count - 1);

  std::size_t left = 0;
  while (x >= px(left + 1)) ++left;
  const auto width = [&](std::size_t i) { return px(i + 1) - px(i); };
  const auto secant = [&](std::size_t i) { return (py(i + 1) - py(i)) / width(i); };
  const std::size_t last = count - 2;  // the last interval
  const double h = width(left);
  const double d = secant(left);
  double m0 = d;
  double m1 = d;
  if (count > 2) {
    m0 = left == 0 ? monotone_end_slope(h, d, width(1), secant(1))
                   : monotone_inner_slope(width(left - 1), secant(left - 1), h, d);
    m1 = left == last ? monotone_end_slope(h, d, width(last - 1), secant(last - 1))
                      : monotone_inner_slope(h, d, width(left + 1), secant(left + 1));
  }
  return hermite((x - px(left)) / h, h, py(left), m0, py(left + 1), m1);
}

}  // namespace holdback::numerics
