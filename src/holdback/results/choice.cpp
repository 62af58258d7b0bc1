#include "holdback/results/choice.hpp"

#include <array>

namespace holdback {

std::string_view key_of(RemedyKind kind) {
  constexpr std::array<std::string_view, static_cast<std::size_t>(last_remedy_kind) + 1> keys{
      "slower_stop", "slower_ramp", "slower_speed", "regulator",   "guard",
      "more_pairs",  "other_grade", "second_brake", "other_brake", "combined"};
  static_assert(!keys.back().empty(), "every kind of remedy has its word");
  return keys[static_cast<std::size_t>(kind)];
}

}  // namespace holdback
