#include "holdback/dynamics/motion.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "holdback/physics/brake.hpp"

namespace holdback::dynamics {

namespace {

constexpr double two_pi = 2 * std::numbers::pi;

/// Speeds at which a component is as good as zero, for the tolerance of steps.
numerics::StepControl<state_size> control_of(double relative, double longest) {
  numerics::StepControl<state_size> control;
  control.relative = relative;
  control.absolute = {1e-3 * relative, 1e-3 * relative, 1e3 * relative, relative, 1e-3 * relative, 1, 1};
  control.largest = longest;
  return control;
}

double rim_speed(const RollPlant& roll, const MotionState& y) {
  if (roll.runout == 0) return y[speed] * y[radius];
  return y[speed] * (y[radius] + roll.runout * std::cos(y[angle]));
}

/// Longest step [s]: the turns of a roll that is out of round must not be stepped over.
double longest_step(const Plant& plant) { return plant.roll.runout > 0 ? 0.05 : 1e9; }

/// Pull of the web on the roll [N·m].
double pulling(const Plant& plant, const MotionState& y) { return tension_of(plant.span, y[fullness]) * y[radius]; }

}  // namespace

// T = EA (1/u − 1)⁺
double tension_of(const SpanPlant& span, double fullness) {
  return fullness < 1 ? span.stiffness * (1 / fullness - 1) : 0;
}

double fullness_at(const SpanPlant& span, double tension) { return 1 / (1 + tension / span.stiffness); }

// L (u − 1)⁺
double slack_of(const SpanPlant& span, double fullness) { return span.length * std::max(0.0, fullness - 1); }

double nip_tension(const SpanPlant& span, double tension, double line_acceleration) {
  return tension > 0 ? tension + span.idler_drag + span.idler_mass * line_acceleration : 0;
}

MotionState derivative(const Plant& plant, const Drive& drive, Motion motion, double t, const MotionState& y) {
  MotionState rate{};
  const double tension = tension_of(plant.span, y[fullness]);
  const double line_speed = drive.speed_at(t);
  if (motion == Motion::slipping) {
    const double braking = sliding_torque(plant.brake, y[pressure], y[speed]);
    rate[speed] = (tension * y[radius] - std::copysign(braking, y[speed])) / inertia_at(plant.roll, y[radius]);
    rate[slip_work] = braking * std::abs(y[speed]);
  }
  const double rim = rim_speed(plant.roll, y);
  // Slack web leaves unstretched, however much of it hangs in the span.
  const double leaving = line_speed * std::min(y[fullness], 1.0);
  rate[fullness] = (rim * fullness_at(plant.span, plant.span.wound_in) - leaving) / plant.span.length;
  rate[pressure] = plant.air.lag > 0 ? (drive.set_pressure - y[pressure]) / plant.air.lag : 0;
  rate[angle] = y[speed];
  rate[radius] = -plant.roll.caliper * y[speed] / two_pi;
  rate[pull_work] = tension * line_speed;
  return rate;
}

Mover::Mover(const Plant& plant, const MotionState& start, double relative)
    : plant_(plant),
      stepper_({&plant, {}, Motion::slipping}, control_of(relative, longest_step(plant))),
      motion_(motion_now(start)) {
  stepper_.rhs().motion = motion_;
  stepper_.start(0, start, 0);
}

// At rest the brake holds while the pull is not more than its static torque.
Motion Mover::motion_now(const MotionState& y) const {
  if (y[speed] != 0) return Motion::slipping;
  return pulling(plant_, y) <= static_torque(plant_.brake, y[pressure]) ? Motion::held : Motion::slipping;
}

bool Mover::advance(const Drive& drive, double to) {
  MotionState y = state();
  if (plant_.air.lag <= 0) y[pressure] = drive.set_pressure;
  motion_ = motion_now(y);
  stepper_.rhs().drive = drive;
  stepper_.rhs().motion = motion_;
  stepper_.restart(time(), y);
  stepper_.set_end(to);
  return advance_quietly(to);
}

// Over the last step: the roll keeps turning and the web stays taut, with all that either could have lost at the faster
// of its rates at both ends to spare.
bool Mover::nothing_can_happen() const {
  if (motion_ == Motion::held) return false;
  const double h = stepper_.t() - stepper_.t0();
  const MotionState& before = stepper_.before();
  const MotionState& after = stepper_.state();
  const MotionState& rate = stepper_.derivative();
  const double slowed = std::max(std::abs(rate[speed]) * h, std::abs(after[speed] - before[speed]));
  const double loosened = std::max(std::abs(rate[fullness]) * h, std::abs(after[fullness] - before[fullness]));
  return std::min(before[speed], after[speed]) > 2 * slowed &&
         1 - std::max(before[fullness], after[fullness]) > 2 * loosened;
}

// Most samples see no event: looking for them would cost more than the steps. A step after which something might have
// happened is taken back and made again with open eyes.
bool Mover::advance_quietly(double to) {
  for (;;) {
    const numerics::Stepped made = stepper_.step();
    if (made == numerics::Stepped::at_end) return true;
    if (made == numerics::Stepped::failed) return false;
    if (nothing_can_happen()) continue;
    stepper_.restart(stepper_.t0(), MotionState(stepper_.before()));
    return advance_through_events(to);
  }
}

bool Mover::advance_through_events(double to) {
  // The roll stops; the pull breaks the brake loose; the web comes taut or goes slack, where its law has a corner.
  const auto guards = [this](double, const MotionState& y) {
    return std::array<double, 3>{y[speed], pulling(plant_, y) - static_torque(plant_.brake, y[pressure]),
                                 1 - y[fullness]};
  };
  using numerics::Crossing;
  const auto watched = [this] {
    return std::array<numerics::Guard, 3>{
        numerics::Guard{motion_ == Motion::slipping ? Crossing::falling : Crossing::off, 1e-9},
        numerics::Guard{motion_ == Motion::held ? Crossing::rising : Crossing::off, 1e-9},
        numerics::Guard{Crossing::either, 1e-12}};
  };
  auto finder = numerics::event_finder<state_size>(guards, watched());
  const auto on_event = [&](auto& event) {
    if (event.crossed[0] != 0) {
      event.y[speed] = 0;
      motion_ = motion_now(event.y);
    }
    if (event.crossed[1] != 0) motion_ = Motion::slipping;
    stepper_.rhs().motion = motion_;
    for (std::size_t k = 0; k < 3; ++k) finder.watch(k, watched()[k]);
    return numerics::AfterEvent::changed;
  };
  const auto report = numerics::integrate(stepper_, finder, to, on_event, [](const auto&, double, double) {});
  return report.failure == numerics::OdeFailure::none;
}

MotionState steady_state(const Plant& plant, double line_speed, double tension, double at_radius) {
  MotionState y{};
  y[radius] = at_radius;
  y[fullness] = fullness_at(plant.span, tension);
  y[speed] = line_speed * y[fullness] / fullness_at(plant.span, plant.span.wound_in) / at_radius;
  const double asked = tension * at_radius - plant.brake.drag;
  const double share = std::max(1e-9, 1 + plant.brake.friction_slope * y[speed]);
  y[pressure] = physics::pad_pressure_for(plant.brake.torque_per_pressure * share, asked, plant.brake.threshold);
  return y;
}

}  // namespace holdback::dynamics
