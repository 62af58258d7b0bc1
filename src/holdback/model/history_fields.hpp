// The table of what an entry of the history can hold. The call of the command line, the table of entries and the file
// in which they are kept all go by these rows.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "holdback/model/history.hpp"
#include "holdback/model/quantity.hpp"

namespace holdback {

/// Where a value lies, and by that what it is: a number with its unit, one line of text, yes or no, a day.
using HistoryTarget = std::variant<std::optional<double> HistoryEntry::*, std::string HistoryEntry::*,
                                   bool HistoryEntry::*, std::optional<int> HistoryEntry::*>;

/// One row.
struct HistoryField {
  std::string key{};
  HistoryTarget target{};
  Quantity kind{Quantity::number};  // of a number
  double low{};                     // [SI] of a number
  double high{};                    // [SI] of a number
  bool above{};                     // the low end itself is not accepted
  std::vector<EntryKind> of{};      // the kinds of entry that take it
  std::string help{};
};

/// Every row, in the order of the table of entries.
const std::vector<HistoryField>& history_fields();

/// The row of a key; null when there is none.
const HistoryField* history_field(std::string_view key);

/// Whether a kind of entry takes the row.
bool takes(EntryKind kind, const HistoryField& field);

/// The keys that a kind of entry takes.
std::vector<std::string> keys_of(EntryKind kind);

/// A value of an entry: nothing, a number [SI; a day as its count; yes as 1], or text.
using HistoryValue = std::variant<std::monostate, double, std::string>;

/// The value of an entry, and how to give it one. What does not suit the row's form is left out.
HistoryValue value_of(const HistoryEntry& entry, const HistoryField& field);
void set_value(HistoryEntry& entry, const HistoryField& field, const HistoryValue& value);

/// Which values a kind needs: at least one of these keys. Empty: it may stand alone.
std::vector<std::string> needed_by(EntryKind kind);

}  // namespace holdback
