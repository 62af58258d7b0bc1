#include "holdback/physics/control.hpp"

#include <complex>
#include <numbers>
#include <vector>

#include "holdback/numerics/frequency.hpp"
#include "holdback/numerics/linear.hpp"
#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using std::numbers::pi;
using testing::derivative;
using testing::infinity;
using testing::near;
using Complex = std::complex<double>;

/// Published check S-3 at its start; invented slope of torque and wound tension where a test wants them.
UnwindPoint start_of_s_3() { return {32.6184369187, 0.4, 3, 2e5, 5, 0, 0}; }

UnwindPoint with_all() { return {20, 0.3, 4, 1.5e5, 3, 90, 1.5}; }

const std::vector<double> extremes{0, -1, 1, 1e-300, -1e-300, 1e300, -1e300, 1e-12, 1e12};

bool is_number(double x) { return !std::isnan(x); }
bool is_number(Complex x) { return is_number(x.real()) && is_number(x.imag()); }

// ---- the plant as it is written down, not yet linear
// ------------------------------------------------------------------

/// Rates of tension and roll speed: J dω/dt = T h − M, L dT/dt = EA (v₂ − ω h) + ω h T₀ − v₂ T − (T − T₀) dL/dt, with
/// h = R + δ the distance of the web's line from the axis and dL/dt = −n² ω δ, for a roll of R + δ cos nθ.
struct Rates {
  double tension{};
  double speed{};
};

Rates rates(const UnwindPoint& p, double tension, double speed, double torque, double offset, int lobes) {
  const double h = p.radius + offset, growth = -lobes * lobes * speed * offset;
  return {(p.stiffness * (p.speed - speed * h) + speed * h * p.wound_tension - p.speed * tension -
           (tension - p.wound_tension) * growth) /
              p.span,
          (tension * h - torque - p.torque_slope * (speed - p.speed / p.radius)) / p.inertia};
}

enum class Input { torque, offset };

/// The plant linearised by differences around a tension, at a roll speed of v/R.
numerics::StateSpace linearised(const UnwindPoint& p, double tension, Input input, int lobes) {
  const double speed = p.speed / p.radius, torque = tension * p.radius;
  const auto of = [&](double Rates::*part, int varied) {
    return derivative(
        [&](double x) {
          return rates(p, varied == 0 ? x : tension, varied == 1 ? x : speed, varied == 2 ? x : torque,
                       varied == 3 ? x : 0.0, lobes).*
                 part;
        },
        varied == 0   ? tension
        : varied == 1 ? speed
        : varied == 2 ? torque
                      : 0.0);
  };
  const int by = input == Input::torque ? 2 : 3;
  return {{2, {of(&Rates::tension, 0), of(&Rates::tension, 1), of(&Rates::speed, 0), of(&Rates::speed, 1)}},
          {of(&Rates::tension, by), of(&Rates::speed, by)},
          {1, 0},
          0};
}

TEST(unwind_mode, is_that_of_published_check_s_3) {
  // Computed: √(EA R²/(L J)) with the inputs of the simulation.
  EXPECT_TRUE(near(unwind_mode(start_of_s_3()).frequency, 18.0835124, 3e-9));
}

TEST(unwind_mode, is_that_of_the_plant_linearised_by_differences) {
  for (const UnwindPoint& point : {start_of_s_3(), with_all()}) {
    const auto poles = numerics::modes(linearised(point, 150, Input::torque, 1).a);
    ASSERT_EQ(poles.size(), 1U);
    const SwingMode mode = unwind_mode(point);
    EXPECT_TRUE(near(mode.frequency, poles[0].frequency, 1e-8));
    EXPECT_TRUE(near(mode.damping, poles[0].damping, 1e-7));
  }
}

TEST(unwind_mode, rises_with_stiffness_and_is_damped_by_speed_and_drag) {
  UnwindPoint point = start_of_s_3();
  const SwingMode mode = unwind_mode(point);
  EXPECT_TRUE(near(2 * mode.damping * mode.frequency, 5.0 / 3));  // v/L
  point.torque_slope = 3;
  EXPECT_GT(unwind_mode(point).damping, mode.damping);
  point.torque_slope = -60;
  EXPECT_LT(unwind_mode(point).damping, 0);
  point = start_of_s_3();
  point.stiffness *= 4;
  EXPECT_TRUE(near(unwind_mode(point).frequency, 2 * mode.frequency));
}

