// What stands between the stand and its controller: filters, noise, dead time, the play of a regulator, and how a
// diameter is measured.
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace holdback::dynamics {

/// First-order lag, exact for a value held over a sample.
class Lag {
 public:
  Lag(double time_constant, double period, double first);
  double after(double value) { return value_ += share_ * (value - value_); }
  void jump_to(double value) { value_ = value; }
  double value() const { return value_; }

 private:
  double share_;
  double value_;
};

/// What was set comes out later, by whole samples.
class DelayLine {
 public:
  DelayLine(std::size_t samples, double first) : kept_(samples + 1, first) {}
  double after(double set) {
    kept_[next_] = set;
    next_ = next_ + 1 == kept_.size() ? 0 : next_ + 1;
    return kept_[next_];
  }

 private:
  std::vector<double> kept_;
  std::size_t next_{};
};

/// Play of a regulator: what comes out follows with half of its width `gap` behind, on either side.
class Play {
 public:
  Play(double gap, double first) : half_(gap / 2), value_(first) {}
  double after(double set);

 private:
  double half_;
  double value_;
};

/// Noise of a given standard deviation, the same in every run with the same seed: the sum of four even numbers, which
/// is bell-shaped to ±3.5 deviations.
class Noise {
 public:
  explicit Noise(std::uint64_t seed) : state_(seed) {}
  double next(double deviation);

 private:
  double even();
  std::uint64_t state_;
};

/// Rounded to a step; as it is for a step of zero.
inline double rounded(double value, double step) {
  if (step <= 0) return value;
  constexpr double whole = 6755399441055744.0;  // 1.5·2⁵²: adding it rounds to a whole number, inline
  const double count = value / step;
  return std::abs(count) < 1e15 ? ((count + whole) - whole) * step : value;
}

}  // namespace holdback::dynamics
