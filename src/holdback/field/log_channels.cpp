#include "holdback/field/log_channels.hpp"

#include <algorithm>
#include <cmath>

namespace holdback::field {

namespace {

constexpr double longest_dropout = 0.5;  // [s]
constexpr double least_stuck = 3;        // [s]

}  // namespace

void ChannelWatch::count(double value) {
  facts_.lowest = has_range_ ? std::min(facts_.lowest, value) : value;
  facts_.highest = has_range_ ? std::max(facts_.highest, value) : value;
  has_range_ = true;
  sum_ += value;
}

std::size_t ChannelWatch::put(double value, double time, double step, bool moves) {
  if (std::isnan(value)) {
    ++facts_.missing;
    return 0;
  }
  ++facts_.readings;
  // standing still
  if (value == last_ && step > 0) {
    same_moves_ = same_moves_ && moves;
    if (same_moves_) longest_same_ = std::max(longest_same_, time - same_since_);
    if (moves) ++steps_;
  } else {
    if (!std::isnan(last_) && moves) {
      ++changes_;
      ++steps_;
    }
    same_since_ = time;
    same_moves_ = moves;
  }
  // dropouts
  const double jump = std::isnan(last_) ? 0 : std::abs(value - last_);
  last_ = value;
  // Nothing, or far beyond: what swings is no dropout.
  const bool odd = value < 0.05 * scale_ || value > 2.5 * std::max(scale_, good_);
  const bool far = odd && !std::isnan(good_) && std::abs(value - good_) > scale_ / 2;
  if (odd_rows_ == 0) {
    if (far && jump > std::max(scale_ / 2, 8 * usual_jump_) && moves) {
      odd_rows_ = 1;
      odd_since_ = time;
      odd_lowest_ = odd_highest_ = odd_sum_ = value;
      return 0;
    }
    usual_jump_ += (jump - usual_jump_) * 0.02;
    good_ = value;
    count(value);
    return 0;
  }
  if (far && time - odd_since_ <= longest_dropout) {
    ++odd_rows_;
    odd_lowest_ = std::min(odd_lowest_, value);
    odd_highest_ = std::max(odd_highest_, value);
    odd_sum_ += value;
    return 0;
  }
  const std::size_t rows = odd_rows_;
  odd_rows_ = 0;
  const bool back = !far && jump > scale_ / 3 && std::abs(value - good_) < scale_ / 4;
  good_ = value;
  count(value);
  if (back) {
    ++facts_.dropouts;
    facts_.readings -= static_cast<double>(rows);
    facts_.missing += static_cast<double>(rows);
    return rows;
  }
  // No dropout: it went there and stayed.
  facts_.lowest = std::min(facts_.lowest, odd_lowest_);
  facts_.highest = std::max(facts_.highest, odd_highest_);
  sum_ += odd_sum_;
  return 0;
}

ChannelFacts ChannelWatch::facts() const {
  ChannelFacts made = facts_;
  made.mean = made.readings > 0 ? sum_ / made.readings : 0;
  // A sensor that changes from row to row else has stuck where it does not for seconds.
  if (longest_same_ > least_stuck && changes_ > 0.3 * steps_) made.stuck = longest_same_;
  return made;
}

}  // namespace holdback::field
