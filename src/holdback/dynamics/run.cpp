#include "holdback/dynamics/run.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "holdback/model/event_words.hpp"

namespace holdback::dynamics {

namespace {

constexpr double to_settle = 2;       // [s] after a change before steady running is judged
constexpr double last_look = 3;       // [s] that a run goes on after its last event
constexpr double moving_from = 1e-3;  // [m/s]

class Runner {
 public:
  explicit Runner(const RunRequest& request)
      : request_(request), rig_(request.rig, request.controller()), trace_period_(request.trace_period) {
    run_.control = std::string(key_of(request.kind));
    run_.method = request.rig.mover.steps == Steps::stiff_steps ? Method::stiff_steps : Method::explicit_steps;
    trace_period_ = std::max(trace_period_, expected_time() / most_trace);
    run_.run_lowest = 1e300;
    make_room();
    last_low_ = last_high_ = rig_.sight().tension;
  }

  MotionRun go() {
    begin_phase(rig_.line_speed() > moving_from ? "run" : "standstill");
    keep();
    for (const Event& event : request_.scenario.events) {
      if (is_over()) break;
      wait_for(event);
      if (is_over()) break;
      happen(event);
      while (!is_over() && rig_.time() < event_end_ - 1e-9) step();
    }
    finish();
    return std::move(run_);
  }

 private:
  /// Time that the web lasts at the job's speed, or the scenario's own end.
  double expected_time() const {
    if (request_.scenario.end) return *request_.scenario.end;
    const RollPlant& roll = request_.rig.plant.roll;
    const double caliper = std::max(roll.caliper, 1e-9);
    const double square = request_.rig.radius * request_.rig.radius - roll.core_radius * roll.core_radius;
    return std::min(1e7, std::numbers::pi * square / caliper / std::max(request_.habits.speed, 1e-3));
  }

  // Entries that the trace will have; what comes on top grows by itself.
  void make_room() {
    RunTrace& trace = run_.trace;
    const auto entries =
        static_cast<std::size_t>(std::min(1.0 * most_trace, 1.1 * expected_time() / trace_period_)) + 16;
    for (std::vector<double>* column :
         {&trace.time, &trace.line_speed, &trace.rim_speed, &trace.tension, &trace.lowest_tension,
          &trace.highest_tension, &trace.measured_tension, &trace.setpoint, &trace.slack, &trace.pressure,
          &trace.set_pressure, &trace.pairs, &trace.diameter, &trace.torque, &trace.slip_power, &trace.disc,
          &trace.pads, &trace.dancer})
      column->reserve(entries);
  }

  bool is_over() const { return ended_; }

  bool is_due(const Event& event) const {
    if (event.at && rig_.time() < *event.at - 1e-9) return false;
    return !event.at_diameter || 2 * rig_.sight().radius <= *event.at_diameter;
  }

  void wait_for(const Event& event) {
    if (is_due(event)) return;
    go_on();
    while (!is_over() && !is_due(event)) {
      // A line that stands never comes to a diameter.
      if (!event.at && rig_.line_speed() <= moving_from && rig_.line().until() <= rig_.time()) return;
      step();
    }
  }

  double to_stop(double from_job_speed) const {
    return std::max(1e-3, from_job_speed * rig_.line_speed() / request_.habits.speed);
  }

