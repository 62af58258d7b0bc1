// Where something happens inside a step: scalar guards g_k(t, y) that change their sign.
//
// The rules, for each guard by itself:
//  1. A guard knows the side of zero it is on. At the start, and after a jump, one within `leaves` of zero is on no
//  side
//     yet; it is armed once it is seen farther away. So what rests on zero, or has just been set there, makes no event.
//  2. An armed guard makes an event where it is seen on the other side and its direction is asked for. Zero itself
//     belongs to no side: a guard that comes to zero and turns back makes none.
//  3. It is looked at in `samples` even places inside the stretch and at its end; after a start or jump also close to
//  the
//     beginning, until it is armed, so that a short leap is not taken for a fall; and in the lowest place of a dip that
//     a parabola through three samples brings near zero.
//  4. The time is found on the curve of the step to `time_tolerance`, and is that of the far side: the guard has
//  changed
//     its sign there. Events no farther apart than the tolerance are one, told in the order of the guards.
//  5. A change that would come within the tolerance after the end of the run is an event at the end.
//
// Still missed: two changes between neighbouring samples that no three samples hint at, such as a guard that swings
// several times within a step (bound the step: StepControl::largest); what a guard does within `leaves` of zero before
// it is armed, and a leap that is over within four tolerances of time: so whoever bounces must come to rest by a rule
// of his own. A guard that is not a number counts as on no side and makes no event. The time is as true as the curve:
// its error is that of the order-4 curve, a few times the tolerance of the steps.
#pragma once

#include <optional>
#include <utility>

#include "holdback/numerics/ode_step.hpp"

namespace holdback::numerics {

/// Which change of sign makes an event.
enum class Crossing { rising, falling, either, off };

/// How one guard is watched.
struct Guard {
  Crossing crossing{Crossing::either};
  double leaves{1e-9};  ///< [unit of the guard] ≥ 0; farther from zero it is armed
};

/// How closely is looked.
struct EventControl {
  double time_tolerance{1e-12};  ///< [s] > 0; held above four roundings of t
  int samples{3};                ///< inside each stretch, held within 0 … 7
};

/// One or more guards that changed their sign at the same time.
template <std::size_t N, std::size_t K>
struct Event {
  double t{};                    ///< [s]
  State<N> y{};                  ///< the state there, which a caller may change
  std::array<int, K> crossed{};  ///< by guard: 1 it rose, −1 it fell, 0 nothing
};

/// Where `f` has changed its sign between `a` < `b`, known to be `fa` and `fb` there, of opposite signs: a place on the
/// side of b (or f is zero there) no farther than `tolerance` > 0 from the change. `a` itself when fa is zero. Regula
/// falsi with the Illinois rule; a step of bisection whenever four steps did not halve the bracket; no more than 300
/// evaluations, which are enough for any f whose bracket is up to 2^75 tolerances wide. Source: [dowell1971].
template <class F>
double locate_change(const F& f, double a, double fa, double b, double fb, double tolerance) {
  if (fa == 0) return a;
  const bool rises = fb > 0;
  double width = b - a;  // at the last count
  int side = 0;
  for (int i = 1; i <= 300 && b - a > tolerance; ++i) {
    double c = b - fb * ((b - a) / (fb - fa));
    c = std::clamp(c, a + 0.5 * tolerance, b - 0.5 * tolerance);  // so that the far end comes in too
    const bool slow = i % 4 == 0 && b - a > 0.5 * width;
    if (slow || !(c > a && c < b)) c = a + 0.5 * (b - a);
    if (i % 4 == 0) width = slow ? 0.5 * (b - a) : b - a;
    if (!(c > a && c < b)) break;
    const double fc = f(c);
    if (fc == 0) return c;
    if ((fc > 0) == rises) {
      b = c;
      fb = fc;
      if (side > 0) fa *= 0.5;
      side = 1;
    } else {
      a = c;
      fa = fc;
      if (side < 0) fb *= 0.5;
      side = -1;
    }
  }
  return b;
}

/// Watches K guards over the curves of steps. `Functions` is called as functions(t, y) and returns std::array<double,
/// K>.
///
/// Rules: arm before the first step and after every jump; then find for each accepted step until it finds no more.
/// After an event the search goes on behind it, on the same curve, unless armed anew.
template <std::size_t N, std::size_t K, class Functions>
class EventFinder {
 public:
  using Values = std::array<double, K>;

  EventFinder(Functions g, const std::array<Guard, K>& guards, const EventControl& control)
      : functions_(std::move(g)), guards_(guards), control_(control) {}

