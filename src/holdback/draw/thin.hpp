// Long lines made short for a picture: what happens within one column of it stays, as its lowest and highest value.
#pragma once

#include <cstddef>
#include <vector>

namespace holdback::draw {

/// Points of a line over rising x, in any unit.
struct ThinLine {
  std::vector<double> x{};
  std::vector<double> y{};
};

/// The line with at most four points in each of so many columns of equal width over x: the first, the lowest, the
/// highest and the last, in their order. A line of no more points than that stays as it is. A value that cannot be
/// shown (see showable()) stays as a gap, one a column. Without a column nothing is left.
ThinLine thinned(const std::vector<double>& x, const std::vector<double>& y, std::size_t columns);

/// A band between two lines over rising x.
struct ThinBand {
  std::vector<double> x{};
  std::vector<double> low{};
  std::vector<double> high{};
};

/// The band with one entry a column: the lowest of `low`, the highest of `high`, at the last x of the column. A band of
/// no more entries than that stays as it is; entries that cannot be shown are left out.
ThinBand thinned_band(const std::vector<double>& x, const std::vector<double>& low, const std::vector<double>& high,
                      std::size_t columns);

}  // namespace holdback::draw
