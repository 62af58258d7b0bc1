// Depth of the pads over the years: what was measured, when they were changed, and when they will be worn.
#include <fmt/format.h>

#include <algorithm>
#include <limits>

#include "holdback/draw/figure_parts.hpp"
#include "holdback/draw/figures.hpp"
#include "holdback/model/date.hpp"

namespace holdback::draw {

namespace {

constexpr std::size_t most_pads = 6;    // as many as there are series
constexpr std::size_t most_marks = 12;  // changes of pads that are named
constexpr double longest_ahead = 3;     // times the days behind us that the picture looks ahead

std::string pad_name(const std::string& pad) { return pad.empty() ? "thinnest pad" : pad; }

/// The pads that are drawn: those in use, the soonest worn first, then the others.
std::vector<std::string> pads_of(const History& history) {
  std::vector<std::string> names;
  const auto add = [&](const std::string& pad) {
    if (std::find(names.begin(), names.end(), pad) == names.end()) names.push_back(pad);
  };
  if (history.forecast) {
    auto pads = history.forecast->pads;
    std::stable_sort(pads.begin(), pads.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    for (const auto& pad : pads) add(pad.pad);
  }
  for (const auto& course : history.courses) add(course.pad);
  return names;
}

void add_courses(Chart& chart, const History& history, const std::vector<std::string>& pads) {
  constexpr Pattern patterns[] = {Pattern::solid, Pattern::dashed, Pattern::dotted};
  for (std::size_t i = 0; i < std::min(pads.size(), most_pads); ++i) {
    const Style style{MarkRole::curve, patterns[i % 3], static_cast<int>(i)};
    Curve curve{pad_name(pads[i]), style, {}, {}};
    for (const auto& course : history.courses) {
      if (course.pad != pads[i]) continue;
      if (!curve.x.empty()) {  // a gap between one set and the next
        curve.x.push_back(std::numeric_limits<double>::quiet_NaN());
        curve.y.push_back(0);
      }
      for (const auto& point : course.points) {
        curve.x.push_back(point.day);
        curve.y.push_back(std::max(point.depth, 0.0));
        chart.captions.push_back(
            {"", style, {static_cast<double>(point.day)}, {std::max(point.depth, 0.0)}, true, false, false});
      }
    }
    chart.curves.push_back(std::move(curve));
  }
}

void add_changes(Chart& chart, const History& history) {
  std::vector<int> days;
  for (const auto& entry : history.entries)
    if (entry.kind == EntryKind::pads && entry.corrected_by == 0) days.push_back(entry.day);
  std::sort(days.begin(), days.end());
  days.erase(std::unique(days.begin(), days.end()), days.end());
  for (std::size_t i = 0; i < days.size(); ++i) {
    const bool named = days.size() <= most_marks || i + most_marks >= days.size();
    chart.marks.push_back(
        {named ? "pads changed" : "", static_cast<double>(days[i]), {MarkRole::muted, Pattern::dotted, 0}});
  }
}

void add_forecast(Chart& chart, const Forecast& forecast) {
  const auto& band = forecast.band;
  chart.areas.push_back({"", {MarkRole::area, Pattern::solid, 0}, band.day, band.low, band.high});
  const auto worn = std::find_if(band.middle.begin(), band.middle.end(), [](double depth) { return !(depth > 0); });
  const auto until = std::min<std::ptrdiff_t>(worn - band.middle.begin() + 1, std::ssize(band.middle));
  chart.curves.push_back({"",
                          {MarkRole::curve, Pattern::dotted, 0},
                          {band.day.begin(), band.day.begin() + until},
                          {band.middle.begin(), band.middle.begin() + until}});
  chart.marks.push_back({"expected " + date_text(forecast.date.middle),
                         static_cast<double>(forecast.date.middle),
                         {MarkRole::text, Pattern::dashed, 0}});
}

/// First and last day of the picture.
void set_ends(Chart& chart, const History& history) {
  double first = std::numeric_limits<double>::max();
  double last = std::numeric_limits<double>::lowest();
  for (const auto& course : history.courses)
    for (const auto& point : course.points) {
      first = std::min(first, static_cast<double>(point.day));
      last = std::max(last, static_cast<double>(point.day));
    }
  if (!(last >= first)) return;
  if (history.forecast) {
    const auto& forecast = *history.forecast;
    last = std::max(last, static_cast<double>(forecast.from));
    const double most = last + longest_ahead * std::max(last - first, 60.0);
    const double wanted = forecast.date.high ? *forecast.date.high : forecast.date.middle;
    last = std::max(last, std::min(wanted + 0.02 * (wanted - first), most));
  }
  chart.x.low = first;
  chart.x.high = std::max(last, first + 14);
}

std::vector<Footnote> notes_on(const History& history, std::size_t pads) {
  std::vector<Footnote> notes;
  if (history.forecast) {
    const auto& date = history.forecast->date;
    notes.push_back(
        {fmt::format("Next change of pads about {}, nine times out of ten between {} and {}.", date_text(date.middle),
                     date_text(date.low), date.high ? date_text(*date.high) : std::string("no end to be seen")),
         MarkRole::text});
    notes.push_back(
        {"Band: 90 % interval of the depth of " +
             (history.forecast->governs.empty() ? std::string("the thinnest pad") : history.forecast->governs) +
             "; dotted: its middle.",
         MarkRole::muted});
  } else {
    notes.push_back({"Too little is known to tell the next change of pads.", MarkRole::muted});
  }
  if (pads > most_pads) notes.push_back({fmt::format("{} more pads are left out.", pads - most_pads), MarkRole::muted});
  notes.push_back({"The maker's wear limit rules, whatever is forecast.", MarkRole::muted});
  return notes;
}

}  // namespace

Scene history_figure(const History& history, units::System system) {
  const auto pads = pads_of(history);
  Chart chart;
  chart.x = {"date", Quantity::number, {}, {}, false};
  chart.x.dates = true;
  chart.y = {"pad above the maker's limit", Quantity::short_length, {}, {}, true};
  chart.limits = {{"worn out", {}, {0}, false}};
  if (history.forecast) add_forecast(chart, *history.forecast);
  add_courses(chart, history, pads);
  add_changes(chart, history);
  set_ends(chart, history);
  auto out = page("Depth of the pads", history.stand, 96, notes_on(history, pads.size()));
  add_chart(out.scene, chart, out.room, system);
  out.scene.description = in_words(chart, system);
  return out.scene;
}

}  // namespace holdback::draw
