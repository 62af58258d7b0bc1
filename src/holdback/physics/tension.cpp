#include "holdback/physics/tension.hpp"

#include <algorithm>
#include <array>

namespace holdback::physics {

namespace {

/// One row of the trade's table, common practice, no source. The trade states films and foils in lbf/in per mil of
/// caliper, which is a stress (1 lbf/in per mil = 1000 psi); paper by basis weight and board by caliper in lbf/in.
constexpr double pound_per_inch_per_mil = 6894757.293168361;  // [Pa]
constexpr double pound_per_inch = 175.1268352464764;          // [N/m]
constexpr double mil = 2.54e-5;                               // [m]
constexpr double pound_per_ream = 1.627475878794350e-3;       // [kg/m²], ream of 3000 ft²

struct StressRow {
  Material material;
  double low, high;  // [lbf/in per mil]
};
constexpr std::array<StressRow, 5> stress_rows{{
    {Material::polyester, 0.5, 1.0},
    {Material::polypropylene, 0.25, 0.5},
    {Material::polyethylene, 0.1, 0.3},
    {Material::cellophane, 0.5, 1.0},
    {Material::aluminium_foil, 0.5, 1.5},
}};

struct SheetRow {
  Material material;
  double lightest, heaviest;  // paper: [lb/3000 ft²]; board: [mil]
  double low, high;           // [lbf/in]
};
constexpr std::array<SheetRow, 3> sheet_rows{{
    {Material::paper, 20, 40, 0.5, 1.5},
    {Material::paper, 40, 80, 1, 3},
    {Material::board, 8, 20, 3, 6},
}};

/// The bound that strength or strain sets on the top of the range, with its name.
struct Bound {
  double tension;
  TensionBound kind;
};

std::optional<Bound> derived_bound(const Web& web, const Limits& limits) {
  std::optional<Bound> bound;
  if (web.yield_strength) {
    const double at_yield = yield_tension(*web.yield_strength, web.width, web.caliper);
    bound = Bound{limits.yield_share * at_yield, TensionBound::strength};
  }
  if (web.modulus) {
    const double at_strain = strain_tension(limits.strain_limit, *web.modulus, web.width, web.caliper);
    if (!bound || at_strain < bound->tension) bound = Bound{at_strain, TensionBound::strain};
  }
  return bound;
}

}  // namespace

double yield_tension(double yield_strength, double width, double caliper) { return yield_strength * width * caliper; }

double strain_tension(double strain, double modulus, double width, double caliper) {
  return strain * modulus * width * caliper;
}

std::optional<TensionRange> table_tension(const Web& web) {
  for (const StressRow& row : stress_rows) {
    if (row.material != web.material) continue;
    const double scale = pound_per_inch_per_mil * web.width * web.caliper;
    return TensionRange{row.low * scale, row.high * scale};
  }
  const bool by_weight = web.material == Material::paper;
  const double size = by_weight ? web.basis_weight / pound_per_ream : web.caliper / mil;
  for (const SheetRow& row : sheet_rows) {
    if (row.material != web.material || size < row.lightest * (1 - 1e-9) || size > row.heaviest * (1 + 1e-9)) continue;
    return TensionRange{row.low * pound_per_inch * web.width, row.high * pound_per_inch * web.width};
  }
  return std::nullopt;
}

std::optional<RecommendedTension> recommended_tension(const Web& web, const Limits& limits) {
  const std::optional<TensionRange> table = table_tension(web);
  const std::optional<Bound> bound = derived_bound(web, limits);
  if (!table && !bound) return std::nullopt;

  const double lowest_share = table ? table->low / table->high : 0.4;
  double high = table ? table->high : bound->tension;
  TensionBound governed_by = table ? TensionBound::table : bound->kind;
  if (bound && bound->tension < high) {
    high = bound->tension;
    governed_by = bound->kind;
  }
  const double low = lowest_share * high;
  return RecommendedTension{low, (low + high) / 2, high, governed_by};
}

}  // namespace holdback::physics
