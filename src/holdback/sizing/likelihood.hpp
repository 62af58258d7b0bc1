// How likely the limits hold when friction, pressure, drag, tension, caliper, ambient and cooling lie anywhere in their
// bands, and which of them drives it.
#pragma once

#include <cstdint>
#include <vector>

#include "holdback/results/likelihood.hpp"
#include "holdback/sizing/assess.hpp"

namespace holdback::sizing {

/// How many points are taken: (inputs + 2) · base whole checks a job. Powers of two fill the bands most evenly.
struct Sampling {
  std::size_t base{64};
  std::uint32_t seed{20};
};

/// What one job does at every point: bit `i` of a row is set where limit `i` fails there.
struct SampledJob {
  std::vector<std::uint32_t> failing{};
  Likelihood likelihood{};
};

/// Bands of a candidate on a site, by Input.
std::vector<InputBand> input_bands(const Candidate& candidate, const Site& site);

/// The inputs at a point of the unit cube, by Input: every value in a band as likely as another.
Variation variation_at(const double* point, const std::vector<InputBand>& bands);

/// Samples one job on one candidate with the pairs engaged.
SampledJob sample_job(const Demand& demand, const Candidate& candidate, const Site& site, int pairs,
                      const Sampling& sampling);

/// The mix from its jobs: how likely all of them hold at once. Only those with `counted` set are asked;
/// of none nothing holds.
MixLikelihood mix_of(const std::vector<SampledJob>& jobs, const std::vector<bool>& counted,
                     const std::vector<InputBand>& bands, const Sampling& sampling);

}  // namespace holdback::sizing
