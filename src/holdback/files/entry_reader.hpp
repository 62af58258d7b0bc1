// One entry of a history, value by value: from what a person wrote to what it is, or to the reason why not.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "holdback/model/history_fields.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {

/// What a date looks like, for messages.
inline constexpr const char* date_form = "year-month-day, such as 2026-05-03";

/// Why a value is not accepted.
struct RefusedValue {
  Note what{};
  Note accepted{};
};

/// A value of a history, or why there is none.
using ReadValue = std::variant<HistoryValue, RefusedValue>;

/// One line of text that is not empty, too long or full of control characters; `key` is for the message.
ReadValue word_value(const std::string& text, const std::string& key);

/// Whether a row of the table of fields is a number with a unit.
bool is_number(const HistoryField& field);

/// The words of all kinds of entry.
std::vector<std::string> kind_words();

/// "did you mean depth? one of: …"
Note did_you_mean(const std::string& word, const std::vector<std::string>& known);

/// Fills one entry value by value; problems name what the value was called where it stood.
class EntryReader {
 public:
  /// Problems go there.
  explicit EntryReader(Problems& problems) : problems_(problems) {}

  /// Where the next values stand, and what precedes their keys in messages: "row 7, ".
  void place(Position where, const std::string& label);
  /// Tells a problem; the entry is not sound any more.
  void tell(const std::string& field, const std::string& value, Note what, Note accepted);

  void kind(HistoryEntry& entry, const std::string& word);
  void date(HistoryEntry& entry, const std::string& text);
  /// `unit`: that of a column, under which numbers may stand bare; may be empty.
  void value(HistoryEntry& entry, const HistoryField& field, const std::string& text, const std::string& unit = {});
  /// What the kind needs, and what excludes each other.
  void whole(const HistoryEntry& entry);
  bool sound() const { return sound_; }

 private:
  Problems& problems_;
  Position where_{};
  std::string label_{};
  bool sound_{true};
};

}  // namespace holdback::files