TEST(unwind_mode, at_its_limits) {
  UnwindPoint point = start_of_s_3();
  point.inertia = 0;
  EXPECT_EQ(unwind_mode(point).frequency, infinity);
  point = start_of_s_3();
  point.stiffness = 0;
  EXPECT_EQ(unwind_mode(point).frequency, 0);
  EXPECT_EQ(unwind_mode(point).damping, infinity);
  point.torque_slope = -1;
  EXPECT_EQ(unwind_mode(point).damping, -infinity);
}

TEST(unwind_gain, is_one_over_the_radius) {
  EXPECT_TRUE(near(unwind_gain(start_of_s_3()), 1 / 0.4));
  UnwindPoint core = start_of_s_3();
  core.radius = 0.08;
  EXPECT_TRUE(near(unwind_gain(core), 1 / 0.08));
}

TEST(unwind_gain, is_the_change_of_the_steady_tension) {
  // Steady state with M_b + D ω: T R = M + D (ω − ω₀), EA (v₂ − ωR) + ωR T₀ = v₂ T, solved for T by hand.
  const UnwindPoint p = with_all();
  const double soft = p.stiffness - p.wound_tension;
  const auto tension = [&](double torque) {
    const double omega_0 = p.speed / p.radius;
    return (torque - p.torque_slope * omega_0 + p.torque_slope * p.stiffness * p.speed / (soft * p.radius)) /
           (p.radius + p.torque_slope * p.speed / (soft * p.radius));
  };
  EXPECT_TRUE(near(unwind_gain(p), derivative(tension, 60.0), 1e-9));
}

TEST(unwind_gain, at_its_limits) {
  UnwindPoint point = start_of_s_3();
  point.radius = 0;
  EXPECT_EQ(unwind_gain(point), 0);
  point = start_of_s_3();
  point.torque_slope = -1e6;
  EXPECT_EQ(unwind_gain(point), infinity);
}

TEST(unwind_response, is_that_of_the_plant_linearised_by_differences) {
  for (const UnwindPoint& point : {start_of_s_3(), with_all()}) {
    const numerics::StateSpace system = linearised(point, 150, Input::torque, 1);
    for (const Complex s : {Complex{0, 0}, Complex{0, 1}, Complex{0, 15}, Complex{0, 200}, Complex{-1, 4}}) {
      const Complex expected = numerics::transfer(system, s);
      EXPECT_LT(std::abs(unwind_response(point, s) - expected), 2e-6 * std::abs(expected)) << s;
    }
  }
}

TEST(unwind_response, begins_at_the_gain_and_falls_with_the_square) {
  const UnwindPoint point = with_all();
  EXPECT_TRUE(near(unwind_response(point, 0).real(), unwind_gain(point)));
  const double far = 1e5;
  EXPECT_TRUE(near(std::abs(unwind_response(point, {0, far})) * far * far,
                   (point.stiffness - point.wound_tension) * point.radius / (point.inertia * point.span), 1e-4));
}

TEST(unwind_response, is_infinite_at_an_undamped_mode) {
  UnwindPoint point{1, 1, 1, 4, 0, 0, 0};
  EXPECT_EQ(unwind_response(point, {0, 2}), Complex(infinity));
  point.stiffness = 0;
  EXPECT_EQ(unwind_response(point, {0, 2}), Complex());
}

// ---- friction
// -----------------------------------------------------------------------------------------------------------

TEST(friction_torque_slope, is_the_derivative_of_the_torque) {
  const double force = 700, radius = 0.15, slope = -0.004;
  const auto friction = [&](double speed) { return 0.4 + slope * speed; };
  const auto torque = [&](double omega) { return 2 * force * friction(omega * radius) * radius; };
  const double omega = 12;
  EXPECT_TRUE(near(friction_torque_slope(torque(omega), friction(omega * radius), slope, radius),
                   derivative(torque, omega), 1e-8));
  EXPECT_EQ(friction_torque_slope(60, 0, -0.004, 0.15), 0);
}

