#include "holdback/draw/svg.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "holdback/draw/cells.hpp"
#include "holdback/draw/palette.hpp"
#include "holdback/units/text.hpp"

namespace holdback::draw {

namespace {

constexpr std::array<std::string_view, 10> role_names{"axis", "grid",  "curve", "limit", "area",
                                                      "text", "muted", "good",  "tight", "bad"};

/// "s-axis", "f-curve2": the class of a line (s), an area (f) or letters (t).
std::string class_of(char what, const Style& style) {
  const auto role = static_cast<std::size_t>(style.role);
  if (style.role != MarkRole::curve) return fmt::format("{}-{}", what, role_names[role]);
  return fmt::format("{}-curve{}", what, series_of(style));
}

std::string rules(const std::string& name, const Paint& paint) {
  return fmt::format(".s-{0}{{stroke:{1}}}.f-{0}{{fill:{2}}}.t-{0}{{fill:{1}}}\n", name, paint.line, paint.fill);
}

std::string colours(const Palette& palette) {
  std::string out = fmt::format(".paper{{fill:{}}}\n", palette.paper);
  for (std::size_t i = 0; i < role_names.size(); ++i) {
    if (!palette.roles[i].line.empty()) out += rules(std::string(role_names[i]), palette.roles[i]);
  }
  for (std::size_t i = 0; i < palette.series.size(); ++i) out += rules(fmt::format("curve{}", i), palette.series[i]);
  return out;
}

std::string style_sheet() {
  return "<style type=\"text/css\">\n"
         "text{font-family:\"Helvetica Neue\",Helvetica,Arial,\"Liberation Sans\",\"DejaVu Sans\",sans-serif}\n"
         ".line{fill:none;stroke-linejoin:round}\n" +
         colours(light) + "@media screen and (prefers-color-scheme:dark){\n" + colours(dark) + "}\n</style>\n";
}

/// A length with hundredths of a millimetre, without zeros that say nothing.
std::string number(double value) {
  auto text = fmt::format("{:.2f}", value);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

std::string dashes(const Style& style) {
  if (style.pattern == Pattern::solid) return {};
  const bool dotted = style.pattern == Pattern::dotted;
  const auto& lengths = dotted ? dashes_of_dotted : dashes_of_dashed;
  return fmt::format(" stroke-dasharray=\"{} {}\"{}", number(lengths[0]), number(lengths[1]),
                     dotted ? " stroke-linecap=\"round\"" : "");
}

/// Class, thickness and pattern of a line.
std::string line_look(const Style& style) {
  return fmt::format(" class=\"line {}\" stroke-width=\"{}\"{}", class_of('s', style), number(line_width(style)),
                     dashes(style));
}

std::string fill_look(const Style& style) { return fmt::format(" class=\"{}\"", class_of('f', style)); }

std::string look(const Style& style, bool filled) { return filled ? fill_look(style) : line_look(style); }

bool finite(double value) { return std::isfinite(value) && std::abs(value) < 1e6; }  // a page is never so large
bool finite(const Point& point) { return finite(point.x) && finite(point.y); }
bool finite(const std::vector<Point>& points) {
  return std::all_of(points.begin(), points.end(), [](const Point& point) { return finite(point); });
}

std::string places(const std::vector<Point>& points) {
  std::string out;
  for (const auto& point : points) {
    out += (out.empty() ? "" : " ") + number(point.x) + "," + number(point.y);
  }
  return out;
}

/// One element a shape; nothing for a shape that has no place.
struct Element {
  const Style& style;

  std::string operator()(const Segment& line) const {
    if (!finite(line.from) || !finite(line.to)) return {};
    return fmt::format("<line x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"{}/>\n", number(line.from.x), number(line.from.y),
                       number(line.to.x), number(line.to.y), line_look(style));
  }
  std::string operator()(const Polyline& line) const {
    if (line.points.size() < 2 || !finite(line.points)) return {};
    return fmt::format("<polyline points=\"{}\"{}/>\n", places(line.points), line_look(style));
  }
  std::string operator()(const Polygon& area) const {
    if (area.points.size() < 3 || !finite(area.points)) return {};
    return fmt::format("<polygon points=\"{}\"{}/>\n", places(area.points), fill_look(style));
  }
  std::string operator()(const Rectangle& shape) const {
    const auto& box = shape.box;
    if (!finite(Point{box.left, box.top}) || !finite(Point{box.right, box.bottom})) return {};
    return fmt::format("<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"{}/>\n", number(box.left), number(box.top),
                       number(std::max(box.right - box.left, 0.0)), number(std::max(box.bottom - box.top, 0.0)),
                       look(style, shape.filled));
  }
  std::string operator()(const Circle& circle) const {
    if (!finite(circle.centre) || !finite(circle.radius) || circle.radius <= 0) return {};
    return fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{}/>\n", number(circle.centre.x), number(circle.centre.y),
                       number(circle.radius), look(style, circle.filled));
  }
  std::string operator()(const Label& label) const {
    if (!finite(label.at) || !finite(label.size) || !finite(label.rotation) || label.text.empty()) return {};
    constexpr std::array<std::string_view, 3> anchors{"", " text-anchor=\"middle\"", " text-anchor=\"end\""};
    const auto turn = label.rotation == 0 ? std::string{}
                                          : fmt::format(" transform=\"rotate({} {} {})\"", number(label.rotation),
                                                        number(label.at.x), number(label.at.y));
    return fmt::format(
        "<text x=\"{}\" y=\"{}\" font-size=\"{}\"{}{}{} class=\"{}\">{}</text>\n", number(label.at.x),
        number(label.at.y), number(label.size), label.weight == Weight::bold ? " font-weight=\"700\"" : "",
        anchors[static_cast<std::size_t>(label.anchor)], turn, class_of('t', style), xml_text(label.text));
  }
};

double page_length(double length) { return finite(length) ? std::max(length, 1.0) : 1.0; }

}  // namespace

std::string xml_text(std::string_view text) {
  const auto shown = plain(text);
  std::string out;
  for (std::size_t at = 0; at < shown.size();) {
    const auto point = units::code_point_at(shown, at);
    const auto bytes = std::string_view(shown).substr(at, point.size);
    if (point.value == '&') {
      out += "&amp;";
    } else if (point.value == '<') {
      out += "&lt;";
    } else if (point.value == '>') {
      out += "&gt;";
    } else if (point.value == '"') {
      out += "&quot;";
    } else if (point.value == 0xFFFE || point.value == 0xFFFF) {
      out += "\uFFFD";
    } else {
      out += bytes;
    }
    at += point.size;
  }
  return out;
}

std::string svg(const Scene& scene) {
  const auto width = number(page_length(scene.width));
  const auto height = number(page_length(scene.height));
  std::string out = fmt::format(
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"{0}mm\" height=\"{1}mm\" "
      "viewBox=\"0 0 {0} {1}\" role=\"img\">\n<title>{2}</title>\n<desc>{3}</desc>\n",
      width, height, xml_text(scene.title), xml_text(scene.description));
  out += style_sheet();
  out += fmt::format("<rect class=\"paper\" width=\"{}\" height=\"{}\"/>\n", width, height);
  for (const auto& mark : scene.marks) out += std::visit(Element{mark.style}, mark.shape);
  return out + "</svg>\n";
}

}  // namespace holdback::draw
