// What the events of a scenario are called, in files, messages and answers alike.
#pragma once

#include <array>
#include <string>

#include "holdback/model/scenario.hpp"

namespace holdback {

/// Every kind, in the order in which they are shown.
inline constexpr std::array<EventKind, 9> event_kinds{
    EventKind::ramp,     EventKind::hold,  EventKind::stop,        EventKind::emergency_stop, EventKind::splice,
    EventKind::setpoint, EventKind::pairs, EventKind::air_failure, EventKind::web_break};

/// "emergency stop".
std::string word_of(EventKind kind);

}  // namespace holdback
