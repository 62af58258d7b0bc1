// What shakes the tension of a log: its spectrum over frequency and over orders of the roll, peaks named where they
// are.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "holdback/draw/figures.hpp"
#include "holdback/draw/motion_parts.hpp"
#include "holdback/draw/thin.hpp"

namespace holdback::draw {

namespace {

constexpr std::size_t most_names = 8;     // of peaks in one chart
constexpr double beyond_last_peak = 1.6;  // the axis goes on so far behind the last peak
constexpr double least_orders = 6;

double place_of(const LogPeak& peak) { return peak.by_order ? peak.order : peak.frequency; }

std::string name_of(const LogPeak& peak, units::System system) {
  std::string text =
      peak.by_order ? fmt::format("order {:.2f}", peak.order) : shown(peak.frequency, Quantity::frequency, system);
  if (peak.source != PeakSource::unknown) text += ": " + std::string(key_of(peak.source));
  if (!peak.idler.empty()) text += " " + peak.idler;
  return text;
}

/// Where the axis ends, so that peaks can be told apart.
double end_of(const LogSpectrum& spectrum, const std::vector<const LogPeak*>& peaks, double least) {
  double last = least;
  for (const auto* peak : peaks) last = std::max(last, beyond_last_peak * place_of(*peak));
  return peaks.empty() && least == 0 ? spectrum.place.back() : std::min(last, spectrum.place.back());
}

Chart chart_of(const LogSpectrum& spectrum, const std::vector<LogPeak>& all, bool by_order, double least,
               units::System system) {
  std::vector<const LogPeak*> peaks;
  for (const auto& peak : all)
    if (peak.by_order == by_order && peaks.size() < most_names) peaks.push_back(&peak);
  Chart chart;
  chart.heading = by_order ? "Over turns of the roll" : "Over time";
  chart.x = by_order ? ChartAxis{"order of the roll", Quantity::number} : ChartAxis{"frequency", Quantity::frequency};
  chart.x.low = 0;
  chart.x.high = end_of(spectrum, peaks, least);
  chart.y = {"amplitude", Quantity::force, {}, {}, true};
  chart.rows = 5;
  chart.label_room = 36;
  const auto inside = static_cast<std::size_t>(
      std::upper_bound(spectrum.place.begin(), spectrum.place.end(), *chart.x.high) - spectrum.place.begin());
  const auto part = [inside](const std::vector<double>& values) {
    return std::vector<double>(values.begin(),
                               values.begin() + static_cast<std::ptrdiff_t>(std::min(inside, values.size())));
  };
  auto floor = thinned(part(spectrum.place), part(spectrum.floor), strip_columns);
  auto line = thinned(part(spectrum.place), part(spectrum.amplitude), strip_columns);
  chart.curves = {{"noise", {MarkRole::muted, Pattern::dashed, 0}, std::move(floor.x), std::move(floor.y)},
                  {"tension", {MarkRole::curve, Pattern::solid, 0}, std::move(line.x), std::move(line.y)}};
  for (const auto* peak : peaks)
    chart.captions.push_back(
        {name_of(*peak, system), {MarkRole::text}, {place_of(*peak)}, {peak->amplitude}, true, false, false});
  return chart;
}

void add_foretold(Chart& chart, double frequency, const char* name) {
  if (frequency > 0 && frequency < *chart.x.high)
    chart.marks.push_back({name, frequency, {MarkRole::muted, Pattern::dotted, 0}});
}

std::string in_words(const Diagnosis& found, units::System system) {
  if (found.peaks.empty()) return "No line stands out of the noise.";
  std::string text;
  for (const auto& peak : found.peaks)
    text += fmt::format("{}{}, {}.", text.empty() ? "" : " ", name_of(peak, system),
                        shown(peak.amplitude, Quantity::force, system));
  return text;
}

}  // namespace

Scene log_spectra_figure(const Diagnosis& found, units::System system) {
  std::vector<Chart> charts;
  if (!found.by_frequency.empty()) {
    charts.push_back(chart_of(found.by_frequency, found.peaks, false, 0, system));
    add_foretold(charts.back(), found.loop_frequency, "loop, foretold");
    add_foretold(charts.back(), found.mode_frequency, "roll and web, foretold");
  }
  if (!found.by_order.empty()) charts.push_back(chart_of(found.by_order, found.peaks, true, least_orders, system));
  std::vector<Footnote> notes{
      {"Amplitude of a sine at each place, in steady run. What keeps its place over turns comes from the roll, what "
       "keeps "
       "it over time from elsewhere.",
       MarkRole::muted}};
  auto out =
      page(found.peaks.empty() ? "What shakes the tension: nothing stands out" : "What shakes the tension",
           found.log + " · " + found.job, 70.0 * static_cast<double>(std::max<std::size_t>(1, charts.size())), notes);
  if (!charts.empty()) add_panels(out.scene, charts, out.room, system);
  out.scene.description = in_words(found, system);
  return out.scene;
}

}  // namespace holdback::draw
