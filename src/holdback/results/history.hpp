// What `history show` answers: the dated readings, pad changes and fits of a stand, and when its pads are due.
#pragma once

#include <string>
#include <vector>

#include "holdback/model/problem.hpp"

namespace holdback {

/// What is kept of one stand over the years.
struct History {
  std::string stand{};  // name under which it is kept
  std::vector<Note> assumptions{};
  std::vector<Note> cautions{};
};

}  // namespace holdback
