// Near misses: which known word a person meant.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace holdback::files {

/// The known word that `written` is nearest to, or empty when none is near. Case, blanks and hyphens do not count
/// ("Core Diameter" is core_diameter); otherwise a third of the letters may be inserted, dropped, replaced or swapped,
/// or one word may open the other at a whole part ("core_dia", "basis weight gsm").
std::string nearest(std::string_view written, const std::vector<std::string>& known);

/// The words in quotes, parted by commas; of many only the first ones and their number.
std::string listed(const std::vector<std::string>& words);

}  // namespace holdback::files
