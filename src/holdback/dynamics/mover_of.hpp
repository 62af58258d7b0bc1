// The mover of one layout and one method. Included where it is made (mover_small.cpp, mover_chain.cpp), and by
// benchmarks that step the same equations otherwise.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <type_traits>

#include "holdback/dynamics/mover.hpp"
#include "holdback/numerics/integrate.hpp"

namespace holdback::dynamics {

/// dy/dt of a stand under a drive.
template <class L>
struct Rate {
  const Plant* plant{};
  Fixed fixed{};
  Drive drive{};
  Motion motion{};
  auto operator()(double t, const numerics::State<L::size>& y) const {
    return derivative<L, double>(*plant, fixed, drive, motion, t, y, drive.set_pressure);
  }
};

/// The same behind a reference, for a stepper that keeps a copy.
template <class L>
struct RateAt {
  const Rate<L>* rate{};
  auto operator()(double t, const numerics::State<L::size>& y) const { return (*rate)(t, y); }
};

/// ∂f/∂y of it, exact, column by column. Time comes in by the line's speed alone, on which f depends in proportion, so
/// that a difference gives ∂f/∂t to the last digits.
template <class L>
struct RateSlopes {
  const Rate<L>* rate{};
  /// A path shorter than its layout leaves states at rest.
  bool is_used(std::size_t j) const {
    const std::size_t count = rate->plant->path.spans.size();
    if (j >= first_web && j < L::first_idler) return j < first_web + count;
    return j < L::first_idler || j >= L::dancer_place || j + 1 < L::first_idler + count;
  }

  numerics::Slopes<L::size> operator()(double t, const numerics::State<L::size>& y) const {
    using Dual = numerics::Dual;
    numerics::Slopes<L::size> slopes;
    typename L::template State<Dual> at;
    for (std::size_t i = 0; i < L::size; ++i) at[i] = Dual(y[i]);
    for (std::size_t j = 0; j < L::size; ++j) {
      if (!is_used(j)) continue;
      at[j].slope = 1;
      const auto column = derivative<L, Dual>(*rate->plant, rate->fixed, rate->drive, rate->motion, t, at,
                                              Dual(rate->drive.set_pressure));
      for (std::size_t i = 0; i < L::size; ++i) slopes.by_state[i][j] = column[i].slope;
      at[j].slope = 0;
    }
    if (rate->drive.acceleration != 0) {
      const double h = 1e-3;
      const auto before = (*rate)(t, y);
      const auto after = (*rate)(t + h, y);
      for (std::size_t i = 0; i < L::size; ++i) slopes.by_time[i] = (after[i] - before[i]) / h;
    }
    return slopes;
  }
};

/// What may happen between steps.
template <class L>
struct Guards {
  static constexpr std::size_t count = L::has_dancer ? 5 : 3;
  static constexpr double leaves = 1e-9;              // [rad/s], [m] from rest and stop where a guard is on no side
  static constexpr double dancer_push_leaves = 1e-6;  // [N]

  /// The roll stops; the pull breaks the brake loose; the first span comes taut or goes slack, where its law has a
  /// corner; the dancer meets a stop; the push takes it off again.
  static std::array<double, count> values(const Rate<L>& rate, double t, const numerics::State<L::size>& y) {
    const Plant& plant = *rate.plant;
    const auto rim = surface(plant.roll, y[radius], y[angle]);
    const auto web = web_of<L, double>(plant, rate.fixed, rate.drive, rate.motion, rate.drive.speed_at(t), y, rim);
    const double pull = pull_on_roll(plant.roll, y[radius], y[angle], rim.h, web.tension[0]);
    std::array<double, count> value{};
    value[0] = y[speed];
    value[1] = std::abs(pull) - static_torque(plant.brake, y[pressure], rate.drive.brake_share);
    value[2] = 1 - y[first_web] / web.length[0];
    if constexpr (L::has_dancer) {
      const DancerPlant& dancer = *plant.path.dancer;
      value[3] = dancer.reach - std::abs(y[L::dancer_place]);
      value[4] = dancer_push<L, double>(dancer, rate.drive, y[L::dancer_place], web.tension[dancer.span]);
    }
    return value;
  }

