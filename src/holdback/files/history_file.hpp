// Entries of a stand's history as text: KEY=VALUE words of a call, and the table (CSV) that `history show --csv`
// writes.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "holdback/model/history.hpp"
#include "holdback/results/answer.hpp"

namespace holdback::files {

/// One value of an entry by its key, as a person writes it: "depth" and "6.4 mm".
struct EntryWord {
  std::string key{};
  std::string text{};
};

/// What was read. When `problems` holds an error the entries are not to be used.
struct HistoryFile {
  std::vector<HistoryEntry> entries{};
  Problems problems{};
  std::vector<ColumnRead> columns{};
};

/// One entry from a call: the word of its kind, its date ("2026-05-03") and its values. Number and stand are the
/// caller's. Collects every problem: an unknown kind or key, a value without its unit or outside of what it may be, a
/// date that is none, a kind that lacks what it needs.
HistoryFile read_entry(const std::string& kind, const std::string& date, const std::vector<EntryWord>& words);

/// A table of entries with the columns number, stand, date, kind, corrects and the keys of history_fields(), units in
/// the head ("depth [mm]") or in the cells, in any order. Each row is checked like an entry from a call, then all of a
/// stand together (model's problems_of()). Never throws for any text.
HistoryFile read_history(std::string_view text, const std::string& file_name);

/// The stands of the entries, each once, in the order of their first entries.
std::vector<std::string> stands_of(const std::vector<HistoryEntry>& entries);

}  // namespace holdback::files
