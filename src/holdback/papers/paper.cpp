#include "holdback/papers/paper.hpp"

namespace holdback::papers {

std::string_view key_of(Kind kind) {
  constexpr std::array<std::string_view, 6> keys{"selection_report",    "setup_card", "maintenance_card",
                                                 "commissioning_sheet", "comparison", "change_list"};
  return keys[static_cast<std::size_t>(kind)];
}

std::string_view name_of(Kind kind) {
  constexpr std::array<std::string_view, 6> names{"Selection report",    "Set-up card", "Maintenance card",
                                                  "Commissioning sheet", "Comparison",  "Change list"};
  return names[static_cast<std::size_t>(kind)];
}

std::string_view word_of(Signal signal) {
  constexpr std::array<std::string_view, 4> words{"DANGER", "WARNING", "CAUTION", "NOTICE"};
  return words[static_cast<std::size_t>(signal)];
}

}  // namespace holdback::papers
