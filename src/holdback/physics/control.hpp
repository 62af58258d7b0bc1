// What a tension loop over an unwind must live with: the linear plant from brake torque to tension at one diameter, its
// mode, the shake of a roll that is out of round, the lag of the air, and settings of a PI controller.
//
// Plant. Roll: J dω/dt = T R − M_b − M_d. Span from the roll to the first driven nip, linear in strain [campbell1958]:
// L dT/dt = EA (v₂ − v₁) + v₁ T₀ − v₂ T with v₁ = ω R; against the exact balance of mass the web is too soft by about
// two strains (0.2 % at a strain of 0.1 %). Small changes at constant nip speed, radius and inertia:
//   (J s + D) δω = R δT − δM,   (L s + v) δT = −(EA − T₀) R δω,   D = d(M_b + M_d)/dω.
// Left out: the thinning of the roll during one swing, web that creeps, idlers with inertia, the give of the frame.
// Values that no machine has count as the nearest that one could have: sizes below zero as zero, above 1e12 as 1e12.
#pragma once

#include <complex>
#include <functional>
#include <vector>

namespace holdback::physics {

/// One diameter of a running roll, and the span behind it.
struct UnwindPoint {
  double inertia{};        // [kg·m²] J, of all that turns with the roll
  double radius{};         // [m] R
  double span{};           // [m] L, length of web from the roll to the first driven nip
  double stiffness{};      // [N] EA, modulus times cross section over the whole width
  double speed{};          // [m/s] v, of the web
  double wound_tension{};  // [N] T₀, over the whole width, which the web still has inside the roll; zero: stress-free
  double torque_slope{};   // [N·m·s] D, rise of brake and drag torque with roll speed; negative: falling friction
};

/// An oscillation: undamped frequency and share of critical damping, negative where it grows.
struct SwingMode {
  double frequency{};  // [rad/s]
  double damping{};    // [1]
};

/// Mode of roll against span: ω² = ((EA − T₀) R² + D v)/(J L), 2 ζ ω = v/L + D/J. Derived from the plant;
/// √(EA R²/(J L)) for a stress-free roll without D (check S-3). Infinite and undamped without inertia or span. Where
/// there is nothing to swing against the frequency is zero and the damping infinite; where falling friction outweighs
/// the span's stiffness the roll runs away, and the damping is −∞.
SwingMode unwind_mode(const UnwindPoint& point);

/// Change of steady tension by a change of brake torque [1/m]: E' R/(E' R² + D v), E' = EA − T₀; 1/R without D. Zero
/// without radius or stiffness; infinite where falling friction outweighs the span's stiffness. Derived.
double unwind_gain(const UnwindPoint& point);

/// Response of tension to brake torque at s [rad/s], in N per N·m: E' R/((J s + D)(L s + v) + E' R²). Derived. Infinite
/// (real, positive) at a pole.
std::complex<double> unwind_response(const UnwindPoint& point, std::complex<double> s);

/// Rise of brake torque with roll speed [N·m·s] by a friction that depends on sliding speed: M (dμ/dv)/μ r_e, M the
/// torque [N·m] at constant pressure, μ and its slope [s/m] at the sliding speed ω r_e, r_e the friction radius [m].
/// Zero for μ ≤ 0. Derived; the negative damping of a falling friction is [denhartog]'s.
double friction_torque_slope(double torque, double friction, double friction_slope, double friction_radius);

/// Web speed [m/s] below which the mode of this diameter grows into stick-slip, from net damping v/L + D/J = 0:
/// v = −L D/J. Zero where D ≥ 0, infinite without inertia. D is taken as constant; the brake's pressure too, so that a
/// controller adds to neither side. Derived.
double stick_slip_onset(const UnwindPoint& point);

/// Amplitude of tension per metre of runout [N/m] of a roll with radius R + e cos nθ, n `lobes` (1 off centre, 2 oval),
/// at the frequency s = i n v/R: |((J s + D) ω (E' − n² (T − T₀)) + E' R T)/((J s + D)(L s + v) + E' R²)|, ω = v/R.
/// The web leaves at ω h along the span, h the distance of its line from the axis; the span grows at ω d²h/dθ², which
/// counts only by the strain T − T₀ it brings; the torque is T h. Small e against R; brake torque constant. The roll's
/// weight off the axis comes on top: its torque m g e through unwind_response() at the same s, in a phase that the
/// web's direction sets. Derived, after [branca2013]. Infinite on an undamped mode; lobes below 1 count as 1.
double runout_tension(const UnwindPoint& point, double tension, int lobes = 1);

/// Web speed [m/s] at which the runout's frequency n v/(2π R) meets the mode at this diameter: the positive root of
/// n² v² J L = R² (E' R² + D v). `point.speed` is not used. Derived. Infinite without inertia or span. The shake is
/// highest close to it while the damping is small.
double runout_resonance_speed(const UnwindPoint& point, int lobes = 1);

/// Radii [m] at which that happens at `point.speed`, from the largest down, between a largest and a smallest radius,
/// the inertia [kg·m²] given at each. `point.radius` and `point.inertia` are not used. Found between 400 even steps of
/// ln R to 1e-12 of the radius. None for a range that is empty or not positive.
std::vector<double> runout_resonance_radii(const UnwindPoint& point, const std::function<double(double)>& inertia_at,
                                           double largest, double smallest, int lobes = 1);

/// Overshoot [1] of a second-order system after a step: e^(−πζ/√(1 − ζ²)); unwind_response() is one. Zero for ζ ≥ 1,
/// one at ζ = 0, infinite below. [astrom2008], ch. 6.
double step_overshoot(double damping);

/// Time of that overshoot [s] after the step: π/(ω √(1 − ζ²)). Infinite where there is no first peak that is the
/// highest: ζ ≥ 1, ζ < 0, ω ≤ 0. [astrom2008], ch. 6.
double step_peak_time(double frequency, double damping);

/// The air between regulator and pad as a factor of the loop [1] at s [rad/s]: e^(−sθ)/(τ s + 1), τ the time constant
/// and θ the dead time [s]. A model for small changes of pressure, common practice, no source. Infinite at its pole.
std::complex<double> pneumatic_lag(std::complex<double> s, double time_constant, double dead_time);

/// Settings of a PI controller u = K (e + ∫e dt/τ_I).
struct PiSettings {
  double gain{};           // K, unit of the controller's output over that of its input
  double integral_time{};  // [s] τ_I
  double integral_gain{};  // K/τ_I [gain/s], the limit where both are zero
};

/// Settings for a plant k e^(−θs)/(τ s + 1) by the SIMC rule [skogestad2003]: K = τ/(k (τ_c + θ)),
/// τ_I = min(τ, 4 (τ_c + θ)). `gain` k of the plant, its sign kept; τ, θ and the wanted closed-loop time constant τ_c
/// in s. τ_c = θ is tight and gives a gain margin of π (check K-1); more is smoother. A plant without time constant
/// gets an integrator alone. Infinite (of the plant's sign) for k = 0 or τ_c + θ = 0.
PiSettings first_order_pi(double gain, double time_constant, double dead_time, double closed_loop_time);

/// The same rule for an integrating plant k' e^(−θs)/s, or one far slower than the loop: K = 1/(k' (τ_c + θ)),
/// τ_I = 4 (τ_c + θ). `slope` k' is the plant's output per second for a unit of input.
PiSettings integrating_pi(double slope, double dead_time, double closed_loop_time);

/// Response of that controller at s [rad/s]: K + (K/τ_I)/s. Infinite (real, of the gain's sign) at s = 0 but for a
/// controller without integral gain.
std::complex<double> pi_response(const PiSettings& settings, std::complex<double> s);

}  // namespace holdback::physics
