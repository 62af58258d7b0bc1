// The unwind shaft as a beam, its bearings, and the grip on the core. All of it is optional in a stand file.
#pragma once

#include <optional>
#include <vector>

#include "holdback/model/problem.hpp"

namespace holdback {

/// Where the bearings are: one at each end of the roll, or both on one side of it.
enum class Support { between_bearings, cantilever };

/// A stretch of shaft of one section. Stretches follow one another from the first bearing on.
struct ShaftSection {
  double length{};    // [m] > 0
  double diameter{};  // [m] > 0, outside
  double bore{};      // [m] ≥ 0, < diameter; 0 for a solid shaft
  bool operator==(const ShaftSection&) const = default;
};

/// Whether balls or rollers carry the bearings: the exponent of their life.
enum class BearingKind { ball, roller };

struct Shaft {
  Support support{Support::between_bearings};
  double bearing_span{};  // [m] > 0 between the centres of the two bearings
  double roll_centre{};   // [m] > 0 from the first bearing to the middle of the roll; cantilever: > bearing_span
  std::vector<ShaftSection> sections{};    // at least one, from the first bearing on; the last one goes on to the end
  double modulus{};                        // [Pa] > 0
  double density{};                        // [kg/m³] > 0
  double tensile_strength{};               // [Pa] > 0, ultimate
  double notch_factor{};                   // [1] ≥ 1, fatigue stress concentration at the worst place
  double pull_angle{};                     // [rad] direction in which the web leaves, from horizontal, up is positive
  std::optional<double> bearing_rating{};  // [N] > 0, basic dynamic load rating of one bearing
  BearingKind bearing_kind{BearingKind::ball};
  std::optional<double> core_grip{};  // [N·m] > 0, torque that chucks or an expanding shaft pass to the core
  bool operator==(const Shaft&) const = default;
};

/// Faults that only two fields together show. `path` is "shaft".
Problems problems_of(const Shaft& shaft);

}  // namespace holdback
