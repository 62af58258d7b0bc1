// Round numbers along an axis, and how they are written.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace holdback::draw {

/// From low to high.
struct Range {
  double low{};
  double high{};
  bool operator==(const Range&) const = default;
};

/// A number that a picture can show: finite, and not so large that reckoning with it would overflow (below 1e100).
bool showable(double value);

/// The range, opened where its ends are equal or too close to be told apart. Ends that are not showable count as 0;
/// values below 1e-100 count as 0 as well.
Range opened(Range range);

/// A distance that people count in (1, 2 or 5 times a power of ten) of which at most `most` fit into an opened range.
double nice_step(const Range& range, int most);

/// The multiples of nice_step() within the range, `most` + 1 at most, rising.
std::vector<double> nice_ticks(const Range& range, int most);

/// The range with its ends moved outwards to the next multiples of nice_step().
Range rounded_out(const Range& range, int most);

/// Numbers of an axis: what stands at each tick, and the power of ten taken out of them all (0: none).
struct TickText {
  std::vector<std::string> texts{};
  int exponent{};
};
TickText tick_text(const std::vector<double>& ticks);

/// What stands in brackets behind an axis' name: "N·m", "10⁶ N·m", or nothing.
std::string unit_text(std::string_view unit, int exponent);

}  // namespace holdback::draw