  /// Begins at `t` [s] with the state `y`: sides are forgotten and taken anew.
  void arm(double t, const State<N>& y) {
    from_ = t;
    values_ = functions_(t, y);
    has_just_fired_ = {};
    for (std::size_t k = 0; k < K; ++k) arm_one(k);
    is_fresh_ = true;
  }

  /// Watches guard `k` < K differently from here on; its side is taken anew.
  void watch(std::size_t k, const Guard& guard) {
    guards_[k] = guard;
    arm_one(k);
    is_fresh_ = true;
  }

  /// The first event of the step behind the last one found. `run_ends`: nothing follows t1, see rule 5.
  std::optional<Event<N, K>> find(const Dense<N>& step, bool run_ends) {
    Samples samples = sampled(step);
    add_dips(samples, step);
    for (std::size_t j = 1; j < samples.count; ++j) {
      if (auto event = first_between(samples, j, step)) return event;
      take(samples.t[j], samples.values[j]);
    }
    is_fresh_ = false;
    if (run_ends) return just_after(step);
    return std::nullopt;
  }

  /// What is held for the same time near `t` [s].
  double tolerance_at(double t) const {
    return std::max(control_.time_tolerance, 4 * std::numeric_limits<double>::epsilon() * std::abs(t));
  }

  const Values& values() const { return values_; }  ///< of the guards, where the search has come to
  Functions& functions() { return functions_; }     ///< arm after a change

 private:
  static constexpr std::size_t most_samples = 32;
  struct Samples {
    std::array<double, most_samples> t;
    std::array<Values, most_samples> values;
    std::size_t count;
  };

  static int sign(double value) { return value > 0 ? 1 : (value < 0 ? -1 : 0); }

  void arm_one(std::size_t k) {
    const bool away = std::abs(values_[k]) > guards_[k].leaves;
    sides_[k] = guards_[k].crossing != Crossing::off && away ? sign(values_[k]) : 0;
  }

  bool is_asked(std::size_t k, int new_side) const {
    const Crossing asked = guards_[k].crossing;
    return asked == Crossing::either || asked == (new_side > 0 ? Crossing::rising : Crossing::falling);
  }

  bool crosses(std::size_t k, double value) const { return sides_[k] * sign(value) < 0 && is_asked(k, -sides_[k]); }

  // The search has come to t: sides as seen there.
  void take(double t, const Values& values) {
    from_ = t;
    values_ = values;
    has_just_fired_ = {};
    for (std::size_t k = 0; k < K; ++k) {
      if (sides_[k] == 0)
        arm_one(k);
      else if (sign(values[k]) != 0)
        sides_[k] = sign(values[k]);
    }
  }

  using Waiting = std::array<bool, K>;

  // Whether a guard still waits to be armed after these values; those that need no longer are struck off.
  bool is_waiting(Waiting& waiting, const Values& values) const {
    bool any = false;
    for (std::size_t k = 0; k < K; ++k) {
      waiting[k] = waiting[k] && std::abs(values[k]) <= guards_[k].leaves;
      any = any || waiting[k];
    }
    return any;
  }

  Samples sampled(const Dense<N>& step) const {
    Samples samples;
    const double from = std::max(from_, step.t0);
    const int parts = std::clamp(control_.samples, 0, 7) + 1;
    const double width = (step.t1 - from) / parts;
    samples.t[0] = from;
    samples.values[0] = values_;
    samples.count = 1;
    if (!(width > 0)) return samples;
    const auto add = [&](double t) {
      samples.t[samples.count] = t;
      samples.values[samples.count] = functions_(t, step.at(t));
      ++samples.count;
    };
    if (is_fresh_) {
      Waiting waiting{};
      for (std::size_t k = 0; k < K; ++k) waiting[k] = sides_[k] == 0 && guards_[k].crossing != Crossing::off;
      double offset = 4 * tolerance_at(from);
      for (int i = 0; i < 12 && offset < width && is_waiting(waiting, samples.values[samples.count - 1]); ++i) {
        add(from + offset);
        offset *= 16;
      }
    }
    for (int part = 1; part < parts; ++part) add(from + part * width);
    add(step.t1);
    return samples;
  }

