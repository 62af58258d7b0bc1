// What the papers of one stand are made from: the stand as read, and what the core answered about it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/model/stand.hpp"
#include "holdback/results/answer.hpp"
#include "holdback/results/commissioning.hpp"
#include "holdback/results/worked.hpp"
#include "holdback/units/units.hpp"

namespace holdback::papers {

/// Everything is of the same stand and the same mix. The builders read it; they compute nothing.
struct Dossier {
  std::string file{};  // name of the stand file
  std::string date{};  // as the user gave it; empty: none
  units::System system{units::System::si};
  Stand stand{};                                 // with all jobs of the mix
  Answer size{};                                 // of the mix, on the recommended fit; with its check
  Answer plan{};                                 // of every job on that fit
  std::vector<Answer> in_depth{};                // size of single jobs with their envelope: the worked job first
  std::vector<Answer> simulations{};             // of some of these jobs, the stand's usual scenario
  std::vector<Answer> tunings{};                 // the same jobs; empty where the stand has no controller to tune
  std::optional<WorkedJob> worked{};             // equations with numbers put in; none without a recommended fit
  std::vector<Answer> pushes{};                  // `measure push` of single jobs, instruction alone; may be empty
  std::optional<Commissioning> commissioning{};  // of the recommended fit; none without one
};

}  // namespace holdback::papers
