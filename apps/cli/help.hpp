// Help as text, from the table of commands.
#pragma once

#include <string>

#include "commands.hpp"

namespace holdback::cli {

/// The overview: what the program is for, its commands and examples.
std::string overview();

/// The help of one command.
std::string help(const Command& command);

/// "holdback size FILE [options]".
std::string usage(const Command& command);

}  // namespace holdback::cli