TEST(stick_slip_onset, is_where_the_mode_changes_from_decay_to_growth) {
  UnwindPoint point = start_of_s_3();
  point.torque_slope = -20;
  const double onset = stick_slip_onset(point);
  // NumPy, RK4 of the exact strain balance at light tension, growth rate zero between 1.75 and 1.95 m/s (computed).
  EXPECT_TRUE(near(onset, 1.83944123, 1e-5));
  for (const double share : {0.99, 1.01}) {
    point.speed = onset * share;
    const double damping = numerics::modes(linearised(point, 150, Input::torque, 1).a)[0].damping;
    EXPECT_EQ(damping < 0, share < 1);
  }
}

TEST(stick_slip_onset, is_nowhere_without_falling_friction) {
  EXPECT_EQ(stick_slip_onset(start_of_s_3()), 0);
  UnwindPoint point = start_of_s_3();
  point.torque_slope = -20;
  point.inertia = 0;
  EXPECT_EQ(stick_slip_onset(point), infinity);
}

// ---- runout
// -------------------------------------------------------------------------------------------------------------

TEST(runout_tension, is_that_of_the_plant_linearised_by_differences) {
  for (const UnwindPoint& point : {start_of_s_3(), with_all()}) {
    for (const int lobes : {1, 2, 5}) {
      const double frequency = lobes * point.speed / point.radius, tension = 150;
      const Complex expected = numerics::transfer(linearised(point, tension, Input::offset, lobes), {0, frequency});
      EXPECT_TRUE(near(runout_tension(point, tension, lobes), std::abs(expected), 2e-6)) << lobes;
    }
  }
}

TEST(runout_tension, is_that_of_a_simulation_with_the_exact_strain_balance) {
  // NumPy, RK4: d/dt[S/(1 + ε)] = (h + h'') ω/(1 + ε₀) − v₂/(1 + ε), S = L + h', T = EA ε, J dω/dt = T h − M; amplitude
  // by least squares over 8 swings after the start has died away (computed). Light tension: the linear strain is exact.
  UnwindPoint point = start_of_s_3();
  EXPECT_TRUE(near(runout_tension(point, 1.5, 1), 60548.6263, 1e-4));
  EXPECT_TRUE(near(runout_tension(point, 1.5, 2), 69241.2474, 1e-4));
  // At 150 N, a strain of 0.075 %, it is not.
  EXPECT_TRUE(near(runout_tension(point, 150, 1), 60259.0659, 5e-3));
  point.speed = 1;
  EXPECT_TRUE(near(runout_tension(point, 150, 3), 4597.86082, 2.5e-3));
}

TEST(runout_tension, of_a_slow_roll_is_that_of_the_lever_arm) {
  // T h = M: T falls as 1/h, dT/dh = −T/R.
  UnwindPoint point = start_of_s_3();
  point.speed = 1e-3;
  EXPECT_TRUE(near(runout_tension(point, 150), 150 / 0.4, 1e-4));
}

TEST(runout_tension, of_a_heavy_roll_is_that_of_the_span_alone) {
  // A roll that cannot change its speed feeds ω e into the span: |EA ω/(s L + v)|, here with s = i v/R.
  UnwindPoint point = start_of_s_3();
  point.inertia = 1e9;
  const double omega = 5.0 / 0.4;
  EXPECT_TRUE(near(runout_tension(point, 0), 2e5 * omega / std::hypot(3 * omega, 5), 1e-6));
}

TEST(runout_tension, at_its_limits) {
  UnwindPoint point = start_of_s_3();
  point.radius = 0;
  EXPECT_EQ(runout_tension(point, 150), infinity);
  EXPECT_EQ(runout_tension({}, 150), infinity);
  EXPECT_EQ(runout_tension(start_of_s_3(), 150, -3), runout_tension(start_of_s_3(), 150, 1));
}

TEST(runout_resonance_speed, is_where_the_runout_turns_at_the_mode) {
  for (const UnwindPoint& given : {start_of_s_3(), with_all()}) {
    for (const int lobes : {1, 2}) {
      UnwindPoint point = given;
      point.speed = runout_resonance_speed(point, lobes);
      EXPECT_TRUE(near(lobes * point.speed / point.radius, unwind_mode(point).frequency, 1e-12));
    }
  }
  UnwindPoint falling = start_of_s_3();
  falling.torque_slope = -20;
  falling.speed = runout_resonance_speed(falling);
  EXPECT_TRUE(near(falling.speed / falling.radius, unwind_mode(falling).frequency, 1e-12));
  falling.inertia = 0;
  EXPECT_EQ(runout_resonance_speed(falling), infinity);
}

