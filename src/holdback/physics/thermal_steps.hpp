// The steps beneath thermal.hpp: one brake's network of nodes, the implicit stage, the step, and the walk through
// segments. Nothing here is for callers outside physics/.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

#include "holdback/physics/thermal.hpp"

namespace holdback::physics::detail {

inline constexpr std::size_t disc = 0, pads = 1, calipers = 2, hub = 3;  // as ThermalNode
inline constexpr std::size_t node_count = 4;
inline constexpr double infinity = std::numeric_limits<double>::infinity();
inline constexpr double hottest = 1e9;     // [K] that is believed
inline constexpr double longest = 1e15;    // [s], and [W], [J/K]
inline constexpr double strongest = 1e12;  // [W/K], and [m²]

/// ThermalNodes within bounds, and ambient.
struct Network {
  NodeTemperatures capacity{};                                                 // [J/K]
  double pads_disc{}, calipers_pads{}, hub_disc{}, calipers_air{}, hub_air{};  // [W/K]
  double pad_share{};                                                          // [1]
  double radiation{};                                                          // [W/K⁴] ε σ A
  double ambient{};                                                            // [K]
};

inline double bounded(double value, double most) { return std::clamp(value, 0.0, most); }
inline double squared(double x) { return x * x; }

Network network_of(const ThermalNodes& nodes, double ambient);
NodeTemperatures bounded(const NodeTemperatures& state);
ThermalSegment bounded(const ThermalSegment& segment);
std::vector<ThermalSegment> bounded(const std::vector<ThermalSegment>& segments);

/// Power [W] at a time [s] from the start of the segment.
double power_at(const ThermalSegment& segment, double time);

/// The balances of thermal.hpp, solved for dΘ/dt [K/s].
NodeTemperatures rates_of(const Network& network, const NodeTemperatures& state, double power, double conductance);

/// The state that the brake would settle at under a steady load [K]; of nodes without a way to the air something large.
NodeTemperatures settled(const Network& network, double power, double conductance);

inline constexpr std::size_t stages = 5;

/// A step that was made: both ends, and what the next one and the Jacobian need.
struct Step {
  double time{};                             // [s] from the start of the segment
  double length{};                           // [s]
  NodeTemperatures before{}, after{};        // [K]
  NodeTemperatures rates_after{};            // [K/s]
  std::array<double, stages> disc_slopes{};  // [W/K] d(heat)/dΘ of the disc in each stage
  double error{};                            // [1] over what is allowed
};

Step step_from(const Network& network, const ThermalSegment& segment, const NodeTemperatures& before, double time,
               double length);

/// What the nodes of the start do to the nodes of a state [1]: row by row, one row a node of the state.
using Jacobian = std::array<double, node_count * node_count>;

/// Carries the Jacobian through a step that was made.
void carry(Jacobian& jacobian, const Network& network, const ThermalSegment& segment, const Step& step);

/// Temperature of a node at a time [s] within a step [K], by the step made anew up to there.
double node_within(const Network& network, const ThermalSegment& segment, const Step& step, std::size_t node,
                   double time);

/// Where in a step a node turns round [s], of the cubic through both ends and their rates; below zero when it does not.
double turning_point(const Step& step, std::size_t node, double rate_before);

/// Goes through segments with steps of a size that keeps the error. `visit(step, segment)` sees each step and says
/// whether to go on.
class Walk {
 public:
  Walk(const Network& network, const NodeTemperatures& start) : network_(network), state_(start) {}

  const NodeTemperatures& state() const { return state_; }

  /// False when the visitor stopped it.
  template <class Visit>
  bool through(const ThermalSegment& segment, const Visit& visit) {
    double time = 0;
    for (int tries = 0; time < segment.duration; ++tries) {
      const double left = segment.duration - time;
      const bool last = tries >= most_tries || proposed_ >= left * (1 - 1e-9);
      const Step step = step_from(network_, segment, state_, time, last ? left : proposed_);
      const bool held = step.error <= 1 || step.length <= 1e-9 * segment.duration || tries >= most_tries;
      propose(step, held && last);
      if (!held) continue;
      state_ = step.after;
      time = last ? segment.duration : time + step.length;
      if (!visit(step, segment)) return false;
    }
    return true;
  }

 private:
  // The error goes with the fourth power of the step. A step cut short by the end of its segment does not shorten the
  // next one.
  void propose(const Step& step, bool cut_short) {
    const double factor = step.error > 0 ? 0.9 / std::sqrt(std::sqrt(step.error)) : 5;
    const double next = step.length * std::clamp(factor, 0.2, 5.0);
    proposed_ = cut_short && proposed_ < infinity ? std::max(proposed_, next) : next;
  }

  static constexpr int most_tries = 3000;  // in one segment; then the rest in one go
  const Network& network_;
  NodeTemperatures state_;
  double proposed_{infinity};
};

}  // namespace holdback::physics::detail
