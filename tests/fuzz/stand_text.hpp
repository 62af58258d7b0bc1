// A sound stand beside which tables are read.
#pragma once

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>

/// The text of a file of the project.
inline std::string stand_text(const std::string& path = "/examples/01-label-slitter.toml") {
  std::ifstream file(HOLDBACK_SOURCE_DIR + path, std::ios::binary);
  if (!file) std::abort();
  return {std::istreambuf_iterator<char>(file), {}};
}
