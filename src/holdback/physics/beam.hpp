// A straight beam on two bearings and how it bends. It knows no unwinds.
// Two bearings carry a beam by statics alone, so moments need no stiffness and the bent line is the moment over EI
// integrated twice, exactly, stretch by stretch.
// Left out: deformation by shear (the beam is long against its diameter) and the give of bearings and frame; both make
// a real shaft softer than computed. Symbols: x place, V shear, M moment, y deflection, EI rigidity.
#pragma once

#include <cstddef>
#include <vector>

namespace holdback::physics {

/// A vector across the beam: a force [N], a moment [N·m], a slope [rad] or a deflection [m] in two planes.
/// Horizontal is positive in the direction that a pull angle counts from, vertical is positive upwards.
struct Across {
  double horizontal{};
  double vertical{};
  double size() const;
  friend Across operator+(const Across& a, const Across& b) {
    return {a.horizontal + b.horizontal, a.vertical + b.vertical};
  }
  friend Across operator*(double factor, const Across& a) { return {factor * a.horizontal, factor * a.vertical}; }
};

/// A stretch of beam of one section.
struct BeamStretch {
  double length{};           // [m] ≥ 0
  double rigidity{};         // [N·m²] > 0, EI
  double mass_per_length{};  // [kg/m] ≥ 0
};

/// Stretches follow one another from `begin` on. Where a bearing or a load lies beyond them, the first or the last goes
/// on that far.
struct Beam {
  double begin{};  // [m]
  std::vector<BeamStretch> stretches{};
  double first_bearing{};   // [m]
  double second_bearing{};  // [m] > first_bearing

  /// Whether statics and stiffness can hold it: bearings apart and in order, every stretch with some rigidity.
  bool can_bear() const;
  /// Steps, bearings and `others` from left to right, each once [m].
  std::vector<double> places(std::vector<double> others) const;
  /// The number of the stretch that is over a place [m] or begins there; there must be one at least.
  std::size_t stretch_at(double x) const;
};

/// A force spread evenly from `begin` to `end`, or acting at one place where the two are equal.
struct BeamLoad {
  double begin{};  // [m]
  double end{};    // [m] ≥ begin
  Across force{};  // [N] as a whole
};

/// A piece of bent beam of one section under one even load; s [m] counts from its left end, 0 … length.
struct BentPiece {
  double begin{};            // [m]
  double length{};           // [m]
  std::size_t stretch{};     // its number in the beam
  double rigidity{};         // [N·m²]
  Across load_per_length{};  // [N/m]
  Across shear{};            // [N] just right of its left end, as the following
  Across moment_here{};
  Across slope_here{};
  Across deflection_here{};
  double largest_moment{};        // [N·m] over the piece
  double largest_moment_place{};  // [m] from the beam's zero

  /// M = M_0 + V s + q s²/2
  Across moment(double s) const;
  /// y' = y'_0 + (M_0 s + V s²/2 + q s³/6)/EI
  Across slope(double s) const;
  /// y = y_0 + y'_0 s + (M_0 s²/2 + V s³/6 + q s⁴/24)/EI
  Across deflection(double s) const;
};

/// A beam under its loads. `first_reaction` and `second_reaction` are the forces of the bearings on the beam.
struct BentBeam {
  std::vector<BentPiece> pieces{};  // from left to right; none where the beam cannot bear
  Across first_reaction{};
  Across second_reaction{};
  double first_slope{};               // [rad] ≥ 0, size in the plane in which the beam slopes most
  double second_slope{};              // [rad] ≥ 0
  double largest_deflection{};        // [m] ≥ 0
  double largest_deflection_place{};  // [m]
  double largest_moment{};            // [N·m] ≥ 0
  double largest_moment_place{};      // [m]

  /// Moment, slope and deflection at a place [m]; beyond the ends, those of the end. Infinite without pieces.
  Across moment(double x) const;
  Across slope(double x) const;
  Across deflection(double x) const;
};

/// The bent beam: reactions by the balance of forces and of moments, then V' = q, M' = V, EI y'' = M with y = 0 at both
/// bearings. Small slopes, linear elastic, valid for spans long against the diameter (10 and more). [roark], table 8.1,
/// has the closed forms of uniform beams. Infinite in every number where the bearings stand in one place (or in the
/// wrong order), where there is no stretch, a stretch has no rigidity, or numbers overflow.
BentBeam bend_beam(const Beam& beam, const std::vector<BeamLoad>& loads);

}  // namespace holdback::physics