  // Rule 3: lowest places of dips, put in between.
  void add_dips(Samples& samples, const Dense<N>& step) const {
    std::array<double, K> found{};
    std::size_t many = 0;
    for (std::size_t j = 1; j + 1 < samples.count; ++j) {
      const double before = samples.t[j] - samples.t[j - 1];
      const double after = samples.t[j + 1] - samples.t[j];
      const double per_before = 1 / before;
      const double per_after = 1 / after;
      const double per_both = 1 / (before + after);
      for (std::size_t k = 0; k < K && many < K; ++k) {
        const double a = samples.values[j - 1][k];
        const double b = samples.values[j][k];
        const double c = samples.values[j + 1][k];
        if (!(a * b > 0 && b * c > 0)) continue;
        const double rise = (b - a) * per_before;
        const double bend = ((c - b) * per_after - rise) * per_both;
        const double slope_a = rise - bend * before;
        const double slope_c = slope_a + 2 * bend * (before + after);
        if (!(b * bend > 0 && slope_a * slope_c < 0)) continue;
        const double lowest = a - slope_a * slope_a / (4 * bend);
        const double nearest = std::min({std::abs(a), std::abs(b), std::abs(c)});
        if (b * lowest > 0 && std::abs(lowest) > 0.5 * nearest) continue;
        found[many++] = samples.t[j - 1] - slope_a / (2 * bend);
      }
    }
    for (std::size_t i = 0; i < many; ++i) insert(samples, step, found[i]);
  }

  void insert(Samples& samples, const Dense<N>& step, double t) const {
    if (samples.count == most_samples) return;
    std::size_t at = 1;
    while (at < samples.count && samples.t[at] <= t) ++at;
    if (at == samples.count || !(samples.t[at - 1] < t)) return;
    for (std::size_t j = samples.count; j > at; --j) {
      samples.t[j] = samples.t[j - 1];
      samples.values[j] = samples.values[j - 1];
    }
    samples.t[at] = t;
    samples.values[at] = functions_(t, step.at(t));
    ++samples.count;
  }

  // The first event between samples j − 1 and j; the search has come to j − 1.
  std::optional<Event<N, K>> first_between(const Samples& samples, std::size_t j, const Dense<N>& step) {
    std::array<double, K> times;
    times.fill(std::numeric_limits<double>::infinity());
    double first = std::numeric_limits<double>::infinity();
    const double tolerance = tolerance_at(samples.t[j]);
    for (std::size_t k = 0; k < K; ++k) {
      if (!crosses(k, samples.values[j][k])) continue;
      const auto guard = [&](double t) { return functions_(t, step.at(t))[k]; };
      double from = samples.t[j - 1];
      double value = samples.values[j - 1][k];
      if (has_just_fired_[k] && !(sides_[k] * value > 0)) {  // the zero of the event before is not the next one
        from = std::min(from + 2 * tolerance, samples.t[j]);
        value = guard(from);
      }
      const bool at_once = !(sides_[k] * value > 0);
      times[k] = at_once ? from : locate_change(guard, from, value, samples.t[j], samples.values[j][k], tolerance);
      first = std::min(first, times[k]);
    }
    if (!std::isfinite(first)) return std::nullopt;
    std::array<bool, K> together{};
    double last = first;
    for (std::size_t k = 0; k < K; ++k) {
      together[k] = times[k] <= first + tolerance;
      if (together[k]) last = std::max(last, times[k]);
    }
    return made(last, step.at(last), together);
  }

  std::optional<Event<N, K>> just_after(const Dense<N>& step) {
    const double width = step.t1 - step.t0;
    if (!(width > 0)) return std::nullopt;
    const double tolerance = tolerance_at(step.t1);
    const Values later = functions_(step.t1 + tolerance, step.at_fraction(1 + tolerance / width));
    std::array<bool, K> together{};
    bool any = false;
    for (std::size_t k = 0; k < K; ++k) {
      together[k] = crosses(k, later[k]);
      any = any || together[k];
    }
    if (!any) return std::nullopt;
    return made(step.t1, step.y1, together);
  }

  // The guards that fired stand on their new side, whatever rounding says of their value.
  Event<N, K> made(double t, const State<N>& y, const std::array<bool, K>& fired) {
    Event<N, K> event{t, y, {}};
    const std::array<int, K> before = sides_;
    take(t, functions_(t, y));
    for (std::size_t k = 0; k < K; ++k) {
      if (!fired[k]) continue;
      event.crossed[k] = -before[k];
      sides_[k] = -before[k];
      has_just_fired_[k] = true;
    }
    return event;
  }

  Functions functions_;
  std::array<Guard, K> guards_;
  EventControl control_;
  double from_{};
  Values values_{};
  std::array<int, K> sides_{};  // 1 above zero, −1 below, 0 not armed
  std::array<bool, K> has_just_fired_{};
  bool is_fresh_{true};  // no step was searched to its end since arm
};

/// A finder for `functions` of N states; K follows from the guards.
template <std::size_t N, std::size_t K, class Functions>
EventFinder<N, K, Functions> event_finder(Functions functions, const std::array<Guard, K>& guards,
                                          const EventControl& control = {}) {
  return {std::move(functions), guards, control};
}

}  // namespace holdback::numerics
