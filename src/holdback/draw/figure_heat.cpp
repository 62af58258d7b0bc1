// Temperatures over one roll and its change-over.
#include <algorithm>
#include <limits>
#include <optional>

#include "holdback/draw/figure_parts.hpp"
#include "holdback/draw/figures.hpp"
#include "holdback/draw/ticks.hpp"

namespace holdback::draw {

namespace {

constexpr double long_run = 5400;  // [s] from here on in hours

constexpr double most_of_rise = 1.6;  // a rating beyond so many times the rise leaves the picture

/// Where the picture ends, so that the curves can be read below a rating far above them; none: at the rating.
std::optional<double> top_of(const ThermalFacts& thermal) {
  double low = std::numeric_limits<double>::max();
  double high = 0;
  for (const auto* part : {&thermal.disc, &thermal.pads, &thermal.calipers, &thermal.hub, &thermal.steady}) {
    for (const double value : *part) {
      if (!showable(value)) continue;
      low = std::min(low, value);
      high = std::max(high, value);
    }
  }
  if (!(high > low)) return {};
  return low + most_of_rise * (high - low);
}

/// Where the disc is hottest: a dot with the temperature.
ChartCaption hottest(const ThermalFacts& thermal, units::System system) {
  const auto count = std::min(thermal.time.size(), thermal.disc.size());
  std::size_t at = 0;
  for (std::size_t i = 1; i < count; ++i) at = thermal.disc[i] > thermal.disc[at] ? i : at;
  if (count == 0) return {};
  return {"hottest " + shown(thermal.disc[at], Quantity::temperature, system) + " at Ø " +
              shown(thermal.highest_diameter, Quantity::short_length, system),
          {MarkRole::text},
          {thermal.time[at]},
          {thermal.disc[at]},
          true,
          false,
          false};
}

std::vector<Footnote> notes_on(const ThermalFacts& thermal, units::System system) {
  const auto time = [system](double seconds) {
    return shown(seconds, seconds < long_run ? Quantity::duration : Quantity::running_time, system);
  };
  std::vector<Footnote> notes;
  notes.push_back({thermal.hot_at_once ? "The first roll from cold already gets as hot."
                                       : "From cold it takes " + time(thermal.time_to_hot) +
                                             " of running roll after roll to come within 5 % of this.",
                   MarkRole::muted});
  notes.push_back({thermal.never_cool ? "The air is too warm for the disc to cool to where it may be touched."
                                      : "From the hottest moment it stands " + time(thermal.time_to_open) +
                                            " until it may be touched.",
                   MarkRole::muted});
  return notes;
}

}  // namespace

Scene heat_figure(const ThermalFacts& thermal, const JobFit* job, const std::string& under, units::System system) {
  const auto& t = thermal.time;
  const double end = t.empty() ? 0 : t.back();
  Chart chart;
  chart.x = {
      "time from the start of a roll", end < long_run ? Quantity::duration : Quantity::running_time, {}, {}, false};
  chart.y = {"temperature", Quantity::temperature, {}, {}, false};
  chart.limits = temperature_limits(job, system);
  const auto top = top_of(thermal);
  const bool beyond = std::any_of(chart.limits.begin(), chart.limits.end(),
                                  [&](const ChartLimit& limit) { return top && limit.y.front() > *top; });
  if (beyond) chart.y.high = top;
  chart.curves = {{"disc", {MarkRole::curve, Pattern::solid, 1}, t, thermal.disc},
                  {"pads", {MarkRole::curve, Pattern::dashed, 0}, t, thermal.pads},
                  {"calipers", {MarkRole::curve, Pattern::solid, 2}, t, thermal.calipers},
                  {"hub", {MarkRole::curve, Pattern::dotted, 3}, t, thermal.hub},
                  {"where the disc would settle", {MarkRole::curve, Pattern::dotted, 5}, t, thermal.steady}};
  if (thermal.changeover > 0 && end > 0) {
    chart.spans = {{"change-over", std::max(end - thermal.changeover, t.front()), end}};
  }
  if (!t.empty()) chart.captions = {hottest(thermal, system)};
  auto out = page("Temperatures over a roll, in the state that repeats", under, 90, notes_on(thermal, system));
  add_chart(out.scene, chart, out.room, system);
  out.scene.description = in_words(chart, system);
  return out.scene;
}

}  // namespace holdback::draw
