#include "holdback/draw/plot.hpp"

#include <algorithm>

namespace holdback::draw {

namespace {

constexpr double headroom = 1.15;       // above the highest curve
constexpr double most_of_demand = 2.5;  // a capacity beyond so many times the demand leaves the picture

double highest(const std::vector<double>& values) {
  return values.empty() ? 0 : *std::max_element(values.begin(), values.end());
}

}  // namespace

Plot envelope_plot(const Envelope& envelope) {
  const auto& x = envelope.diameter;
  Plot plot{{"roll diameter", Quantity::short_length, {}}, {"brake torque", Quantity::torque, {}}, {}};
  plot.series = {{"capacity, lowest friction", Role::capacity, x, envelope.capacity_low},
                 {"emergency stop", Role::emergency_stop, x, envelope.emergency_stop},
                 {"normal stop", Role::stop, x, envelope.stop},
                 {"steady run", Role::demand, x, envelope.run},
                 {"floor, highest friction", Role::floor, x, envelope.floor}};
  const double demand = std::max({highest(envelope.emergency_stop), highest(envelope.stop), highest(envelope.run)});
  const double all = std::max({demand, highest(envelope.capacity_low), highest(envelope.floor)});
  plot.y.top = headroom * (demand > 0 ? std::min(all, most_of_demand * demand) : all);
  return plot;
}

}  // namespace holdback::draw
