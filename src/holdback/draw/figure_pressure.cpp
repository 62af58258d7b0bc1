// Pressure over the roll, for a controller and for a hand.
#include <fmt/format.h>

#include <algorithm>
#include <limits>

#include "holdback/draw/figure_parts.hpp"
#include "holdback/draw/figures.hpp"
#include "holdback/draw/ticks.hpp"

namespace holdback::draw {

namespace {

const Style by_controller{MarkRole::curve, Pattern::solid, 0};
const Style by_hand{MarkRole::curve, Pattern::solid, 1};

ChartAxis over_roll() { return {"roll diameter", Quantity::short_length, {}, {}, false}; }

/// A member of every automatic point, from the core to the full roll.
Curve automatic(const JobPlan& plan, double PlanPoint::*member, const std::string& name) {
  Curve curve{name, by_controller, {}, {}};
  for (auto point = plan.automatic.rbegin(); point != plan.automatic.rend(); ++point) {
    curve.x.push_back(point->diameter);
    curve.y.push_back((*point).*member);
  }
  return curve;
}

/// The steps of the card from the core to the full roll, joined as stairs.
Curve stairs(const JobPlan& plan) {
  Curve curve{"by hand", by_hand, {}, {}};
  for (auto setting = plan.by_hand.rbegin(); setting != plan.by_hand.rend(); ++setting) {
    curve.x.insert(curve.x.end(), {setting->to, setting->from});
    curve.y.insert(curve.y.end(), {setting->pressure, setting->pressure});
  }
  return curve;
}

/// The tension that each step lets rise, from the core to the full roll, with a gap from one to the next.
Curve strokes(const JobPlan& plan) {
  constexpr double gap = std::numeric_limits<double>::infinity();
  Curve curve{"by hand", by_hand, {}, {}};
  for (auto setting = plan.by_hand.rbegin(); setting != plan.by_hand.rend(); ++setting) {
    curve.x.insert(curve.x.end(), {setting->to, setting->from, gap});
    curve.y.insert(curve.y.end(), {setting->tension_to, setting->tension_from, gap});
  }
  return curve;
}

/// The pressures of the card with as many decimals as the highest needs for three digits.
std::string setting_text(const JobPlan& plan, double pressure, units::System system) {
  double most = 0;
  for (const auto& setting : plan.by_hand)
    most = std::max(most, units::in_display_unit(setting.pressure, Quantity::pressure, system));
  const int decimals = most >= 100 || !showable(most) ? 0 : most >= 10 ? 1 : 2;
  const double number = units::in_display_unit(pressure, Quantity::pressure, system);
  return showable(number) ? fmt::format("{:.{}f}", number, decimals) : std::string{};
}

Chart pressure_chart(const JobPlan& plan, units::System system) {
  Chart chart;
  chart.heading = "Pressure";
  chart.x = over_roll();
  chart.y = {"pressure", Quantity::pressure, {}, {}, true};
  chart.curves = {automatic(plan, &PlanPoint::pressure, "automatic"), stairs(plan)};
  for (const auto& setting : plan.by_hand) {
    chart.captions.push_back({setting_text(plan, setting.pressure, system),
                              by_hand,
                              {setting.to, setting.from},
                              {setting.pressure, setting.pressure},
                              false,
                              true,
                              false});
  }
  return chart;
}

Chart tension_chart(const JobPlan& plan, units::System system) {
  const auto& t = plan.tension;
  Chart chart;
  chart.heading = "Tension to expect";
  chart.x = over_roll();
  chart.y = {"tension", Quantity::force, {}, {}, false};
  chart.curves = {automatic(plan, &PlanPoint::tension, "automatic"), strokes(plan)};
  if (t.low > 0)
    chart.limits.push_back({"low end of the window " + shown(t.low, Quantity::force, system), {}, {t.low}, false});
  if (t.high > 0)
    chart.limits.push_back({"high end of the window " + shown(t.high, Quantity::force, system), {}, {t.high}, true});
  const auto& x = chart.curves.front().x;
  if (plan.tolerance > 0 && t.setpoint > 0 && x.size() > 1) {
    chart.areas.push_back({fmt::format("±{:.3g}\u00A0% of the setpoint", 100 * plan.tolerance),
                           {MarkRole::area},
                           {x.front(), x.back()},
                           {t.setpoint * (1 - plan.tolerance), t.setpoint * (1 - plan.tolerance)},
                           {t.setpoint * (1 + plan.tolerance), t.setpoint * (1 + plan.tolerance)}});
  }
  return chart;
}

std::string under(const JobPlan& plan, units::System system) {
  return fmt::format("{} · {}; {} on; tension {}", plan.job, fit_text(plan.fit), plan.pairs,
                     shown(plan.tension.setpoint, Quantity::force, system));
}

}  // namespace

Scene pressure_figure(const JobPlan& plan, units::System system) {
  std::vector<Footnote> notes;
  if (plan.state == State::fails) {
    notes.push_back(
        {"This job fails on this fit (" + std::string(info(plan.binding).name) + "): not to be run without a change.",
         MarkRole::bad});
  }
  notes.push_back({"The roll unwinds from right to left.", MarkRole::muted});
  constexpr double height = 76;
  auto out = page("Pressure over the roll", under(plan, system), 2 * height, notes);
  const auto pressure = pressure_chart(plan, system);
  const auto tension = tension_chart(plan, system);
  add_panels(out.scene, {pressure, tension}, out.room, system);
  out.scene.description = in_words(pressure, system) + " " + in_words(tension, system);
  return out.scene;
}

Scene pressure_figure(const Envelope& e, const JobFit* job, const std::string& under, units::System system) {
  Chart chart;
  chart.x = over_roll();
  chart.y = {"pressure", Quantity::pressure, {}, {}, true};
  chart.curves = {{"run, nominal friction", by_controller, e.diameter, e.pressure}};
  const auto limit = [&](LimitId id, const std::string& name, bool above) {
    const auto* found = job == nullptr ? nullptr : find_limit(job->limits, id);
    if (found == nullptr) return;
    chart.limits.push_back({name + " " + shown(found->bound, Quantity::pressure, system), {}, {found->bound}, above});
  };
  limit(LimitId::highest_pressure, "highest pressure", true);
  limit(LimitId::lowest_pressure, "lowest pressure", false);
  auto out = page("Pressure over the roll", under, 82, {{"The roll unwinds from right to left.", MarkRole::muted}});
  add_chart(out.scene, chart, out.room, system);
  out.scene.description = in_words(chart, system);
  return out.scene;
}

}  // namespace holdback::draw
