#include "holdback/draw/scene.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "holdback/units/text.hpp"

namespace holdback::draw {

namespace {

// Widths of the characters from blank to tilde, in thousandths of the size. Of the sans-serif fonts in wide use this
// is one of the widest, so that a text set in another one comes out narrower, not wider.
constexpr std::array<int, 95> ascii{318,  401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337,
                                    636,  636, 636, 636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531,
                                    1000, 684, 686, 698, 770, 632, 575, 775, 752, 295, 295, 656, 557, 863, 748, 787,
                                    603,  787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838, 500,
                                    500,  613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612,
                                    635,  635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838};

// What follows ASCII, by class.
int class_width(char32_t c) {
  if (c == 0x2009 || c == 0x202F) return 200;                            // thin blanks
  if (c >= 0x300 && c <= 0x36F) return 0;                                // accents that stand on the letter before
  if (c == 0xB7 || c == 0xA0 || c == 0x2019 || c == 0x2018) return 318;  // dots, blanks, single quotes
  if (c == 0xB0 || c == 0xB2 || c == 0xB3 || c == 0xB9) return 500;      // degree, raised digits
  if (c >= 0x2070 && c <= 0x208E) return 401;                            // raised and lowered digits
  if (c == 0x2013 || c == 0x201C || c == 0x201D) return 520;             // dash, quotes
  if (c >= 0xDF && c <= 0x24F) return 690;                               // Latin letters with accents
  if (c >= 0xC0 && c < 0xDF) return 790;                                 // the same, capital
  if (c >= 0x370 && c <= 0x3FF) return 790;                              // Greek
  if (c >= 0x1100) return c == 0x2212 || (c >= 0x2190 && c <= 0x2193) ? 838 : 1030;  // symbols, ideographs
  return 838;
}

int width_of(char32_t c) {
  if (c < 0x20 || c == 0x7F) return 1030;  // shown as the sign for what cannot be shown
  return c < 0x7F ? ascii[c - 0x20] : class_width(c);
}

constexpr double bold_factor = 1.15;
constexpr double ascent = 0.78;   // of the size, above the base line
constexpr double descent = 0.22;  // below it
constexpr std::string_view ellipsis = "…";

std::string cut(std::string_view text, double width, double size, Weight weight) {
  const double room = width - text_width(ellipsis, size, weight);
  if (room < 0) return {};
  std::size_t end = 0;
  while (end < text.size()) {
    const auto next = end + units::code_point_at(text, end).size;
    if (text_width(text.substr(0, next), size, weight) > room) break;
    end = next;
  }
  while (end > 0 && text[end - 1] == ' ') --end;
  return std::string(text.substr(0, end)) + std::string(ellipsis);
}

}  // namespace

void add(Scene& scene, Shape shape, Style style) { scene.marks.push_back({std::move(shape), style}); }

double line_width(const Style& style) {
  switch (style.role) {
    case MarkRole::grid:
      return 0.12;
    case MarkRole::axis:
    case MarkRole::muted:
      return 0.22;
    case MarkRole::limit:
      return 0.65;
    case MarkRole::curve:
      return style.series % 2 == 0 ? 0.4 : 0.55;
    default:
      return 0.35;
  }
}

double text_width(std::string_view text, double size, Weight weight) {
  long sum = 0;
  for (std::size_t at = 0; at < text.size();) {
    const auto point = units::code_point_at(text, at);
    sum += width_of(point.value);
    at += point.size;
  }
  return 0.001 * static_cast<double>(sum) * std::max(size, 0.0) * (weight == Weight::bold ? bold_factor : 1);
}

std::string fitted(std::string_view text, double width, double size, Weight weight) {
  return text_width(text, size, weight) <= width ? std::string(text) : cut(text, width, size, weight);
}

std::string kept_together(std::string text) {
  for (auto at = text.find(' '); at != std::string::npos; at = text.find(' ', at + 2)) text.replace(at, 1, "\u00A0");
  return text;
}

std::vector<std::string> broken(std::string_view text, double width, double size, int most) {
  std::vector<std::string> lines;
  std::string line;
  while (!text.empty()) {
    const auto end = std::min(text.find(' '), text.size());
    const auto word = text.substr(0, end);
    const std::string longer = line + (line.empty() ? "" : " ") + std::string(word);
    if (!line.empty() && text_width(longer, size) > width) {
      if (static_cast<int>(lines.size()) + 1 >= most) {
        line = cut(line + " " + std::string(text), width, size, Weight::normal);
        break;
      }
      lines.push_back(line);
      line.clear();
      continue;
    }
    line = line.empty() ? fitted(word, width, size) : longer;
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  if (!line.empty() || lines.empty()) lines.push_back(line);
  return lines;
}

Box bounds(const Label& label) {
  const double width = text_width(label.text, label.size, label.weight);
  const double start = label.anchor == Anchor::start ? 0 : label.anchor == Anchor::middle ? -width / 2 : -width;
  const double turn = label.rotation * std::numbers::pi / 180;
  const double c = std::cos(turn);
  const double s = std::sin(turn);
  Box box{label.at.x, label.at.y, label.at.x, label.at.y};
  bool first = true;
  for (const double x : {start, start + width}) {
    for (const double y : {-ascent * label.size, descent * label.size}) {
      const Point corner{label.at.x + c * x - s * y, label.at.y + s * x + c * y};
      box = first ? Box{corner.x, corner.y, corner.x, corner.y}
                  : Box{std::min(box.left, corner.x), std::min(box.top, corner.y), std::max(box.right, corner.x),
                        std::max(box.bottom, corner.y)};
      first = false;
    }
  }
  return box;
}

bool overlap(const Box& a, const Box& b) {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

}  // namespace holdback::draw
