// What people call the columns of a table of jobs and the words in them: the one place for words of the trade.
#pragma once

#include <string>
#include <vector>

namespace holdback::files {

/// Other names of a column. Case, punctuation and the order of words do not count. A name may stand under several
/// columns; then only a unit can tell which is meant.
struct ColumnAlias {
  std::string column{};  // "speed", "web.caliper"
  std::vector<std::string> names{};
  std::string unit{};  // that the names imply: "gsm" is a basis weight in g/m²
};
const std::vector<ColumnAlias>& job_column_aliases();

/// Names that are easily taken for a column but mean another thing.
struct RefusedName {
  std::vector<std::string> names{};
  std::string why{};
  std::string column{};  // for which they would be taken
};
const std::vector<RefusedName>& refused_column_names();

/// Other words for one word of a field, in small letters.
struct WordAlias {
  std::string word{};
  std::vector<std::string> names{};
};
const std::vector<WordAlias>& word_aliases();

}  // namespace holdback::files
