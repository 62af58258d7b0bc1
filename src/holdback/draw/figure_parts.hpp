// What the figures share: the page with its title, phrases, and the marking of what goes beyond a limit.
#pragma once

#include <string>
#include <vector>

#include "holdback/draw/chart.hpp"
#include "holdback/draw/scene.hpp"
#include "holdback/results/answer.hpp"

namespace holdback::draw {

/// A line under the drawing.
struct Footnote {
  std::string text{};
  MarkRole role{MarkRole::muted};
};

/// A page with its title and notes set, and the room [mm] that is left for the drawing.
struct Page {
  Scene scene{};
  Box room{};
};

/// A page of that width with `height` [mm] of room for the drawing. Long words are broken or cut, never let out of it.
Page page(const std::string& title, const std::string& under, double height, const std::vector<Footnote>& notes,
          double width = 180);

/// A value with its unit, kept on one line.
std::string shown(double si, Quantity kind, units::System system);

/// What a margin has in hand: 1.18 is "+18 %", 0.9 is "−10 %", from ten times on ">+900 %". What is not kept never
/// reads as +0 %.
std::string margin_text(double margin);

/// A share as per cent: "93.1 %", rounded down: only what is whole reads as 100 %. What cannot be shown is "–".
std::string share_text(double share);

/// "2 × D300, 3 pairs each, grade M".
std::string fit_text(const Fit& fit);

/// The limit of that kind; null when it was not checked.
const Limit* find_limit(const std::vector<Limit>& limits, LimitId id);

/// A stretch of a curve beyond a bound, as the area between the two [SI].
struct Beyond {
  ChartArea area{};
  double from{};
  double to{};
};

/// Where y lies above the bound (or below it), over rising x; ends between two points are found on the straight line
/// between them. Points that cannot be shown end a stretch.
std::vector<Beyond> beyond(const std::vector<double>& x, const std::vector<double>& y, const std::vector<double>& bound,
                           bool above);

/// Marks what lies beyond: areas in the chart, a note under the drawing, and words at the widest area.
void mark_beyond(Chart& chart, std::vector<Footnote>& notes, const std::vector<Beyond>& stretches,
                 const std::string& words, units::System system, bool captioned = true);

/// The disc's and the pads' ratings as limits of a chart of temperatures.
std::vector<ChartLimit> temperature_limits(const JobFit* job, units::System system);

/// The state as it is drawn beside a number, its middle there: a ring (holds), a triangle (tight), a cross (fails).
void draw_state(Scene& scene, Point middle, State state);
MarkRole role_of(State state);

}  // namespace holdback::draw
