// The tension of a web that stands still or runs, from what a gauge, a ruler, a microphone or a load cell says on site.
// Symbols: T tension over the whole width, T' per width, S free span between two rollers, δ push or sag, w weight per
// length, b basis weight, β wrap.
#pragma once

namespace holdback::physics {

/// A span that is pushed sideways. Lengths [m].
struct PushedSpan {
  double span{};   // > 0, between the lines where the web leaves its rollers
  double place{};  // 0 … span, from one end to where it is pushed; half of the span is the middle
  double held{};   // ≥ span, web between the two places that hold it fast; infinite where something keeps its tension
};

/// How much longer the way of the web becomes [m]: ΔL = √(a² + δ²) − a + √(b² + δ²) − b, a and b the two parts of the
/// span. Exact, and without loss of digits for a small push.
double push_lengthening(const PushedSpan& span, double push);

/// Tension while the web is pushed [N]: T = F/(sin φ_a + sin φ_b), in the middle F/(2 sin φ). The bar slides along the
/// web, so both sides pull alike; the force is square to the web at rest. Zero force gives zero; push > 0. Statics.
double pushed_tension(const PushedSpan& span, double push, double force);

/// Tension before the push [N]: the push lengthens the web between the places that hold it, T = EA ((1 + ε₀)(1 + ΔL/h)
/// − 1), so T₀ = (T − EA ΔL/h)/(1 + ΔL/h); `stiffness` EA = E w t [N] ≥ 0. Negative where the force is less than the
/// push alone would ask for. Hooke's law, web weightless beside T; check T-2. Source: [beer2010] for the statics.
double tension_before_push(const PushedSpan& span, double push, double force, double stiffness);

/// The force [N] that a push takes on a web of tension T₀: tension_before_push() solved for F.
double push_force(const PushedSpan& span, double push, double tension, double stiffness);

/// The usual short cut [N]: F/(δ/a + δ/b), in the middle F S/(4 δ). Reads the tension while pushed, and more.
double simple_push_tension(const PushedSpan& span, double push, double force);

/// A level span that hangs by its own weight.
struct Catenary {
  double lowest{};  // [N] at the lowest place, and the level pull on the rollers
  double end{};     // [N] at the rollers
  double length{};  // [m] of web in the span
  double slope{};   // [rad] at the rollers
};

/// The catenary of a sag [m] > 0 in a level span [m] > 0 under a weight per length [N/m] > 0: c with s = c (cosh(S/2c)
/// − 1), lowest tension w c, at the rollers w (c + s). Bending of the web left out. To 1e-13 in c; check T-1. Source:
/// [beer2010].
Catenary catenary_of_sag(double weight_per_length, double span, double sag);

/// Sag [m] of a level span whose tension at the rollers is T: the inverse of catenary_of_sag(), of the two the flat
/// one. Infinite where no catenary carries so little (T < 1.5089 w S/2).
double catenary_sag(double weight_per_length, double span, double tension);

/// Air that swings with a web of width W in a span S, first mode, as mass per area of web [kg/m²]: ρ W ((π/4)^(−3/2) +
/// (2 S/(π W))^(−3/2))^(−2/3). Between its two exact ends, a narrow strip (ρ π W/4) and a wide sheet (2 ρ S/π), within
/// 3 % of the potential flow around a strip that swings as a sine; air free on both sides, far slower than sound.
/// Sources: [lamb1932] for the narrow end, our own numbers between (tests/published/scripts/carried_air.py).
double carried_air(double width, double span, double air_density);

/// Frequency [Hz] of a plucked span: f = n/(2 S) √(T'/m), m mass per area with the air it carries, n its partial.
/// Bending stiffness left out; standing web. Source: [denhartog]; check T-3.
double span_frequency(double tension_per_width, double mass_per_area, double span, int partial = 1);

/// Tension per width [N/m] of a frequency [Hz]: T' = m (2 S f/n)², span_frequency() solved for T'.
double plucked_tension(double frequency, double mass_per_area, double span, int partial = 1);

/// Forces on a scale that turns the roll slowly by its web, all at one diameter [N] ≥ 0.
struct ScalePull {
  double forward{};        // brake on, the way the web unwinds
  double back{};           // brake on, the other way; as `forward` where it was not read
  double released{};       // brake off, the way the web unwinds; 0 where it was not read
  double released_back{};  // brake off, the other way; as `released` where it was not read
};

/// What the pulls are made of, as forces at the rim [N].
struct PullParts {
  double running{};     // brake and drag: the tension of a web that runs slowly and steadily at this diameter
  double drag{};        // bearings, seals, dragging pads
  double brake{};       // the brake alone
  double difference{};  // half of what both ways differ by: drag that is not alike, or web that hangs
};

/// Brake and drag oppose either way, what pulls one way changes its sign: half the sum and half the difference of both
/// ways; drag is what is left with the brake off. Each a mean over full turns, in which a roll's own weight off its
/// axis pulls as much back as forward. Equilibrium.
PullParts pull_parts(const ScalePull& pull);

/// Force of a web on a roller [N]: 2 T sin(β/2), for a wrap of 0 … 2π. Check T-4. Source: [beer2010].
double cell_resultant(double tension, double wrap);

/// Angle between that force and either run of the web [rad]: (π − β)/2; the force halves the angle between both runs.
double cell_resultant_angle(double wrap);

/// What the weight of a roller puts on a measuring axis [N]: m g cos τ, τ between the axis and straight down. Negative
/// where the axis points up.
double roller_tare(double mass, double tilt);

/// Tension [N] of a load-cell roller: (F − tare)/(2 sin(β/2) cos α), α between the measuring axis and the web's force.
/// Rules: 0 < β < 2π, |α| < π/2. Zero friction of the roller; F the sum of both its ends.
double cell_tension(double reading, double tare, double wrap, double axis);

}  // namespace holdback::physics
