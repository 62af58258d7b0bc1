// Shell completions, from the table of commands.
#pragma once

#include <string>

namespace holdback::cli {

/// To be sourced by bash.
std::string bash_completion();

/// To be put as _holdback on zsh's fpath, or sourced.
std::string zsh_completion();

}  // namespace holdback::cli
