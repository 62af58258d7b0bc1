#include "holdback/physics/thermal_steps.hpp"

#include "holdback/physics/cooling.hpp"

namespace holdback::physics::detail {

// ---- the brake within bounds ----------------------------------------------------------------------------------------

Network network_of(const ThermalNodes& nodes, double ambient) {
  Network made;
  for (std::size_t i = 0; i < node_count; ++i) made.capacity[i] = std::max(1e-6, bounded(nodes.capacity[i], longest));
  made.pads_disc = bounded(nodes.pads_disc, strongest);
  made.calipers_pads = bounded(nodes.calipers_pads, strongest);
  made.hub_disc = bounded(nodes.hub_disc, strongest);
  made.calipers_air = bounded(nodes.calipers_air, strongest);
  made.hub_air = bounded(nodes.hub_air, strongest);
  made.pad_share = bounded(nodes.pad_share, 1);
  made.radiation = bounded(nodes.emissivity, 1) * stefan_boltzmann * bounded(nodes.radiating_area, strongest);
  made.ambient = bounded(ambient, hottest);
  return made;
}

NodeTemperatures bounded(const NodeTemperatures& state) {
  NodeTemperatures kept{};
  for (std::size_t i = 0; i < node_count; ++i) kept[i] = bounded(state[i], hottest);
  return kept;
}

ThermalSegment bounded(const ThermalSegment& segment) {
  const double duration = segment.duration < 1e-12 ? 0 : bounded(segment.duration, longest);
  return {duration, bounded(segment.power, longest), bounded(segment.power_end, longest),
          bounded(segment.conductance, strongest)};
}

std::vector<ThermalSegment> bounded(const std::vector<ThermalSegment>& segments) {
  std::vector<ThermalSegment> kept;
  kept.reserve(segments.size());
  for (const ThermalSegment& each : segments) kept.push_back(bounded(each));
  return kept;
}

double power_at(const ThermalSegment& segment, double time) {
  const double share = segment.duration > 0 ? time / segment.duration : 0;
  return segment.power + (segment.power_end - segment.power) * share;
}

NodeTemperatures rates_of(const Network& n, const NodeTemperatures& t, double power, double conductance) {
  const double from_pads = n.pads_disc * (t[pads] - t[disc]);
  const double from_calipers = n.calipers_pads * (t[calipers] - t[pads]);
  const double from_hub = n.hub_disc * (t[hub] - t[disc]);
  const double radiated = n.radiation * (squared(squared(t[disc])) - squared(squared(n.ambient)));
  const double shed = conductance * (t[disc] - n.ambient) + radiated;
  return {((1 - n.pad_share) * power + from_pads + from_hub - shed) / n.capacity[disc],
          (n.pad_share * power - from_pads + from_calipers) / n.capacity[pads],
          (-from_calipers - n.calipers_air * (t[calipers] - n.ambient)) / n.capacity[calipers],
          (-from_hub - n.hub_air * (t[hub] - n.ambient)) / n.capacity[hub]};
}

// ---- one implicit stage ---------------------------------------------------------------------------------------------

namespace {

/// A node at the far end of a link.
struct Link {
  double inverse{};  // [K/W] one over what holds the far node: its own and the link
  double share{};    // [1] of what is put into the far node that reaches the near one
  double behind{};   // [W/K] that the near node sees
  Link(double own, double link) : inverse(1 / (own + link)), share(link * inverse), behind(own * share) {}
};

/// The four balances of a stage, C/(γh) (Y − y) = Q(Y), with the ends of the row eliminated towards the disc. Series
/// conductances lose no digits, however different the nodes are.
class Row {
 public:
  Row(const Network& network, double conductance, double stage_time)
      : network_(network),
        storage_{network.capacity[0] / stage_time, network.capacity[1] / stage_time, network.capacity[2] / stage_time,
                 network.capacity[3] / stage_time},
        calipers_(storage_[calipers] + network.calipers_air, network.calipers_pads),
        pads_(storage_[pads] + calipers_.behind, network.pads_disc),
        hub_(storage_[hub] + network.hub_air, network.hub_disc),
        disc_total_(storage_[disc] + conductance + pads_.behind + hub_.behind),
        to_air_{conductance * network.ambient + network.radiation * squared(squared(network.ambient)), 0,
                network.calipers_air * network.ambient, network.hub_air * network.ambient} {}

