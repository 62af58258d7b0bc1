// How likely the limits hold when the inputs lie anywhere in their bands, and which input drives it.
#pragma once

#include <string_view>
#include <vector>

#include "holdback/results/limit.hpp"

namespace holdback {

/// The inputs that are varied.
enum class Input { friction, pressure, drag, tension, caliper, ambient, cooling };
inline constexpr int input_count = static_cast<int>(Input::cooling) + 1;

std::string_view key_of(Input input);

/// How much of the spread of the least margin an input makes (variance, Sobol).
struct Driver {
  Input input{};
  double alone{};  // [1] share that it makes by itself: first-order index
  double total{};  // [1] share that would go if it were known: total index
};

/// How likely one limit holds.
struct Chance {
  LimitId id{};
  double probability{};  // [1]
};

/// One job on its fit.
struct Likelihood {
  int samples{};
  double probability{};           // [1] that every limit holds
  double middle_margin{};         // [1] median of the least margin
  double low_margin{};            // [1] exceeded by 95 % of the samples
  std::vector<Chance> limits{};   // those that do not hold in every sample, least likely first
  std::vector<Driver> drivers{};  // strongest first; none when the least margin does not vary
};

/// How far an input was varied.
struct InputBand {
  Input input{};
  double half_width{};  // [1] of the nominal value, or [K]
};

/// The mix: every job at once, with the same brake and air.
struct MixLikelihood {
  int samples{};
  double probability{};  // [1] that every covered job holds every limit
  std::vector<InputBand> bands{};
};

}  // namespace holdback
