// One job's check as steps that a person can follow with a pocket calculator: each equation with its numbers.
#pragma once

#include <string>
#include <vector>

#include "holdback/model/quantity.hpp"

namespace holdback {

/// A quantity of a step: its letter in the formula, what it is, its value [SI of the kind].
struct WorkedTerm {
  std::string symbol{};  // "d_full"
  std::string name{};    // "diameter of the full roll"
  Quantity kind{Quantity::number};
  double value{};
};

/// One equation. The formula is arithmetic in the symbols of its terms (+ − · / ^ ( ) sqrt exp ln sin cos π and
/// numbers) in coherent SI units, so that a checker, or a test, can put the terms in and get the result.
struct WorkedStep {
  std::string id{};    // the physics function, as in docs/method.md: "run_torque"
  std::string name{};  // "brake torque in steady run"
  std::string formula{};
  std::vector<WorkedTerm> terms{};
  WorkedTerm result{};
  std::string note{};    // when it holds, or what the larger model adds; empty: nothing
  std::string source{};  // key of docs/sources.bib, or "by definition", "derived", "common practice, no source"
};

/// The steps of one job on one fit, in the order in which they build on each other.
struct WorkedJob {
  std::string job{};
  std::vector<WorkedStep> steps{};
};

}  // namespace holdback
