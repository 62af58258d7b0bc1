// The words by which enums stand in JSON, and how many there are of each. Limits, cases, knowledge and states bring
// their own words from results/.
#pragma once

#include <array>
#include <string_view>

#include "holdback/report/field.hpp"
#include "holdback/results/answer.hpp"

namespace holdback::report {

using holdback::key_of;

/// The word of a limit: "stop_torque".
inline std::string_view key_of(LimitId id) { return info(id).key; }

/// The word of an outcome: "holds".
inline std::string_view key_of(Outcome outcome) {
  constexpr std::array<std::string_view, 4> keys{"holds", "fails", "bad_input", "internal"};
  return keys[static_cast<std::size_t>(outcome)];
}

/// The word of a severity: "error".
inline std::string_view key_of(Severity severity) { return severity == Severity::error ? "error" : "warning"; }

/// The word of a schedule: "fixed".
inline std::string_view key_of(GainSchedule schedule) { return schedule == GainSchedule::fixed ? "fixed" : "diameter"; }

/// The last value of each enum, so that a schema can list them all.
constexpr LimitId last(Of<LimitId> /*unused*/) { return LimitId::bearing_life; }
constexpr LoadCase last(Of<LoadCase> /*unused*/) { return LoadCase::web_break; }
constexpr Known last(Of<Known> /*unused*/) { return Known::practice; }
constexpr State last(Of<State> /*unused*/) { return State::fails; }
constexpr BoundId last(Of<BoundId> /*unused*/) { return last_bound; }
constexpr Input last(Of<Input> /*unused*/) { return Input::cooling; }
constexpr RemedyKind last(Of<RemedyKind> /*unused*/) { return last_remedy_kind; }
constexpr ControlKind last(Of<ControlKind> /*unused*/) { return last_control_kind; }
constexpr RunEnd last(Of<RunEnd> /*unused*/) { return last_run_end; }
constexpr Method last(Of<Method> /*unused*/) { return last_method; }
constexpr GainSchedule last(Of<GainSchedule> /*unused*/) { return GainSchedule::diameter; }
constexpr EntryKind last(Of<EntryKind> /*unused*/) { return last_entry_kind; }
constexpr UseBasis last(Of<UseBasis> /*unused*/) { return last_use_basis; }
constexpr LogPhase last(Of<LogPhase> /*unused*/) { return last_log_phase; }
constexpr LogChannel last(Of<LogChannel> /*unused*/) { return last_log_channel; }
constexpr PeakSource last(Of<PeakSource> /*unused*/) { return last_peak_source; }
constexpr CauseKind last(Of<CauseKind> /*unused*/) { return last_cause_kind; }
constexpr DiameterSource last(Of<DiameterSource> /*unused*/) { return last_diameter_source; }
constexpr Outcome last(Of<Outcome> /*unused*/) { return Outcome::internal; }
constexpr Severity last(Of<Severity> /*unused*/) { return Severity::warning; }

/// Every word of an enum, in order.
template <typename Enum>
std::vector<std::string_view> keys_of(Of<Enum> type) {
  std::vector<std::string_view> keys;
  for (int i = 0; i <= static_cast<int>(last(type)); ++i) keys.push_back(key_of(static_cast<Enum>(i)));
  return keys;
}

}  // namespace holdback::report
