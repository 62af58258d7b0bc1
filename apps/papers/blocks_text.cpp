// Headings, paragraphs, items, equations and verdicts as strips.
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "marks.hpp"
#include "strip.hpp"

namespace holdback::pdf {

namespace {

constexpr double reading = 1.35;  // leading of running text

/// A text as one strip that is not split.
Strip whole(const TextPtr& text, double indent, double before, double after, Ink ink) {
  Strip strip;
  strip.before = before;
  strip.height = text->height() + after;
  strip.draw = [=](cairo_t* cr, double x, double y) { text->draw(cr, x + indent, y, ink); };
  return strip;
}

}  // namespace

void add_lines(Strips& out, const TextPtr& text, double indent, double before, Ink ink, const Drawing& beside) {
  const auto count = text->lines();
  for (std::size_t i = 0; i < count; ++i) {
    Strip strip;
    strip.before = i == 0 ? before : 0;
    strip.height = text->height(i, i + 1);
    strip.keeps = i + 1 < count && (i == 0 || i + 2 == count);
    strip.draw = [=, first = i == 0](cairo_t* cr, double x, double y) {
      if (first && beside) beside(cr, x, y);
      text->draw(cr, x + indent, y, ink, Side::left, i, i + 1);
    };
    out.push_back(std::move(strip));
  }
}

void set_heading(Strips& out, const Setting& setting, const papers::Heading& heading) {
  const int level = std::clamp(heading.level, 1, 3);
  const auto row = static_cast<std::size_t>(level - 1);
  constexpr std::array<double, 3> sizes{1.5, 1.2, 1.0};
  constexpr std::array<double, 3> above{2.2, 1.6, 1.2};
  const double e = setting.size;
  const auto text = setting.type->wrapped(heading.text, {sizes[row] * e, true}, setting.width);
  auto strip = whole(text, 0, above[row] * e, 0.35 * e, level < 3 ? accent : black);
  if (level == 1) {
    strip.height += 0.5 * e;
    strip.draw = [text, e, width = setting.width](cairo_t* cr, double x, double y) {
      text->draw(cr, x, y, accent);
      draw_rule(cr, x, y + text->height() + 0.25 * e, width, 0.6, accent);
    };
  }
  strip.keeps = true;
  if (level < 3) strip.entry = Entry{heading.text, level};
  out.push_back(std::move(strip));
}

void set_paragraph(Strips& out, const Setting& setting, const papers::Paragraph& paragraph) {
  const bool quiet = paragraph.tone == papers::Tone::muted;
  const Face face{quiet ? 0.9 * setting.size : setting.size, paragraph.tone == papers::Tone::strong, reading};
  const auto text = setting.type->wrapped(paragraph.text, face, setting.width);
  add_lines(out, text, 0, 0.5 * setting.size, quiet ? muted : black);
}

void set_items(Strips& out, const Setting& setting, const papers::Items& items) {
  const Face face{setting.size, false, reading};
  const double e = setting.size;
  const auto marker = [&](std::size_t i) { return items.numbered ? fmt::format("{}.", i + 1) : std::string("–"); };
  const double start = 0.4 * e;
  const double indent = start + setting.type->width(marker(items.items.size()), face) + 0.5 * e;
  for (std::size_t i = 0; i < items.items.size(); ++i) {
    const auto mark = setting.type->line(marker(i), face);
    const double edge = indent - 0.5 * e;
    const auto text = setting.type->wrapped(items.items[i], face, setting.width - indent);
    add_lines(out, text, indent, (i == 0 ? 0.5 : 0.2) * e, black,
              [=](cairo_t* cr, double x, double y) { mark->draw(cr, x + edge, y, black, Side::right, 0, 1); });
  }
}

void set_equation(Strips& out, const Setting& setting, const papers::Equation& equation) {
  const double e = setting.size;
  const double indent = 1.1 * e;
  const auto first = out.size();
  const auto add = [&](const std::string& text, double size, bool bold, double before, Ink ink) {
    if (text.empty()) return;
    const auto set = setting.type->wrapped(text, {size, bold, reading}, setting.width - indent);
    out.push_back(whole(set, indent, out.size() == first ? 0.9 * e : before, 0, ink));
    out.back().keeps = true;
  };
  add(equation.name, e, true, 0, black);
  add(equation.formula, 1.05 * e, false, 0.15 * e, accent);
  add(equation.put_in, e, false, 0.1 * e, black);
  add(equation.result, e, true, 0.1 * e, black);
  const auto tail = equation.id.empty() || equation.source.empty() ? equation.id + equation.source
                                                                   : equation.id + " · " + equation.source;
  add(tail, 0.82 * e, false, 0.15 * e, muted);
  for (auto i = first; i < out.size(); ++i) {  // a rule down the left side holds the block together
    const double gap = i == first ? 0 : out[i].before;
    const auto draw = out[i].draw;
    const double height = out[i].height + gap;
    out[i].height = height;
    if (i != first) out[i].before = 0;
    out[i].draw = [=](cairo_t* cr, double x, double y) {
      draw_upright(cr, x + 0.75, y, height, 1.5, accent);
      draw(cr, x, y + gap);
    };
  }
  if (out.size() > first) out.back().keeps = false;
}

void set_verdict(Strips& out, const Setting& setting, const papers::Verdict& verdict) {
  const double e = setting.size;
  const double size = 1.25 * e;
  const double pad = 0.55 * e;
  const double indent = 0.5 * e + 1.5 * size;
  const auto text = setting.type->wrapped(verdict.text, {size, true}, setting.width - indent);
  Strip strip;
  strip.before = 0.8 * e;
  strip.height = text->height() + 2 * pad + 0.3 * e;
  strip.draw = [=, type = setting.type, width = setting.width, state = verdict.state](cairo_t* cr, double x, double y) {
    const double height = text->height() + 2 * pad;
    draw_rule(cr, x, y, width, 1.2, black);
    draw_rule(cr, x, y + height, width, 1.2, black);
    const double side = 1.05 * size;
    draw_sign(cr, *type, x + 0.3 * e, y + pad + (1.2 * size - side) / 2, side, state);
    text->draw(cr, x + indent, y + pad, black);
  };
  out.push_back(std::move(strip));
}

}  // namespace holdback::pdf
