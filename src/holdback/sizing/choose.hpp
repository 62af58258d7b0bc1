// `size`: choose one fit for the whole mix, and say why.
#pragma once

#include <optional>
#include <string>

#include "holdback/results/choice.hpp"
#include "holdback/sizing/cover.hpp"

namespace holdback::sizing {

/// What to try and what to show.
struct ChooseOptions {
  std::string job{};                   // this job in depth; empty: none
  bool all{false};                     // keep the jobs of every fit tried
  std::optional<std::string> brake{};  // try only this brake,
  std::optional<std::string> grade{};  // this grade,
  std::optional<int> brakes{};         // so many on the shaft
  int threads{0};                      // 0: as many as the machine has
  bool brief{false};  // standings on every fit; heat and the window of one job alone; no remedies, no odds
};

/// The fits that the options leave to try. Empty when a name is unknown or nothing fits the words.
std::vector<Candidate> candidates(const Stand& stand, const Site& site, const ChooseOptions& options);

/// Chooses. The stand must be free of errors; with no candidate left, `recommended` stays empty.
Choice choose(const Stand& stand, const ChooseOptions& options);

}  // namespace holdback::sizing
