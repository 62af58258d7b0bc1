#include "holdback/dynamics/run.hpp"

#include <algorithm>
#include <cmath>
#include <deque>

namespace holdback::dynamics {

namespace {

/// The air between regulator and brake in whole samples: what was set comes out later.
class DelayLine {
 public:
  DelayLine(double dead_time, double period, double first)
      : waiting_(static_cast<std::size_t>(std::lround(dead_time / period)), first) {}

  double after(double set) {
    waiting_.push_back(set);
    const double out = waiting_.front();
    waiting_.pop_front();
    return out;
  }

 private:
  std::deque<double> waiting_;
};

/// First-order lag of a measurement, exact for a value held over a sample.
class MeasuringLag {
 public:
  MeasuringLag(double lag, double period, double first)
      : share_(lag > 0 ? -std::expm1(-period / lag) : 1), value_(first) {}
  double after(double value) { return value_ += share_ * (value - value_); }

 private:
  double share_;
  double value_;
};

double measured(double value, double step) { return step > 0 ? std::round(value / step) * step : value; }

class Runner {
 public:
  Runner(const Plant& plant, const MotionState& start, Controller& controller, double setpoint, const Window& window,
         const Sampling& sampling)
      : plant_(plant),
        sampling_(sampling),
        window_(window),
        setpoint_(setpoint),
        controller_(controller),
        mover_(plant, start, sampling.relative),
        air_(plant.air.dead_time, sampling.period, start[pressure]),
        cell_(sampling.measuring_lag, sampling.period, mover_.tension()) {}

  Course go(double line_speed, const std::vector<Leg>& legs) {
    line_speed_ = line_speed;
    for (const Leg& leg : legs)
      if (!run_.reached_core && !run_.failed) go_leg(leg);
    run_.slip_work = mover_.state()[slip_work];
    run_.end_radius = mover_.state()[radius];
    run_.steps = mover_.steps();
    return run_;
  }

 private:
  void go_leg(const Leg& leg) {
    const double begin = mover_.time();
    const double end = begin + leg.duration;
    const double acceleration = (leg.line_speed - line_speed_) / leg.duration;
    const auto samples = static_cast<std::size_t>(std::ceil(leg.duration / sampling_.period - 1e-9));
    LegFacts facts{leg.what, begin, 1e300, 0, 0, 0, 0};
    for (std::size_t k = 0; k < samples && !run_.reached_core && !run_.failed; ++k) {
      const double to = k + 1 == samples ? end : begin + static_cast<double>(k + 1) * sampling_.period;
      sample(acceleration, begin, to);
      note(facts, to - std::max(begin, to - sampling_.period));
    }
    facts.mean_tension /= std::max(1e-300, mover_.time() - begin);
    facts.lowest_tension = std::min(facts.lowest_tension, facts.highest_tension);
    line_speed_ = leg.line_speed;
    run_.legs.push_back(facts);
  }

  void sample(double acceleration, double begin, double to) {
    const double set =
        controller_.pressure({mover_.time(), measured(2 * mover_.state()[radius], sampling_.diameter_step),
                              cell_.after(mover_.tension()), setpoint_});
    const Drive drive{begin, line_speed_, acceleration, air_.after(set)};
    run_.failed = !mover_.advance(drive, to);
    run_.reached_core = mover_.state()[radius] <= plant_.roll.core_radius;
    if (mover_.time() >= next_trace_) keep(drive, set);
  }

  void note(LegFacts& facts, double period) const {
    const double tension = mover_.tension();
    facts.lowest_tension = std::min(facts.lowest_tension, tension);
    facts.highest_tension = std::max(facts.highest_tension, tension);
    facts.mean_tension += tension * period;
    facts.most_slack = std::max(facts.most_slack, mover_.slack());
    if (tension < window_.low || tension > window_.high) facts.outside_window += period;
  }

  void keep(const Drive& drive, double set) {
    const MotionState& y = mover_.state();
    RunTrace& trace = run_.trace;
    trace.time.push_back(mover_.time());
    trace.line_speed.push_back(drive.speed_at(mover_.time()));
    trace.tension.push_back(mover_.tension());
    trace.slack.push_back(mover_.slack());
    trace.pressure.push_back(y[pressure]);
    trace.set_pressure.push_back(set);
    trace.diameter.push_back(2 * y[radius]);
    trace.slip_power.push_back(sliding_torque(plant_.brake, y[pressure], y[speed]) * std::abs(y[speed]));
    next_trace_ += sampling_.trace_period;
  }

  const Plant& plant_;
  const Sampling& sampling_;
  Window window_;
  double setpoint_;
  Controller& controller_;
  Mover mover_;
  DelayLine air_;
  MeasuringLag cell_;
  double line_speed_{};
  double next_trace_{};
  Course run_{};
};

}  // namespace

Course run(const Plant& plant, const MotionState& start, double line_speed, const std::vector<Leg>& legs,
           Controller& controller, double setpoint, const Window& window, const Sampling& sampling) {
  return Runner(plant, start, controller, setpoint, window, sampling).go(line_speed, legs);
}

}  // namespace holdback::dynamics
