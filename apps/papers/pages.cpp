#include "pages.hpp"

#include <algorithm>

namespace holdback::pdf {

namespace {

/// Fills pages from the top.
class Filler {
 public:
  Filler(double first_room, double room, int& shrunk) : room_(first_room), next_room_(room), shrunk_(shrunk) {}

  void begin_page() {
    pages_.emplace_back();
    y_ = 0;
    room_ = next_room_;
  }
  bool empty() const { return pages_.back().strips.empty(); }

  /// Height of strips `from` up to `to`, put here.
  double needed(const Strips& strips, std::size_t from, std::size_t to) const {
    double sum = 0;
    for (auto i = from; i < to; ++i) sum += (i == from && empty() ? 0 : strips[i].before) + strips[i].height;
    return sum;
  }
  bool fits(double height) const { return y_ + height <= room_ + 0.01; }

  void put(const Strip& strip, bool begins_table) {
    const bool at_top = empty();
    Placed placed{&strip, y_ + (at_top ? 0 : strip.before), 1, nullptr};
    if (at_top && strip.repeat && !begins_table && strip.repeat->height > 0) {
      placed.head = strip.repeat.get();
      placed.y += placed.head->height;
    }
    const double left = room_ - placed.y;
    if (strip.height > left + 0.01) {
      placed.scale = std::max(left, 1.0) / strip.height;
      ++shrunk_;
    }
    y_ = placed.y + placed.scale * strip.height;
    pages_.back().strips.push_back(placed);
  }

  std::vector<Page> pages() { return std::move(pages_); }

 private:
  std::vector<Page> pages_{1};
  double y_{};
  double room_;
  double next_room_;
  int& shrunk_;
};

std::size_t end_of_group(const Strips& strips, std::size_t from) {
  auto end = from;
  while (end + 1 < strips.size() && strips[end].keeps && !strips[end + 1].new_page) ++end;
  return end + 1;
}

}  // namespace

std::vector<Page> paginated(const Strips& strips, double first_room, double room, int& shrunk) {
  Filler filler(first_room, room, shrunk);
  for (std::size_t at = 0; at < strips.size();) {
    const auto end = end_of_group(strips, at);
    const bool whole = filler.needed(strips, at, end) <= room;
    if (!filler.empty() && (strips[at].new_page || (whole && !filler.fits(filler.needed(strips, at, end))))) {
      filler.begin_page();
    }
    for (auto i = at; i < end; ++i) {
      if (!filler.empty() && !filler.fits(filler.needed(strips, i, i + 1))) filler.begin_page();
      filler.put(strips[i], i > 0 && strips[i - 1].repeat != strips[i].repeat);
    }
    at = end;
  }
  return filler.pages();
}

}  // namespace holdback::pdf