  static std::array<numerics::Guard, count> watched(const Rate<L>& rate) {
    using numerics::Crossing;
    using numerics::Guard;
    const Motion& motion = rate.motion;
    std::array<Guard, count> guards{};
    const Crossing to_rest = motion.roll == Motion::Roll::forward    ? Crossing::falling
                             : motion.roll == Motion::Roll::backward ? Crossing::rising
                                                                     : Crossing::off;
    guards[0] = {to_rest, leaves};
    guards[1] = {motion.roll == Motion::Roll::held ? Crossing::rising : Crossing::off, 1e-9};
    guards[2] = {rate.drive.broken ? Crossing::off : Crossing::either, 1e-12};
    if constexpr (L::has_dancer) {
      const bool free = motion.dancer == Motion::Dancer::free;
      guards[3] = {free ? Crossing::falling : Crossing::off, leaves};
      guards[4] = {free                                            ? Crossing::off
                   : motion.dancer == Motion::Dancer::at_high_stop ? Crossing::falling
                                                                   : Crossing::rising,
                   dancer_push_leaves};
    }
    return guards;
  }
};

template <class L, class Method>
class MoverOf : public Mover {
 public:
  static constexpr std::size_t size = L::size;
  using State = numerics::State<size>;

  MoverOf(const Plant& plant, const Start& start, const MoverOptions& options)
      : plant_(plant),
        rate_{&plant_, fixed_of(plant_), {}, {}},
        stepper_({&rate_}, control_of(options.relative), method_for(rate_)) {
    const State y = steady_state<L>(plant_, start.line_speed, start.tension, start.radius, start.brake_share);
    Drive drive;
    drive.line_speed = start.line_speed;
    drive.brake_share = start.brake_share;
    drive.set_pressure = y[pressure];
    if constexpr (L::has_dancer) drive.dancer_force = plant_.path.dancer->strands * start.tension;
    rate_.drive = drive;
    rate_.motion.roll = y[speed] > 0 ? Motion::Roll::forward : resting(y);
    stepper_.start(0, y, 0);
    look();
  }

  bool advance(const Drive& drive, double to) override {
    if (only_pressure_changes(drive)) {
      State f = stepper_.derivative();
      f[pressure] = (drive.set_pressure - stepper_.state()[pressure]) * rate_.fixed.per_lag;
      rate_.drive = drive;
      stepper_.restart_with(f);
    } else {
      take(drive);
    }
    stepper_.set_end(to);
    sight_.lowest_tension = sight_.highest_tension = sight_.tension;
    const bool went = advance_quietly(to);
    look();
    sight_.lowest_tension = std::min(sight_.lowest_tension, sight_.tension);
    sight_.highest_tension = std::max(sight_.highest_tension, sight_.tension);
    return went;
  }

  const Sight& sight() const override { return sight_; }
  double stored() const override { return stored_energy<L>(plant_, rate_.drive, stepper_.state()); }
  std::size_t steps() const override { return stepper_.counts().steps; }
  double stick_events() const override { return sticks_; }
  double dancer_hits() const override { return hits_; }

  void change_roll(double new_radius, double surface_speed) override {
    State y = stepper_.state();
    y[radius] = new_radius;
    y[angle] = 0;
    y[speed] = surface_speed / new_radius;
    rate_.motion.roll = y[speed] > 0 ? Motion::Roll::forward : resting(y);
    stepper_.restart(stepper_.t(), y);
    look();
  }

  std::string fault() const override {
    static constexpr const char* names[] = {"roll speed",     "roll angle", "roll radius",
                                            "brake pressure", "slip work",  "pull work"};
    const auto f = stepper_.derivative();
    // The works, which follow from all others, are named last.
    for (std::size_t k = 0; k < size; ++k) {
      const std::size_t i = k < slip_work ? k : k + 2 < size ? k + 2 : k + 2 - size + slip_work;
      if (std::isfinite(stepper_.state()[i]) && std::isfinite(f[i])) continue;
      const std::string name = i < first_web ? names[i] : i < L::first_idler ? "web in a span" : "idler or dancer";
      return name + " is no longer a number";
    }
    const auto failure = stepper_.failure();
    return std::string(numerics::describe(
        gave_up_ && failure == numerics::OdeFailure::none ? numerics::OdeFailure::too_many_steps : failure));
  }

  const State& state() const { return stepper_.state(); }

