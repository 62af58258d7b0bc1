#include "holdback/physics/tension.hpp"

#include <algorithm>
#include <array>
#include <limits>

#include "holdback/physics/gravity.hpp"

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
  if (const auto yield = web_yield(web)) bound = Bound{limits.yield_share * *yield * web.width, TensionBound::strength};
  if (const auto stiffness = web_stiffness(web)) {
    const double at_strain = limits.strain_limit * *stiffness * web.width;
    if (!bound || at_strain < bound->tension) bound = Bound{at_strain, TensionBound::strain};
  }
  return bound;
}

/// The range of one material [N/m]; none when its table has no row for it.
std::optional<TensionRange> row_of(Material material, double caliper, double basis_weight) {
  for (const StressRow& row : stress_rows)
    if (row.material == material)
      return TensionRange{row.low * pound_per_inch_per_mil * caliper, row.high * pound_per_inch_per_mil * caliper};
  const double size = material == Material::paper ? basis_weight / pound_per_ream : caliper / mil;
  for (const SheetRow& row : sheet_rows) {
    if (row.material != material || size < row.lightest * (1 - 1e-9) || size > row.heaviest * (1 + 1e-9)) continue;
    return TensionRange{row.low * pound_per_inch, row.high * pound_per_inch};
  }
  return std::nullopt;
}

std::optional<TensionRange> sum_of_plies(const Web& web) {
  if (web.plies.empty()) return std::nullopt;
  TensionRange sum;
  for (const Ply& ply : web.plies) {
    const auto own = row_of(ply.material, ply.caliper, ply.basis_weight.value_or(0));
    if (!own) return std::nullopt;
    sum.low += own->low;
    sum.high += own->high;
  }
  return sum;
}

}  // namespace

std::optional<double> web_stiffness(const Web& web) {
  if (web.modulus) return *web.modulus * web.caliper;
  if (web.plies.empty()) return std::nullopt;
  double sum = 0;
  for (const Ply& ply : web.plies) {
    if (!ply.modulus) return std::nullopt;
    sum += *ply.modulus * ply.caliper;
  }
  return sum;
}

std::optional<double> web_yield(const Web& web) {
  if (web.yield_strength) return *web.yield_strength * web.caliper;
  if (web.plies.empty()) return std::nullopt;
  double stiffness = 0;
  double first_strain = std::numeric_limits<double>::infinity();
  for (const Ply& ply : web.plies) {
    if (!ply.modulus || !ply.yield_strength) return std::nullopt;
    stiffness += *ply.modulus * ply.caliper;
    first_strain = std::min(first_strain, *ply.yield_strength / *ply.modulus);
  }
  return first_strain * stiffness;
}

// T = T_w − J α/R
double cinching_tension(double wound_tension, double outside_inertia, double deceleration, double radius) {
  return wound_tension - outside_inertia * deceleration / radius;
}

// T = m g e/R
double balance_tension(double mass, double runout, double radius) { return mass * gravity * runout / radius; }

double yield_tension(double yield_strength, double width, double caliper) { return yield_strength * width * caliper; }

double strain_tension(double strain, double modulus, double width, double caliper) {
  return strain * modulus * width * caliper;
}

std::optional<TensionRange> table_tension(const Web& web) {
  const auto range =
      web.material == Material::laminate ? sum_of_plies(web) : row_of(web.material, web.caliper, web.basis_weight);
  if (!range) return std::nullopt;
  return TensionRange{range->low * web.width, range->high * web.width};
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
