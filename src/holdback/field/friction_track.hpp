// Friction that a log shows in steady running: the torque that the tension asks for, T R less drag and the inertia of
// the thinning roll, over what nominal friction gives at the pressure recorded.
#pragma once

#include <optional>
#include <vector>

#include "holdback/field/log_rows.hpp"
#include "holdback/field/log_stand.hpp"

namespace holdback::field {

/// One stretch of steady running; means over it.
struct FrictionStretch {
  double time{};         // [s]
  double count{};        // [s] of buckets in it
  double asked{};        // [N·m] of the brake, by the tension
  double expected{};     // [N·m] by pressure and nominal friction
  double over{};         // [Pa] pressure over the threshold
  double radius{};       // [m]
  double speed{};        // [m/s]
  double tension{};      // [N] at the roll
  double temperature{};  // [K]
  double warm{};         // [s] of buckets with a temperature
};

/// A straight line through stretches: asked = slope K (p − p₀) + offset, K nominal.
struct FrictionLine {
  double slope{};               // [1]
  double slope_uncertainty{};   // [1] standard
  double offset{};              // [N·m]
  double offset_uncertainty{};  // [N·m] standard
  double spread{};              // [1] highest over lowest expected torque
};

class FrictionKeeper {
 public:
  explicit FrictionKeeper(const LogStand& stand) : stand_(stand) {}

  /// A bucket; taken when the line runs steadily, diameter, tension and pressure are known, and the brake grips.
  void put(const LogBucket& bucket);

  /// The stretches, means formed; at most `most`.
  std::vector<FrictionStretch> stretches() const;
  FrictionTrack track() const;
  std::optional<FrictionLine> line() const;  // none where the pressure hardly changed
  static constexpr std::size_t most = 400;

 private:
  const LogStand& stand_;
  std::vector<FrictionStretch> sums_{};
  std::size_t merged_{1};
  std::size_t filled_{};
};

/// Median of the values; 0 for none.
double median_of(std::vector<double> values);

/// Theil and Sen: the median of the slopes between pairs of points [theil1950] [sen1968], at most some 40,000 of them.
/// With `group`, only pairs whose values there lie within a tenth of each other count.
double robust_slope(const std::vector<double>& x, const std::vector<double>& y, const std::vector<double>& group = {});

}  // namespace holdback::field
