// The document's outline.
#pragma once

#include <cairo-pdf.h>

#include <string>
#include <vector>

#include "pages.hpp"

namespace holdback::pdf {

/// Adds the entries of a paper whose first page is `first_page` of the document (from 1). `root`: the paper's own
/// entry, above them; empty: none.
void add_outline(cairo_surface_t* surface, const std::vector<PlacedEntry>& entries, int first_page,
                 const std::string& root);

}  // namespace holdback::pdf
