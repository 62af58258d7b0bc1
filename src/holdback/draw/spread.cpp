#include "holdback/draw/spread.hpp"

#include <algorithm>
#include <numeric>

namespace holdback::draw {

namespace {

/// Labels that touch and move as one: how many, where their first one wants its upper edge on average.
struct Group {
  std::size_t count{};
  double height{};
  double sum{};  // of the upper edges that the labels want for the group
  double top(double upper, double lower) const {
    return std::max(std::min(sum / static_cast<double>(count), lower - height), upper);
  }
};

Group joined(const Group& above, const Group& below) {
  // What each label of the lower group wants, told for the upper edge of the joined one.
  return {above.count + below.count, above.height + below.height,
          above.sum + below.sum - static_cast<double>(below.count) * above.height};
}

}  // namespace

std::vector<double> spread(const std::vector<Wish>& wishes, double top, double bottom) {
  std::vector<std::size_t> order(wishes.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return wishes[a].wanted < wishes[b].wanted; });
  std::vector<Group> groups;
  for (const auto i : order) {
    groups.push_back({1, wishes[i].height, wishes[i].wanted - wishes[i].height / 2});
    while (groups.size() > 1) {
      const auto& above = groups[groups.size() - 2];
      if (above.top(top, bottom) + above.height <= groups.back().top(top, bottom)) break;
      const auto both = joined(above, groups.back());
      groups.pop_back();
      groups.back() = both;
    }
  }
  std::vector<double> middles(wishes.size());
  auto next = order.begin();
  for (const auto& group : groups) {
    double edge = group.top(top, bottom);
    for (std::size_t i = 0; i < group.count; ++i, ++next) {
      middles[*next] = edge + wishes[*next].height / 2;
      edge += wishes[*next].height;
    }
  }
  return middles;
}

}  // namespace holdback::draw
