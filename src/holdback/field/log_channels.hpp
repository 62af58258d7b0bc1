// What the sensors of a log do: readings, dropouts, values that stand still.
#pragma once

#include <array>
#include <cstddef>
#include <deque>

#include "holdback/field/log_rows.hpp"
#include "holdback/field/log_stand.hpp"

namespace holdback::field {

/// Watches one channel, row by row. A dropout is next to nothing or far beyond all else between two values that agree:
/// it comes and goes from one row to the next, within half a second.
class ChannelWatch {
 public:
  /// `scale` [SI] > 0: a jump by half of it within one row is far off.
  ChannelWatch(LogChannel channel, double scale) : scale_(scale) { facts_.channel = channel; }

  /// A value with its time; `moves`: the line moves, so that a living sensor would show it. Returns how many rows
  /// before this one turn out to have been a dropout.
  std::size_t put(double value, double time, double step, bool moves);
  ChannelFacts facts() const;

 private:
  void count(double value);

  double scale_;
  ChannelFacts facts_{};
  double sum_{};
  bool has_range_{};
  double good_{no_reading};  // last value that was not odd
  double usual_jump_{};      // from row to row, slow mean
  std::size_t odd_rows_{};
  double odd_since_{};
  double odd_lowest_{}, odd_highest_{}, odd_sum_{};
  double last_{no_reading};
  double same_since_{};
  bool same_moves_{true};
  double longest_same_{};
  double changes_{};  // rows that differ from the one before
  double steps_{};
};

}  // namespace holdback::field
