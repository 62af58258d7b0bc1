// What tension a web wants. Bounds that can be derived (yield, strain) and bounds that the trade keeps in tables.
#pragma once

#include <optional>

#include "holdback/model/stand.hpp"
#include "holdback/model/web.hpp"

namespace holdback::physics {

/// Tension [N] at yield over the whole width: σ_y w t.
double yield_tension(double yield_strength, double width, double caliper);

/// Tension [N] at a strain: ε E w t.
double strain_tension(double strain, double modulus, double width, double caliper);

/// Stiffness of a web [N/m]: tension per width over strain, E t; of a laminate whose own modulus is not known the sum
/// of its plies, Σ E_i t_i (plies bonded, so that all strain alike). None when a modulus is missing.
std::optional<double> web_stiffness(const Web& web);

/// Tension per width at which a web yields [N/m]: σ_y t; of a laminate whose own strength is not known that of the ply
/// which yields first, min(σ_i/E_i) · Σ E_i t_i. None when a strength or modulus is missing.
std::optional<double> web_yield(const Web& web);

/// Tension [N] above which a roll slips inside itself when `outside_inertia` [kg·m²] of its web must be braked through
/// its innermost layer at `deceleration` [rad/s²] and radius R: T = T_w − J α/R, for a roll whose layers carry the
/// torque T_w R they were wound with. That a roll carries what it was wound with is common practice, no source. Below
/// zero where inertia alone is too much; T_w [N] over the whole width.
double cinching_tension(double wound_tension, double outside_inertia, double deceleration, double radius);

/// Tension [N] without which an out-of-round roll of mass m turns by its own weight when no brake holds it:
/// T = m g e/R, its centre of mass off the axis by the runout e. Zero for a round roll.
double balance_tension(double mass, double runout, double radius);

/// A range of tension over the whole width [N].
struct TensionRange {
  double low{};
  double high{};
};

/// Running tension the trade uses for a material, by caliper (films, foil, board) or basis weight (paper): common
/// practice, no source. Of a laminate the sum of its plies. None for `other`, for a laminate of which a ply is not
/// known or has no row, and for paper or board outside the table's weights and calipers.
std::optional<TensionRange> table_tension(const Web& web);

/// Which bound decided a recommended tension.
enum class TensionBound { strength, strain, table };

/// The recommended tension: the table's range where there is one, else 0.4 … 1 of the derived bound; its top cut by
/// yield_share of yield and by strain_limit, whichever is lowest; setpoint in the middle. None when nothing is known to
/// derive it from. When the top is cut, the lower end is cut with it and keeps its ratio to the top.
struct RecommendedTension {
  double low{};       // [N]
  double setpoint{};  // [N]
  double high{};      // [N]
  TensionBound governed_by{};
};
std::optional<RecommendedTension> recommended_tension(const Web& web, const Limits& limits);

}  // namespace holdback::physics
