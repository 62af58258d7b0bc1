// The equations of the stand in motion.
//
//   roll    J(R) dω/dt = T₀ h + m g e sin θ − M_b sign ω     slipping; ω = 0 while the static torque holds what pulls
//   size    dR/dt = −t ω/2π
//   shape   h = R + e cos nθ, distance of the web's line from the axis; the web lies on an arc h + h″ and the place
//           where it leaves moves along its line by h′ (primes: by θ), so that the first span has L₀ + h′
//   spans   dw₀/dt = ω (h + h″) u_wound − V₁ u₀, dw_i/dt = V_i u_(i−1) − V_(i+1) u_i, V the surface of the next roller,
//           at the end the line v₂; w web in the span, unstretched; u = min(w/L, 1) = 1/(1 + ε)
//   web     T = EA (ε + τ dε/dt), 1 + ε = L/w, never below zero: more web than the span takes up hangs slack, w − L
//   idlers  J_i dω_i/dt = (T_i − T_(i−1)) r_i − drag
//   dancer  m d²z/dt² = F (1 + taper z/reach) − strands T_k − c dz/dt between its stops; L_k grows by strands z
//   air     dp/dt = (p_set − p)/τ
//   brake   M_b = share (1 + slope |ω|) K (p − p₀)⁺ + drag
//
// The balance of the web is the exact one (published checks S-2, S-3); the roll's has neither dJ/dt nor the outflow,
// which cancel (physics/torque.hpp). The shape is exact for a web whose line keeps its direction: a span long against
// the runout. A web cannot push, so that slack has to be taken up before tension comes back. Left out: web that slips
// on its idlers, air between the layers, sag as a spring, the give of frame and shaft, friction of the dancer's seals.
//
// Written for any kind of number, so that the linear model is its exact derivative (linear.hpp).
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "holdback/dynamics/plant.hpp"
#include "holdback/numerics/dual.hpp"
#include "holdback/numerics/sine.hpp"

