// TOML text → nodes. The only place that knows the TOML library.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "holdback/files/node.hpp"

namespace holdback::files {

/// What could be read. A line `key = …` with a fault in it is read on as if its value were empty, so that the rest of
/// the file is still checked; `faulty_lines` names such lines, and what is found wrong there later is only a
/// consequence. When the structure itself is broken `whole` is false and `root` is empty.
struct Tree {
  Node root{};
  Problems problems{};
  std::vector<int> faulty_lines{};
  bool whole{true};
};

/// Reads UTF-8 text without a byte order mark. Never throws on bad input.
Tree parse_toml(std::string_view text, const std::string& file);

}  // namespace holdback::files
