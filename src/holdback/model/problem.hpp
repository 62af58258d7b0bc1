// What is wrong with an input, told so that a person can mend it: where, what, the value, what would be accepted.
#pragma once

#include <string>
#include <vector>

#include "holdback/model/quantity.hpp"

namespace holdback {

enum class Severity { error, warning };

/// Position in a text file, counted from one; line 0 means unknown. In a sheet: row and column of a cell.
struct Position {
  int line{};
  int column{};
  bool cell{};  // of a sheet
  bool operator==(const Position&) const = default;
};

/// The letters of a sheet's column, counted from one: 1 is "A", 27 is "AA"; empty below one.
std::string column_letters(int column);

/// A cell as a sheet names it, "B7"; empty for a position that is not known or lies in a text.
std::string cell_name(const Position& where);

/// One fault of the user's input. `field` is the path in the stand file ("roll[1].core_diameter", counted from zero) or
/// the column of a table; files/ turns it into file, line and column and adds the value as it was written.
struct Problem {
  Severity severity{Severity::error};
  Note what{};          // a sentence: what is wrong
  std::string field{};  // path; empty when the file as a whole is meant
  std::string value{};  // as written; filled by files/ when empty and the field is known
  Note accepted{};      // what would be accepted; may be empty
  std::string file{};
  Position where{};
  std::string source_line{};  // the line as written, for the arrow under it
};

using Problems = std::vector<Problem>;

/// True when at least one entry is an error; warnings alone do not stop a computation.
bool has_errors(const Problems& problems);

}  // namespace holdback
