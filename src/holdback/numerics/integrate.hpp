// A whole run: steps to an end, through events.
#pragma once

#include "holdback/numerics/events.hpp"
#include "holdback/numerics/ode.hpp"

namespace holdback::numerics {

/// What the caller did in an event.
enum class AfterEvent {
  same,     ///< nothing that f, the guards or the state would feel: the step is kept
  changed,  ///< the state in the event, f or the guards: the step is cut here and the derivative taken anew
  stop      ///< the run ends here
};

/// When a run is given up.
struct RunLimits {
  std::size_t steps{10'000'000};  ///< accepted and rejected
  std::size_t events{1'000'000};
  std::size_t at_one_time{100};  ///< events in a row between which time did not go on by the tolerance
};

/// What became of a run.
struct RunReport {
  double t{};  ///< [s] where it came to; the state there is the stepper's
  std::size_t steps{}, rejected{}, rhs_calls{}, events{};
  bool stopped{};                        ///< by an event, as the caller asked
  OdeFailure failure{OdeFailure::none};  ///< none: the end was reached or the run stopped
};

namespace detail {

/// The bookkeeping of a run.
template <class AnyStepper>
class Run {
 public:
  Run(const AnyStepper& stepper, const RunLimits& limits)
      : stepper_(stepper), limits_(limits), before_(stepper.counts()) {}

  /// Whether a step may follow.
  bool may_step() {
    if (stepper_.counts().steps + stepper_.counts().rejected - before_.steps - before_.rejected < limits_.steps)
      return true;
    report_.failure = OdeFailure::too_many_steps;
    return false;
  }

  /// Counts an event at `t` [s]; whether another may follow.
  bool may_go_on_after(double t, double tolerance) {
    in_a_row_ = report_.events > 0 && t - last_event_ <= tolerance ? in_a_row_ + 1 : 0;
    last_event_ = t;
    ++report_.events;
    if (in_a_row_ >= limits_.at_one_time) report_.failure = OdeFailure::no_progress;
    if (report_.events >= limits_.events) report_.failure = OdeFailure::too_many_events;
    return report_.failure == OdeFailure::none;
  }

  RunReport report(bool stopped) {
    report_.t = stepper_.t();
    report_.steps = stepper_.counts().steps - before_.steps;
    report_.rejected = stepper_.counts().rejected - before_.rejected;
    report_.rhs_calls = stepper_.counts().rhs_calls - before_.rhs_calls;
    report_.stopped = stopped;
    if (report_.failure == OdeFailure::none) report_.failure = stepper_.failure();
    return report_;
  }

 private:
  const AnyStepper& stepper_;
  RunLimits limits_;
  OdeCounts before_;
  RunReport report_{};
  double last_event_{};
  std::size_t in_a_row_{};
};

}  // namespace detail

/// Steps a stepper that was started to `end` [s]. `on_stretch(dense, from, to)` sees the solution piece by piece: the
/// curve `dense` holds for the times from … to [s].
template <class AnyStepper, class OnStretch>
RunReport integrate(AnyStepper& stepper, double end, OnStretch on_stretch, const RunLimits& limits = {}) {
  detail::Run run(stepper, limits);
  stepper.set_end(end);
  while (run.may_step()) {
    const Stepped made = stepper.try_step();
    if (made == Stepped::at_end || made == Stepped::failed) break;
    if (made == Stepped::accepted) on_stretch(stepper.dense(), stepper.t0(), stepper.t());
  }
  return run.report(false);
}

/// The same through the events of `finder`, which is armed at the start. `on_event(event)` gets an Event<N, K>&, after
/// the stretch before it was told, and returns AfterEvent. After `changed` and `stop` the stepper stands at the event
/// with the state in it. An event at the end is told before the run returns.
template <class AnyStepper, class Finder, class OnEvent, class OnStretch>
RunReport integrate(AnyStepper& stepper, Finder& finder, double end, OnEvent on_event, OnStretch on_stretch,
                    const RunLimits& limits = {}) {
  detail::Run run(stepper, limits);
  stepper.set_end(end);
  finder.arm(stepper.t(), stepper.state());
  while (run.may_step()) {
    const Stepped made = stepper.try_step();
    if (made == Stepped::at_end || made == Stepped::failed) break;
    if (made == Stepped::rejected) continue;
    const auto dense = stepper.dense();
    const bool ends = !(stepper.t() < stepper.end());
    double from = dense.t0;
    AfterEvent answer = AfterEvent::same;
    while (auto event = finder.find(dense, ends)) {
      on_stretch(dense, from, event->t);
      from = event->t;
      answer = on_event(*event);
      const bool may_go_on = run.may_go_on_after(event->t, finder.tolerance_at(event->t));
      if (answer != AfterEvent::same || !may_go_on) {
        stepper.restart(event->t, event->y);
        if (answer == AfterEvent::stop || !may_go_on) return run.report(answer == AfterEvent::stop);
        finder.arm(event->t, event->y);
        break;
      }
    }
    if (answer == AfterEvent::same) on_stretch(dense, from, dense.t1);
  }
  return run.report(false);
}

}  // namespace holdback::numerics
