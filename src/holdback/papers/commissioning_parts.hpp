// The rows of a commissioning as texts: the sheet for paper and the CSV show the same numbers.
#pragma once

#include <string>
#include <vector>

#include "holdback/papers/dossier.hpp"

namespace holdback::papers::cards {

/// One setting, in the reader's units, numbers alone.
struct CommissioningRow {
  std::string pairs{};
  std::string pressure{};  // "0" when released
  std::string course{};    // "rising", "falling"; empty when released
  std::string torque{};
  std::string torque_low{};
  std::string torque_high{};
  std::string pull{};
  std::string pull_low{};
  std::string pull_high{};
  bool slack{};  // below the web's window
};

std::vector<CommissioningRow> commissioning_rows(const Commissioning& commissioning, units::System system);

}  // namespace holdback::papers::cards
