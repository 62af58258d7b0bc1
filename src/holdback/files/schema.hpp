// The field table as a JSON Schema, for editors that check and complete stand files.
#pragma once

#include <string>

namespace holdback::files {

/// JSON Schema 2020-12 of a stand file, derived from the field table. TOML and JSON have the same shape here. What
/// needs two fields at once (a core below its full roll) is not in it: `holdback check` tells that.
std::string stand_schema();

}  // namespace holdback::files
