// The words of a header, so that two ways to write one name are the same.
#pragma once

#include <string>
#include <string_view>

namespace holdback::files {

/// Small letters, no punctuation, short forms written out ("dia.", "Ø", "max"), filling words left out, in the order of
/// the alphabet: "Core Ø", "Ø of core" and "core dia." are all "core diameter".
std::string header_words(std::string_view name);

}  // namespace holdback::files
