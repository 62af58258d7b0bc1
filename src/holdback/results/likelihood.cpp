#include "holdback/results/likelihood.hpp"

#include <array>

namespace holdback {

std::string_view key_of(Input input) {
  constexpr std::array<std::string_view, input_count> keys{"friction", "pressure", "drag",   "tension",
                                                           "caliper",  "ambient",  "cooling"};
  return keys[static_cast<std::size_t>(input)];
}

}  // namespace holdback
