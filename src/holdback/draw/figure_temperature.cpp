// Disc temperature over the roll.
#include <algorithm>

#include "holdback/draw/figure_parts.hpp"
#include "holdback/draw/figures.hpp"

namespace holdback::draw {

namespace {

/// The running part of a roll, from the core to the full roll; what follows the first moment at the core is standstill.
Curve over_diameter(const ThermalFacts& thermal) {
  Curve curve{"disc, roll after roll", {MarkRole::curve, Pattern::dashed, 1}, {}, {}};
  const auto count = std::min(thermal.diameter.size(), thermal.disc.size());
  const auto end = thermal.diameter.begin() + static_cast<std::ptrdiff_t>(count);
  const auto core = std::min_element(thermal.diameter.begin(), end);
  const auto last = static_cast<std::size_t>(core - thermal.diameter.begin());
  for (std::size_t i = std::min(last + 1, count); i-- > 0;) {
    curve.x.push_back(thermal.diameter[i]);
    curve.y.push_back(thermal.disc[i]);
  }
  return curve;
}

void mark_too_hot(Chart& chart, std::vector<Footnote>& notes, const Curve& curve, const JobFit* job, LimitId id,
                  const std::string& words, units::System system) {
  const auto* limit = job == nullptr ? nullptr : find_limit(job->limits, id);
  if (limit == nullptr) return;
  const std::vector<double> bound(curve.x.size(), limit->bound);
  mark_beyond(chart, notes, beyond(curve.x, curve.y, bound, true), words, system, false);
}

}  // namespace

Scene temperature_figure(const Envelope& e, const JobFit* job, const std::string& under, units::System system) {
  Chart chart;
  chart.x = {"roll diameter", Quantity::short_length, {}, {}, false};
  chart.y = {"temperature", Quantity::temperature, {}, {}, false};
  chart.limits = temperature_limits(job, system);
  const Curve steady{"disc, steady at each diameter", {MarkRole::curve, Pattern::solid, 0}, e.diameter, e.temperature};
  chart.curves = {steady};
  std::vector<Footnote> notes;
  const std::string rated = "disc above its rating";
  const std::string pads = "disc above the limit of the pads";
  mark_too_hot(chart, notes, steady, job, LimitId::disc_temperature, rated, system);
  mark_too_hot(chart, notes, steady, job, LimitId::pad_temperature, pads, system);
  if (job != nullptr && job->thermal) {
    const auto repeating = over_diameter(*job->thermal);
    chart.curves.push_back(repeating);
    mark_too_hot(chart, notes, repeating, job, LimitId::disc_temperature, rated + ", roll after roll,", system);
    mark_too_hot(chart, notes, repeating, job, LimitId::pad_temperature, pads + ", roll after roll,", system);
    notes.push_back({"Roll after roll: the state that repeats, each roll started as the change-over leaves the disc.",
                     MarkRole::muted});
  }
  auto out = page("Disc temperature over the roll", under, 86, notes);
  add_chart(out.scene, chart, out.room, system);
  out.scene.description = in_words(chart, system);
  return out.scene;
}

}  // namespace holdback::draw
