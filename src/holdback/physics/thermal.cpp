#include "holdback/physics/thermal.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/numerics/roots.hpp"
#include "holdback/physics/thermal_steps.hpp"

namespace holdback::physics {

using namespace detail;

namespace {

constexpr auto go_on = [](const Step&, const ThermalSegment&) { return true; };

// ---- what is joined to what -----------------------------------------------------------------------------------------

using Marks = std::array<bool, node_count>;

/// Marks spread over all that is joined.
Marks spread_over(const Network& network, Marks marks) {
  const auto join = [&](std::size_t a, std::size_t b, double conductance) {
    if (conductance > 0) marks[a] = marks[b] = marks[a] || marks[b];
  };
  for (int i = 0; i < 3; ++i) {
    join(calipers, pads, network.calipers_pads);
    join(pads, disc, network.pads_disc);
    join(disc, hub, network.hub_disc);
  }
  return marks;
}

/// Nodes with a way to the air.
Marks cooled(const Network& network, double conductance) {
  return spread_over(network,
                     {conductance > 0 || network.radiation > 0, false, network.calipers_air > 0, network.hub_air > 0});
}

/// Nodes that take part of a power.
Marks heated(const Network& network, double power) {
  const bool to_disc = power > 0 && network.pad_share < 1;
  const bool to_pads = power > 0 && network.pad_share > 0;
  return spread_over(network, {to_disc, to_pads, false, false});
}

// ---- the periodic state ---------------------------------------------------------------------------------------------

/// What the segments are on average; only to begin from.
ThermalSegment mean_of(const std::vector<ThermalSegment>& segments) {
  ThermalSegment mean;
  for (const ThermalSegment& each : segments) mean.duration += each.duration;
  if (mean.duration <= 0) return mean;
  for (const ThermalSegment& each : segments) {
    const double share = each.duration / mean.duration;
    mean.power += share * (each.power + each.power_end) / 2;
    mean.conductance += share * each.conductance;
  }
  mean.power_end = mean.power;
  return mean;
}

Jacobian unit() {
  Jacobian made{};
  for (std::size_t i = 0; i < node_count; ++i) made[i * node_count + i] = 1;
  return made;
}

/// (1 − J) Δ = r for the nodes that have a way to the air, by elimination with pivots; false when there is no answer.
bool correct(NodeTemperatures& start, const NodeTemperatures& end, const Jacobian& jacobian, const Marks& sought,
             double& correction) {
  double m[node_count][node_count + 1] = {};
  for (std::size_t i = 0; i < node_count; ++i) {
    for (std::size_t j = 0; j < node_count; ++j)
      m[i][j] = (i == j ? 1 : 0) - (sought[i] && sought[j] ? jacobian[i * node_count + j] : 0);
    m[i][node_count] = sought[i] ? end[i] - start[i] : 0;
  }
  for (std::size_t k = 0; k < node_count; ++k) {
    std::size_t pivot = k;
    for (std::size_t i = k + 1; i < node_count; ++i)
      if (std::abs(m[i][k]) > std::abs(m[pivot][k])) pivot = i;
    std::swap(m[k], m[pivot]);
    if (!(std::abs(m[k][k]) > 0)) return false;
    for (std::size_t i = 0; i < node_count; ++i) {
      const double factor = i == k ? 0 : m[i][k] / m[k][k];
      for (std::size_t j = k; j <= node_count; ++j) m[i][j] -= factor * m[k][j];
    }
  }
  correction = 0;
  for (std::size_t i = 0; i < node_count; ++i) {
    const double step = m[i][node_count] / m[i][i];
    if (!(std::abs(step) < hottest)) return false;
    start[i] += step;
    correction = std::max(correction, std::abs(step));
  }
  return true;
}

/// Extremes of all nodes over the segments.
class Extremes {
 public:
  Extremes(const Network& network, PeriodicState& found) : network_(network), found_(found) {
    for (std::size_t i = 0; i < node_count; ++i) found.highest[i] = found.lowest[i] = {found.start[i], 0};
  }

