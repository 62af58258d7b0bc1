#include "holdback/dynamics/sensors.hpp"

#include <algorithm>
#include <cmath>

namespace holdback::dynamics {

Lag::Lag(double time_constant, double period, double first)
    : share_(time_constant > 0 ? -std::expm1(-period / time_constant) : 1), value_(first) {}

// In this order what is no number comes out as it went in.
double Play::after(double set) { return value_ = std::max(set - half_, std::min(value_, set + half_)); }

// Steele, Lea, Flood: SplitMix64.
double Noise::even() {
  state_ += 0x9e3779b97f4a7c15U;
  std::uint64_t z = state_;
  z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
  z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
  z ^= z >> 31U;
  return static_cast<double>(z >> 11U) * 0x1p-53 - 0.5;
}

// Four even numbers of variance 1/12 each.
double Noise::next(double deviation) {
  if (deviation <= 0) return 0;
  return deviation * std::sqrt(3.0) * (even() + even() + even() + even());
}

}  // namespace holdback::dynamics
