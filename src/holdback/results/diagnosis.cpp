#include "holdback/results/diagnosis.hpp"

#include <array>

namespace holdback {

namespace {

template <class Enum, std::size_t Count>
constexpr std::string_view word(const std::array<std::string_view, Count>& words, Enum value) {
  return words[static_cast<std::size_t>(value)];
}

}  // namespace

std::string_view key_of(LogPhase phase) {
  constexpr std::array<std::string_view, 5> words{"standstill", "ramp up", "steady run", "ramp down", "emergency stop"};
  return word(words, phase);
}

std::string_view key_of(LogChannel channel) {
  constexpr std::array<std::string_view, log_channels> words{"time",     "speed", "tension",     "pressure",
                                                             "diameter", "turns", "temperature", "pairs"};
  return word(words, channel);
}

std::string_view key_of(PeakSource source) {
  constexpr std::array<std::string_view, 7> words{"roll", "idler", "loop", "stick-slip", "regulator", "hum", "unknown"};
  return word(words, source);
}

std::string_view key_of(CauseKind cause) {
  constexpr std::array<std::string_view, 16> words{
      "nothing wrong", "runout",  "off centre", "idler",     "hunting",        "loose loop", "stick-slip", "dead pair",
      "wrong grade",   "glazing", "fade",       "regulator", "pressure gauge", "sensor",     "hand card",  "hum"};
  return word(words, cause);
}

std::string_view key_of(DiameterSource source) {
  constexpr std::array<std::string_view, 4> words{"unknown", "logged", "from speed and turns", "from the web run"};
  return word(words, source);
}

}  // namespace holdback
