#include "holdback/physics/span.hpp"

#include <limits>

#include "holdback/physics/gravity.hpp"

namespace holdback::physics {

// T = w L²/(8 s)
double sag_tension(double weight_per_length, double span, double sag) {
  if (sag <= 0) return std::numeric_limits<double>::infinity();
  return weight_per_length * span * span / (8 * sag);
}

// b w g
double web_weight(double basis_weight, double width) { return basis_weight * width * gravity; }

}  // namespace holdback::physics
