// `history`: keeps entries in a file and shows what they say.
#pragma once

#include "settings.hpp"

namespace holdback::cli {

/// history add, history show. Returns the exit code.
int keep_history(const Settings& settings);

}  // namespace holdback::cli
