#include "holdback/draw/thin.hpp"

#include <algorithm>
#include <array>

#include "holdback/draw/ticks.hpp"

namespace holdback::draw {

namespace {

/// Which column an x lies in.
class Columns {
 public:
  Columns(const std::vector<double>& x, std::size_t count, std::size_t columns) : columns_(columns) {
    for (std::size_t i = 0; i < count; ++i) {
      if (!showable(x[i])) continue;
      low_ = any_ ? std::min(low_, x[i]) : x[i];
      high_ = any_ ? std::max(high_, x[i]) : x[i];
      any_ = true;
    }
  }
  std::size_t of(double x) const {
    if (!showable(x) || !(high_ > low_)) return 0;
    const double share = std::clamp((x - low_) / (high_ - low_), 0.0, 1.0);
    return std::min(static_cast<std::size_t>(share * static_cast<double>(columns_)), columns_ - 1);
  }

 private:
  std::size_t columns_;
  double low_{};
  double high_{};
  bool any_{};
};

/// Calls `take` with the first entry of each column and the one behind its last.
template <typename Take>
void for_each_column(const std::vector<double>& x, std::size_t count, std::size_t columns, const Take& take) {
  const Columns scale(x, count, columns);
  for (std::size_t from = 0; from < count;) {
    std::size_t to = from + 1;
    while (to < count && scale.of(x[to]) == scale.of(x[from])) ++to;
    take(from, to);
    from = to;
  }
}

}  // namespace

ThinLine thinned(const std::vector<double>& x, const std::vector<double>& y, std::size_t columns) {
  const auto count = std::min(x.size(), y.size());
  ThinLine out;
  if (columns == 0) return out;
  const auto keep = [&](std::size_t i) {
    out.x.push_back(x[i]);
    out.y.push_back(y[i]);
  };
  if (count <= 4 * columns) {
    for (std::size_t i = 0; i < count; ++i) keep(i);
    return out;
  }
  for_each_column(x, count, columns, [&](std::size_t from, std::size_t to) {
    std::array<std::size_t, 4> kept{from, from, from, to - 1};
    std::size_t gap = to;
    for (std::size_t i = from; i < to; ++i) {
      if (!showable(y[i])) {
        gap = i;
        continue;
      }
      if (!showable(y[kept[1]]) || y[i] < y[kept[1]]) kept[1] = i;
      if (!showable(y[kept[2]]) || y[i] > y[kept[2]]) kept[2] = i;
    }
    std::vector<std::size_t> order(kept.begin(), kept.end());
    if (gap < to) order.push_back(gap);
    std::sort(order.begin(), order.end());
    order.erase(std::unique(order.begin(), order.end()), order.end());
    for (const auto i : order) keep(i);
  });
  return out;
}

ThinBand thinned_band(const std::vector<double>& x, const std::vector<double>& low, const std::vector<double>& high,
                      std::size_t columns) {
  const auto count = std::min({x.size(), low.size(), high.size()});
  ThinBand out;
  if (columns == 0) return out;
  const auto add = [&](std::size_t from, std::size_t to) {
    bool any = false;
    for (std::size_t i = from; i < to; ++i) {
      if (!showable(x[i]) || !showable(low[i]) || !showable(high[i])) continue;
      if (!any) {
        out.x.push_back(x[i]);
        out.low.push_back(low[i]);
        out.high.push_back(high[i]);
        any = true;
      }
      out.x.back() = x[i];
      out.low.back() = std::min(out.low.back(), low[i]);
      out.high.back() = std::max(out.high.back(), high[i]);
    }
  };
  if (count <= columns) {
    for (std::size_t i = 0; i < count; ++i) add(i, i + 1);
  } else {
    for_each_column(x, count, columns, add);
  }
  return out;
}

}  // namespace holdback::draw
