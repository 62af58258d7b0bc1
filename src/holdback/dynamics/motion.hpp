// The equations of the stand in motion, and how it goes from one way of moving to another.
//
//   roll    J(R) dω/dt = T R − M_b sign ω          slipping; ω = 0 while the static torque holds what pulls
//   web     du/dt = (v₁ u₀ − v₂ min(u, 1))/L       u = 1/(1 + ε): web in the span, unstretched, over the span
//           T = EA (1/u − 1), never below zero: more web than the span takes up hangs slack, L (u − 1) of it
//   rim     v₁ = ω R (1 + e/R cos θ)               e runout, θ the angle turned
//   size    dR/dt = −t ω/2π
//   air     dp/dt = (p_set − p)/τ
//   nip     T_nip = T + Σ drag/radius + Σ J/radius² · dv₂/dt
//
// The balance of the web is the exact one (published checks S-2, S-3); the roll's has neither dJ/dt nor the outflow,
// which cancel (physics/torque.hpp). A web cannot push, so that slack has to be taken up before tension comes back.
#pragma once

#include <cstddef>

#include "holdback/dynamics/plant.hpp"
#include "holdback/numerics/integrate.hpp"

namespace holdback::dynamics {

/// Components of the state.
enum StateIndex : std::size_t {
  speed,      // [rad/s] ω of the roll
  fullness,   // [1] u of the span
  pressure,   // [Pa] gauge, at the brake
  angle,      // [rad] θ
  radius,     // [m] R
  slip_work,  // [J] put into the brake and drag since the start
  pull_work,  // [J] done on the span by the nip, less what the idlers took
  state_size
};
using MotionState = numerics::State<state_size>;

/// What the line and the regulator do over a stretch of time: speed and set pressure change evenly.
struct Drive {
  double begin{};         // [s] time at which `line_speed` holds
  double line_speed{};    // [m/s]
  double acceleration{};  // [m/s²]
  double set_pressure{};  // [Pa] gauge, behind the dead time
  double speed_at(double t) const { return line_speed + acceleration * (t - begin); }
};

/// Tension [N] of a span with the state's fullness; zero when slack.
double tension_of(const SpanPlant& span, double fullness);

/// Fullness [1] of a span at a tension [N].
double fullness_at(const SpanPlant& span, double tension);

/// Web that hangs slack [m]; zero when taut.
double slack_of(const SpanPlant& span, double fullness);

/// Tension [N] at the nip behind the idlers.
double nip_tension(const SpanPlant& span, double tension, double line_acceleration);

/// Whether the roll turns or the brake holds it.
enum class Motion { slipping, held };

/// dy/dt at a time [s].
MotionState derivative(const Plant& plant, const Drive& drive, Motion motion, double t, const MotionState& y);

/// dy/dt of a stand under a drive, for the stepper.
struct MotionRate {
  const Plant* plant{};
  Drive drive{};
  Motion motion{};
  MotionState operator()(double t, const MotionState& y) const { return derivative(*plant, drive, motion, t, y); }
};

/// One stand under one drive, stepped through sticking and slipping. Keeps a reference to the plant.
class Mover {
 public:
  /// `relative` is the accuracy of a step [1].
  Mover(const Plant& plant, const MotionState& start, double relative);

  /// Goes on to a time [s] under a drive. Returns false when the steps failed.
  bool advance(const Drive& drive, double to);

  double time() const { return stepper_.t(); }
  const MotionState& state() const { return stepper_.state(); }
  Motion motion() const { return motion_; }
  double tension() const { return tension_of(plant_.span, state()[fullness]); }
  double slack() const { return slack_of(plant_.span, state()[fullness]); }
  std::size_t steps() const { return stepper_.counts().steps; }

 private:
  using Stepper = numerics::Stepper<state_size, MotionRate, numerics::DormandPrince<state_size>>;

  Motion motion_now(const MotionState& y) const;
  bool nothing_can_happen() const;
  bool advance_quietly(double to);
  bool advance_through_events(double to);

  const Plant& plant_;
  Stepper stepper_;
  Motion motion_;
};

/// Steady running: line and rim at one speed [m/s], tension [N], at a radius [m], with the pressure that keeps it.
MotionState steady_state(const Plant& plant, double line_speed, double tension, double radius);

}  // namespace holdback::dynamics
