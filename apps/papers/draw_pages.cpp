// Pages drawn: running head, body, foot.
#include <fmt/format.h>

#include "marks.hpp"
#include "pages.hpp"

namespace holdback::pdf {

namespace {

constexpr std::string_view who_decides =
    "Computed by Holdback from what the file says. Local codes, makers' ratings and licensed practice decide.";

/// Title and subject on the left, the date on the right.
void draw_head(cairo_t* cr, Typesetter& type, const SetPaper& set) {
  const auto& sheet = set.sheet;
  const double width = sheet.text_width();
  const auto date = type.shortened(set.paper->date, {foot_size, false}, 0.3 * width);
  const auto title = type.shortened(set.paper->title, {foot_size, true}, 0.45 * width);
  const double used = title->width() + 2 * foot_size;
  const auto subject = type.shortened(set.paper->subject, {foot_size, false}, width - used - date->width() - 12);
  title->draw(cr, sheet.side, sheet.top, accent);
  subject->draw(cr, sheet.side + used, sheet.top, muted);
  date->draw(cr, sheet.side + width, sheet.top, muted, Side::right, 0, 1);
  draw_rule(cr, sheet.side, sheet.top + 12, width, 0.5, accent);
}

void draw_foot(cairo_t* cr, Typesetter& type, const SetPaper& set, int page) {
  const auto& sheet = set.sheet;
  const auto number = type.line(fmt::format("page {} of {}", page, set.page_count()), {foot_size, false});
  const double y = sheet.height - sheet.bottom - number->height();
  draw_rule(cr, sheet.side, y - 4, sheet.text_width(), 0.4, rule);
  const double room = sheet.text_width() - number->width() - 12;
  type.shortened(who_decides, {foot_size, false}, room)->draw(cr, sheet.side, y, muted);
  number->draw(cr, sheet.side + sheet.text_width(), y, black, Side::right, 0, 1);
}

void draw_strip(cairo_t* cr, const Placed& placed) {
  if (placed.head != nullptr) placed.head->draw(cr, 0, placed.y - placed.head->height);
  if (placed.scale == 1) {
    placed.strip->draw(cr, 0, placed.y);
    return;
  }
  cairo_save(cr);
  cairo_translate(cr, 0, placed.y);
  cairo_scale(cr, placed.scale, placed.scale);
  placed.strip->draw(cr, 0, 0);
  cairo_restore(cr);
}

void draw_body(cairo_t* cr, const SetPaper& set, const Page& page, double top) {
  cairo_save(cr);
  cairo_translate(cr, set.sheet.side, top);
  cairo_scale(cr, set.scale, set.scale);
  for (const auto& placed : page.strips) draw_strip(cr, placed);
  cairo_restore(cr);
}

void draw_cover(cairo_t* cr, Typesetter& type, const SetPaper& set) {
  int shrunk = 0;
  const double room = (set.sheet.height - set.sheet.top - set.sheet.bottom - foot_room) / set.scale;
  draw_body(cr, set, paginated(set.cover, room, room, shrunk).front(), set.sheet.top);
  draw_foot(cr, type, set, 1);
  cairo_show_page(cr);
}

}  // namespace

void draw_pages(cairo_t* cr, Typesetter& type, const SetPaper& set, std::vector<PlacedEntry>& entries) {
  int number = 0;
  if (!set.cover.empty()) {
    draw_cover(cr, type, set);
    ++number;
  }
  for (const auto& page : set.pages) {
    ++number;
    const bool titled = number == 1;  // by the title above the first block
    const double top = set.sheet.top + (titled ? 0 : head_room);
    if (!titled) draw_head(cr, type, set);
    draw_body(cr, set, page, top);
    draw_foot(cr, type, set, number);
    for (const auto& placed : page.strips) {
      if (placed.strip->entry) entries.push_back({*placed.strip->entry, number, top + set.scale * placed.y});
    }
    cairo_show_page(cr);
  }
}

}  // namespace holdback::pdf
