// The way of the web from the roll to the first driven nip: its free spans and the idlers it turns.
#pragma once

#include <optional>
#include <string>

namespace holdback {

struct WebPath {
  double first_span{};                   // [m] > 0, free span from the roll to the first idler, or to the nip
  std::optional<double> longest_span{};  // [m] > 0, longest free span that lies level; none: sag is not judged
  double most_sag{};                     // [1] > 0, sag over span that is accepted
  bool operator==(const WebPath&) const = default;
};

/// A roller that the web turns.
struct Idler {
  std::string name{};
  double diameter{};   // [m] > 0
  double wrap{};       // [rad] > 0, angle over which the web touches it
  double friction{};   // [1] > 0, web on roller, without air between
  double roughness{};  // [m] > 0, combined rms roughness of web and roller
  double drag{};       // [N·m] ≥ 0, bearings and seals
  double inertia{};    // [kg·m²] ≥ 0
  double span{};       // [m] > 0, free span behind it, to the next idler or the nip
  bool operator==(const Idler&) const = default;
};

}  // namespace holdback
