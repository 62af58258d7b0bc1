// The explicit pair of Dormand and Prince, order 5 with an embedded order 4: the everyday method for problems that are
// not stiff. Its seventh stage is the first of the next step, so an accepted step costs six evaluations of f. Sources:
// coefficients [dormand1980], the curve inside the step [shampine1986] as printed in [hairer1993] section II.6.
#pragma once

#include "holdback/numerics/ode_step.hpp"

namespace holdback::numerics {

/// One step of the pair; `Stepper` holds the state and chooses the length.
template <std::size_t N>
class DormandPrince {
 public:
  static constexpr int error_power = 5;  ///< the estimated error goes with this power of the step

  /// A step of length `h` = `t1` − `t` [s] from `y`, where the derivative is `f`. The states are copies and the newest
  /// slope stands last in each sum, so that the next stage waits for one product only.
  template <class Rhs>
  Trial<N> attempt(const Rhs& rhs, double t, double t1, double h, const State<N> y, const State<N> f) {
    State<N> z;
    for (std::size_t i = 0; i < N; ++i) z[i] = y[i] + h * 0.2 * f[i];
    const State<N> k2 = rhs(t + h * 0.2, z);
    for (std::size_t i = 0; i < N; ++i) z[i] = y[i] + h * (3.0 / 40) * f[i] + h * (9.0 / 40) * k2[i];
    const State<N> k3 = rhs(t + h * 0.3, z);
    for (std::size_t i = 0; i < N; ++i)
      z[i] = y[i] + h * (44.0 / 45) * f[i] - h * (56.0 / 15) * k2[i] + h * (32.0 / 9) * k3[i];
    const State<N> k4 = rhs(t + h * 0.8, z);
    for (std::size_t i = 0; i < N; ++i)
      z[i] = y[i] + h * (19372.0 / 6561) * f[i] - h * (25360.0 / 2187) * k2[i] + h * (64448.0 / 6561) * k3[i] -
             h * (212.0 / 729) * k4[i];
    const State<N> k5 = rhs(t + h * (8.0 / 9), z);
    for (std::size_t i = 0; i < N; ++i)
      z[i] = y[i] + h * (9017.0 / 3168) * f[i] - h * (355.0 / 33) * k2[i] + h * (46732.0 / 5247) * k3[i] +
             h * (49.0 / 176) * k4[i] - h * (5103.0 / 18656) * k5[i];
    const State<N> k6 = rhs(t1, z);
    Trial<N> made;
    for (std::size_t i = 0; i < N; ++i)
      made.y[i] = y[i] + h * (35.0 / 384) * f[i] + h * (500.0 / 1113) * k3[i] + h * (125.0 / 192) * k4[i] -
                  h * (2187.0 / 6784) * k5[i] + h * (11.0 / 84) * k6[i];
    made.f = rhs(t1, made.y);
    for (std::size_t i = 0; i < N; ++i)
      made.error[i] = h * (71.0 / 57600) * f[i] - h * (71.0 / 16695) * k3[i] + h * (71.0 / 1920) * k4[i] -
                      h * (17253.0 / 339200) * k5[i] + h * (22.0 / 525) * k6[i] - h * (1.0 / 40) * made.f[i];
    k3_ = k3;
    k4_ = k4;
    k5_ = k5;
    k6_ = k6;
    return made;
  }

  /// The curve of order 4 through the step just made from (t0, y0), derivative f0, to (t1, y1), derivative f1.
  Dense<N> dense(double t0, const State<N>& y0, const State<N>& f0, double t1, const State<N>& y1,
                 const State<N>& f1) const {
    const double h = t1 - t0;
    Dense<N> curve{t0, t1, y0, y1, {}, {}, {}};
    for (std::size_t i = 0; i < N; ++i) {
      const double rise = y1[i] - y0[i];
      curve.c2[i] = h * f0[i] - rise;
      curve.c3[i] = rise - h * f1[i] - curve.c2[i];
      curve.c4[i] = h * (-12715105075.0 / 11282082432 * f0[i] + 87487479700.0 / 32700410799 * k3_[i] -
                         10690763975.0 / 1880347072 * k4_[i] + 701980252875.0 / 199316789632 * k5_[i] -
                         1453857185.0 / 822651844 * k6_[i] + 69997945.0 / 29380423 * f1[i]);
    }
    return curve;
  }

  /// Nothing is kept from one state to the next.
  void forget() {}

 private:
  State<N> k3_{}, k4_{}, k5_{}, k6_{};
};

}  // namespace holdback::numerics
