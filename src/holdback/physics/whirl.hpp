// The speed at which a shaft whirls: where it turns as fast as it would swing, the least unbalance bends it without
// bound. Beams and bearings as in beam.hpp. Symbols: EI rigidity, μ mass per length, L span, ω speed.
#pragma once

#include <vector>

#include "holdback/physics/beam.hpp"

namespace holdback::physics {

/// A mass that the beam carries and that does not stiffen it, spread like a load.
struct BeamMass {
  double begin{};  // [m]
  double end{};    // [m] ≥ begin
  double mass{};   // [kg] ≥ 0
};

/// First whirl speed [rad/s] of a uniform beam with a bearing at each end: ω = (π/L)² √(EI/μ). [shigley], eq. 7-22;
/// [thomson], table 9.5-1. Infinite without mass, zero without rigidity or where the span is not above zero.
double uniform_whirl(double rigidity, double mass_per_length, double span);

/// First whirl speed [rad/s] of a stepped beam with the masses it carries: Euler-Bernoulli elements with consistent
/// mass [cook], at least 32 over the beam's length, lowest root of K u = ω² M u by inverse iteration. Bearings, steps
/// and ends of masses are element ends, except where they lie closer than 1e-4 of the length; a mass narrower than
/// 1e-3 of it acts at its middle. Above the true root of the model by 1e-7 for a uniform beam. The gyroscopic effect is
/// left out, and the inertia of tilting sections with it: for a disc that whirls at its own speed the former is twice
/// the latter, so together they would raise the speed, and leaving them out is the safe side. Infinite without mass,
/// zero where the beam cannot bear or numbers overflow.
double beam_whirl(const Beam& beam, const std::vector<BeamMass>& masses);

}  // namespace holdback::physics
