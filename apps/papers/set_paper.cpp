// A paper set: its title, its blocks, and the size of type at which it fits.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "marks.hpp"
#include "pages.hpp"

namespace holdback::pdf {

namespace {

/// The title above the first block.
Strip title_of(const papers::Paper& paper, const Setting& setting) {
  const double e = setting.size;
  const auto title = setting.type->wrapped(paper.title, {1.9 * e, true, 1.15}, setting.width);
  const auto date = setting.type->shortened(paper.date, {e, false}, 0.3 * setting.width);
  const auto subject = setting.type->wrapped(paper.subject, {1.15 * e, false, 1.25},
                                             setting.width - (paper.date.empty() ? 0 : date->width() + 2 * e));
  Strip strip;
  strip.height = title->height() + subject->height() + 0.9 * e;
  strip.keeps = true;
  strip.draw = [=, width = setting.width](cairo_t* cr, double x, double y) {
    title->draw(cr, x, y, accent);
    const double below = y + title->height() + 0.1 * e;
    subject->draw(cr, x, below, black);
    date->draw(cr, x + width, below + subject->base() - date->base(), muted, Side::right, 0, 1);
    draw_rule(cr, x, below + subject->height() + 0.4 * e, width, 1.4, accent);
  };
  return strip;
}

/// The first facts, when nothing under a heading comes before them.
const papers::Block* facts_of_cover(const papers::Paper& paper) {
  for (const auto& block : paper.blocks) {
    if (std::holds_alternative<papers::Facts>(block)) return &block;
    if (std::holds_alternative<papers::Heading>(block)) return nullptr;
  }
  return nullptr;
}

Strips cover_of(const papers::Paper& paper, const Setting& setting, const papers::Block* facts) {
  constexpr double title_size = 28;
  constexpr double down = 52 * mm;  // to where the title begins
  const auto title = setting.type->wrapped(paper.title, {title_size, true, 1.15}, setting.width);
  const auto subject = setting.type->wrapped(paper.subject, {15, false, 1.25}, setting.width);
  const auto date = setting.type->wrapped(paper.date, {11, false}, setting.width);
  Strips out(1);
  out[0].height = down + title->height() + subject->height() + date->height() + 50;
  out[0].draw = [=, width = setting.width](cairo_t* cr, double x, double y) {
    y += down;
    draw_panel(cr, x, y - 16, 26 * mm, 3, accent);
    title->draw(cr, x, y, accent);
    y += title->height() + 8;
    subject->draw(cr, x, y, black);
    y += subject->height() + 8;
    date->draw(cr, x, y, muted);
    draw_rule(cr, x, y + date->height() + 16, width, 0.6, accent);
  };
  Setting larger = setting;
  larger.size = 1.15 * setting.size;
  if (facts != nullptr) set_facts(out, larger, std::get<papers::Facts>(*facts));
  return out;
}

/// The body's height on the first page and on the others.
double room_of(const SheetSize& sheet, bool with_head) {
  return sheet.height - sheet.top - sheet.bottom - foot_room - (with_head ? head_room : 0);
}

/// The paper at a scale: laid on a page that is larger by as much, so that nothing but places is reckoned anew.
SetPaper set_at(double scale, const papers::Paper& paper, const SheetSize& sheet, Typesetter& type) {
  SetPaper set{&paper, sheet, {}, {}, {}, scale, {}};
  const double width = sheet.text_width() / scale;
  const double rest = room_of(sheet, true) / scale;
  const double size = std::isfinite(paper.size) ? std::clamp(paper.size, 4.0, 40.0) : papers::Paper{}.size;
  const Setting setting{&type, width, rest, size, scale, &set.warnings};
  const auto* on_cover = paper.cover ? facts_of_cover(paper) : nullptr;
  if (paper.cover) {
    set.cover = cover_of(paper, setting, on_cover);
  } else {
    set.strips.push_back(title_of(paper, setting));
  }
  set_blocks(set.strips, setting, paper.blocks, on_cover);
  int shrunk = 0;
  set.pages = paginated(set.strips, paper.cover ? rest : room_of(sheet, false) / scale, rest, shrunk);
  if (shrunk > 0) set.warnings.push_back(fmt::format("{} parts are higher than a page and are set smaller", shrunk));
  return set;
}

}  // namespace

SetPaper set_paper(const papers::Paper& paper, const SheetSize& sheet, Typesetter& type) {
  auto best = set_at(1, paper, sheet, type);
  if (!paper.one_page) return best;
  for (double scale = 0.95; best.page_count() > 1 && scale > smallest_scale - 0.01; scale -= 0.05) {
    auto smaller = set_at(scale, paper, sheet, type);
    if (smaller.page_count() < best.page_count()) best = std::move(smaller);
  }
  if (best.page_count() > 1) {
    best.warnings.push_back(fmt::format("does not fit on one page, takes {}", best.page_count()));
  }
  return best;
}

}  // namespace holdback::pdf