namespace holdback::dynamics {

/// Components of the state that every stand has.
enum StateIndex : std::size_t {
  speed,      // [rad/s] ω of the roll
  angle,      // [rad] θ
  radius,     // [m] R
  pressure,   // [Pa] gauge, at the brake
  slip_work,  // [J] put into the brake and drag since the start
  pull_work,  // [J] done on roll, spans, idlers and dancer by all but the brake
  first_web   // [m] w₀; the other spans follow, then the idlers' speeds [rad/s], then place and speed of a dancer
};

/// Where a state of `Spans` spans, with or without a dancer, keeps what.
template <std::size_t Spans, bool HasDancer>
struct Layout {
  static constexpr std::size_t spans = Spans;
  static constexpr bool has_dancer = HasDancer;
  static constexpr std::size_t first_idler = first_web + Spans;
  static constexpr std::size_t dancer_place = first_idler + Spans - 1;  // [m] from the middle, > 0 takes web up
  static constexpr std::size_t dancer_speed = dancer_place + 1;         // [m/s]
  static constexpr std::size_t size = dancer_place + (HasDancer ? 2 : 0);
  template <class Real>
  using State = std::array<Real, size>;
};

/// What line and regulator do over a stretch of time: speed and set pressure change evenly.
struct Drive {
  double begin{};         // [s] time at which `line_speed` holds
  double line_speed{};    // [m/s]
  double acceleration{};  // [m/s²]
  double set_pressure{};  // [Pa] gauge, behind the dead time
  double brake_share{1};  // [1] of the plant's torque per pressure: pairs engaged, friction left by heat
  double dancer_force{};  // [N] in the middle of its travel
  bool broken{};          // the web has parted
  double speed_at(double t) const { return line_speed + acceleration * (t - begin); }
};

/// Whether the roll turns or the brake holds it, and whether the dancer lies at a stop.
struct Motion {
  enum class Roll { forward, held, backward };
  enum class Dancer { free, at_low_stop, at_high_stop };
  Roll roll{Roll::forward};
  Dancer dancer{Dancer::free};
  bool operator==(const Motion&) const = default;
};

inline numerics::SineCosine sine_and_cosine(double angle) { return numerics::sine_and_cosine(angle); }

struct DualSineCosine {
  numerics::Dual sine, cosine;
};
inline DualSineCosine sine_and_cosine(const numerics::Dual& angle) { return {sin(angle), cos(angle)}; }

/// What follows from a plant alone, so that a step need not divide.
struct Fixed {
  double compliance{};   // [1/N] 1/EA
  double entering{1};    // [1] unstretched web in a metre that leaves the roll
  double wound{};        // [1] strain that it has inside the roll
  double per_lag{};      // [1/s] of the air; zero without lag
  double thinning{};     // [m] of radius a radian
  double core_fourth{};  // [m⁴]
};

inline Fixed fixed_of(const Plant& plant) {
  Fixed fixed;
  fixed.compliance = 1 / plant.path.stiffness;
  fixed.wound = plant.path.wound_in * fixed.compliance;
  fixed.entering = 1 / (1 + fixed.wound);
  fixed.per_lag = plant.air.lag > 0 ? 1 / plant.air.lag : 0;
  fixed.thinning = plant.roll.caliper / (2 * std::numbers::pi);
  const double core = plant.roll.core_radius;
  fixed.core_fourth = core * core * core * core;
  return fixed;
}

/// The roll's surface at an angle: h, h′ and h″ [m].
template <class Real>
struct Surface {
  Real h, slope, bend;
};

template <class Real>
[[gnu::always_inline]] inline Surface<Real> surface(const RollPlant& roll, const Real& at_radius,
                                                    const Real& at_angle) {
  if (roll.runout == 0) return {at_radius, Real(0), Real(0)};
  const double n = roll.lobes;
  const auto [sine, cosine] = sine_and_cosine(Real(n * at_angle));
  const Real out = roll.runout * cosine;
  return {at_radius + out, -n * roll.runout * sine, -n * n * out};
}

/// Tension [N] of web in a span: EA (L/w − 1)⁺.
template <class Real>
Real tension_of(double stiffness, const Real& length, const Real& web) {
  return web < length ? Real(stiffness * (length / web - 1)) : Real(0);
}

/// Web [m], unstretched, of a span at a tension [N].
inline double web_at(double stiffness, double length, double tension) { return length / (1 + tension / stiffness); }

/// The web between roll and nip in a state.
template <class L, class Real>
struct WebView {
  std::array<Real, L::spans> length;   // [m] of each span
  std::array<Real, L::spans> elastic;  // [N] EA ε
  std::array<Real, L::spans> tension;  // [N] with the loss, never below zero
  std::array<Real, L::spans> leaving;  // [m/s] unstretched web out of each span
  std::array<Real, L::spans> lost;     // [W] by the loss
  Real entering;                       // [m/s] unstretched web off the roll
};

/// Spans at a line speed [m/s]. The roll stands when the brake holds it.
template <class L, class Real>
[[gnu::always_inline]] inline WebView<L, Real> web_of(const Plant& plant, const Fixed& fixed, const Drive& drive,
                                                      const Motion& motion, double line_speed,
                                                      const typename L::template State<Real>& y,
                                                      const Surface<Real>& rim) {
  WebView<L, Real> web;
  const PathPlant& path = plant.path;
  const std::size_t count = L::spans == 1 ? 1 : path.spans.size();
  const Real turning = motion.roll == Motion::Roll::held ? Real(0) : Real(y[speed]);
  web.entering = turning * (rim.h + rim.bend) * fixed.entering;
  Real flow_in = web.entering;
  for (std::size_t i = 0; i < count; ++i) {
    Real length(path.spans[i]);
    Real growth(0);
    if (i == 0) {
      length += rim.slope;
      growth += turning * rim.bend;
    }
    if constexpr (L::has_dancer) {
      if (path.dancer->span == i) {
        length += path.dancer->strands * y[L::dancer_place];
        if (motion.dancer == Motion::Dancer::free) growth += path.dancer->strands * y[L::dancer_speed];
      }
    }
    const Real amount = y[first_web + i];
    const bool taut = amount < length;
    const Real stretch = taut ? Real(length / amount) : Real(1);  // 1 + ε
    const bool last = i + 1 == count;
    const Real pulled = last ? Real(drive.broken ? 0 : line_speed)
                             : Real(y[L::first_idler + (last ? 0 : i)] * path.idlers[last ? 0 : i].radius);
    web.length[i] = length;
    web.leaving[i] = pulled / stretch;
    web.elastic[i] = web.tension[i] = web.lost[i] = Real(0);
    if (taut && !drive.broken) {
      web.elastic[i] = path.stiffness * (stretch - 1);
      web.tension[i] = web.elastic[i];
      if (path.retardation > 0) {
        // w dε/dt = dL/dt − (in − out)(1 + ε)
        const Real drawn = growth - (flow_in - web.leaving[i]) * stretch;
        const Real extra = path.stiffness * path.retardation * drawn / amount;
        if (web.elastic[i] + extra > 0)
          web.tension[i] += extra;
        else
          web.tension[i] = Real(0);
        web.lost[i] = (web.tension[i] - web.elastic[i]) * drawn;
      }
    }
    flow_in = web.leaving[i];
  }
  return web;
}

/// Net force [N] on the dancer but for its damping.
template <class L, class Real>
Real dancer_push(const DancerPlant& dancer, const Drive& drive, const Real& place, const Real& tension) {
  return drive.dancer_force * (1 + dancer.taper * place / dancer.reach) - dancer.strands * tension;
}

/// Torque [N·m] on the roll by all but the brake.
template <class Real>
[[gnu::always_inline]] inline Real pull_on_roll(const RollPlant& roll, const Real& at_radius, const Real& at_angle,
                                                const Real& h, const Real& tension) {
  Real torque = tension * h;
  if (roll.gravity > 0 && roll.runout > 0) {
    const Real mass = 2 * roll.inertia_per_fourth * (at_radius * at_radius - roll.core_radius * roll.core_radius);
    torque += mass * roll.gravity * roll.runout * sine_and_cosine(at_angle).sine;
  }
  return torque;
}

/// dy/dt at a time [s].
template <class L, class Real>
typename L::template State<Real> derivative(const Plant& plant, const Fixed& fixed, const Drive& drive,
                                            const Motion& motion, double t, const typename L::template State<Real>& y,
                                            const Real& set_pressure) {
  typename L::template State<Real> rate{};
  const std::size_t count = L::spans == 1 ? 1 : plant.path.spans.size();
  const double line_speed = drive.speed_at(t);
  const Surface<Real> rim = surface(plant.roll, Real(y[radius]), Real(y[angle]));
  const WebView<L, Real> web = web_of<L, Real>(plant, fixed, drive, motion, line_speed, y, rim);
  // Strain energy of a metre of unstretched web, EA ε²/2.
  const auto stored = [&](std::size_t i) { return 0.5 * fixed.compliance * web.elastic[i] * web.elastic[i]; };

  // roll and brake
  const Real pull = pull_on_roll(plant.roll, Real(y[radius]), Real(y[angle]), rim.h, web.tension[0]);
  const bool held = motion.roll == Motion::Roll::held;
  const Real turning = held ? Real(0) : Real(y[speed]);
  const Real square = y[radius] * y[radius];
  if (!held) {
    const double sign = motion.roll == Motion::Roll::forward ? 1 : -1;
    const Real of_speed = 1 + plant.brake.friction_slope * sign * turning;
    const Real over = y[pressure] - plant.brake.threshold;
    Real braking(plant.brake.drag);
    if (over > 0 && of_speed > 0) braking += drive.brake_share * plant.brake.torque_per_pressure * over * of_speed;
    const Real inertia =
        plant.roll.fixed_inertia + plant.roll.inertia_per_fourth * (square * square - fixed.core_fourth);
    rate[speed] = (pull - sign * braking) / inertia;
    rate[slip_work] = braking * sign * turning;
  }
  rate[angle] = turning;
  rate[radius] = -fixed.thinning * turning;
  rate[pressure] = (set_pressure - y[pressure]) * fixed.per_lag;

  // web, and the work of all but the brake: by the line at the nip, less what goes away with the web, is lost in it,
  // where it leaves roll and idlers at another strain, and in idlers and dancer
  rate[first_web] = web.entering - web.leaving[0];
  Real work = web.entering * (web.elastic[0] * fixed.wound - stored(0)) + (pull - web.tension[0] * rim.h) * turning;
  if (plant.path.retardation > 0)
    work -= web.lost[0] +
            (web.tension[0] - web.elastic[0]) * web.entering * (fixed.compliance * web.elastic[0] - fixed.wound);
  for (std::size_t i = 0; i + 1 < count; ++i) {
    const IdlerPlant& idler = plant.path.idlers[i];
    const Real rolling = y[L::first_idler + i];
    const Real flow = web.leaving[i];
    rate[first_web + i + 1] = flow - web.leaving[i + 1];
    // Drag turns its sign over a few millimetres a second, so that an idler comes to rest without an event.
    using std::sqrt;
    const double creep = 0.005 / idler.radius;
    const Real drag = idler.drag * rolling / sqrt(rolling * rolling + creep * creep);
    rate[L::first_idler + i] = ((web.tension[i + 1] - web.tension[i]) * idler.radius - drag) / idler.inertia;
    const Real jump = web.elastic[i + 1] - web.elastic[i];
    work -= drag * rolling + 0.5 * fixed.compliance * flow * jump * jump + web.lost[i + 1] +
            (web.tension[i + 1] - web.elastic[i + 1]) * flow * fixed.compliance * jump;
  }
  if (!drive.broken) work += web.tension[count - 1] * line_speed - stored(count - 1) * web.leaving[count - 1];
  work += 2 * plant.roll.inertia_per_fourth * square * y[radius] * rate[radius] * turning * turning;
  if constexpr (L::has_dancer) {
    const DancerPlant& dancer = *plant.path.dancer;
    if (motion.dancer == Motion::Dancer::free) {
      const Real place = y[L::dancer_place];
      const Real moving = y[L::dancer_speed];
      const Real push = dancer_push<L, Real>(dancer, drive, place, web.tension[dancer.span]);
      rate[L::dancer_place] = moving;
      rate[L::dancer_speed] = (push - dancer.damping * moving) / dancer.mass;
      work += (push + dancer.strands * web.tension[dancer.span] - dancer.damping * moving) * moving;
    }
  }
  rate[pull_work] = work;
  return rate;
}

/// Energy [J] in roll, spans, idlers and dancer.
template <class L>
double stored_energy(const Plant& plant, const Drive& drive, const typename L::template State<double>& y) {
  const auto rim = surface(plant.roll, y[radius], y[angle]);
  const auto web = web_of<L, double>(plant, fixed_of(plant), drive, Motion{}, 0, y, rim);
  double energy = inertia_at(plant.roll, y[radius]) * y[speed] * y[speed] / 2;
  const std::size_t count = L::spans == 1 ? 1 : plant.path.spans.size();
  for (std::size_t i = 0; i < count; ++i)
    energy += web.elastic[i] * web.elastic[i] / (2 * plant.path.stiffness) * y[first_web + i];
  for (std::size_t i = 0; i + 1 < count; ++i)
    energy += plant.path.idlers[i].inertia * y[L::first_idler + i] * y[L::first_idler + i] / 2;
  if constexpr (L::has_dancer) energy += plant.path.dancer->mass * y[L::dancer_speed] * y[L::dancer_speed] / 2;
  return energy;
}

/// A state in steady running: line and rollers at one speed [m/s], tension [N] in the first span, radius [m], and the
/// pressure that keeps it with that share of the brake [1]. At a line speed of zero everything stands.
template <class L>
typename L::template State<double> steady_state(const Plant& plant, double line_speed, double tension, double at_radius,
                                                double brake_share) {
  typename L::template State<double> y{};
  const std::size_t count = L::spans == 1 ? 1 : plant.path.spans.size();
  const double stiffness = plant.path.stiffness;
  y[radius] = at_radius;
  double in_span = tension;
  // The same flow of unstretched web everywhere: v₂ u at the nip.
  std::array<double, L::spans> strain{};
  for (std::size_t i = 0; i < count; ++i) {
    strain[i] = in_span / stiffness;
    y[first_web + i] = web_at(stiffness, plant.path.spans[i], in_span);
    if (i + 1 < count && line_speed > 0) in_span += plant.path.idlers[i].drag / plant.path.idlers[i].radius;
  }
  const double flow = line_speed / (1 + strain[count - 1]);
  for (std::size_t i = 0; i + 1 < count; ++i)
    y[L::first_idler + i] = flow * (1 + strain[i]) / plant.path.idlers[i].radius;
  y[speed] = flow * (1 + plant.path.wound_in / stiffness) / at_radius;
  const double asked = tension * surface(plant.roll, y[radius], y[angle]).h - plant.brake.drag;
  const double of_speed = std::max(1e-9, 1 + plant.brake.friction_slope * y[speed]);
  y[pressure] = plant.brake.threshold;
  const double gain = plant.brake.torque_per_pressure * brake_share * of_speed;
  if (asked > 0 && gain > 0) y[pressure] += asked / gain;
  return y;
}

}  // namespace holdback::dynamics
