// The tension that was measured, against the window of its job, and what makes its uncertainty.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "holdback/draw/chart_layout.hpp"
#include "holdback/draw/figure_parts.hpp"
#include "holdback/draw/figures.hpp"
#include "holdback/draw/ticks.hpp"

namespace holdback::draw {

namespace {

constexpr double row = 7.5;     // [mm] from one bar to the next
constexpr double bar = 4;       // [mm] high
constexpr double names = 52;    // [mm] for the words at the left
constexpr double numbers = 40;  // [mm] for the numbers at the right
constexpr double upper = 34;    // [mm] for the line of tensions
constexpr std::size_t most_rows = 10;
constexpr double least_share = 0.0005;

void write(Scene& scene, Point at, const std::string& text, Anchor anchor = Anchor::start,
           MarkRole role = MarkRole::text, Weight weight = Weight::normal) {
  add(scene, Label{at, text, anchor, measure::text, weight, 0}, {role});
}

/// Tensions along a line.
struct Along {
  double left{};
  double right{};
  Range range{};
  double at(double tension) const {
    const double share = (tension - range.low) / (range.high - range.low);
    return left + std::clamp(share, 0.0, 1.0) * (right - left);
  }
};

/// Ends of the 95 % interval that counts [N].
std::pair<double, double> interval_of(const Measurement& found) {
  return {found.low.value_or(*found.tension - *found.expanded), found.high.value_or(*found.tension + *found.expanded)};
}

Along along_of(const Measurement& found, const Box& room, units::System system) {
  auto [low, high] = interval_of(found);
  if (found.drawn) low = std::min(low, found.by_draws ? found.drawn->linear_low : found.drawn->low);
  if (found.drawn) high = std::max(high, found.by_draws ? found.drawn->linear_high : found.drawn->high);
  if (found.window) low = std::min(low, found.window->low);
  if (found.window) high = std::max(high, found.window->high);
  const auto number = [system](double force) { return units::in_display_unit(force, Quantity::force, system); };
  const double spare = 0.08 * (high - low);
  const Range range = opened({std::max(0.0, number(low - spare)), number(high + spare)});
  return {room.left + 4, room.right - 4, rounded_out(range, 8)};
}

void draw_interval(Scene& scene, double left, double right, double y, Style style) {
  add(scene, Segment{{left, y}, {right, y}}, style);
  for (const double x : {left, right}) add(scene, Segment{{x, y - 1.5}, {x, y + 1.5}}, style);
}

void line_part(Scene& scene, const Measurement& found, const Box& room, units::System system) {
  const Along along = along_of(found, room, system);
  const auto at = [&](double force) { return along.at(units::in_display_unit(force, Quantity::force, system)); };
  const double axis = room.top + 26;
  if (found.window) {
    const auto& window = *found.window;
    add(scene, Rectangle{{at(window.low), axis - 18, at(window.high), axis}, true}, {MarkRole::area});
    write(scene, {(at(window.low) + at(window.high)) / 2, axis - 19.2}, "window of the job", Anchor::middle,
          MarkRole::muted);
    add(scene, Segment{{at(window.setpoint), axis - 18}, {at(window.setpoint), axis}},
        {MarkRole::muted, Pattern::dashed});
  }
  add(scene, Segment{{along.left, axis}, {along.right, axis}}, {MarkRole::axis});
  const auto ticks = nice_ticks(along.range, 8);
  const auto texts = tick_text(ticks);
  for (std::size_t i = 0; i < ticks.size(); ++i) {
    const double x = along.at(ticks[i]);
    add(scene, Segment{{x, axis}, {x, axis + 1.4}}, {MarkRole::axis});
    add(scene, Label{{x, axis + 4.8}, texts.texts[i], Anchor::middle, measure::number, Weight::normal, 0},
        {MarkRole::text});
  }
  write(scene, {along.right, axis + 8.6},
        "tension [" + unit_text(units::unit_of(Quantity::force, system), texts.exponent) + "]", Anchor::end);
  const double y = axis - 11;
  const Style ink{MarkRole::curve, Pattern::solid, 1};
  const auto [low, high] = interval_of(found);
  draw_interval(scene, at(low), at(high), y, ink);
  add(scene, Circle{{at(*found.tension), y}, 1.3, true}, ink);
  if (!found.drawn) return;
  const auto& other = *found.drawn;
  const Style drawn{MarkRole::curve, Pattern::dashed, 0};
  draw_interval(scene, at(found.by_draws ? other.linear_low : other.low),
                at(found.by_draws ? other.linear_high : other.high), axis - 5, drawn);
}

void budget_part(Scene& scene, const std::vector<BudgetLine>& lines, const Box& room, double top,
                 units::System system) {
  const double left = room.left + names;
  const double right = room.right - numbers;
  write(scene, {room.left, top - 3}, "Share of the variance, and what each input makes by itself", Anchor::start,
        MarkRole::text, Weight::bold);
  double middle = top + row / 2;
  for (const BudgetLine& line : lines) {
    const double base = middle + measure::drop * measure::text;
    write(scene, {room.left, base}, fitted(line.name, names - 3, measure::text));
    const double end = left + std::clamp(line.share, 0.0, 1.0) * (right - left);
    add(scene, Rectangle{{left, middle - bar / 2, std::max(end, left + 0.3), middle + bar / 2}, true},
        {MarkRole::curve, Pattern::solid, 0});
    write(scene, {right + 14, base}, fmt::format("{:.1f} %", 100 * line.share), Anchor::end);
    write(scene, {right + 36, base}, "± " + units::show(line.contribution, Quantity::force, system, 2), Anchor::end);
    middle += row;
  }
  add(scene, Segment{{left, top}, {left, middle - row / 2}}, {MarkRole::axis});
}

/// Those that make something.
std::vector<BudgetLine> rows_of(const Measurement& found) {
  std::vector<BudgetLine> lines;
  for (const BudgetLine& line : found.budget)
    if (line.share >= least_share && lines.size() < most_rows) lines.push_back(line);
  return lines;
}

std::vector<Footnote> notes_of(const Measurement& found, units::System system) {
  std::vector<Footnote> notes;
  if (found.window) notes.push_back({units::fill(found.window->verdict, system), MarkRole::text});
  notes.push_back(
      {std::string(found.by_draws
                       ? "Solid: 95 % of draws from the inputs' distributions, which count here. Dashed: 95 % "
                         "by linear propagation."
                       : "Solid: 95 % by linear propagation. Dashed: 95 % of draws from the inputs' "
                         "distributions.") +
           " Inputs that make next to nothing are left out.",
       MarkRole::muted});
  return notes;
}

std::string tension_text(const Measurement& found, units::System system) {
  const auto force = [system](double value) { return units::show(value, Quantity::force, system); };
  const auto [low, high] = interval_of(found);
  if (found.by_draws) return fmt::format("{}, 95 % {} to {}", force(*found.tension), force(low), force(high));
  return fmt::format("{} ± {} (95 %)", force(*found.tension), units::show(*found.expanded, Quantity::force, system, 2));
}

}  // namespace

Scene measured_figure(const Measurement& found, units::System system) {
  const auto lines = rows_of(found);
  const bool there = found.tension && found.expanded && showable(*found.tension) && showable(*found.expanded);
  const double height = upper + 14 + row * static_cast<double>(lines.size());
  const auto tension = there ? tension_text(found, system) : std::string("nothing was read");
  auto out =
      page("The tension measured: " + tension, found.instruction.title + (found.job.empty() ? "" : ", " + found.job),
           height, notes_of(found, system));
  if (there) line_part(out.scene, found, out.room, system);
  if (!lines.empty()) budget_part(out.scene, lines, out.room, out.room.top + upper + 10, system);
  out.scene.description = "Tension " + tension + ".";
  for (const BudgetLine& line : lines)
    out.scene.description += fmt::format(" {}: {:.1f} % of the variance.", line.name, 100 * line.share);
  return out.scene;
}

}  // namespace holdback::draw
