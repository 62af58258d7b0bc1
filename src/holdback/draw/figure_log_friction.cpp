// The friction that a log shows as it goes on, against the nominal one of its grade.
#include <fmt/format.h>

#include <cmath>

#include "holdback/draw/figures.hpp"
#include "holdback/draw/holes.hpp"
#include "holdback/draw/motion_parts.hpp"

namespace holdback::draw {

Scene log_friction_figure(const Diagnosis& found, units::System system) {
  const auto& friction = found.friction;
  const auto holes = holes_in(friction.time);
  RunTrace times;
  times.time = with_holes(friction.time, holes, true);
  Chart chart = time_strip(times, "friction over nominal", Quantity::number, 60, 6);
  chart.y.from_zero = false;
  chart.x.bare = false;
  chart.curves = {trace_curve("shown by the log", times, with_holes(friction.ratio, holes, false),
                              {MarkRole::curve, Pattern::solid, 0})};
  if (!friction.empty()) {
    const double begin = friction.time.front();
    const double end = friction.time.back();
    chart.curves.push_back(
        {"fitted", {MarkRole::curve, Pattern::dashed, 1}, {begin, end}, {friction.first, friction.last}});
    chart.curves.push_back({"nominal", {MarkRole::muted, Pattern::dotted, 0}, {begin, end}, {1, 1}});
  }
  const auto change = fmt::format("{}{:.1f} % ± {:.1f} % over the log", friction.change < 0 ? "−" : "+",
                                  100 * std::abs(friction.change), 100 * friction.change_uncertainty);
  auto out =
      page("Friction that the log shows: " + change, found.log + " · " + found.job, 78,
           {{"Of stretches of steady run: tension times radius, less drag and inertia, over what nominal friction "
             "gives at the pressure logged.",
             MarkRole::muted}});
  add_panels(out.scene, {chart}, out.room, system);
  out.scene.description = fmt::format("Level {:.3f}, {}.", friction.level, change);
  return out.scene;
}

}  // namespace holdback::draw
