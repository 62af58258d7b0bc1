// What `diagnose` answers: how the tension of a log kept its window, and what is wrong.
#pragma once

#include <string>
#include <vector>

#include "holdback/model/problem.hpp"

namespace holdback {

/// A log, read and judged.
struct Diagnosis {
  std::string title{};  // of the stand
  std::vector<Note> assumptions{};
  std::vector<Note> cautions{};
};

}  // namespace holdback
