#include "holdback/results/history.hpp"

#include <array>

namespace holdback {

std::string_view key_of(UseBasis basis) {
  constexpr std::array<std::string_view, 4> keys{"energy", "running_time", "rolls", "calendar"};
  return keys[static_cast<std::size_t>(basis)];
}

std::string_view words_of(UseBasis basis) {
  constexpr std::array<std::string_view, 4> words{"friction energy", "running time", "rolls", "time on the calendar"};
  return words[static_cast<std::size_t>(basis)];
}

Quantity kind_of(UseBasis basis) {
  constexpr std::array<Quantity, 4> kinds{Quantity::energy, Quantity::running_time, Quantity::number,
                                          Quantity::calendar_time};
  return kinds[static_cast<std::size_t>(basis)];
}

}  // namespace holdback
