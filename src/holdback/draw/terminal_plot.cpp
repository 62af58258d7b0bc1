#include "holdback/draw/terminal_plot.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "holdback/draw/braille.hpp"
#include "holdback/draw/cells.hpp"

namespace holdback::draw {

namespace {

using Lines = std::vector<std::string>;

/// How the dots of a curve follow each other: `on` dots, then `off` blanks, `thick` dots high.
struct Stroke {
  int on;
  int off;
  int thick;
  Ink ink;
};

Stroke stroke_of(Role role) {
  constexpr std::array<Stroke, 5> strokes{{{1, 0, 1, Ink::first},
                                           {5, 3, 1, Ink::second},
                                           {1, 1, 1, Ink::third},
                                           {1, 0, 2, Ink::good},
                                           {1, 3, 1, Ink::fourth}}};
  return strokes[static_cast<std::size_t>(role)];
}

/// A distance between marks of an axis that people count in: 1, 2 or 5 times a power of ten.
double nice_step(double range, int marks) {
  const double rough = range / std::max(marks, 1);
  const double power = std::pow(10, std::floor(std::log10(rough)));
  for (const double factor : {1.0, 2.0, 5.0}) {
    if (factor * power >= rough) return factor * power;
  }
  return 10 * power;
}

/// From values in the reader's units to dots.
struct Scale {
  double low{};
  double high{};
  int dots{};
  int dot(double value) const {
    const double share = std::clamp((value - low) / (high - low), -1.0, 2.0);  // far outside is outside
    return static_cast<int>(std::lround(share * (dots - 1)));
  }
};

/// The y value over x, linear between points.
double at(const Series& series, double x) {
  const auto above = std::upper_bound(series.x.begin(), series.x.end(), x) - series.x.begin();
  const auto i = static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(above, 1, std::ssize(series.x) - 1));
  const double step = series.x[i] - series.x[i - 1];
  return step > 0 ? std::lerp(series.y[i - 1], series.y[i], (x - series.x[i - 1]) / step) : series.y[i];
}

bool has_points(const Series& series) {
  return series.x.size() > 1 && series.x.size() == series.y.size() && series.x.back() > series.x.front();
}

/// A piece of a curve one dot wide: from the height before to this height, so that steep curves have no holes.
void draw_column(Braille& canvas, int x, int before, int now, const Stroke& stroke) {
  if (x % (stroke.on + stroke.off) >= stroke.on) return;
  const int top = before < now ? before + 1 : now;
  const int bottom = before > now ? before - 1 : now;
  for (int y = std::min(top, now); y <= std::max(bottom, now) + stroke.thick - 1; ++y) canvas.dot(x, y, stroke.ink);
}

class Picture {
 public:
  Picture(const Plot& plot, const Frame& frame);
  Lines lines() const;

 private:
  double shown(double si, const Axis& axis) const { return units::in_display_unit(si, axis.kind, frame_.system); }
  std::string number(double value, double step) const;
  int row_of(double y) const;  // row of dots from the top; above the picture is negative
  void draw(const Series& series);
  std::string label(const Series& series) const;
  Lines labels() const;
  Lines scale_numbers() const;
  Lines axis_lines(int left) const;

