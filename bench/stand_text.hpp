// The examples as benchmark input.
#pragma once

#include <cstdlib>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>

#include "holdback/files/stand_file.hpp"

namespace bench {

/// The text of an example. Ends the program when there is none: a benchmark of nothing is no benchmark.
inline std::string text_of(const std::string& example) {
  std::ifstream file(HOLDBACK_SOURCE_DIR "/examples/" + example, std::ios::binary);
  if (!file) {
    std::cerr << "no such example: " << example << '\n';
    std::exit(1);
  }
  return {std::istreambuf_iterator<char>(file), {}};
}

inline holdback::Stand stand_of(const std::string& example) {
  const holdback::files::StandFile read = holdback::files::read_stand(text_of(example), example);
  if (holdback::has_errors(read.problems)) {
    std::cerr << example << " has errors; see: holdback check\n";
    std::exit(1);
  }
  return read.stand;
}

}  // namespace bench
