#include "holdback/numerics/roots.hpp"

#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <stdexcept>

namespace holdback::numerics {

double find_root(const std::function<double(double)>& f, double low, double high, double tolerance) {
  if (low > high) std::swap(low, high);
  const double at_low = f(low);
  const double at_high = f(high);
  if (at_low == 0) return low;
  if (at_high == 0) return high;
  if (!(at_low * at_high < 0)) throw std::invalid_argument("find_root: the ends do not bracket a root");

  std::uintmax_t evaluations = 200;
  const auto close = [tolerance](double a, double b) { return std::abs(b - a) <= tolerance; };
  const auto [a, b] = boost::math::tools::toms748_solve(f, low, high, at_low, at_high, close, evaluations);
  return a + (b - a) / 2;
}

double find_boundary(const std::function<bool(double)>& predicate, double passes, double fails,
                     double relative_tolerance) {
  for (int halving = 0; halving < 200; ++halving) {
    const double scale = std::max(std::abs(passes), std::abs(fails));
    if (std::abs(passes - fails) <= relative_tolerance * scale) break;
    const double middle = passes + (fails - passes) / 2;
    (predicate(middle) ? passes : fails) = middle;
  }
  return passes;
}

}  // namespace holdback::numerics
