#include "holdback/draw/holes.hpp"

#include <algorithm>
#include <limits>

namespace holdback::draw {

std::vector<std::size_t> holes_in(const std::vector<double>& times) {
  constexpr double much_longer = 8;
  std::vector<double> steps;
  for (std::size_t i = 1; i < times.size(); ++i) steps.push_back(times[i] - times[i - 1]);
  if (steps.size() < 3) return {};
  auto sorted = steps;
  const auto middle = sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 2);
  std::nth_element(sorted.begin(), middle, sorted.end());
  std::vector<std::size_t> holes;
  for (std::size_t i = 0; i < steps.size(); ++i)
    if (steps[i] > much_longer * *middle) holes.push_back(i);
  return holes;
}

std::vector<double> with_holes(const std::vector<double>& values, const std::vector<std::size_t>& holes, bool times) {
  std::vector<double> out;
  std::size_t next = 0;
  for (std::size_t i = 0; i < values.size(); ++i) {
    out.push_back(values[i]);
    if (next == holes.size() || holes[next] != i || i + 1 == values.size()) continue;
    ++next;
    out.push_back(times ? (values[i] + values[i + 1]) / 2 : std::numeric_limits<double>::quiet_NaN());
  }
  return out;
}

}  // namespace holdback::draw
