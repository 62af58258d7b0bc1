// A linear loop seen along the frequency: its response, its margins, its peaks of sensitivity.
//
// A loop is a callable L(s) of the complex frequency s [rad/s], the product of all that a signal passes on its way once
// around; the feedback is negative, so that the closed loop has its poles where 1 + L(s) = 0. A callable can hold dead
// time and sample-and-hold exactly, which no ratio of polynomials can. It must be real on the real axis (conjugate
// values at conjugate s) and finite at every s in the range that is not a pole. It may be asked at s = 0 too, where any
// answer is accepted: one that is not finite means a pole.
// Margins say how far L stays from −1. They speak of a safe loop only where the closed loop is stable at all, which the
// count of encirclements tells (Nyquist). Source: [astrom2008], ch. 9; worst margins as in the tests named there.
#pragma once

#include <complex>
#include <functional>
#include <vector>

namespace holdback::numerics {

using Complex = std::complex<double>;
using Response = std::function<Complex(Complex)>;

/// Dead time as a factor of a loop [1]: e^(−sθ), θ in s. A time below zero counts as zero; the size is kept below
/// e^700.
Complex dead_time(Complex s, double time);

/// Sampling and zero-order hold as a factor of a loop [1]: (1 − e^(−sT))/(sT), T the period in s. One at s = 0 or T ≤
/// 0. It is the hold alone: the time to compute the next value is dead time. Valid below the Nyquist frequency π/T,
/// where the images of sampling can be left out. The size is kept below e^700.
Complex sample_and_hold(Complex s, double period);

/// Where to look [rad/s].
struct FrequencyRange {
  double lowest{1e-4};          // > 0; poles of the closed loop that are slower are not seen
  double highest{1e4};          // > lowest; poles that are faster are not seen
  int per_decade{50};           // ≥ 1, points of the first grid; it is made denser where L turns or changes
  std::vector<double> modes{};  // [rad/s] of known narrow resonances, damped by less than about 1/per_decade
};

/// Frequencies [rad/s] from lowest to highest, both included, in geometric progression. std::invalid_argument for a
/// range that is empty, not positive or not finite.
std::vector<double> logarithmic_grid(const FrequencyRange& range);

struct FrequencyPoint {
  double frequency{};  // [rad/s]
  double gain{};       // [1] |L|
  double phase{};      // [rad] continuous from point to point, the first between −π and π
};

/// The response at rising frequencies [rad/s]. The phase is followed by less than half a turn from point to point.
std::vector<FrequencyPoint> frequency_response(const Response& loop, const std::vector<double>& frequencies);

/// What a loop can bear. Where there is no such margin it is infinite, and so is the frequency beside it.
struct LoopMargins {
  bool stable{};         // the closed loop has no pole in the right half plane and none on its edge
  int unstable_poles{};  // of the closed loop; below zero when the given number of the open loop cannot be true
  double gain_margin{};  // [1] 1/|L| where L is negative real, of all such the nearest to 1; below 1: less gain crosses
  double gain_rise{};    // [1] ≥ 1, least such factor from 1 upwards
  double gain_fall{};    // [1] ≤ 1, greatest such factor from 1 downwards; zero without one
  double phase_margin{};  // [rad] arg(−L) where |L| = 1, of all such the least in size, between −π and π
  double delay_margin{};  // [s] shortest dead time that makes a stable loop unstable; zero for an unstable one
  double sensitivity{};   // [1] Ms, highest |1/(1 + L)|: 1/Ms is the distance of L from −1
  double complementary_sensitivity{};            // [1] Mt, highest |L/(1 + L)|
  double gain_margin_frequency{};                // [rad/s]
  double phase_margin_frequency{};               // [rad/s]
  double delay_margin_frequency{};               // [rad/s]
  double sensitivity_frequency{};                // [rad/s]
  double complementary_sensitivity_frequency{};  // [rad/s]
  std::vector<double> gain_crossovers{};         // [rad/s] rising, every |L| = 1
  std::vector<double> phase_crossovers{};        // [rad/s] rising, every negative real L; zero for one at standstill
  bool resolved{};  // false: the response turned too often to be followed, and margins may have been missed
};

/// Margins of a loop whose L has `unstable_open_poles` in the right half plane (poles at s = 0 are not counted).
/// The grid is made denser until neither |L| changes by half nor the angle of L or 1 + L by half a radian between
/// neighbours, where |L| is above 1e-3; crossings that a peak makes between two points are found too. Crossover
/// frequencies to 1e-12 of their value, Ms and Mt to 1e-10. Gain margins beyond a factor of 1000 either way count as
/// none. The count runs along a closed path: real axis, quarter circle at the lowest, imaginary axis, quarter circle at
/// the highest frequency; so integrators need no mention. A pole of L on the imaginary axis elsewhere makes the count a
/// matter of luck: give the mode its damping. Where |L| is above 1e-3, dead time times frequency must stay below 5000.
/// A phase margin below zero in a stable loop means a crossover that more lead, not lag, would carry to −1.
/// std::invalid_argument for a range as above and for a response that is not finite.
LoopMargins loop_margins(const Response& loop, const FrequencyRange& range = {}, int unstable_open_poles = 0);

}  // namespace holdback::numerics
