#include "holdback/results/window.hpp"

#include <array>

namespace holdback {

namespace {
constexpr std::size_t count = static_cast<std::size_t>(last_bound) + 1;
}

std::string_view key_of(BoundId bound) {
  constexpr std::array<std::string_view, count> keys{"traction", "sag",    "balance",  "usual_least",
                                                     "strength", "strain", "cinching", "usual_most"};
  return keys[static_cast<std::size_t>(bound)];
}

std::string_view name_of(BoundId bound) {
  constexpr std::array<std::string_view, count> names{"traction on the idlers",
                                                      "sag of the longest span",
                                                      "balance at standstill",
                                                      "usual in the trade",
                                                      "strength",
                                                      "strain",
                                                      "cinching of the roll",
                                                      "usual in the trade"};
  return names[static_cast<std::size_t>(bound)];
}

bool is_lower(BoundId bound) { return bound <= BoundId::usual_least; }

}  // namespace holdback
