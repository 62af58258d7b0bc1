// The invented stands of examples/, built into the program.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace holdback::cli {

/// One file of examples/: its name without number and ending, the file's name, and its text.
struct Example {
  std::string_view name;
  std::string_view file;
  std::string_view text;
};

/// Every example, in the order of their numbers.
const std::vector<Example>& examples();

/// Their names.
std::vector<std::string> example_names();

}  // namespace holdback::cli
