// One worksheet of a workbook as CSV, and the texts and number formats that its cells refer to.
#pragma once

#include <cstddef>
#include <pugixml.hpp>
#include <set>
#include <string>
#include <vector>

namespace holdback::cli {

/// What cells refer to: texts by number, and the styles that show per cent.
struct Shared {
  bool has_texts{};
  std::vector<std::string> texts{};
  std::set<std::size_t> per_cent{};  // numbers of styles
};

/// The cells of a worksheet, one line for each of its rows from the first on, rows and cells that hold nothing left out
/// at the ends. Empty for an empty sheet. Throws Unreadable for cells that make no sense, and beyond 100 000 rows, 256
/// columns or 64 MB of text.
std::string sheet_as_csv(const pugi::xml_node& worksheet, const Shared& shared);

/// Plain or rich text: <t> alone, or runs of it; readings of foreign signs (<rPh>) are left out.
std::string rich_text(const pugi::xml_node& node);

/// UTF-8 without control characters but line ends, and without blanks at its ends.
std::string clean(const std::string& text);

/// A number format that shows per cent: a "%" outside quotes, not escaped.
bool shows_per_cent(const std::string& code);

}  // namespace holdback::cli