  /// Stage temperatures from the temperatures that storage starts from and the power; `guess` of the disc.
  NodeTemperatures temperatures(const NodeTemperatures& from, double power, double guess) const {
    NodeTemperatures put{};
    for (std::size_t i = 0; i < node_count; ++i) put[i] = storage_[i] * from[i] + to_air_[i];
    put[disc] += (1 - network_.pad_share) * power;
    put[pads] += network_.pad_share * power;
    return spread(put, disc_temperature(gathered(put), guess));
  }

  /// How stage temperatures change with what storage starts from, at a slope of the disc: all columns in one go.
  Jacobian change(const Jacobian& from, double slope) const {
    Jacobian made{};
    const double inverse = 1 / slope;
    for (std::size_t k = 0; k < node_count; ++k) {
      const auto put = [&](std::size_t node) { return storage_[node] * from[node * node_count + k]; };
      const double to_calipers = put(calipers);
      const double to_pads = put(pads) + calipers_.share * to_calipers;
      const double at_disc = (put(disc) + pads_.share * to_pads + hub_.share * put(hub)) * inverse;
      const double at_pads = (to_pads + network_.pads_disc * at_disc) * pads_.inverse;
      made[disc * node_count + k] = at_disc;
      made[pads * node_count + k] = at_pads;
      made[calipers * node_count + k] = (to_calipers + network_.calipers_pads * at_pads) * calipers_.inverse;
      made[hub * node_count + k] = (put(hub) + network_.hub_disc * at_disc) * hub_.inverse;
    }
    return made;
  }

  /// d(heat leaving)/dΘ of the disc [W/K].
  double slope(double temperature) const {
    return disc_total_ + 4 * network_.radiation * squared(temperature) * std::abs(temperature);
  }

 private:
  double gathered(const NodeTemperatures& put) const {
    return put[disc] + pads_.share * (put[pads] + calipers_.share * put[calipers]) + hub_.share * put[hub];
  }

  NodeTemperatures spread(const NodeTemperatures& put, double at_disc) const {
    const double at_pads = (put[pads] + calipers_.share * put[calipers] + network_.pads_disc * at_disc) * pads_.inverse;
    return {at_disc, at_pads, (put[calipers] + network_.calipers_pads * at_pads) * calipers_.inverse,
            (put[hub] + network_.hub_disc * at_disc) * hub_.inverse};
  }

  // total Θ + εσA Θ|Θ|³ = heat: rising in Θ, so there is one root; Newton's method from any side. After a step s the
  // error is near ½ f''/f' s², so that no further step is made only to see that it was not needed.
  double disc_temperature(double heat, double guess) const {
    if (network_.radiation <= 0) return heat / disc_total_;
    double temperature = guess;
    for (int i = 0; i < 100; ++i) {
      const double flat = network_.radiation * squared(temperature);
      const double inverse = 1 / (disc_total_ + 4 * flat * std::abs(temperature));
      const double step = ((disc_total_ + flat * std::abs(temperature)) * temperature - heat) * inverse;
      temperature -= step;
      if (6 * flat * inverse * squared(step) <= 1e-12 * std::abs(temperature)) break;
    }
    return temperature;
  }