TEST(runout_resonance_speed, hardly_depends_on_the_diameter_of_a_roll_of_web_alone) {
  // J = ½ π ρ w R⁴ makes R² √(EA/(L J)) = √(2 EA/(π ρ w L)) at every radius, by hand.
  const double density_width = 800;
  for (const double radius : {0.1, 0.3, 0.6}) {
    const UnwindPoint point{pi / 2 * density_width * std::pow(radius, 4), radius, 3, 2e5, 5, 0, 0};
    EXPECT_TRUE(near(runout_resonance_speed(point), std::sqrt(2 * 2e5 / (pi * density_width * 3))));
  }
}

TEST(runout_resonance_speed, is_close_to_the_highest_shake) {
  UnwindPoint point = start_of_s_3();
  const double meeting = runout_resonance_speed(point);
  double worst = 0, at = 0;
  for (int i = 250; i <= 750; ++i) {
    point.speed = 0.002 * i * meeting;
    const double shake = runout_tension(point, 150) / point.speed;  // per speed of the disturbance
    if (shake <= worst) continue;
    worst = shake;
    at = point.speed;
  }
  EXPECT_TRUE(near(at, meeting, 0.02));
}

TEST(runout_resonance_radii, are_where_the_roll_turns_at_the_mode) {
  // The roll of check R-5: shaft and core of 0.5 kg·m² make the core slow, so that a speed is met once on the way.
  const auto inertia = [](double r) { return 0.5 + pi / 2 * 800 * (std::pow(r, 4) - std::pow(0.08, 4)); };
  UnwindPoint point = start_of_s_3();
  for (const double speed : {3.0, 5.0, 6.0}) {
    point.speed = speed;
    const std::vector<double> radii = runout_resonance_radii(point, inertia, 0.4, 0.08);
    ASSERT_EQ(radii.size(), 1U) << speed;
    point.radius = radii[0];
    point.inertia = inertia(radii[0]);
    EXPECT_TRUE(near(runout_resonance_speed(point), speed, 1e-11));
  }
}

TEST(runout_resonance_radii, are_none_where_no_speed_fits) {
  const auto inertia = [](double r) { return 0.5 + 1256 * std::pow(r, 4); };
  UnwindPoint point = start_of_s_3();
  point.speed = 50;
  EXPECT_TRUE(runout_resonance_radii(point, inertia, 0.4, 0.08).empty());
  EXPECT_TRUE(runout_resonance_radii(point, inertia, 0.08, 0.4).empty());
  EXPECT_TRUE(runout_resonance_radii(point, inertia, 0.4, 0).empty());
}

// ---- steps
// --------------------------------------------------------------------------------------------------------------

TEST(step_overshoot, is_that_of_published_check_k_3) {
  EXPECT_TRUE(near(step_overshoot(0.5), 0.163033534821, 1e-11));  // computed
  EXPECT_TRUE(near(step_overshoot(0.4), 0.25382672198, 1e-11));
}

TEST(step_overshoot, is_the_top_of_the_step_response) {
  // y = 1 − e^(−ζωt)(cos ω_d t + ζ/√(1 − ζ²) sin ω_d t), sampled around the time that is told.
  const double zeta = 0.2, omega = 3, damped = omega * std::sqrt(1 - zeta * zeta);
  const auto response = [&](double t) {
    return 1 - std::exp(-zeta * omega * t) * (std::cos(damped * t) + zeta * omega / damped * std::sin(damped * t));
  };
  const double top = step_peak_time(omega, zeta);
  EXPECT_TRUE(near(response(top), 1 + step_overshoot(zeta)));
  EXPECT_LT(std::abs(derivative(response, top)), 1e-8);
}

TEST(step_overshoot, at_its_limits) {
  EXPECT_EQ(step_overshoot(1), 0);
  EXPECT_EQ(step_overshoot(infinity), 0);
  EXPECT_EQ(step_overshoot(0), 1);
  EXPECT_EQ(step_overshoot(-0.1), infinity);
}

TEST(step_peak_time, is_that_of_published_check_k_3) {
  EXPECT_TRUE(near(step_peak_time(2, 0.5), 1.81379936423, 1e-11));  // computed
  EXPECT_EQ(step_peak_time(2, 1), infinity);
  EXPECT_EQ(step_peak_time(0, 0.5), infinity);
  EXPECT_EQ(step_peak_time(2, -0.5), infinity);
}

