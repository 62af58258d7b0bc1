// What every one-step method for dy/dt = f(t, y) shares: the state, what accuracy is asked, the curve inside a step,
// and how long the next step may be.
//
// The number of states is fixed when compiled, so that a step touches no heap and its loops unroll. Boost's odeint was
// not taken: its steppers with a curve inside the step allocate their buffers, and none of them looks for events.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <limits>
#include <string_view>

namespace holdback::numerics {

/// The state y, or its derivative; each component in its own unit.
template <std::size_t N>
using State = std::array<double, N>;

/// Whether every component is a finite number.
template <std::size_t N>
bool all_finite(const State<N>& y) {
  double zero = 0;  // not a number as soon as one component is infinite or none
  for (const double component : y) zero += 0 * component;
  return zero == 0;
}

/// Why an integration came to a stop before its end.
enum class OdeFailure {
  none,
  step_too_small,   ///< the accuracy asked for is not met with the smallest step
  not_finite,       ///< f or the state is not a finite number, however short the step
  too_many_steps,   ///< the limit of the run
  too_many_events,  ///< the limit of the run
  no_progress       ///< events follow each other without time going on
};

/// The failure in a few words; "none" without one.
std::string_view describe(OdeFailure failure);

/// What became of one trial.
enum class Stepped { accepted, rejected, at_end, failed };

/// Accuracy and bounds of the steps. The error of one step in component i is held near absolute[i] + relative · |y_i|,
/// root mean square over the components; what the steps add up to is for the problem to say.
template <std::size_t N>
struct StepControl {
  double relative{1e-8};  ///< [1] > 0; held above 1e-15, where rounding begins
  State<N> absolute{};    ///< [unit of y_i] ≥ 0; a component that passes through zero needs one
  double first{};         ///< [s] the first step; 0 has it guessed
  double smallest{};      ///< [s] ≥ 0; 16 roundings of t at least. Only the step that lands on the end may be shorter
  double largest{1e12};   ///< [s] > 0; a load that comes and goes unseen between two steps needs a bound here

  /// The same absolute tolerance for all components.
  static StepControl even(double relative, double absolute) {
    StepControl control;
    control.relative = relative;
    control.absolute.fill(absolute);
    return control;
  }
};

/// The curve through one step,
///   y(s) = y0 + s ((y1 − y0) + (1 − s)(c2 + s (c3 + (1 − s) c4))),  s = (t − t0)/(t1 − t0).
template <std::size_t N>
struct Dense {
  double t0{}, t1{};          ///< [s] both ends, t0 ≤ t1
  State<N> y0{}, y1{};        ///< the states there
  State<N> c2{}, c3{}, c4{};  ///< how the curve bends

  /// The state at `s` [1]; beyond 0 … 1 the polynomial goes on.
  State<N> at_fraction(double s) const {
    const double left = 1 - s;
    State<N> y;
    for (std::size_t i = 0; i < N; ++i)
      y[i] = y0[i] + s * ((y1[i] - y0[i]) + left * (c2[i] + s * (c3[i] + left * c4[i])));
    return y;
  }

  /// The state at time `t` [s], which is held within t0 … t1; exactly y0 and y1 at the ends.
  State<N> at(double t) const {
    if (!(t < t1)) return y1;
    if (!(t > t0)) return y0;
    return at_fraction((t - t0) / (t1 - t0));
  }
};

/// A trial of a step: state and derivative at its end, and the estimate of its error.
template <std::size_t N>
struct Trial {
  State<N> y, f, error;
};

/// log2(x) to 0.01 for normal x > 0: a line between powers of two and a parabola upon it. The rule of the steps needs
/// no more, and so neither waits for the library's functions nor depends on whose they are.
inline double rough_log2(double x) {
  std::uint64_t bits = 0;
  std::memcpy(&bits, &x, sizeof bits);
  const auto exponent = static_cast<double>(static_cast<std::int64_t>(bits >> 52U) - 1023);
  bits = (bits & 0xfffffffffffffU) | 0x3ff0000000000000U;
  double f = 0;
  std::memcpy(&f, &bits, sizeof f);
  f -= 1;
  return exponent + f + 0.34 * f * (1 - f);
}

/// 2^x to 0.4 % for |x| < 1000, in the same way.
inline double rough_exp2(double x) {
  const auto shifted = static_cast<std::int64_t>(x + 1023);  // above zero, where a cast rounds down
  const double f = x + 1023 - static_cast<double>(shifted);
  const std::uint64_t bits = static_cast<std::uint64_t>(shifted) << 52U;
  double power = 0;
  std::memcpy(&power, &bits, sizeof power);
  return power * (1 + f - 0.34 * f * (1 - f));
}

/// Length of steps by a proportional-integral rule: after a step with the error e (1 is what is allowed)
///   h ← h · 0.9 e^(−0.85/k) e_before^(0.2/k), by 0.2 … 10,
/// where the error goes with h^k. It minds the error before, so that lengths settle and do not swing where stability,
/// not accuracy, binds. Source: [gustafsson1991], the constants of [hairer1993] section II.4.
class StepRule {
 public:
  explicit StepRule(int error_power) : k_(error_power) {}

  /// Forgets the step before, as after a jump.
  void forget() {
    before_ = 0;
    was_rejected_ = false;
  }

  /// Factor for the next length after a step with the square of the error `error2` ≤ 1.
  double accepted(double error2) {
    const double error = 0.5 * rough_log2(std::max(error2, 1e-30));
    const double factor = 0.9 * rough_exp2((0.2 * before_ - 0.85 * error) / k_);
    before_ = std::max(error, -13.0);            // an error of 1e-4 counts as the least
    const double most = was_rejected_ ? 1 : 10;  // a length that has just failed is not made longer at once
    was_rejected_ = false;
    return std::clamp(factor, 0.2, most);
  }

  /// Factor for the next trial after one with `error2` > 1; a quarter where it is not finite.
  double rejected(double error2) {
    was_rejected_ = true;
    if (!std::isfinite(error2)) return 0.25;
    return std::clamp(0.9 * rough_exp2(-0.5 * rough_log2(error2) / k_), 0.2, 0.9);
  }

 private:
  double k_;
  double before_{};  // log2 of the error before
  bool was_rejected_{false};
};

}  // namespace holdback::numerics
