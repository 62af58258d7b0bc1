// From the arguments of a call to settings, by the table of commands.
#pragma once

#include <string>
#include <vector>

#include "settings.hpp"

namespace holdback::cli {

/// Parses the arguments that follow the program's name. Throws Refusal with a message that names the nearest right
/// word.
Settings parse(const std::vector<std::string>& arguments);

}  // namespace holdback::cli