  void happen(const Event& event) {
    begin_phase(word_of(event.kind));
    const LineHabits& habits = request_.habits;
    double lasts = 0;
    switch (event.kind) {
      case EventKind::ramp: {
        const double target = event.speed.value_or(habits.speed);
        const double usual = habits.ramp_time * std::abs(target - rig_.line_speed()) / habits.speed;
        lasts = std::max(1e-3, event.duration.value_or(usual));
        rig_.line_to(target, lasts);
        break;
      }
      case EventKind::hold:
        lasts = event.duration.value_or(0);
        break;
      case EventKind::stop:
        lasts = event.duration.value_or(to_stop(habits.stop_time));
        rig_.line_to(0, lasts);
        break;
      case EventKind::emergency_stop:
        lasts = event.duration.value_or(to_stop(habits.emergency_stop_time));
        rig_.line_to(0, lasts);
        break;
      case EventKind::splice:
        rig_.splice(habits.full_radius, event.mismatch);
        break;
      case EventKind::setpoint:
        rig_.ask_for(event.tension.value_or(rig_.setpoint()));
        break;
      case EventKind::pairs:
        rig_.engage(event.pairs.value_or(rig_.pairs()));
        break;
      case EventKind::air_failure:
        rig_.fail_air(true);
        break;
      case EventKind::web_break:
        rig_.break_web();
        break;
    }
    accident_ = accident_ || event.kind == EventKind::air_failure || event.kind == EventKind::web_break;
    event_end_ = rig_.time() + lasts;
  }

  void step() {
    const double before = rig_.time();
    const bool went = rig_.sample();
    if (went) {
      note(rig_.time() - before);
      if (rig_.time() >= next_trace_ - 1e-9) keep();
    }
    if (!went) {
      run_.end = RunEnd::failed;
      run_.fault = rig_.mover().fault();
      run_.fault_time = rig_.time();
      ended_ = true;
    } else if (rig_.at_core()) {
      run_.end = RunEnd::core;
      ended_ = true;
    } else if (request_.scenario.end && rig_.time() >= *request_.scenario.end - 1e-9) {
      ended_ = true;
    }
    tell_progress();
  }

  void tell_progress() {
    if (!request_.progress || ++told_ % 20000 != 0) return;
    const double expected = expected_time();
    request_.progress(std::min(1.0, rig_.time() / std::max(expected, 1e-9)));
  }

  double low() const { return request_.bounds.low * rig_.setpoint(); }
  double high() const { return request_.bounds.high * rig_.setpoint(); }

  void note(double period) {
    const Sight& seen = rig_.sight();
    PhaseFacts& phase = run_.phases.back();
    phase.end = seen.time;
    phase.lowest_tension = std::min(phase.lowest_tension, seen.lowest_tension);
    phase.highest_tension = std::max(phase.highest_tension, seen.highest_tension);
    tension_time_ += seen.tension * period;
    phase.slack = std::max(phase.slack, seen.slack);
    last_low_ = std::min(last_low_, seen.lowest_tension);
    last_high_ = std::max(last_high_, seen.highest_tension);

    const bool outside = seen.lowest_tension < low() || seen.highest_tension > high();
    const bool moving = rig_.line_speed() > moving_from;
    if (outside) {
      phase.outside += period;
      last_outside_ = seen.time;
    }
    if (moving) {
      run_.moving += period;
      if (outside) run_.outside += period;
    }
    const bool steady = moving && rig_.line().until() + to_settle <= seen.time && phase.begin + to_settle <= seen.time;
    if (steady && !accident_) {
      run_.run_lowest = std::min(run_.run_lowest, seen.lowest_tension);
      run_.run_highest = std::max(run_.run_highest, seen.highest_tension);
      steady_time_ += period;
      if (outside) steady_outside_ += period;
    }
    note_extremes(seen);
  }

  void note_extremes(const Sight& seen) {
    if (seen.highest_tension > run_.peak) {
      run_.peak = seen.highest_tension;
      run_.peak_time = seen.time;
    }
    if (seen.slack > run_.slack) {
      run_.slack = seen.slack;
      run_.slack_time = seen.time;
    }
    const auto& warm = rig_.heat().temperatures();
    run_.disc_highest = std::max(run_.disc_highest, warm[0]);
    run_.pads_highest = std::max(run_.pads_highest, warm[1]);
    run_.highest_pressure = std::max(run_.highest_pressure, seen.pressure);
    run_.highest_torque = std::max(run_.highest_torque, seen.torque);
  }

