#include "holdback/model/problem.hpp"

#include <algorithm>

namespace holdback {

std::string column_letters(int column) {
  std::string letters;
  for (; column > 0; column = (column - 1) / 26)
    letters.insert(letters.begin(), static_cast<char>('A' + (column - 1) % 26));
  return letters;
}

std::string cell_name(const Position& where) {
  if (!where.cell || where.line < 1) return {};
  return column_letters(where.column) + std::to_string(where.line);
}

bool has_errors(const Problems& problems) {
  return std::any_of(problems.begin(), problems.end(), [](const Problem& p) { return p.severity == Severity::error; });
}

}  // namespace holdback