 private:
  using Stepper = numerics::Stepper<size, RateAt<L>, Method>;

  /// For one drive; a plant that needs more than that is none.
  static constexpr std::size_t most_steps = 200'000;

  static Method method_for(const Rate<L>& rate) {
    if constexpr (std::is_constructible_v<Method, RateSlopes<L>>)
      return Method(RateSlopes<L>{&rate});
    else
      return Method{};
  }

  static numerics::StepControl<size> control_of(double relative) {
    numerics::StepControl<size> control;
    control.relative = relative;
    control.absolute.fill(1e-3 * relative);
    control.absolute[pressure] = 1e3 * relative;
    control.absolute[angle] = relative;
    control.absolute[slip_work] = control.absolute[pull_work] = 1e5 * relative;
    for (std::size_t i = first_web; i < L::first_idler; ++i) control.absolute[i] = 1e-4 * relative;
    control.largest = 1;
    return control;
  }

  /// Whether a drive does the same as the one before but for the pressure, on a roll that turns: then all other rates
  /// are as they were, and a step costs one evaluation less.
  bool only_pressure_changes(const Drive& drive) const {
    const Drive& old = rate_.drive;
    return stepper_.failure() == numerics::OdeFailure::none && rate_.motion.roll == Motion::Roll::forward &&
           rate_.motion.dancer == Motion::Dancer::free && plant_.air.lag > 0 && stepper_.t0() < stepper_.t() &&
           drive.acceleration == old.acceleration && (drive.acceleration != 0 || drive.line_speed == old.line_speed) &&
           drive.brake_share == old.brake_share && drive.dancer_force == old.dancer_force &&
           drive.broken == old.broken && (drive.acceleration == 0 || drive.begin == old.begin) &&
           !is_about_to_rest(stepper_.state()) && !is_about_to_hit(stepper_.state());
  }

  void take(const Drive& drive) {
    State y = stepper_.state();
    if (drive.broken && !rate_.drive.broken) {
      // What was stretched snaps back and is lost; from now on the first span counts what falls on the floor.
      const double before = stored();
      rate_.drive.broken = true;
      y[first_web] = plant_.path.spans[0];
      y[pull_work] += stored_energy<L>(plant_, rate_.drive, y) - before;
    }
    if (plant_.air.lag <= 0) y[pressure] = drive.set_pressure;
    rate_.drive = drive;
    // A guard that starts this near to its event would not see it.
    if (is_about_to_rest(y)) come_to_rest(y);
    if (is_about_to_hit(y)) hit_stop(y);
    settle_motion(y);
    stepper_.restart(stepper_.t(), y);
  }

  WebView<L, double> web_in(const State& y, const Surface<double>& rim) const {
    return web_of<L, double>(plant_, rate_.fixed, rate_.drive, rate_.motion, rate_.drive.speed_at(stepper_.t()), y,
                             rim);
  }

  double tension_in(const State& y) const {
    const auto rim = surface(plant_.roll, y[radius], y[angle]);
    return web_in(y, rim).tension[0];
  }

  // At rest the brake holds while what pulls is not more than its static torque.
  Motion::Roll resting(const State& y) const {
    const auto rim = surface(plant_.roll, y[radius], y[angle]);
    const double pull = pull_on_roll(plant_.roll, y[radius], y[angle], rim.h, tension_in(y));
    if (std::abs(pull) <= static_torque(plant_.brake, y[pressure], rate_.drive.brake_share)) return Motion::Roll::held;
    return pull > 0 ? Motion::Roll::forward : Motion::Roll::backward;
  }

  // What a new drive makes of a roll at rest and of a dancer at its stop.
  void settle_motion(const State& y) {
    Rate<L>& rate = rate_;
    if (y[speed] == 0) {
      const Motion::Roll now = resting(y);
      if (now != rate.motion.roll && now != Motion::Roll::held) ++sticks_;
      rate.motion.roll = now;
    }
    if constexpr (L::has_dancer) {
      const double push = Guards<L>::values(rate, stepper_.t(), y)[4];
      if ((rate.motion.dancer == Motion::Dancer::at_high_stop && push < 0) ||
          (rate.motion.dancer == Motion::Dancer::at_low_stop && push > 0))
        rate.motion.dancer = Motion::Dancer::free;
    }
  }

