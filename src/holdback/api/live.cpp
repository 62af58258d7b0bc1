#include "holdback/api/live.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "holdback/api/stand_job.hpp"

namespace holdback::api {

namespace {

constexpr double longest_advance = 24 * 3600.0;  // [s] in one call

void demand(bool kept, const char* what) {
  if (!kept) throw std::invalid_argument(what);
}

void check(const LiveInputs& inputs) {
  const auto fine = [](const std::optional<double>& value, double least) {
    return !value || (std::isfinite(*value) && *value >= least);
  };
  demand(!inputs.pairs || (*inputs.pairs >= 0 && *inputs.pairs <= 1000), "pairs: a whole number from 0");
  demand(fine(inputs.pressure, 0), "pressure: Pa, from 0");
  demand(fine(inputs.setpoint, 1e-6), "setpoint: N, above 0");
  demand(fine(inputs.line_speed, 0), "line_speed: m/s, from 0");
  demand(fine(inputs.within, 0), "within: s, from 0");
}

}  // namespace

class LiveRun::Inside {
 public:
  Inside(Stand stand, const Request& request)
      : stand_(std::move(stand)), job_(stand_, request), habits_(job_.habits()), bounds_(job_.bounds()) {
    const ControlKind kind = request.compare.empty() ? stand_.control.kind : request.compare.front();
    const bool each = request.idlers == Idlers::each;
    const dynamics::RunRequest run = job_.run_request(kind, job_.scenario(""), each);
    rig_ = std::make_unique<dynamics::Rig>(run.rig, run.controller());
    look();
  }

  void advance(double duration, const LiveInputs& inputs) {
    check(inputs);
    demand(std::isfinite(duration) && duration <= longest_advance, "for: s, up to a day");
    act(inputs);
    state_.lowest_tension = state_.highest_tension = rig_->sight().tension;
    state_.highest_slack = rig_->sight().slack;
    due_ += std::max(0.0, duration);
    while (due_ >= rig_->sample_time() * (1 - 1e-9) && !over()) {
      due_ -= rig_->sample_time();
      state_.failed = !rig_->sample();
      state_.lowest_tension = std::min(state_.lowest_tension, rig_->sight().lowest_tension);
      state_.highest_tension = std::max(state_.highest_tension, rig_->sight().highest_tension);
      state_.highest_slack = std::max(state_.highest_slack, rig_->sight().slack);
    }
    if (over()) due_ = 0;
    look();
  }

  const LiveState& state() const { return state_; }

 private:
  bool over() const { return state_.failed || rig_->at_core(); }

  void act(const LiveInputs& inputs) {
    const double now = rig_->line_speed();
    const auto line_to = [&](double speed, double usual) {
      rig_->line_to(speed, std::max(1e-3, inputs.within.value_or(usual)));
    };
    if (inputs.pairs) rig_->engage(*inputs.pairs);
    if (inputs.pressure) rig_->turn_regulator(std::min(*inputs.pressure, bounds_.pressure));
    if (inputs.automatic) rig_->turn_regulator(std::nullopt);
    if (inputs.setpoint) rig_->ask_for(*inputs.setpoint);
    if (inputs.line_speed)
      line_to(*inputs.line_speed, habits_.ramp_time * std::abs(*inputs.line_speed - now) / habits_.speed);
    if (inputs.stop) line_to(0, habits_.stop_time * now / habits_.speed);
    if (inputs.emergency_stop) line_to(0, habits_.emergency_stop_time * now / habits_.speed);
    if (inputs.splice) rig_->splice(habits_.full_radius, 0);
    if (inputs.break_web) rig_->break_web();
    if (inputs.air) rig_->fail_air(!*inputs.air);
  }

  void look() {
    const dynamics::Sight& seen = rig_->sight();
    LiveState& s = state_;
    s.time = seen.time;
    s.line_speed = rig_->line_speed();
    s.rim_speed = seen.rim_speed;
    s.roll_speed = seen.roll_speed;
    s.angle = seen.angle;
    s.diameter = 2 * seen.radius;
    s.tension = seen.tension;
    if (s.time == 0) s.lowest_tension = s.highest_tension = s.tension;
    s.measured_tension = rig_->measured_tension();
    s.setpoint = rig_->setpoint();
    s.low = bounds_.low * s.setpoint;
    s.high = bounds_.high * s.setpoint;
    s.slack = seen.slack;
    s.pressure = seen.pressure;
    s.set_pressure = rig_->set_pressure();
    s.torque = seen.torque;
    s.slip_power = seen.torque * std::abs(seen.roll_speed);
    s.disc = rig_->heat().temperatures()[0];
    s.pads = rig_->heat().temperatures()[1];
    s.dancer = seen.dancer_place;
    s.web_run = rig_->web_run();
    s.pulled = rig_->pulled();
    s.slipped = seen.slip_work;
    s.pad_wear = rig_->heat().wear();
    s.pairs = rig_->pairs();
    s.held = seen.motion.roll == dynamics::Motion::Roll::held;
    s.broken = rig_->is_broken();
    s.at_core = rig_->at_core();
    if (s.failed) s.fault = rig_->mover().fault();
  }

  Stand stand_;
  StandJob job_;
  dynamics::LineHabits habits_;
  dynamics::RunBounds bounds_;
  std::unique_ptr<dynamics::Rig> rig_{};
  LiveState state_{};
  double due_{};  // [s] asked for and not yet a whole sample
};

LiveRun::LiveRun(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
LiveRun::~LiveRun() = default;

std::variant<std::unique_ptr<LiveRun>, Answer> LiveRun::open(const Request& request) {
  auto read = read_stand_for(request);
  if (!read.stand) return std::move(read.answer);
  return std::unique_ptr<LiveRun>(new LiveRun(std::make_unique<Inside>(std::move(*read.stand), request)));
}

const LiveState& LiveRun::advance(double duration, const LiveInputs& inputs) {
  inside_->advance(duration, inputs);
  return inside_->state();
}

const LiveState& LiveRun::state() const { return inside_->state(); }

}  // namespace holdback::api
