// What drives the spread of what is in hand.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "holdback/draw/chart_layout.hpp"
#include "holdback/draw/figure_parts.hpp"
#include "holdback/draw/figures.hpp"
#include "holdback/draw/ticks.hpp"

namespace holdback::draw {

namespace {

constexpr double row = 8.5;     // [mm] from one bar to the next
constexpr double bar = 4.6;     // [mm] high
constexpr double names = 40;    // [mm] for the words at the left
constexpr double numbers = 44;  // [mm] for the numbers at the right
constexpr std::size_t most_limits = 8;

std::string words_of(Input input) {
  return input == Input::ambient ? "ambient temperature" : std::string(key_of(input));
}

double held(double share) { return showable(share) ? std::clamp(share, 0.0, 1.0) : 0; }

void write(Scene& scene, Point at, const std::string& text, Style style = {MarkRole::text},
           Anchor anchor = Anchor::start, double size = measure::text, Weight weight = Weight::normal) {
  add(scene, Label{at, text, anchor, size, weight, 0}, style);
}

std::string chance_text(const Likelihood& likelihood) {
  const auto every = likelihood.probability >= 1
                         ? fmt::format("Every limit holds in all of {} samples.", likelihood.samples)
                         : fmt::format("Every limit holds with a probability of {} ({} samples).",
                                       share_text(likelihood.probability), likelihood.samples);
  return fmt::format("{} Least in hand: {} in the middle; 95\u00A0% of the samples have more than {}.", every,
                     margin_text(likelihood.middle_margin), margin_text(likelihood.low_margin));
}

/// A part of the figure: where its bars stand.
struct Columns {
  double left{};
  double right{};
  double at(double share) const { return left + held(share) * (right - left); }
};

void base_line(Scene& scene, const Columns& columns, double top, double bottom) {
  for (const double share : {0.25, 0.5, 0.75, 1.0}) {
    add(scene, Segment{{columns.at(share), top}, {columns.at(share), bottom}}, {MarkRole::grid});
  }
  add(scene, Segment{{columns.left, top}, {columns.left, bottom}}, {MarkRole::axis});
}

void driver_row(Scene& scene, const Columns& columns, double middle, const Driver& driver, double left) {
  const double base = middle + measure::drop * measure::text;
  write(scene, {left, base}, words_of(driver.input));
  const auto box = [&](double share, double height) {
    return Rectangle{{columns.left, middle - height / 2, columns.at(share), middle + height / 2}, true};
  };
  add(scene, box(driver.total, bar), {MarkRole::area});
  add(scene, Rectangle{box(driver.total, bar).box, false}, {MarkRole::muted});
  add(scene, box(driver.alone, bar / 2), {MarkRole::curve, Pattern::solid, 0});
  write(scene, {columns.right + 17, base}, share_text(held(driver.total)), {MarkRole::text}, Anchor::end);
  write(scene, {columns.right + 38, base}, share_text(held(driver.alone)), {MarkRole::text}, Anchor::end);
}

void drivers_part(Scene& scene, const Likelihood& likelihood, const Box& room, const Columns& columns, double top) {
  const double bottom = top + row * static_cast<double>(likelihood.drivers.size());
  write(scene, {room.left, top - 3}, "Share of the spread of the least in hand", {MarkRole::text}, Anchor::start,
        measure::heading, Weight::bold);
  write(scene, {columns.right + 17, top - 3}, "in all", {MarkRole::muted}, Anchor::end);
  write(scene, {columns.right + 38, top - 3}, "by itself", {MarkRole::muted}, Anchor::end);
  base_line(scene, columns, top, bottom);
  double middle = top + row / 2;
  for (const auto& driver : likelihood.drivers) {
    driver_row(scene, columns, middle, driver, room.left);
    middle += row;
  }
  for (const double share : {0.0, 0.5, 1.0}) {
    write(scene, {columns.at(share), bottom + 3.4}, fmt::format("{:.0f} %", 100 * share), {MarkRole::text},
          Anchor::middle, measure::number);
  }
}

void limits_part(Scene& scene, const Likelihood& likelihood, const Box& room, const Columns& columns, double top) {
  const auto count = std::min(likelihood.limits.size(), most_limits);
  write(scene, {room.left, top - 3}, "Probability that the limit holds", {MarkRole::text}, Anchor::start,
        measure::heading, Weight::bold);
  base_line(scene, columns, top, top + row * static_cast<double>(count));
  double middle = top + row / 2;
  for (std::size_t i = 0; i < count; ++i, middle += row) {
    const auto& chance = likelihood.limits[i];
    const double base = middle + measure::drop * measure::text;
    const double right = columns.at(chance.probability);
    write(scene, {room.left, base}, fitted(info(chance.id).name, names - 3, measure::text));
    add(scene, Segment{{columns.left, middle}, {right, middle}}, {MarkRole::curve, Pattern::solid, 1});
    add(scene, Circle{{right, middle}, 1.1, true}, {MarkRole::curve, Pattern::solid, 1});
    write(scene, {columns.right + 17, base}, share_text(chance.probability), {MarkRole::text}, Anchor::end);
  }
}

std::string in_words(const Likelihood& likelihood) {
  std::string out = chance_text(likelihood);
  for (const auto& driver : likelihood.drivers) {
    out += fmt::format(" {}: {} in all, {} by itself.", words_of(driver.input), share_text(held(driver.total)),
                       share_text(held(driver.alone)));
  }
  for (const auto& chance : likelihood.limits)
    out += fmt::format(" {} holds with {}.", info(chance.id).name, share_text(chance.probability));
  return out;
}

}  // namespace

Scene drivers_figure(const Likelihood& likelihood, const std::string& under) {
  const double bars = row * static_cast<double>(likelihood.drivers.size());
  const auto shown = std::min(likelihood.limits.size(), most_limits);
  const double chances = row * static_cast<double>(shown);
  std::vector<Footnote> notes{{chance_text(likelihood), MarkRole::text}};
  if (likelihood.drivers.empty()) {
    notes.push_back({"No input drives it: the least in hand does not vary.", MarkRole::muted});
  } else {
    notes.push_back(
        {"In all (light): what would go if the input were known. By itself (dark): what it makes without the "
         "others. The difference is what inputs do together.",
         MarkRole::muted});
  }
  if (likelihood.limits.size() > shown)
    notes.push_back(
        {fmt::format("{} limits more that are likelier to hold are left out.", likelihood.limits.size() - shown),
         MarkRole::muted});
  const double upper = likelihood.drivers.empty() ? 0 : bars + 16;
  const double lower = shown == 0 ? 0 : chances + 12;
  auto out = page("What drives the uncertainty", under, upper + lower, notes);
  const auto& room = out.room;
  const Columns columns{room.left + names, room.right - numbers};
  if (!likelihood.drivers.empty()) drivers_part(out.scene, likelihood, room, columns, room.top + 9);
  if (shown > 0) limits_part(out.scene, likelihood, room, columns, room.top + upper + 9);
  out.scene.description = in_words(likelihood);
  return out.scene;
}

}  // namespace holdback::draw
