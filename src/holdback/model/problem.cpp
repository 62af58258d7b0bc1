#include "holdback/model/problem.hpp"

#include <algorithm>

namespace holdback {

bool has_errors(const Problems& problems) {
  return std::any_of(problems.begin(), problems.end(), [](const Problem& p) { return p.severity == Severity::error; });
}

}  // namespace holdback