// ---- loop
// ---------------------------------------------------------------------------------------------------------------

TEST(pneumatic_lag, is_a_lag_and_a_dead_time) {
  const Complex value = pneumatic_lag({0, 3}, 0.25, 0.1);
  EXPECT_TRUE(near(std::abs(value), 1 / std::hypot(1, 0.75)));
  EXPECT_TRUE(near(std::arg(value), -0.3 - std::atan(0.75)));
  EXPECT_EQ(pneumatic_lag(0, 0.25, 0.1), Complex(1));
  EXPECT_EQ(pneumatic_lag(-4, 0.25, 0.1), Complex(infinity));
}

TEST(first_order_pi, is_that_of_published_check_k_1) {
  // [skogestad2003], table 1, from memory; numbers by hand.
  const PiSettings quick = first_order_pi(2, 1.5, 0.2, 0.2), slow = first_order_pi(2, 4, 0.2, 0.2);
  EXPECT_TRUE(near(quick.gain, 1.875));
  EXPECT_TRUE(near(quick.integral_time, 1.5));
  EXPECT_TRUE(near(slow.gain, 5));
  EXPECT_TRUE(near(slow.integral_time, 1.6));
  for (const PiSettings& settings : {quick, slow})
    EXPECT_TRUE(near(settings.integral_gain, settings.gain / settings.integral_time));
}

TEST(first_order_pi, cancels_the_lag_and_leaves_the_margins_of_check_k_1) {
  const double k = 2, tau = 1.5, theta = 0.2;
  const PiSettings settings = first_order_pi(k, tau, theta, theta);
  const auto margins = numerics::loop_margins(
      [&](Complex s) { return pi_response(settings, s) * k * pneumatic_lag(s, tau, theta); }, {1e-3, 1e4, 100, {}});
  EXPECT_TRUE(margins.stable);
  EXPECT_TRUE(near(margins.gain_margin, pi, 1e-10));
  EXPECT_TRUE(near(margins.phase_margin * 180 / pi, 61.3521102435, 1e-10));
  EXPECT_TRUE(near(margins.sensitivity, 1.59049023, 4e-9));
  EXPECT_TRUE(near(margins.delay_margin, 2.14159265 * theta, 2e-9));
}

TEST(first_order_pi, of_a_plant_without_lag_is_an_integrator) {
  const PiSettings settings = first_order_pi(2, 0, 0.2, 0.3);
  EXPECT_EQ(settings.gain, 0);
  EXPECT_TRUE(near(settings.integral_gain, 1));  // 1/(k (τ_c + θ))
  EXPECT_TRUE(near(first_order_pi(2, 1e-9, 0.2, 0.3).integral_gain, 1, 1e-8));
  EXPECT_LT(first_order_pi(-2, 1.5, 0.2, 0.2).gain, 0);
  EXPECT_EQ(first_order_pi(0, 1.5, 0.2, 0.2).gain, infinity);
  EXPECT_EQ(first_order_pi(-2, 1.5, 0, 0).gain, -infinity);
}

TEST(integrating_pi, is_the_limit_of_a_slow_lag) {
  const double slope = 0.7, tau = 1e9;
  const PiSettings limit = first_order_pi(slope * tau, tau, 0.2, 0.3), settings = integrating_pi(slope, 0.2, 0.3);
  EXPECT_TRUE(near(settings.gain, limit.gain));
  EXPECT_TRUE(near(settings.integral_time, limit.integral_time));
  EXPECT_TRUE(near(settings.integral_gain, limit.integral_gain));
}

TEST(integrating_pi, leaves_the_margins_that_the_rule_promises) {
  // [skogestad2003], table of robustness, from memory: integrating plant with τ_c = θ has gain margin 2.96, phase
  // margin 46.9°, Ms 1.70, Mt 1.30 and bears a delay of 1.59 θ more.
  const double theta = 0.5;
  const PiSettings settings = integrating_pi(0.7, theta, theta);
  const auto found = numerics::loop_margins(
      [&](Complex s) { return pi_response(settings, s) * 0.7 * pneumatic_lag(s, 0, theta) / s; }, {1e-3, 1e3, 100, {}});
  EXPECT_TRUE(found.stable);
  EXPECT_NEAR(found.gain_margin, 2.96, 0.005);
  EXPECT_NEAR(found.phase_margin * 180 / pi, 46.9, 0.05);
  EXPECT_NEAR(found.sensitivity, 1.70, 0.005);
  EXPECT_NEAR(found.complementary_sensitivity, 1.30, 0.005);
  EXPECT_NEAR(found.delay_margin / theta, 1.59, 0.005);
}

