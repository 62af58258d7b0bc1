#include "holdback/results/limit.hpp"

#include <array>

namespace holdback {

namespace {

using enum LimitId;
using enum Sense;

constexpr std::array<LimitInfo, limit_count> infos{{
    {tension_window, "tension_window", "tension window", Quantity::force, at_most},
    {highest_pressure, "highest_pressure", "highest pressure", Quantity::pressure, at_most},
    {lowest_pressure, "lowest_pressure", "lowest pressure", Quantity::pressure, at_least},
    {lowest_tension, "lowest_tension", "lowest tension", Quantity::force, at_most},
    {tension_resolution, "tension_resolution", "tension step", Quantity::force, at_most},
    {ramp_tension, "ramp_tension", "ramp tension", Quantity::force, at_most},
    {stop_torque, "stop_torque", "stop torque", Quantity::torque, at_most},
    {emergency_stop_torque, "emergency_stop_torque", "emergency stop torque", Quantity::torque, at_most},
    {holding_torque, "holding_torque", "holding torque", Quantity::torque, at_most},
    {torque_rating, "torque_rating", "torque rating", Quantity::torque, at_most},
    {disc_speed, "disc_speed", "disc speed", Quantity::rotational_speed, at_most},
    {slip_power, "slip_power", "slip power", Quantity::power, at_most},
    {disc_temperature, "disc_temperature", "disc temperature", Quantity::temperature, at_most},
    {pad_temperature, "pad_temperature", "pad temperature", Quantity::temperature, at_most},
    {stop_temperature, "stop_temperature", "temperature after stop", Quantity::temperature, at_most},
    {stop_surface, "stop_surface", "disc face in stop", Quantity::temperature, at_most},
    {pressure_speed, "pressure_speed", "pad pressure × speed", Quantity::pressure_speed, at_most},
    {pad_life, "pad_life", "pad life", Quantity::running_time, at_least},
    {idler_traction, "idler_traction", "idler traction", Quantity::force, at_most},
    {span_sag, "span_sag", "sag of the longest span", Quantity::force, at_most},
    {roll_balance, "roll_balance", "balance at standstill", Quantity::force, at_most},
    {cinching, "cinching", "cinching of the roll", Quantity::torque, at_most},
    {core_grip, "core_grip", "grip on the core", Quantity::torque, at_most},
    {shaft_fatigue, "shaft_fatigue", "shaft fatigue safety", Quantity::number, at_least},
    {whirl_speed, "whirl_speed", "shaft whirl", Quantity::rotational_speed, at_most},
    {bearing_life, "bearing_life", "bearing life", Quantity::running_time, at_least},
}};

constexpr bool in_order() {
  for (int i = 0; i < limit_count; ++i)
    if (static_cast<int>(infos[static_cast<std::size_t>(i)].id) != i) return false;
  return true;
}
static_assert(in_order(), "info() indexes by LimitId");

}  // namespace

const LimitInfo& info(LimitId id) { return infos[static_cast<std::size_t>(id)]; }

State state_of(double margin, double reserve) {
  if (!(margin >= 1)) return State::fails;
  return margin >= 1 + reserve ? State::holds : State::tight;
}

std::string_view key_of(LoadCase load_case) {
  constexpr std::array<std::string_view, 6> keys{"run", "ramp", "stop", "emergency_stop", "hold", "web_break"};
  return keys[static_cast<std::size_t>(load_case)];
}

std::string_view name_of(LoadCase load_case) {
  constexpr std::array<std::string_view, 6> names{"run", "ramp", "stop", "emergency stop", "hold", "web break"};
  return names[static_cast<std::size_t>(load_case)];
}

std::string_view key_of(Known known) {
  constexpr std::array<std::string_view, 4> keys{"formula", "rating", "setting", "practice"};
  return keys[static_cast<std::size_t>(known)];
}

std::string_view key_of(State state) {
  constexpr std::array<std::string_view, 3> keys{"holds", "tight", "fails"};
  return keys[static_cast<std::size_t>(state)];
}

}  // namespace holdback