  // Over the last step: the roll keeps turning, the web stays taut and the dancer away from its stops, with all that
  // each could have lost at the faster of its rates at both ends to spare.
  bool nothing_can_happen() const {
    if (rate_.motion.roll != Motion::Roll::forward || !is_far(speed, 0, 1)) return false;
    double swing = 0;  // of the first span's length within the step
    double shortest = plant_.path.spans[0];
    if (plant_.roll.runout > 0) {
      const double most = plant_.roll.lobes * plant_.roll.runout;
      const double h = stepper_.t() - stepper_.t0();
      swing = most * std::min(2.0, plant_.roll.lobes * std::abs(stepper_.state()[speed]) * h);
      shortest -= most;
    }
    if constexpr (L::has_dancer) {
      const DancerPlant& dancer = *plant_.path.dancer;
      if (rate_.motion.dancer != Motion::Dancer::free) return false;
      if (!is_far(L::dancer_place, -dancer.reach, 1) || !is_far(L::dancer_place, dancer.reach, -1)) return false;
      if (dancer.span == 0) {
        const double place = std::min(stepper_.before()[L::dancer_place], stepper_.state()[L::dancer_place]);
        shortest += dancer.strands * place;
        swing += dancer.strands * moved(L::dancer_place);
      }
    }
    return is_far(first_web, shortest, -1, swing);
  }

  /// How far a component went in the last step, or would have at the rate of its end.
  double moved(std::size_t i) const {
    const double h = stepper_.t() - stepper_.t0();
    return std::max(std::abs(stepper_.derivative()[i]) * h, std::abs(stepper_.state()[i] - stepper_.before()[i]));
  }

  /// Whether a component stayed above (side 1) or below (side −1) a bound by twice what it moved and `more`.
  bool is_far(std::size_t i, double bound, double side, double more = 0) const {
    const double left = std::min(side * (stepper_.before()[i] - bound), side * (stepper_.state()[i] - bound));
    return left > 2 * (moved(i) + more);
  }

  void note_tension() {
    const double tension = tension_in(stepper_.state());
    sight_.lowest_tension = std::min(sight_.lowest_tension, tension);
    sight_.highest_tension = std::max(sight_.highest_tension, tension);
  }

  // Most samples see no event: looking for them would cost more than the steps. A step after which something might have
  // happened is taken back and made again with open eyes.
  bool advance_quietly(double to) {
    for (std::size_t k = 0; k < most_steps && !gave_up_; ++k) {
      const numerics::Stepped made = stepper_.step();
      if (made == numerics::Stepped::at_end) return true;
      if (made == numerics::Stepped::failed) return false;
      if (nothing_can_happen()) {
        if (stepper_.t() < to) note_tension();
        continue;
      }
      stepper_.restart(stepper_.t0(), State(stepper_.before()));
      return advance_through_events(to);
    }
    gave_up_ = true;
    return false;
  }

  bool advance_through_events(double to) {
    const auto values = [this](double t, const State& y) { return Guards<L>::values(rate_, t, y); };
    auto finder = numerics::event_finder<size>(values, Guards<L>::watched(rate_));
    const auto on_event = [&](auto& event) {
      happen(event.crossed, event.y);
      const auto watched = Guards<L>::watched(rate_);
      for (std::size_t k = 0; k < watched.size(); ++k) finder.watch(k, watched[k]);
      return numerics::AfterEvent::changed;
    };
    const auto on_stretch = [&](const auto&, double, double) { note_tension(); };
    numerics::RunLimits limits;
    limits.steps = most_steps;
    limits.events = most_steps / 10;
    const auto report = numerics::integrate(stepper_, finder, to, on_event, on_stretch, limits);
    gave_up_ = report.failure != numerics::OdeFailure::none;
    return !gave_up_;
  }

  /// Whether a roll that turns is within what its guard takes for standstill.
  bool is_about_to_rest(const State& y) const {
    return rate_.motion.roll != Motion::Roll::held && y[speed] != 0 && std::abs(y[speed]) <= Guards<L>::leaves;
  }

  /// Whether a dancer on its way is within what its guard takes for the stop.
  bool is_about_to_hit(const State& y) const {
    if constexpr (L::has_dancer) {
      return rate_.motion.dancer == Motion::Dancer::free && y[L::dancer_place] * y[L::dancer_speed] > 0 &&
             plant_.path.dancer->reach - std::abs(y[L::dancer_place]) <= Guards<L>::leaves;
    }
    return false;
  }

