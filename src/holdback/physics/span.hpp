// A free span of web that lies level between two rollers.
#pragma once

namespace holdback::physics {

/// Lowest tension [N] in a level span that sags no deeper than `sag` [m]: T = w L²/(8 s), w weight per length [N/m].
/// Parabola; against the catenary 0.03 % low at s = L/80, 3 % at s = L/8 (check T-1). Infinite for s ≤ 0.
/// Source: [beer2010].
double sag_tension(double weight_per_length, double span, double sag);

/// Weight per length of a web [N/m]: b w g, g = 9.80665 m/s².
double web_weight(double basis_weight, double width);

}  // namespace holdback::physics
