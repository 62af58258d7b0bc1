// What `check` answers beside problems: the stand as understood, so that a person sees a wrong input by its
// consequence.
#pragma once

#include <string>
#include <vector>

#include "holdback/results/choice.hpp"

namespace holdback {

/// A job as understood.
struct JobFacts {
  std::string job{};
  std::string web{};
  std::string roll{};
  double width{};  // [m]
  double speed{};  // [m/s]
  TensionTarget tension{};
  RollFacts roll_facts{};    // inertia without brake discs
  double run_torque_full{};  // [N·m] at the full roll, drag taken off
  double run_torque_core{};  // [N·m] at the core
  double slip_power{};       // [W] tension times speed
  TensionWindow window{};
};

/// The answer to `check`.
struct Check {
  std::string title{};
  int webs{};
  int rolls{};
  int brakes{};
  int fits{};  // that `size` would try
  std::vector<JobFacts> jobs{};
  std::vector<Note> cautions{};
};

}  // namespace holdback
