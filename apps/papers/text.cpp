#include "text.hpp"

#include <fmt/format.h>
#include <pango/pangocairo.h>

#include <algorithm>

#include "holdback/draw/cells.hpp"
#include "holdback/units/text.hpp"

namespace holdback::pdf {

namespace {

constexpr double units = 1.0 / PANGO_SCALE;

template <class T>
std::shared_ptr<T> owned(T* object) {
  return {object, [](T* held) { g_object_unref(held); }};
}

/// Characters of the scripts that are written from the right.
bool from_the_right(char32_t c) {
  return (c >= 0x590 && c <= 0x8FF) || (c >= 0xFB1D && c <= 0xFDFF) || (c >= 0xFE70 && c <= 0xFEFC) ||
         (c >= 0x10800 && c <= 0x10FFF) || (c >= 0x1E800 && c <= 0x1EFFF);
}

/// Papers are written in English, from the left, whatever the names in a sentence; only a text without any letter of a
/// script from the left is set from the right as a whole.
bool wholly_from_the_right(std::string_view text) {
  bool found = false;
  for (std::size_t at = 0; at < text.size();) {
    const auto point = holdback::units::code_point_at(text, at);
    if (from_the_right(point.value)) {
      found = true;
    } else if (g_unichar_isalpha(static_cast<gunichar>(point.value))) {
      return false;
    }
    at += point.size;
  }
  return found;
}

PangoFontDescription* description(const Face& face) {
  auto* font = pango_font_description_from_string("DejaVu Sans");
  pango_font_description_set_absolute_size(font, std::clamp(face.size, 0.01, 5000.0) * PANGO_SCALE);
  if (face.bold) pango_font_description_set_weight(font, PANGO_WEIGHT_BOLD);
  return font;
}

/// A word that is broken shows what is in it and no hyphen of ours.
void set_no_hyphens(PangoLayout* layout) {
  auto* attributes = pango_attr_list_new();
  pango_attr_list_insert(attributes, pango_attr_insert_hyphens_new(FALSE));
  pango_layout_set_attributes(layout, attributes);
  pango_attr_list_unref(attributes);
}

std::string key(const std::string& text, const Face& face) {
  return fmt::format("{}\n{}{:.4f} {:.3f}", text, face.bold ? 'b' : 'n', face.size, face.leading);
}

int pango_width(double width) { return static_cast<int>(std::clamp(width, 1.0, 1e5) * PANGO_SCALE); }

}  // namespace

std::string clean(std::string_view text) {
  std::string out;
  const auto shown = draw::plain(text);
  for (std::size_t at = 0; at < shown.size();) {
    const auto point = holdback::units::code_point_at(shown, at);
    if (point.value == 0xFFFE || point.value == 0xFFFF || point.value == 0x2028 || point.value == 0x2029) {
      out += "\uFFFD";  // the last two would end a line
    } else {
      out.append(shown, at, point.size);
    }
    at += point.size;
  }
  return out;
}

Text::Text(std::shared_ptr<PangoLayout> layout, const Face& face, double width) : layout_(std::move(layout)) {
  const bool right = pango_layout_get_alignment(layout_.get()) == PANGO_ALIGN_RIGHT;
  for (auto* item = pango_layout_get_lines_readonly(layout_.get()); item != nullptr; item = item->next) {
    auto* line = static_cast<PangoLayoutLine*>(item->data);
    PangoRectangle logical;
    pango_layout_line_get_extents(line, nullptr, &logical);
    const double natural = logical.height * units;
    const double height = std::max(natural, face.leading * face.size);
    const double wide = logical.width * units;
    lines_.push_back({line, wide, (height - natural) / 2 - logical.y * units, height,
                      right && width > 0 ? std::max(width - wide, 0.0) : 0});
    width_ = std::max(width_, wide);
  }
}

double Text::height(std::size_t from, std::size_t to) const {
  double sum = 0;
  for (auto i = from; i < std::min(to, lines()); ++i) sum += lines_[i].height;
  return sum;
}

void Text::draw(cairo_t* cr, double x, double y, Ink ink, Side side, std::size_t from, std::size_t to) const {
  cairo_set_source_rgb(cr, ink.red, ink.green, ink.blue);
  for (auto i = from; i < std::min(to, lines()); ++i) {
    const auto& line = lines_[i];
    cairo_move_to(cr, side == Side::left ? x + line.indent : x - line.width, y + line.base);
    pango_cairo_show_layout_line(cr, line.line);
    y += line.height;
  }
}

Typesetter::Typesetter() : context_(owned(pango_font_map_create_context(pango_cairo_font_map_get_default()))) {
  pango_cairo_context_set_resolution(context_.get(), 72);
  auto* options = cairo_font_options_create();
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context_.get(), options);
  cairo_font_options_destroy(options);
  pango_context_set_round_glyph_positions(context_.get(), FALSE);
  pango_context_set_language(context_.get(), pango_language_from_string("en"));
}

std::shared_ptr<PangoLayout> Typesetter::layout(const std::string& text, const Face& face) {
  auto set = owned(pango_layout_new(context_.get()));
  auto* font = description(face);
  pango_layout_set_font_description(set.get(), font);
  pango_font_description_free(font);
  const bool right = wholly_from_the_right(text);
  pango_layout_set_auto_dir(set.get(), right ? TRUE : FALSE);
  pango_layout_set_alignment(set.get(), right ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT);  // read by Text alone
  pango_layout_set_text(set.get(), text.c_str(), static_cast<int>(text.size()));
  return set;
}

TextPtr Typesetter::line(std::string_view text, const Face& face) {
  const auto shown = clean(text);
  auto& found = lines_[key(shown, face)];
  if (!found) found = std::make_shared<Text>(layout(shown, face), face, 0);
  return found;
}

TextPtr Typesetter::shortened(std::string_view text, const Face& face, double width) {
  const auto whole = line(text, face);
  if (whole->width() <= width) return whole;
  auto set = layout(clean(text), face);
  pango_layout_set_width(set.get(), pango_width(width));
  pango_layout_set_ellipsize(set.get(), PANGO_ELLIPSIZE_END);
  return std::make_shared<Text>(std::move(set), face, 0);
}

TextPtr Typesetter::wrapped(std::string_view text, const Face& face, double width) {
  const auto whole = line(text, face);
  if (whole->width() <= width) return whole;
  auto set = layout(clean(text), face);
  pango_layout_set_width(set.get(), pango_width(width));
  pango_layout_set_wrap(set.get(), PANGO_WRAP_WORD_CHAR);
  set_no_hyphens(set.get());
  return std::make_shared<Text>(std::move(set), face, width);
}

}  // namespace holdback::pdf
