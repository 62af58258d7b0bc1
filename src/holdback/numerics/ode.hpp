// Steps through dy/dt = f(t, y) with an error that is kept, one accepted interval after the other.
//
//   auto stepper = explicit_stepper<2>([](double, const State<2>& y) { return State<2>{y[1], -y[0]}; },
//                                      StepControl<2>::even(1e-9, 1e-12));
//   stepper.start(0, {1, 0}, 10);
//   while (stepper.step() == Stepped::accepted) use(stepper.dense());  // the curve over the step
//
// What happens between steps, a jump of the state or another f, is the caller's: change it, then `restart`. Where f has
// a kink or a jump at a known time, set the end there; where it depends on the state, use a guard (events.hpp).
#pragma once

#include <utility>

#include "holdback/numerics/dormand_prince.hpp"
#include "holdback/numerics/ode_step.hpp"
#include "holdback/numerics/rodas.hpp"

namespace holdback::numerics {

/// What a stepper has done since it was made.
struct OdeCounts {
  std::size_t steps{};      ///< accepted
  std::size_t rejected{};   ///< trials that were not accepted
  std::size_t rhs_calls{};  ///< evaluations of f
};

/// Goes forward in time. `Rhs` is called as rhs(t, y) and returns State<N>; it is copied in, so what changes between
/// steps lies behind a reference in it or is reached by `rhs()`. It is asked for trials that come to nothing, too, so
/// it must not remember. `Method` is DormandPrince<N> or Rodas<N, Jacobian>.
///
/// Rules: after `accepted`, t0() … t() is the interval and dense() the curve over it; they are void after `rejected`.
/// t() never passes the end and meets it to the last bit. A failure stays until start or restart. Nothing throws unless
/// `rhs` does. Same input, same bits.
template <std::size_t N, class Rhs, class Method>
class Stepper {
 public:
  Stepper(Rhs f, const StepControl<N>& control, Method method = Method{})
      : rhs_(std::move(f)), method_(std::move(method)), control_(control), rule_(Method::error_power) {
    control_.relative = std::max(1e-15, control_.relative);
    for (double& absolute : control_.absolute) absolute = std::max(1e-300, absolute);
    control_.largest = std::max(control_.largest, control_.smallest);
  }

  /// Begins at time `t` [s] with the state `y`; the length of the first step is found anew. See set_end for `end` [s].
  void start(double t, const State<N>& y, double end) {
    length_ = control_.first > 0 ? control_.first : 0;
    restart(t, y);
    set_end(end);
  }

  /// Goes on from `t` [s] and `y` after a jump of the state or a change of f: one evaluation of f. The length of the
  /// steps is kept; where it is too long now, trials are rejected until it fits.
  void restart(double t, const State<N>& y) {
    t0_ = t_ = t;
    y0_ = y_ = y;
    f0_ = f_ = call()(t, y);
    rule_.forget();
    method_.forget();
    failure_ = std::isfinite(t) && all_finite(y) && all_finite(f_) ? OdeFailure::none : OdeFailure::not_finite;
  }

  /// Goes on from where it is after a change of f that the caller can tell in full: `f` is the derivative there now.
  void restart_with(const State<N>& f) {
    t0_ = t_;
    y0_ = y_;
    f0_ = f_ = f;
    rule_.forget();
    method_.forget();
    if (!all_finite(f)) failure_ = OdeFailure::not_finite;
  }

  /// Steps end at `end` [s] exactly, the last two of about the same length. An end that is not a number or lies before
  /// t() is t(), infinity 1e300.
  void set_end(double end) { end_ = end > t_ ? std::min(end, 1e300) : t_; }

  /// One trial.
  Stepped try_step() {
    if (failure_ != OdeFailure::none) return Stepped::failed;
    if (!(t_ < end_)) return Stepped::at_end;
    if (!(length_ > 0)) length_ = guessed_length();
    const double left = end_ - t_;
    const double shortest = std::max({control_.smallest, 16 * rounding * std::abs(t_), 1e-100});
    const double whole = std::max(std::min(length_, control_.largest), shortest);
    const bool lands = whole * (1 + 1e-9) >= left;
    const double h = lands ? left : (2 * whole > left ? left / 2 : whole);
    const double t1 = lands ? end_ : std::min(t_ + h, end_);

    const Trial<N> trial = method_.attempt(call(), t_, t1, h, y_, f_);
    const double error2 = error_squared(trial);
    if (!(error2 <= 1)) return reject(error2, h, shortest);
    accept(trial, t1, h * rule_.accepted(error2), h < whole);
    return Stepped::accepted;
  }

  /// Trials until one is accepted, the end is reached or there is a failure.
  Stepped step() {
    Stepped made = try_step();
    while (made == Stepped::rejected) made = try_step();
    return made;
  }

  double t0() const { return t0_; }                    ///< [s] where the last step began
  double t() const { return t_; }                      ///< [s] where it ended
  double end() const { return end_; }                  ///< [s] where steps end
  const State<N>& before() const { return y0_; }       ///< the state at t0()
  const State<N>& state() const { return y_; }         ///< the state at t()
  const State<N>& derivative() const { return f_; }    ///< f there
  double length() const { return length_; }            ///< [s] proposed for the next step; 0 before the first
  OdeFailure failure() const { return failure_; }      ///< none while all is well
  const OdeCounts& counts() const { return counts_; }  ///< since the stepper was made
  Rhs& rhs() { return rhs_; }                          ///< f; restart after a change

