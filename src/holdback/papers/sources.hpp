// The list of sources (docs/sources.bib) as a reader of a paper needs it: who, what, where, when.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace holdback::papers {

/// "J. F. Archard: Contact and Rubbing of Flat Surfaces. Journal of Applied Physics, 1953" of a key; none when the list
/// has no such key.
std::optional<std::string> source_called(std::string_view key);

/// The same out of any text in the manner of that list.
std::optional<std::string> source_in(std::string_view bib, std::string_view key);

}  // namespace holdback::papers
