// The web: one material at one width, as it comes off a roll.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/model/problem.hpp"

namespace holdback {

/// Families of material for which a recommended tension table exists; `other` has none.
enum class Material {
  other,
  polyester,
  polypropylene,
  polyethylene,
  cellophane,
  aluminium_foil,
  paper,
  board,
  laminate
};

/// One layer of a laminate. What is not known stays out of the sums.
struct Ply {
  Material material{Material::other};
  double caliper{};                        // [m] > 0
  std::optional<double> basis_weight{};    // [kg/m²] > 0; needed for paper, whose table goes by weight
  std::optional<double> modulus{};         // [Pa] > 0, along the machine
  std::optional<double> yield_strength{};  // [Pa] > 0
  bool operator==(const Ply&) const = default;
};

struct Web {
  std::string name{};
  Material material{Material::other};
  double width{};                          // [m] > 0
  double caliper{};                        // [m] > 0, thickness of one layer
  double basis_weight{};                   // [kg/m²] > 0; caliper × density when only the density is given
  std::optional<double> density{};         // [kg/m³] > 0
  std::optional<double> modulus{};         // [Pa] > 0, along the machine
  std::optional<double> yield_strength{};  // [Pa] > 0, stress that must not be reached
  std::optional<double> wound_tension{};   // [N/m] > 0, tension the roll was wound with, per width
  double loss{};                           // [1] ≥ 0, loss tangent along the machine: inner friction of the web
  std::vector<Ply> plies{};                // of a laminate; empty: one material, or plies that are not known
  bool operator==(const Web&) const = default;
};

/// Faults that only two fields together show: mass against density, strength against modulus.
/// `path` is the web's place in the stand file, such as "web[0]".
Problems problems_of(const Web& web, const std::string& path);

}  // namespace holdback
