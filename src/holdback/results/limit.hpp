// A limit: one record for every bound that a fit must keep. Three words for its state, the same in text and in colour.
#pragma once

#include <string_view>

#include "holdback/model/quantity.hpp"

namespace holdback {

/// Every limit that is checked. The order is the order in which they are shown.
enum class LimitId {
  tension_window,         // setpoint against the highest tension the web should see
  highest_pressure,       // steady run at the lowest friction against the ceiling of regulator, supply and brake
  lowest_pressure,        // steady run at the highest friction against the floor of the regulator
  lowest_tension,         // lowest tension that can be reached against the low end of the window
  tension_resolution,     // change of tension by one pressure step against the tolerance
  ramp_tension,           // tension that inertia and drag alone make in a ramp against the high end of the window
  stop_torque,            // normal stop at the lowest friction
  emergency_stop_torque,  // emergency stop at the lowest friction
  holding_torque,         // standstill at the lowest static friction
  torque_rating,          // highest torque in any case against the maker's rating
  disc_speed,             // disc at the core against the maker's rating
  slip_power,             // slip power against what the disc sheds at its rated rise
  disc_temperature,       // steady disc temperature against the maker's rating
  pad_temperature,        // steady temperature against the limit of the grade
  stop_temperature,       // bulk disc temperature after an emergency stop from the steady state
  stop_surface,           // temperature of the disc's face in an emergency stop against the limit of the grade
  pressure_speed,         // pad pressure times sliding speed against the limit of the grade
  pad_life,               // running time until the pads are worn
  idler_traction,         // lowest tension at which every idler is still driven, against the low end of the window
  span_sag,               // lowest tension at which the longest span sags no more than accepted, against the same
  roll_balance,   // lowest tension that keeps an out-of-round roll from swinging at standstill, against the same
  cinching,       // torque put through the roll over its radius, against the tension it was wound with
  core_grip,      // torque through the grip on the core in an emergency stop
  shaft_fatigue,  // safety of the shaft against fatigue
  whirl_speed,    // shaft at the core against a share of its first whirl speed
  bearing_life,   // running time that the shaft's bearings last
};
inline constexpr int limit_count = static_cast<int>(LimitId::bearing_life) + 1;

/// The situation in which a limit binds.
enum class LoadCase { run, ramp, stop, emergency_stop, hold, web_break };

/// How a bound is known: derived by us, rated by a maker, set by the user, or a rule of the trade without a source.
enum class Known { formula, rating, setting, practice };

/// holds: with the reserve in hand. tight: kept, inside the reserve. fails: not kept.
enum class State { holds, tight, fails };

/// Whether the value may not exceed the bound, or may not fall below it.
enum class Sense { at_most, at_least };

/// What is fixed about a limit whatever the job.
struct LimitInfo {
  LimitId id;
  std::string_view key;   // as in JSON: "stop_torque"
  std::string_view name;  // as a person reads it: "normal stop torque"
  Quantity kind;          // of value and bound
  Sense sense;
};
const LimitInfo& info(LimitId id);

/// One limit of one job on one fit.
struct Limit {
  LimitId id{};
  double value{};     // in the unit of info(id).kind
  double bound{};     // the same
  double margin{};    // [1] 1 is just kept; 1.25 has a quarter in hand; clipped to 0 … margin_cap
  double reserve{};   // [1] in hand below which it is tight
  double diameter{};  // [m] of the roll where it binds; 0 when it does not depend on the roll
  LoadCase load_case{LoadCase::run};
  Known known{Known::formula};
  State state{State::holds};
  bool operator==(const Limit&) const = default;
};
inline constexpr double margin_cap = 100;

/// The state that a margin [1] and a reserve [1] give.
State state_of(double margin, double reserve);

std::string_view key_of(LoadCase load_case);   // "emergency_stop"
std::string_view name_of(LoadCase load_case);  // "emergency stop"
std::string_view key_of(Known known);
std::string_view key_of(State state);  // "holds", "tight", "fails"

}  // namespace holdback
