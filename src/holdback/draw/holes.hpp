// Holes in a list of times, where no line is to be drawn across.
#pragma once

#include <cstddef>
#include <vector>

namespace holdback::draw {

/// The entries behind which the step to the next time is much longer than usual.
std::vector<std::size_t> holes_in(const std::vector<double>& times);

/// The list with one entry more behind each hole: not a number, or for `times` the middle. An empty list stays empty.
std::vector<double> with_holes(const std::vector<double>& values, const std::vector<std::size_t>& holes, bool times);

}  // namespace holdback::draw