  const Plot& plot_;
  const Frame& frame_;
  int wide_{};  // cells of the picture
  Scale x_{};
  Scale y_{};
  double first_{};  // [SI] lowest x
  double last_{};   // [SI] highest x
  Braille canvas_;
};

int widest(const Lines& lines) {
  int most = 0;
  for (const auto& line : lines) most = std::max(most, columns(line));
  return most;
}

std::string swatch(const Stroke& stroke, bool colour) {
  Braille canvas(4, 1);
  for (int x = 0; x < canvas.dots_wide(); ++x) draw_column(canvas, x, 1, 1, stroke);
  return canvas.row(0, colour);
}

constexpr int number_room = 9;  // columns for the numbers of the y axis with its line

int label_room(const Plot& plot, const Frame& frame) {
  int most = 0;
  for (const auto& series : plot.series) {
    if (!has_points(series)) continue;
    most = std::max(most, columns(series.name) + columns(units::show(series.y.back(), plot.y.kind, frame.system)));
  }
  return most + 10;
}

int cells_wide(const Plot& plot, const Frame& frame) {
  return std::max(frame.width - number_room - label_room(plot, frame), 16);
}

Picture::Picture(const Plot& plot, const Frame& frame)
    : plot_(plot), frame_(frame), wide_(cells_wide(plot, frame)), canvas_(wide_, frame.height) {
  bool any = false;
  double top = 0;
  for (const auto& series : plot.series) {
    if (!has_points(series)) continue;
    first_ = any ? std::min(first_, series.x.front()) : series.x.front();
    last_ = any ? std::max(last_, series.x.back()) : series.x.back();
    top = std::max(top, *std::max_element(series.y.begin(), series.y.end()));
    any = true;
  }
  top = plot.y.top.value_or(top);
  x_ = {shown(first_, plot.x), shown(last_, plot.x), canvas_.dots_wide()};
  y_ = {0, top > 0 ? shown(top, plot.y) : 1, canvas_.dots_high()};
  for (const auto& series : plot.series) draw(series);
}

std::string Picture::number(double value, double step) const {
  const int decimals = std::clamp(-static_cast<int>(std::floor(std::log10(step) + 1e-9)), 0, 6);
  return fmt::format("{:.{}f}", value, decimals);
}

int Picture::row_of(double y) const { return canvas_.dots_high() - 1 - y_.dot(std::max(shown(y, plot_.y), 0.0)); }

void Picture::draw(const Series& series) {
  if (!has_points(series)) return;
  const auto stroke = stroke_of(series.role);
  int before = row_of(at(series, first_));
  for (int x = 0; x < canvas_.dots_wide(); ++x) {
    const int now = row_of(at(series, std::lerp(first_, last_, x / double(canvas_.dots_wide() - 1))));
    draw_column(canvas_, x, before, now, stroke);
    before = now;
  }
}

std::string Picture::label(const Series& series) const {
  const bool above = row_of(series.y.back()) < 0;
  return swatch(stroke_of(series.role), frame_.colour) + " " + series.name + " " +
         units::show(series.y.back(), plot_.y.kind, frame_.system) + (above ? " ↑" : "");
}

/// One line a row: the name of the curve that ends there. Names that would meet give way, in the order of the curves.
Lines Picture::labels() const {
  std::vector<std::pair<int, std::string>> ends;
  for (const auto& series : plot_.series) {
    if (has_points(series)) ends.emplace_back(row_of(series.y.back()), label(series));
  }
  std::stable_sort(ends.begin(), ends.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  const int count = static_cast<int>(ends.size());
  Lines rows(static_cast<std::size_t>(frame_.height));
  int next = 0;
  for (int i = 0; i < count; ++i) {
    const auto& end = ends[static_cast<std::size_t>(i)];
    const int wanted = std::max(end.first, 0) / 4;
    const int row = std::clamp(wanted, next, std::max(frame_.height - (count - i), next));
    if (row < frame_.height) rows[static_cast<std::size_t>(row)] = end.second;
    next = row + 1;
  }
  return rows;
}

/// One line a row: the number of the y axis where a mark falls.
Lines Picture::scale_numbers() const {
  Lines rows(static_cast<std::size_t>(frame_.height));
  const double step = nice_step(y_.high - y_.low, frame_.height / 3);
  for (int i = 0; step * i <= y_.high * (1 + 1e-9); ++i) {
    const int row = (canvas_.dots_high() - 1 - y_.dot(step * i)) / 4;
    if (row >= 0) rows[static_cast<std::size_t>(row)] = number(step * i, step);
  }
  return rows;
}

/// The x axis with its marks, the numbers under them, and its name.
Lines Picture::axis_lines(int left) const {
  const double step = nice_step(x_.high - x_.low, wide_ / 10);
  std::string numbers;
  std::vector<std::string> line(static_cast<std::size_t>(wide_), "─");
  for (int i = static_cast<int>(std::ceil(x_.low / step - 1e-9)); step * i <= x_.high * (1 + 1e-9); ++i) {
    const int cell = std::clamp(x_.dot(step * i) / 2, 0, wide_ - 1);
    line[static_cast<std::size_t>(cell)] = "┴";
    const auto text = number(step * i, step);
    const int start = left + 1 + cell - columns(text) / 2;
    if (start >= columns(numbers) + (numbers.empty() ? 0 : 1)) numbers = pad_right(numbers, start).append(text);
  }
  std::string axis = std::string(static_cast<std::size_t>(left), ' ') + "└";
  for (const auto& mark : line) axis += mark;
  const auto unit = units::unit_of(plot_.x.kind, frame_.system);
  const int end = std::max(left + 1 + wide_, columns(numbers));
  return {axis, pad_right(numbers, end) + "  " + plot_.x.name + (unit.empty() ? "" : " [" + unit + "]")};
}

Lines Picture::lines() const {
  const auto numbers = scale_numbers();
  const auto names = labels();
  const int left = widest(numbers) + 1;
  const auto unit = units::unit_of(plot_.y.kind, frame_.system);
  Lines out{plot_.y.name + (unit.empty() ? "" : " [" + unit + "]")};
  for (int row = 0; row < frame_.height; ++row) {
    const auto i = static_cast<std::size_t>(row);
    std::string line =
        pad_left(numbers[i], left - 1) + (numbers[i].empty() ? " │" : " ┤") + canvas_.row(row, frame_.colour);
    line += names[i].empty() ? "" : " " + names[i];
    out.push_back(line.erase(line.find_last_not_of(' ') + 1));
  }
  for (auto& line : axis_lines(left)) out.push_back(std::move(line));
  return out;
}

}  // namespace

std::vector<std::string> terminal_plot(const Plot& plot, const Frame& frame) {
  if (std::none_of(plot.series.begin(), plot.series.end(), has_points)) return {};
  return Picture(plot, frame).lines();
}

}  // namespace holdback::draw
