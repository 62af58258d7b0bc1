// What is kept of a stand over the years: dated entries that are added and never changed.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "holdback/model/problem.hpp"

namespace holdback {

/// What an entry tells of.
enum class EntryKind {
  reading,  // of a gauge at the running machine
  pads,     // new pads were fitted
  wear,     // thickness or depth left of a pad, measured
  energy,   // work done since the last such entry
  fit,      // constants of the brake, fitted to readings
  note,     // words
};
inline constexpr EntryKind last_entry_kind = EntryKind::note;

/// The word of a kind: "reading"; and the kind of a word, none when there is no such word.
std::string_view key_of(EntryKind kind);
std::optional<EntryKind> entry_kind(std::string_view word);

/// One entry. Which members a kind takes stands in history_fields(); the others are empty. `brake` and `pair` name the
/// pad as the people at the machine name it; both empty: all pads, or the thinnest of them.
struct HistoryEntry {
  int number{};         // ≥ 1, in the order in which entries were added
  std::string stand{};  // name under which it is kept
  int day{};            // see model/date.hpp
  EntryKind kind{EntryKind::note};
  int corrects{};      // number of the entry whose place this one takes; 0: of none
  int corrected_by{};  // number of the entry that takes this one's place; 0: none. Follows from the others
  std::string brake{};
  std::string pair{};
  std::string reason{};  // of a change of pads
  std::string grade{};   // of the friction grade
  std::string text{};
  bool hottest{};                               // wear: the pad is the hottest one
  std::optional<int> since{};                   // energy: the day from which it counts; none: the entry before
  std::optional<double> tension{};              // [N] ≥ 0 over the whole width
  std::optional<double> pressure{};             // [Pa] ≥ 0 gauge at the brake
  std::optional<double> diameter{};             // [m] > 0 of the roll
  std::optional<double> speed{};                // [m/s] ≥ 0 of the web
  std::optional<double> temperature{};          // [K] of the disc
  std::optional<double> pairs{};                // engaged on each brake, whole
  std::optional<double> thickness{};            // [m] ≥ 0 of the pad as a gauge reads it
  std::optional<double> limit{};                // [m] ≥ 0 thickness at which the maker calls the pad worn out
  std::optional<double> depth{};                // [m] ≥ 0 left above that limit
  std::optional<double> resolution{};           // [m] > 0 of the gauge
  std::optional<double> energy{};               // [J] ≥ 0 friction energy of the stand
  std::optional<double> running_time{};         // [s] ≥ 0
  std::optional<double> rolls{};                // [1] ≥ 0
  std::optional<double> torque_per_pressure{};  // [N·m/Pa] > 0 of one pair
  std::optional<double> threshold{};            // [Pa] ≥ 0
  std::optional<double> drag{};                 // [N·m] ≥ 0
  std::optional<double> friction{};             // [1] > 0
  bool operator==(const HistoryEntry&) const = default;
};

/// "entry 12".
std::string name_of(const HistoryEntry& entry);

/// The pad in words: "front brake, pair 2"; empty when the entry names none.
std::string pad_of(const HistoryEntry& entry);

/// Sets corrected_by of each entry by the others.
void link_corrections(std::vector<HistoryEntry>& entries);

/// The entries that hold: those that no other corrects, by day and then by number.
std::vector<HistoryEntry> in_force(std::vector<HistoryEntry> entries);

/// What the entries of one stand, each sound by itself, show to be wrong together: numbers twice, corrections of what
/// is not there, a `since` behind the entry. Warnings: a pad that grew without a change. The field is "entry 12,
/// depth".
Problems problems_of(const std::vector<HistoryEntry>& entries);

}  // namespace holdback
