// What `plan` answers: pressure over diameter for a controller that knows it, and the card for a hand on a regulator.
#pragma once

#include <string>
#include <vector>

#include "holdback/model/quantity.hpp"
#include "holdback/results/choice.hpp"

namespace holdback {

struct PlanPoint {
  double diameter{};  // [m]
  double pressure{};  // [Pa]
  double torque{};    // [N·m] brake torque of the whole stand
  double tension{};   // [N] expected
};

/// One line of the hand-setting card: from `from` down to `to`, keep `pressure`.
struct HandSetting {
  double from{};          // [m] diameter at which to set
  double to{};            // [m] diameter at which the next setting is due
  double pressure{};      // [Pa] rounded to the regulator's resolution
  double tension_from{};  // [N] expected where it is set
  double tension_to{};    // [N] expected where the next one is due
};

struct JobPlan {
  std::string job{};
  Fit fit{};
  int pairs{};
  State state{State::holds};  // of the job on this fit
  LimitId binding{};
  TensionTarget tension{};
  std::vector<PlanPoint> automatic{};  // from full to core
  double tolerance{};                  // [1] ±ε of the hand card
  std::vector<HandSetting> by_hand{};  // from full to core
  std::vector<Note> notes{};
};

struct Plan {
  std::string title{};
  Fit fit{};
  std::vector<JobPlan> jobs{};
  std::vector<Note> assumptions{};
  std::vector<Note> cautions{};
};

}  // namespace holdback
