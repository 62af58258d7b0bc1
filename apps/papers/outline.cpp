#include "outline.hpp"

#include <fmt/format.h>

namespace holdback::pdf {

namespace {

int add_entry(cairo_surface_t* surface, int parent, const std::string& text, int page, double y, bool open) {
  const auto place = fmt::format("page={} pos=[0 {:.1f}]", page, y);
  return cairo_pdf_surface_add_outline(surface, parent, clean(text).c_str(), place.c_str(),
                                       open ? CAIRO_PDF_OUTLINE_FLAG_OPEN : cairo_pdf_outline_flags_t{});
}

}  // namespace

void add_outline(cairo_surface_t* surface, const std::vector<PlacedEntry>& entries, int first_page,
                 const std::string& root) {
  int top = CAIRO_PDF_OUTLINE_ROOT;
  if (!root.empty()) top = add_entry(surface, top, root, first_page, 0, false);
  int section = top;
  for (const auto& placed : entries) {
    const bool first_level = placed.entry.level == 1;
    const int id = add_entry(surface, first_level ? top : section, placed.entry.text, first_page + placed.page - 1,
                             placed.y, root.empty());
    if (first_level) section = id;
  }
}

}  // namespace holdback::pdf
