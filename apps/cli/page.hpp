// The page: one HTML file with the core inside, carried by the program when it was built with one.
#pragma once

#include <string_view>

namespace holdback::cli {

/// The whole file; empty when the program was built without it (`./run page` builds both).
std::string_view page();

}  // namespace holdback::cli
