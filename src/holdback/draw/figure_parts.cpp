#include "holdback/draw/figure_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "holdback/draw/chart_layout.hpp"
#include "holdback/draw/ticks.hpp"

namespace holdback::draw {

namespace {

constexpr double margin = 8;  // [mm] of the page

std::string capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

/// The share of the way from a to b where a difference goes through zero.
double crossing(double before, double after) { return std::clamp(before / (before - after), 0.0, 1.0); }

std::string at_diameters(double from, double to, units::System system) {
  const auto first = units::show_number(from, Quantity::short_length, system);
  const auto last = shown(to, Quantity::short_length, system);
  return first == units::show_number(to, Quantity::short_length, system) ? "at Ø " + last
                                                                         : "from Ø " + first + " to " + last;
}

}  // namespace

Page page(const std::string& title, const std::string& under, double height, const std::vector<Footnote>& notes,
          double width) {
  Page page;
  auto& scene = page.scene;
  scene.width = width;
  scene.title = under.empty() ? title : title + ": " + under;
  const double room = width - 2 * margin;
  add(scene,
      Label{{margin, 10},
            fitted(title, room, measure::title, Weight::bold),
            Anchor::start,
            measure::title,
            Weight::bold,
            0},
      {MarkRole::text});
  double y = 10;
  const auto lines = under.empty() ? std::vector<std::string>{} : broken(under, room, measure::text, 2);
  for (const auto& line : lines) {
    y += under.empty() ? 0 : 4.6;
    add(scene, Label{{margin, y}, line, Anchor::start, measure::text, Weight::normal, 0}, {MarkRole::muted});
  }
  page.room = {margin, y + 4, width - margin, y + 4 + height};
  y = page.room.bottom + 1;
  for (const auto& note : notes) {
    for (const auto& line : broken(note.text, room, measure::number, 3)) {
      y += measure::line;
      add(scene, Label{{margin, y}, line, Anchor::start, measure::number, Weight::normal, 0}, {note.role});
    }
  }
  scene.height = y + (notes.empty() ? 3 : 5);
  return page;
}

std::string shown(double si, Quantity kind, units::System system) {
  return kept_together(units::show(si, kind, system));
}

std::string margin_text(double value) {
  if (std::isnan(value)) return "–";
  const double percent = 100 * (value - 1);
  if (percent >= 900) return kept_together(">+900 %");
  double whole = std::max(std::floor(percent + 1e-9), -100.0);  // rounded towards what is worse
  if (value < 1) whole = std::min(whole, -1.0);
  return kept_together(fmt::format("{}{:.0f} %", whole < 0 ? "−" : "+", std::abs(whole)));
}

std::string share_text(double share) {
  if (!showable(share)) return "–";
  const double percent = std::floor(1000 * share + 1e-9) / 10;
  return kept_together(fmt::format("{:.{}f} %", percent, percent == 0 || percent == 100 ? 0 : 1));
}

std::string fit_text(const Fit& fit) {
  return fmt::format("{} × {}, {} pair{}{}, grade {}", fit.brakes, fit.brake, fit.pairs, fit.pairs == 1 ? "" : "s",
                     fit.brakes > 1 ? " each" : "", fit.grade);
}

const Limit* find_limit(const std::vector<Limit>& limits, LimitId id) {
  const auto found = std::find_if(limits.begin(), limits.end(), [id](const Limit& each) { return each.id == id; });
  return found == limits.end() ? nullptr : &*found;
}

std::vector<Beyond> beyond(const std::vector<double>& x, const std::vector<double>& y, const std::vector<double>& bound,
                           bool above) {
  std::vector<Beyond> out;
  bool open = false;
  double before = 0;  // how far y lay beyond the bound at the last point; not above 0: within
  const auto point = [&](double at, double low, double high) {
    auto& area = out.back().area;
    area.x.push_back(at);
    area.low.push_back(low);
    area.high.push_back(high);
    if (area.x.size() == 1) out.back().from = at;
    out.back().to = at;
  };
  const auto edge = [&](std::size_t i, double now) {
    const double share = crossing(before, now);
    const double level = std::lerp(bound[i - 1], bound[i], share);
    point(std::lerp(x[i - 1], x[i], share), level, level);
  };
  const auto count = std::min({x.size(), y.size(), bound.size()});
  bool known = false;  // the last point could be shown
  for (std::size_t i = 0; i < count; ++i) {
    const bool shown = showable(x[i]) && showable(y[i]) && showable(bound[i]);
    const double excess = above ? y[i] - bound[i] : bound[i] - y[i];
    const bool out_here = shown && excess > 1e-9 * std::abs(bound[i]);
    if (out_here && !open) {
      out.push_back({{"", {MarkRole::bad}, {}, {}, {}}, 0, 0});
      if (known && before < 0) edge(i, excess);
    }
    if (open && !out_here && shown && excess < before) edge(i, excess);
    if (out_here) point(x[i], std::min(y[i], bound[i]), std::max(y[i], bound[i]));
    open = out_here;
    known = shown;
    before = excess;
  }
  return out;
}

void mark_beyond(Chart& chart, std::vector<Footnote>& notes, const std::vector<Beyond>& stretches,
                 const std::string& words, units::System system, bool captioned) {
  for (const auto& each : stretches) {
    chart.areas.push_back(each.area);
    const bool over_roll = chart.x.kind == Quantity::short_length;
    const auto where = over_roll ? " " + at_diameters(each.from, each.to, system)
                                 : fmt::format(" from {} to {}", units::show_number(each.from, chart.x.kind, system),
                                               units::show(each.to, chart.x.kind, system));
    notes.push_back({capital(words) + where, MarkRole::bad});
  }
  if (stretches.empty() || !captioned) return;
  const auto widest = std::max_element(stretches.begin(), stretches.end(),
                                       [](const Beyond& a, const Beyond& b) { return a.to - a.from < b.to - b.from; });
  chart.captions.push_back({words, {MarkRole::bad}, widest->area.x, widest->area.high, false, false, true});
}

std::vector<ChartLimit> temperature_limits(const JobFit* job, units::System system) {
  if (job == nullptr) return {};
  const auto* disc = find_limit(job->limits, LimitId::disc_temperature);
  const auto* pads = find_limit(job->limits, LimitId::pad_temperature);
  const auto limit = [&](const std::string& name, double bound) {
    return ChartLimit{name + " " + shown(bound, Quantity::temperature, system), {}, {bound}, true};
  };
  if (disc != nullptr && pads != nullptr && std::abs(disc->bound - pads->bound) < 0.5)
    return {limit("disc and pads rated to", disc->bound)};
  std::vector<ChartLimit> limits;
  if (disc != nullptr) limits.push_back(limit("disc rated to", disc->bound));
  if (pads != nullptr) limits.push_back(limit("pads to", pads->bound));
  return limits;
}

MarkRole role_of(State state) {
  return state == State::holds ? MarkRole::good : state == State::tight ? MarkRole::tight : MarkRole::bad;
}

void draw_state(Scene& scene, Point middle, State state) {
  const Style style{role_of(state)};
  const double r = 0.85;
  if (state == State::holds) {
    add(scene, Circle{middle, r, false}, style);
  } else if (state == State::tight) {
    add(scene,
        Polyline{{{middle.x - r, middle.y + r},
                  {middle.x, middle.y - r},
                  {middle.x + r, middle.y + r},
                  {middle.x - r, middle.y + r},
                  {middle.x, middle.y - r}}},
        style);
  } else {
    add(scene, Segment{{middle.x - r, middle.y - r}, {middle.x + r, middle.y + r}}, style);
    add(scene, Segment{{middle.x - r, middle.y + r}, {middle.x + r, middle.y - r}}, style);
  }
}

}  // namespace holdback::draw
