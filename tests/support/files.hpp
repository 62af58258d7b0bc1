// Files of the source tree for tests.
#pragma once

#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>

namespace holdback::test {

/// The text of a file below the source tree; throws when it cannot be read.
inline std::string read_source(const std::string& path) {
  std::ifstream file(std::string(HOLDBACK_SOURCE_DIR) + "/" + path, std::ios::binary);
  if (!file) throw std::runtime_error("cannot read " + path);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

}  // namespace holdback::test
