// Whether a web still turns its idlers: the film of air it carries in lifts it off as it runs faster, the lower its
// tension. Symbols: R roller radius, β wrap, μ friction, σ combined rms roughness, η viscosity of air, v speed, T'
// tension per width, h film.
#pragma once

#include "holdback/model/path.hpp"

namespace holdback::physics {

/// Film of air between web and roller [m] with both at one speed: h = 0.643 R (12 η v/T')^(2/3), the foil-bearing law
/// for a smooth, tight, wide web; the factor follows from the foil-bearing equation (check C-2). Leaks at the edges and
/// into a rough roller make it thinner, so it is the safe side. Infinite for T' ≤ 0. Source: [knox1971].
double air_film(double radius, double viscosity, double speed, double tension_per_width);

/// Friction [1] that a film leaves: all of it to h = σ, none from h = 3 σ, in proportion between. From memory of
/// [ducotey1999]; no more than common practice between the two ends.
double film_friction(double friction, double film, double roughness);

/// Ratio of tensions at which a web slips on a roller that does not turn with it [1]: e^(μβ). Source: [beer2010].
double capstan_ratio(double friction, double wrap);

/// Torque [N·m] that a web at tension T on its slack side can put into a roller: M = T R (e^(μβ) − 1).
double traction_torque(double tension, double radius, double friction, double wrap);

/// What an idler asks of its web.
struct IdlerDuty {
  double width{};         // [m] of the web
  double speed{};         // [m/s]
  double acceleration{};  // [m/s²] of the web, as a magnitude
  double viscosity{};     // [Pa·s] of the air
};

/// Lowest tension [N] over the width at which the web still turns the idler: the root of
/// T R (e^(μ_h(T) β) − 1) = M_drag + J a/R with μ_h by film_friction(), to 1e-9. An idler that asks nothing still
/// needs the contact to begin (h < 3 σ). Zero at rest without drag.
double idler_tension(const Idler& idler, const IdlerDuty& duty);

}  // namespace holdback::physics
