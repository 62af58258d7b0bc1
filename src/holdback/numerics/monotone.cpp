#include "holdback/numerics/monotone.hpp"

#include <cmath>

namespace holdback::numerics {

double monotone_inner_slope(double h0, double d0, double h1, double d1) {
  if (d0 * d1 <= 0) return 0;
  const double w0 = 2 * h1 + h0;
  const double w1 = h1 + 2 * h0;
  return (w0 + w1) / (w0 / d0 + w1 / d1);
}

double monotone_end_slope(double h0, double d0, double h1, double d1) {
  const double slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
  if (slope * d0 <= 0) return 0;
  if (d0 * d1 <= 0 && std::abs(slope) > 3 * std::abs(d0)) return 3 * d0;
  return slope;
}

// y = y0 (1+2s)(1−s)² + m0 h s(1−s)² + y1 s²(3−2s) − m1 h s²(1−s)
double hermite(double s, double h, double y0, double m0, double y1, double m1) {
  const double r = 1 - s;
  return r * r * (y0 * (1 + 2 * s) + m0 * h * s) + s * s * (y1 * (3 - 2 * s) - m1 * h * r);
}

}  // namespace holdback::numerics
