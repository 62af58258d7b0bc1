// What `measure` answers: the tension that readings on site speak of, and how sure it is.
#pragma once

#include <string>
#include <vector>

#include "holdback/model/problem.hpp"

namespace holdback {

/// The tension of a web, from readings by one method.
struct Measurement {
  std::string method{};  // "push", "sag", "pluck", "pull", "cell"
  double tension{};      // [N] over the whole width
  double uncertainty{};  // [N] standard uncertainty of the tension
  std::vector<Note> assumptions{};
  std::vector<Note> cautions{};
};

}  // namespace holdback
