// A warning in a frame. The signal word, the frame's weight and the panel behind the word tell how bad it may get; no
// colour does. A notice, which is about no harm to people, has no triangle.
#include <array>

#include "marks.hpp"
#include "strip.hpp"

namespace holdback::pdf {

namespace {

struct Manner {
  double frame;  // thickness
  Ink panel;
  Ink word;
  bool alert;
};

const Manner& manner_of(papers::Signal signal) {
  static constexpr std::array<Manner, 4> manners{
      {{2.2, black, white, true}, {1.6, rule, black, true}, {1.0, panel, black, true}, {0.6, white, black, false}}};
  return manners[static_cast<std::size_t>(signal)];
}

void draw_sides(cairo_t* cr, double x, double y, double width, double height, double thick) {
  draw_upright(cr, x + thick / 2, y, height, thick, black);
  draw_upright(cr, x + width - thick / 2, y, height, thick, black);
}

/// The panel with triangle and word.
Strip band(const Setting& setting, papers::Signal signal) {
  const double e = setting.size;
  const auto& manner = manner_of(signal);
  const auto word = setting.type->line(papers::word_of(signal), {1.15 * e, true});
  Strip strip;
  strip.before = 0.9 * e;
  strip.height = 1.9 * e;
  strip.keeps = true;
  strip.draw = [=, width = setting.width](cairo_t* cr, double x, double y) {
    draw_panel(cr, x, y, width, 1.9 * e, manner.panel);
    draw_rule(cr, x, y + manner.frame / 2, width, manner.frame, black);
    draw_sides(cr, x, y, width, 1.9 * e, manner.frame);
    double at = x + 0.8 * e;
    if (manner.alert) {
      draw_alert(cr, at, y + 0.25 * e, 1.45 * e);
      at += 1.45 * e * alert_width + 0.5 * e;
    }
    word->draw(cr, at, y + (1.9 * e - word->height()) / 2, manner.word);
  };
  return strip;
}

}  // namespace

void set_warning(Strips& out, const Setting& setting, const papers::Warning& warning) {
  const double e = setting.size;
  const double indent = 0.8 * e;
  const double frame = manner_of(warning.signal).frame;
  out.push_back(band(setting, warning.signal));
  const auto text = setting.type->wrapped(warning.text, {e, false, 1.3}, setting.width - 2 * indent);
  for (std::size_t i = 0; i < text->lines(); ++i) {
    const bool last = i + 1 == text->lines();
    const double above = i == 0 ? 0.4 * e : 0;
    Strip strip;
    strip.height = above + text->height(i, i + 1) + (last ? 0.5 * e : 0);
    strip.keeps = !last;
    strip.draw = [=, width = setting.width, height = strip.height](cairo_t* cr, double x, double y) {
      draw_sides(cr, x, y, width, height, frame);
      if (last) draw_rule(cr, x, y + height - frame / 2, width, frame, black);
      text->draw(cr, x + indent, y + above, black, Side::left, i, i + 1);
    };
    out.push_back(std::move(strip));
  }
}

}  // namespace holdback::pdf
