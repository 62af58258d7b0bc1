// Strips put on pages, and what stands around them on each page.
#pragma once

#include <vector>

#include "strip.hpp"

namespace holdback::pdf {

/// A strip on its page.
struct Placed {
  const Strip* strip{};
  double y{};            // below the top of the body
  double scale{1};       // below 1 for a strip that is higher than a page
  const Repeat* head{};  // that stands above it on this page
};

struct Page {
  std::vector<Placed> strips{};
};

/// The strips on as few pages as they need; the first has another height than the others. At least one page.
/// `shrunk` counts strips that are higher than a page and are drawn smaller.
std::vector<Page> paginated(const Strips& strips, double first_room, double room, int& shrunk);

/// A paper ready to be drawn. It points into the paper that it was set from.
struct SetPaper {
  const papers::Paper* paper{};
  SheetSize sheet{};
  Strips strips{};
  std::vector<Page> pages{};  // without the cover
  Strips cover{};             // empty: none
  double scale{1};
  std::vector<std::string> warnings{};
  int page_count() const { return static_cast<int>(pages.size()) + (cover.empty() ? 0 : 1); }
};
SetPaper set_paper(const papers::Paper& paper, const SheetSize& sheet, Typesetter& type);

/// An entry of the outline on its page, counted from 1 within the paper, `y` from the sheet's top.
struct PlacedEntry {
  Entry entry{};
  int page{};
  double y{};
};

/// Draws one page of the paper after the other; adds what belongs into the outline.
void draw_pages(cairo_t* cr, Typesetter& type, const SetPaper& paper, std::vector<PlacedEntry>& entries);

}  // namespace holdback::pdf