  const Network& network_;
  NodeTemperatures storage_;
  Link calipers_, pads_, hub_;
  double disc_total_;
  NodeTemperatures to_air_;
};

}  // namespace

NodeTemperatures settled(const Network& network, double power, double conductance) {
  NodeTemperatures ambient{};
  ambient.fill(network.ambient);
  return Row(network, conductance, longest).temperatures(ambient, power, network.ambient);
}

// ---- one step -------------------------------------------------------------------------------------------------------

namespace {

// SDIRK of order 4 with five stages, γ = ¼, and its embedded order 3. Source: [hairer1996], table 6.5.
constexpr double gamma = 0.25;
constexpr double tableau[stages][stages] = {{0.25},
                                            {0.5, 0.25},
                                            {17.0 / 50, -1.0 / 25, 0.25},
                                            {371.0 / 1360, -137.0 / 2720, 15.0 / 544, 0.25},
                                            {25.0 / 24, -49.0 / 48, 125.0 / 16, -85.0 / 12, 0.25}};
constexpr double stage_at[stages] = {0.25, 0.75, 0.55, 0.5, 1};
constexpr double error_weight[stages] = {-3.0 / 16, -27.0 / 32, 25.0 / 32, 0, 0.25};

/// What a stage starts from: y + h Σ a_ij k_j over the stages before it.
template <class Values>
Values stage_from(const Values& y, const std::array<Values, stages>& rates, std::size_t stage, double h) {
  Values from = y;
  for (std::size_t j = 0; j < stage; ++j) {
    const double weight = h * tableau[stage][j];
    for (std::size_t i = 0; i < from.size(); ++i) from[i] += weight * rates[j][i];
  }
  return from;
}

/// k = (Y − from)/(γh)
template <class Values>
void take_rates(Values& rates, const Values& stage, const Values& from, double inverse_time) {
  for (std::size_t i = 0; i < from.size(); ++i) rates[i] = (stage[i] - from[i]) * inverse_time;
}

}  // namespace

Step step_from(const Network& network, const ThermalSegment& segment, const NodeTemperatures& before, double time,
               double length) {
  const Row row(network, segment.conductance, gamma * length);
  Step made{time, length, before, before, {}, {}, 0};
  std::array<NodeTemperatures, stages> rates{};
  const double inverse_time = 1 / (gamma * length);
  for (std::size_t s = 0; s < stages; ++s) {
    const NodeTemperatures from = stage_from(before, rates, s, length);
    const double guess = from[disc] + (s > 0 ? gamma * length * rates[s - 1][disc] : 0);
    made.after = row.temperatures(from, power_at(segment, time + stage_at[s] * length), guess);
    made.disc_slopes[s] = row.slope(made.after[disc]);
    take_rates(rates[s], made.after, from, inverse_time);
  }
  made.rates_after = rates[stages - 1];
  for (std::size_t i = 0; i < node_count; ++i) {
    double error = 0;
    for (std::size_t s = 0; s < stages; ++s) error += length * error_weight[s] * rates[s][i];
    made.error = std::max(made.error, std::abs(error) / (1e-4 + 1e-7 * std::abs(made.after[i])));
  }
  return made;
}

void carry(Jacobian& jacobian, const Network& network, const ThermalSegment& segment, const Step& step) {
  const Row row(network, segment.conductance, gamma * step.length);
  const double inverse_time = 1 / (gamma * step.length);
  std::array<Jacobian, stages> rates{};
  Jacobian change{};
  for (std::size_t s = 0; s < stages; ++s) {
    const Jacobian from = stage_from(jacobian, rates, s, step.length);
    change = row.change(from, step.disc_slopes[s]);
    take_rates(rates[s], change, from, inverse_time);
  }
  jacobian = change;
}

double node_within(const Network& network, const ThermalSegment& segment, const Step& step, std::size_t node,
                   double time) {
  if (time <= 0) return step.before[node];
  return step_from(network, segment, step.before, step.time, std::min(time, step.length)).after[node];
}

double turning_point(const Step& step, std::size_t node, double rate_before) {
  const double rate_after = step.rates_after[node];
  if (!(rate_before * rate_after < 0)) return -1;
  const double secant = (step.after[node] - step.before[node]) / step.length;
  const double a = 3 * (rate_before + rate_after - 2 * secant);
  const double b = 2 * (3 * secant - 2 * rate_before - rate_after);
  // a s² + b s + rate_before = 0 has one root between 0 and 1.
  const double root = std::sqrt(std::max(0.0, b * b - 4 * a * rate_before));
  const double q = -(b + std::copysign(root, b)) / 2;
  for (const double s : {q / a, rate_before / q})
    if (s > 0 && s < 1) return s * step.length;
  return -1;
}

}  // namespace holdback::physics::detail