TEST(pi_response, is_proportional_and_integral) {
  const PiSettings settings{5, 1.6, 5 / 1.6};
  const Complex s{0.3, 2};
  EXPECT_LT(std::abs(pi_response(settings, s) - 5.0 * (1.0 + 1.0 / (1.6 * s))), 1e-14);
  EXPECT_EQ(pi_response(settings, 0), Complex(infinity));
  EXPECT_EQ(pi_response({3, 0, 0}, 0), Complex(3));
  // Published check K-2, second loop: margins computed with Octave control.
  const PiSettings tuned{2, 0.8, 2.5};
  const auto found = numerics::loop_margins(
      [&](Complex p) { return pi_response(tuned, p) / ((0.5 * p + 1.0) * (0.1 * p + 1.0) * (0.02 * p + 1.0)); },
      {1e-3, 1e4, 100, {}});
  EXPECT_TRUE(near(found.gain_margin, 16.38862774, 1e-7));
  EXPECT_TRUE(near(found.phase_margin * 180 / pi, 77.02666347, 1e-7));
  EXPECT_TRUE(near(found.gain_margin_frequency, 23.34083211, 1e-7));
  EXPECT_TRUE(near(found.phase_margin_frequency, 3.47170195, 1e-7));
}

// ---- no input makes not-a-number
// ----------------------------------------------------------------------------------------

void expect_numbers(const UnwindPoint& point) {
  EXPECT_TRUE(is_number(unwind_mode(point).frequency) && is_number(unwind_mode(point).damping));
  EXPECT_TRUE(is_number(unwind_gain(point)) && is_number(stick_slip_onset(point)));
  for (const double x : extremes) {
    EXPECT_TRUE(is_number(unwind_response(point, {x, -x})) && is_number(unwind_response(point, {0, x})));
    EXPECT_TRUE(is_number(runout_tension(point, x, 2)));
  }
  EXPECT_TRUE(is_number(runout_resonance_speed(point, 2)));
  EXPECT_NO_THROW(runout_resonance_radii(
      point, [&](double) { return point.inertia; }, 1, 0.01));
}

TEST(unwind_response, and_all_of_the_plant_are_numbers_everywhere) {
  const std::vector<double UnwindPoint::*> fields{
      &UnwindPoint::inertia, &UnwindPoint::radius,        &UnwindPoint::span,        &UnwindPoint::stiffness,
      &UnwindPoint::speed,   &UnwindPoint::wound_tension, &UnwindPoint::torque_slope};
  for (const auto one : fields) {
    for (const auto other : fields) {
      for (const double x : extremes) {
        for (const double y : extremes) {
          UnwindPoint point = with_all();
          point.*one = x;
          point.*other = y;
          expect_numbers(point);
        }
      }
    }
  }
}

TEST(first_order_pi, and_all_of_the_loop_are_numbers_everywhere) {
  for (const double x : extremes) {
    for (const double y : extremes) {
      EXPECT_TRUE(is_number(step_overshoot(x)) && is_number(step_peak_time(x, y)));
      EXPECT_TRUE(is_number(friction_torque_slope(x, y, x, y)) && is_number(friction_torque_slope(x, y, y, x)));
      for (const double z : extremes) {
        EXPECT_TRUE(is_number(pneumatic_lag({x, y}, z, x)) && is_number(pneumatic_lag({x, y}, y, z)));
        for (const PiSettings& settings :
             {first_order_pi(x, y, z, x), first_order_pi(y, x, z, z), integrating_pi(x, y, z)}) {
          EXPECT_TRUE(is_number(settings.gain) && is_number(settings.integral_time) &&
                      is_number(settings.integral_gain));
          EXPECT_TRUE(is_number(pi_response(settings, {y, z})) && is_number(pi_response(settings, x)));
        }
      }
    }
  }
}

}  // namespace
}  // namespace holdback::physics
