#include "holdback/draw/plot.hpp"

#include <algorithm>

#include "holdback/draw/loop_words.hpp"
#include "holdback/draw/thin.hpp"

namespace holdback::draw {

namespace {

constexpr double headroom = 1.15;       // above the highest curve
constexpr double most_of_demand = 2.5;  // a capacity beyond so many times the demand leaves the picture
constexpr double long_run = 5400;       // [s] from here on in hours

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

Plot tension_plot(const RunTrace& trace, const TensionTarget& tension) {
  constexpr std::size_t steps = 90;  // about as many as the picture has dots across
  const double end = trace.time.empty() ? 0 : trace.time.back();
  Plot plot{{"time", end < long_run ? Quantity::duration : Quantity::running_time, {}},
            {"tension, upper and lower end of its band", Quantity::force, {}},
            {}};
  const auto band = thinned_band(trace.time, trace.lowest_tension, trace.highest_tension, steps);
  const auto setpoint = thinned(trace.time, trace.setpoint, steps);
  Series low{"window from", Role::floor, setpoint.x, {}};
  Series high{"window to", Role::floor, setpoint.x, {}};
  for (const double at : setpoint.y) {
    const auto ends = window_at(tension, at);
    low.y.push_back(ends.low);
    high.y.push_back(ends.high);
  }
  plot.y.top = headroom * std::min(highest(band.high), most_of_demand * highest(high.y));
  if (!(highest(high.y) > 0)) plot.y.top = headroom * highest(band.high);
  plot.y.top = std::max(*plot.y.top, headroom * highest(high.y));
  plot.series = {std::move(high),
                 {"upper end", Role::demand, band.x, band.high},
                 {"lower end", Role::stop, band.x, band.low},
                 std::move(low)};
  return plot;
}

}  // namespace holdback::draw
