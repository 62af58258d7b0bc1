// A picture of curves before it is drawn: what is shown, in SI, without a word about how. Every writer (terminal today)
// starts from this.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/model/quantity.hpp"
#include "holdback/results/choice.hpp"
#include "holdback/results/motion.hpp"

namespace holdback::draw {

/// What a curve stands for; a writer gives each role its own stroke, so that curves differ without colour.
enum class Role { demand, stop, emergency_stop, capacity, floor };

/// An axis: what is along it, and the highest value that is shown [SI].
struct Axis {
  std::string name{};
  Quantity kind{Quantity::number};
  std::optional<double> top{};
};

/// A curve by its points [SI], x rising.
struct Series {
  std::string name{};
  Role role{Role::demand};
  std::vector<double> x{};
  std::vector<double> y{};
};

/// Curves over common axes. The y axis starts at zero.
struct Plot {
  Axis x{};
  Axis y{};
  std::vector<Series> series{};
};

/// Torque over roll diameter: what the job asks for, what the fit gives at the lowest friction, and the floor below
/// which it cannot go. A capacity far above all that is asked leaves the picture at the top, so that the rest can be
/// read.
Plot envelope_plot(const Envelope& envelope);

/// Tension over time: its highest and its lowest in short steps, and the ends of the window. A peak far above the
/// window leaves the picture. No series when the trace is empty.
Plot tension_plot(const RunTrace& trace, const TensionTarget& tension);

}  // namespace holdback::draw
