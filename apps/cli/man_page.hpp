// The man page in roff, from the table of commands.
#pragma once

#include <string>

namespace holdback::cli {

/// holdback(1). The same for the same program: it carries the version, not a date.
std::string man_page();

}  // namespace holdback::cli
