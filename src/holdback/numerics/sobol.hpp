// Points that fill a unit cube evenly: Sobol's sequence with the direction numbers of Joe and Kuo, moved by a fixed
// shift so that no coordinate is ever 0 or 1. The same points on every host and in every run.
// Sources: [sobol1967], [joe2008].
#pragma once

#include <cstdint>
#include <vector>

namespace holdback::numerics {

/// Most coordinates a point may have.
inline constexpr int most_sobol_dimensions = 16;

/// `count` points of `dimensions` coordinates in (0, 1), row by row. Powers of two fill the cube most evenly.
/// std::invalid_argument for dimensions outside 1 … most_sobol_dimensions. `seed` picks the shift.
std::vector<double> sobol_points(std::size_t count, int dimensions, std::uint32_t seed);

}  // namespace holdback::numerics
