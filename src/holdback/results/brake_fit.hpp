// What `fit` answers: what a real brake does, from readings of pressure and torque or tension.
#pragma once

#include <string>
#include <vector>

#include "holdback/model/problem.hpp"

namespace holdback {

/// The constants of a real brake, fitted to readings.
struct BrakeFit {
  std::string title{};  // of the stand
  std::vector<Note> assumptions{};
  std::vector<Note> cautions{};
};

}  // namespace holdback