  void see(const Step& step, const ThermalSegment& segment, double segment_start) {
    const NodeTemperatures before = rates_of(network_, step.before, power_at(segment, step.time), segment.conductance);
    for (std::size_t i = 0; i < node_count; ++i) {
      const double turn = turning_point(step, i, before[i]);
      if (turn > 0) note(i, node_within(network_, segment, step, i, turn), segment_start + step.time + turn);
      note(i, step.after[i], segment_start + step.time + step.length);
    }
  }

 private:
  void note(std::size_t node, double temperature, double time) {
    if (temperature > found_.highest[node].temperature) found_.highest[node] = {temperature, time};
    if (temperature < found_.lowest[node].temperature) found_.lowest[node] = {temperature, time};
  }

  const Network& network_;
  PeriodicState& found_;
};

/// The start that comes back; false when there is none. The Jacobian hardly changes on the way, so it is carried
/// through the steps again only when a correction was not a tenth of the one before.
bool find_start(const Network& network, const std::vector<ThermalSegment>& segments, const Marks& sought,
                NodeTemperatures& start) {
  Jacobian jacobian{};
  double correction = infinity;
  double before = 0;  // the correction before the last one
  for (int i = 0; i < 50 && correction > 1e-6; ++i) {
    const bool anew = !(correction < before / 10);
    if (anew) jacobian = unit();
    Walk walk(network, start);
    for (const ThermalSegment& segment : segments)
      walk.through(segment, [&](const Step& step, const ThermalSegment& of) {
        if (anew) carry(jacobian, network, of, step);
        return true;
      });
    before = i == 0 ? infinity : correction;
    if (!correct(start, walk.state(), jacobian, sought, correction)) return false;
  }
  return true;
}

PeriodicState periodic_state_of(const Network& network, const std::vector<ThermalSegment>& segments) {
  const ThermalSegment mean = mean_of(segments);
  const Marks sought = cooled(network, mean.conductance);
  const Marks hot = heated(network, mean.power);

  PeriodicState found;
  found.start.fill(network.ambient);
  bool exists = true;
  if (mean.duration > 0) {
    const NodeTemperatures steady = settled(network, mean.power, mean.conductance);
    for (std::size_t i = 0; i < node_count; ++i)
      if (sought[i]) found.start[i] = bounded(steady[i], hottest);
    exists = find_start(network, segments, sought, found.start);
  }
  Extremes extremes(network, found);
  double begun = 0;
  Walk walk(network, found.start);
  for (const ThermalSegment& segment : segments) {
    walk.through(segment, [&](const Step& step, const ThermalSegment& of) {
      extremes.see(step, of, begun);
      return true;
    });
    begun += segment.duration;
  }
  for (std::size_t i = 0; i < node_count; ++i) {
    if (exists && (sought[i] || !hot[i])) continue;
    found.start[i] = infinity;
    found.highest[i] = found.lowest[i] = {infinity, 0};
  }
  return found;
}

}  // namespace

// ---- what others call -----------------------------------------------------------------------------------------------

NodeTemperatures heat_rates(const ThermalNodes& nodes, const NodeTemperatures& state, double power, double conductance,
                            double ambient) {
  return rates_of(network_of(nodes, ambient), bounded(state), bounded(power, longest), bounded(conductance, strongest));
}

NodeTemperatures advance(const ThermalNodes& nodes, const NodeTemperatures& state, const ThermalSegment& segment,
                         double ambient) {
  const Network network = network_of(nodes, ambient);
  Walk walk(network, bounded(state));
  walk.through(bounded(segment), go_on);
  return walk.state();
}

std::vector<NodeTemperatures> trajectory(const ThermalNodes& nodes, const NodeTemperatures& state,
                                         const std::vector<ThermalSegment>& segments, double ambient) {
  const Network network = network_of(nodes, ambient);
  Walk walk(network, bounded(state));
  std::vector<NodeTemperatures> ends;
  ends.reserve(segments.size());
  for (const ThermalSegment& segment : segments) {
    walk.through(bounded(segment), go_on);
    ends.push_back(walk.state());
  }
  return ends;
}

PeriodicState periodic_state(const ThermalNodes& nodes, const std::vector<ThermalSegment>& segments, double ambient) {
  return periodic_state_of(network_of(nodes, ambient), bounded(segments));
}

// K − C/τ is positive definite for every τ above the slowest mode's. Eliminated along the row, its pivots say so.
double thermal_time_constant(const ThermalNodes& nodes, double conductance, const NodeTemperatures& state) {
  const Network n = network_of(nodes, 0);
  const double disc_temperature = bounded(state)[disc];
  const double shed = bounded(conductance, strongest) + 4 * n.radiation * squared(disc_temperature) * disc_temperature;
  const Marks joined = spread_over(n, {true, false, false, false});
  if (!cooled(n, shed)[disc]) return infinity;

  const auto above = [&](double tau) {
    bool positive = true;
    // What a node sees of the one behind a link; nothing when they are not joined.
    const auto behind = [&](std::size_t node, double own, double link) {
      if (!joined[node]) return 0.0;
      if (own + link <= 0) positive = false;
      return positive ? own * (link / (own + link)) : 0.0;
    };
    const double from_calipers = behind(calipers, n.calipers_air - n.capacity[calipers] / tau, n.calipers_pads);
    const double from_pads = behind(pads, from_calipers - n.capacity[pads] / tau, n.pads_disc);
    const double from_hub = behind(hub, n.hub_air - n.capacity[hub] / tau, n.hub_disc);
    return shed + from_pads + from_hub - n.capacity[disc] / tau > 0 && positive;
  };
  double high = 1;
  while (!above(high) && high < 1e60) high *= 16;
  double low = high;
  while (above(low) && low > 1e-60) low /= 16;
  return numerics::find_boundary(above, high, low, 1e-13);
}

double time_to_reach_share(const ThermalNodes& nodes, const std::vector<ThermalSegment>& segments, double ambient,
                           double share) {
  const Network network = network_of(nodes, ambient);
  const std::vector<ThermalSegment> run = bounded(segments);
  const double rise = periodic_state_of(network, run).highest[disc].temperature - network.ambient;
  if (share <= 0 || rise <= 0) return 0;
  if (share >= 1 || std::isinf(rise)) return infinity;
  const double target = network.ambient + share * rise;

  double begun = 0;
  double reached = infinity;
  const auto watch = [&](const Step& step, const ThermalSegment& segment) {
    const double rate = rates_of(network, step.before, power_at(segment, step.time), segment.conductance)[disc];
    const auto missing = [&](double time) { return node_within(network, segment, step, disc, time) - target; };
    double end = step.length;
    if (step.after[disc] < target) end = turning_point(step, disc, rate);
    if (end <= 0 || missing(end) < 0) return true;
    reached = begun + step.time + numerics::find_root(missing, 0, end, 1e-9 * step.length);
    return false;
  };
  NodeTemperatures cold{};
  cold.fill(network.ambient);
  Walk walk(network, cold);
  for (int i = 0; i < 10000; ++i) {
    for (const ThermalSegment& segment : run) {
      if (!walk.through(segment, watch)) return reached;
      begun += segment.duration;
    }
  }
  return reached;
}

double time_to_cool(const ThermalNodes& nodes, double conductance, const NodeTemperatures& state, double ambient,
                    double temperature) {
  const auto above = [temperature](const NodeTemperatures& t) {
    return *std::max_element(t.begin(), t.end()) - temperature;
  };
  const Network network = network_of(nodes, ambient);
  const NodeTemperatures start = bounded(state);
  if (above(start) <= 0) return 0;
  if (network.ambient >= temperature) return infinity;

  double reached = infinity;
  Walk walk(network, start);
  walk.through({1e9, 0, 0, bounded(conductance, strongest)}, [&](const Step& step, const ThermalSegment& segment) {
    if (above(step.after) > 0) return true;
    const auto excess = [&](double time) {
      if (time <= 0) return above(step.before);
      return above(step_from(network, segment, step.before, step.time, time).after);
    };
    reached = step.time + numerics::find_root(excess, 0, step.length, 1e-9 * step.length);
    return false;
  });
  return reached;
}

}  // namespace holdback::physics