  /// The curve over the last accepted step; a point before the first.
  Dense<N> dense() const {
    if (!(t0_ < t_)) return {t_, t_, y_, y_, {}, {}, {}};
    return method_.dense(t0_, y0_, f0_, t_, y_, f_);
  }

  /// The state at `t` [s] within the last accepted step; outside, that of the nearer end. For several times take
  /// dense().
  State<N> at(double t) const { return dense().at(t); }

 private:
  static constexpr double rounding = std::numeric_limits<double>::epsilon();

  auto call() {
    return [this](double t, const State<N>& y) -> State<N> {
      ++counts_.rhs_calls;
      return rhs_(t, y);
    };
  }

  // Mean square over the components of error over what is allowed; infinite where anything is not finite.
  double error_squared(const Trial<N>& trial) const {
    if (!all_finite(trial.y) || !all_finite(trial.f)) return std::numeric_limits<double>::infinity();
    double sum = 0;
    for (std::size_t i = 0; i < N; ++i) {
      const double size = std::max(std::abs(y_[i]), std::abs(trial.y[i]));
      const double ratio = trial.error[i] / (control_.absolute[i] + control_.relative * size);
      sum += ratio * ratio;
    }
    return sum / static_cast<double>(N);
  }

  Stepped reject(double error2, double h, double shortest) {
    ++counts_.rejected;
    const bool finite = std::isfinite(error2);
    length_ = std::max(h * rule_.rejected(error2), shortest);
    if (h > shortest) return Stepped::rejected;
    failure_ = finite ? OdeFailure::step_too_small : OdeFailure::not_finite;
    return Stepped::failed;
  }

  // A step that the end cut short says nothing against the length that was meant.
  void accept(const Trial<N>& trial, double t1, double proposed, bool was_cut) {
    ++counts_.steps;
    length_ = was_cut ? std::max(proposed, length_) : proposed;
    t0_ = t_;
    t_ = t1;
    y0_ = y_;
    f0_ = f_;
    y_ = trial.y;
    f_ = trial.f;
    method_.forget();
  }

  // Root mean square of a over what is allowed at the state.
  double size_of(const State<N>& a) const {
    double sum = 0;
    for (std::size_t i = 0; i < N; ++i) {
      const double ratio = a[i] / (control_.absolute[i] + control_.relative * std::abs(y_[i]));
      sum += ratio * ratio;
    }
    return std::sqrt(sum / static_cast<double>(N));
  }

  // As long as y changes like A e^(rt): A r = |y'|, r = |y''|/|y'|, the last by a small Euler step, a step makes an
  // error like A (rh)^k. After [hairer1993] section II.4, but the same in any unit of time.
  double guessed_length() {
    const double d0 = size_of(y_);
    const double d1 = size_of(f_);
    const double plain = d0 < 1e-5 || d1 < 1e-5 ? 1e-6 : 0.01 * d0 / d1;
    const double h0 = std::min({plain, control_.largest, end_ - t_});
    State<N> euler;
    for (std::size_t i = 0; i < N; ++i) euler[i] = y_[i] + h0 * f_[i];
    State<N> change = call()(t_ + h0, euler);
    for (std::size_t i = 0; i < N; ++i) change[i] -= f_[i];
    const double d2 = size_of(change) / h0;
    const double rate = d2 / std::max(d1, d2 * h0);
    const double h1 = std::pow(0.01 * d2 / (d1 * d1), 1.0 / Method::error_power) / rate;
    return h1 > 0 && h1 < 100 * h0 ? h1 : 100 * h0;
  }

  Rhs rhs_;
  Method method_;
  StepControl<N> control_;
  StepRule rule_;
  double t0_{}, t_{}, end_{}, length_{};
  State<N> y0_{}, f0_{}, y_{}, f_{};
  OdeFailure failure_{OdeFailure::none};
  OdeCounts counts_{};
};

/// A stepper for problems that are not stiff.
template <std::size_t N, class Rhs>
auto explicit_stepper(Rhs rhs, const StepControl<N>& control) {
  return Stepper<N, Rhs, DormandPrince<N>>(std::move(rhs), control);
}

/// A stepper for stiff problems, with the Jacobian by differences.
template <std::size_t N, class Rhs>
auto stiff_stepper(Rhs rhs, const StepControl<N>& control) {
  return Stepper<N, Rhs, Rodas<N>>(std::move(rhs), control);
}

/// A stepper for stiff problems; `jacobian(t, y)` returns a Slopes<N> (rodas.hpp).
template <std::size_t N, class Rhs, class Jacobian>
auto stiff_stepper(Rhs rhs, const StepControl<N>& control, Jacobian jacobian) {
  using Method = Rodas<N, Jacobian>;
  return Stepper<N, Rhs, Method>(std::move(rhs), control, Method(std::move(jacobian)));
}

}  // namespace holdback::numerics