  void begin_phase(const std::string& what) {
    end_phase();
    PhaseFacts phase;
    phase.what = what;
    phase.begin = phase.end = rig_.time();
    phase.diameter = 2 * rig_.sight().radius;
    phase.lowest_tension = phase.highest_tension = rig_.sight().tension;
    run_.phases.push_back(phase);
    tension_time_ = 0;
    last_outside_ = -1;
  }

  // What follows an event that takes no time bears its name.
  void go_on() {
    const PhaseFacts& last = run_.phases.back();
    if (last.end > last.begin) begin_phase(rig_.line_speed() > moving_from ? "run" : "standstill");
  }

  // A phase that nothing happened in is not kept.
  void end_phase() {
    if (run_.phases.empty()) return;
    PhaseFacts& phase = run_.phases.back();
    const double lasted = phase.end - phase.begin;
    if (lasted <= 0) {
      run_.phases.pop_back();
      return;
    }
    phase.mean_tension = tension_time_ / lasted;
    phase.settles = last_outside_ < phase.end - 1.5 * rig_.sample_time();
    phase.settling = last_outside_ < 0 ? 0 : last_outside_ - phase.begin;
    if (phase.settles) run_.settling = std::max(run_.settling, phase.settling);
  }

  void keep() {
    const Sight& seen = rig_.sight();
    RunTrace& trace = run_.trace;
    trace.time.push_back(seen.time);
    trace.line_speed.push_back(rig_.line_speed());
    trace.rim_speed.push_back(seen.rim_speed);
    trace.tension.push_back(seen.tension);
    trace.lowest_tension.push_back(last_low_);
    trace.highest_tension.push_back(last_high_);
    trace.measured_tension.push_back(rig_.measured_tension());
    trace.setpoint.push_back(rig_.setpoint());
    trace.slack.push_back(seen.slack);
    trace.pressure.push_back(seen.pressure);
    trace.set_pressure.push_back(rig_.set_pressure());
    trace.pairs.push_back(rig_.pairs());
    trace.diameter.push_back(2 * seen.radius);
    trace.torque.push_back(seen.torque);
    trace.slip_power.push_back(seen.torque * std::abs(seen.roll_speed));
    trace.disc.push_back(rig_.heat().temperatures()[0]);
    trace.pads.push_back(rig_.heat().temperatures()[1]);
    trace.dancer.push_back(seen.dancer_place);
    last_low_ = last_high_ = seen.tension;
    next_trace_ += trace_period_;
  }

  void finish() {
    if (!is_over()) {
      const double until = request_.scenario.end.value_or(rig_.time() + last_look);
      go_on();
      while (!is_over() && rig_.time() < until - 1e-9) step();
    }
    end_phase();
    if (run_.run_highest == 0) run_.run_lowest = 0;
    run_.line_time = rig_.time();
    run_.web_run = rig_.web_run();
    run_.pad_wear = rig_.heat().wear();
    run_.dancer_stops = rig_.mover().dancer_hits();
    run_.sticks = rig_.mover().stick_events();
    run_.steps = static_cast<double>(rig_.mover().steps());
    run_.steady_outside = steady_time_ > 0 ? steady_outside_ / steady_time_ : 0;
    run_.accident = accident_;
    if (run_.end != RunEnd::failed) close_books();
    judge(run_, request_.bounds, request_.rig.setpoint);
  }

  // Of a run that broke off nothing adds up any more.
  void close_books() {
    EnergyBooks& books = run_.energy;
    books.pulled = rig_.pulled();
    books.slipped = rig_.sight().slip_work;
    books.stored = rig_.stored_gain();
    books.residual = books.pulled - books.slipped - books.stored;
  }

  const RunRequest& request_;
  Rig rig_;
  double trace_period_;
  MotionRun run_{};
  double next_trace_{};
  double event_end_{};
  double tension_time_{};
  double last_outside_{-1};
  double last_low_{}, last_high_{};
  double steady_time_{}, steady_outside_{};
  bool accident_{};
  bool ended_{};
  std::size_t told_{};
};

}  // namespace

MotionRun run(const RunRequest& request) { return Runner(request).go(); }

}  // namespace holdback::dynamics