  void come_to_rest(State& y) {
    y[speed] = 0;
    rate_.motion.roll = resting(y);
    if (rate_.motion.roll == Motion::Roll::held) ++sticks_;
  }

  void hit_stop([[maybe_unused]] State& y) {
    if constexpr (L::has_dancer) {
      const DancerPlant& dancer = *plant_.path.dancer;
      const bool high = y[L::dancer_place] > 0;
      y[L::dancer_place] = high ? dancer.reach : -dancer.reach;
      y[pull_work] -= dancer.mass * y[L::dancer_speed] * y[L::dancer_speed] / 2;  // lost in the stop
      y[L::dancer_speed] = 0;
      rate_.motion.dancer = high ? Motion::Dancer::at_high_stop : Motion::Dancer::at_low_stop;
      ++hits_;
    }
  }

  void happen(const std::array<int, Guards<L>::count>& crossed, State& y) {
    Motion& motion = rate_.motion;
    if (crossed[0] != 0) {
      come_to_rest(y);
    } else if (crossed[1] != 0) {
      const auto rim = surface(plant_.roll, y[radius], y[angle]);
      const double pull = pull_on_roll(plant_.roll, y[radius], y[angle], rim.h, tension_in(y));
      motion.roll = pull > 0 ? Motion::Roll::forward : Motion::Roll::backward;
      ++sticks_;
    } else if (is_about_to_rest(y)) {
      come_to_rest(y);
    }
    if constexpr (L::has_dancer) {
      if (crossed[3] != 0 || is_about_to_hit(y)) hit_stop(y);
      if (crossed[4] != 0) motion.dancer = Motion::Dancer::free;
    }
  }

  void look() {
    const Rate<L>& rate = rate_;
    const State& y = stepper_.state();
    const auto rim = surface(plant_.roll, y[radius], y[angle]);
    const auto span = web_in(y, rim);
    const std::size_t count = L::spans == 1 ? 1 : plant_.path.spans.size();
    const PathPlant& path = plant_.path;
    sight_.time = stepper_.t();
    sight_.roll_speed = y[speed];
    sight_.angle = y[angle];
    sight_.radius = y[radius];
    sight_.out_of_round = rim.h - y[radius];
    sight_.rim_speed = y[speed] * (rim.h + rim.bend);
    sight_.pressure = y[pressure];
    sight_.tension = span.tension[0];
    const double a = rate.drive.acceleration;
    const auto behind = [&](double tension, double drag, double mass) {
      return tension > 0 ? std::max(0.0, tension + drag + mass * a) : 0.0;
    };
    if constexpr (L::spans == 1) {
      const bool turning = rate.drive.speed_at(stepper_.t()) > 1e-6;
      sight_.cell_tension = behind(span.tension[0], turning ? path.cell_drag : 0, path.cell_mass);
    } else {
      const std::size_t k = std::clamp<std::size_t>(path.cell_span, 1, count - 1);
      sight_.cell_tension = (span.tension[k - 1] + span.tension[k]) / 2;
    }
    sight_.nip_tension = behind(span.tension[count - 1], path.following_drag, path.following_mass);
    sight_.slack = 0;
    for (std::size_t i = 0; i < count; ++i) sight_.slack += std::max(0.0, y[first_web + i] - span.length[i]);
    if constexpr (L::has_dancer) sight_.dancer_place = y[L::dancer_place] / path.dancer->reach;
    const double pull = pull_on_roll(plant_.roll, y[radius], y[angle], rim.h, span.tension[0]);
    sight_.torque = rate.motion.roll == Motion::Roll::held
                        ? std::abs(pull)
                        : sliding_torque(plant_.brake, y[pressure], rate.drive.brake_share, y[speed]);
    sight_.slip_work = y[slip_work];
    sight_.pull_work = y[pull_work];
    sight_.motion = rate.motion;
  }

  const Plant plant_;
  Rate<L> rate_;
  Stepper stepper_;
  Sight sight_{};
  double sticks_{};
  double hits_{};
  bool gave_up_{};
};

}  // namespace holdback::dynamics
