// Labels of one column, moved up and down until none lies on another.
#pragma once

#include <vector>

namespace holdback::draw {

/// A label that wants its middle at `wanted` and takes `height` [mm].
struct Wish {
  double wanted{};
  double height{};
};

/// The middles of all labels, in the order of the wishes: apart, between `top` and `bottom`, in the order of what they
/// want (equal ones in the order given), and as near to it as can be. Labels that together are higher than the room
/// stand closely from `top` on.
std::vector<double> spread(const std::vector<Wish>& wishes, double top, double bottom);

}  // namespace holdback::draw
