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

/// A range of tension over the whole width [N].
struct TensionRange {
  double low{};
  double high{};
};

/// Running tension the trade uses for a material, by caliper (films, foil, board) or basis weight (paper): common
/// practice, no source. None for `other`, for `laminate` (the sum of plies that are not known here), and for paper or
/// board outside the table's weights and calipers.
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
