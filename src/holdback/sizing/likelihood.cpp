#include "holdback/sizing/likelihood.hpp"

#include <algorithm>
#include <numeric>

#include "holdback/numerics/sensitivity.hpp"

namespace holdback::sizing {

namespace {

// A limit with ten times what it needs is as good as one with a hundred.
constexpr double enough = 10;

std::vector<Chance> chances_of(const std::vector<std::uint32_t>& failing) {
  std::vector<Chance> chances;
  for (int i = 0; i < limit_count; ++i) {
    const auto count =
        std::count_if(failing.begin(), failing.end(), [i](std::uint32_t bits) { return bits >> i & 1U; });
    if (count == 0) continue;
    chances.push_back({static_cast<LimitId>(i), 1 - static_cast<double>(count) / static_cast<double>(failing.size())});
  }
  std::stable_sort(chances.begin(), chances.end(),
                   [](const Chance& a, const Chance& b) { return a.probability < b.probability; });
  return chances;
}

std::vector<Driver> drivers_of(const std::vector<double>& margins, std::size_t base) {
  const auto indices = numerics::sensitivities(margins, base, input_count);
  std::vector<Driver> drivers;
  for (std::size_t i = 0; i < indices.size(); ++i)
    drivers.push_back({static_cast<Input>(i), indices[i].first, indices[i].total});
  std::stable_sort(drivers.begin(), drivers.end(), [](const Driver& a, const Driver& b) { return a.total > b.total; });
  return drivers;
}

double share_without(const std::vector<std::uint32_t>& failing) {
  const auto holding = std::count(failing.begin(), failing.end(), 0U);
  return failing.empty() ? 1 : static_cast<double>(holding) / static_cast<double>(failing.size());
}

double quantile(std::vector<double> values, double share) {
  const auto at = values.begin() + static_cast<std::ptrdiff_t>(share * static_cast<double>(values.size() - 1));
  std::nth_element(values.begin(), at, values.end());
  return *at;
}

}  // namespace

std::vector<InputBand> input_bands(const Candidate& candidate, const Site& site) {
  const Uncertainty& u = site.uncertainty;
  return {{Input::friction, candidate.grade->friction_band},
          {Input::pressure, u.pressure},
          {Input::drag, u.drag},
          {Input::tension, u.tension},
          {Input::caliper, u.caliper},
          {Input::ambient, u.ambient},
          {Input::cooling, u.cooling}};
}

Variation variation_at(const double* point, const std::vector<InputBand>& bands) {
  const auto off = [&](Input input) {
    const auto i = static_cast<std::size_t>(input);
    return bands[i].half_width * (2 * point[i] - 1);
  };
  Variation variation;
  variation.of_friction = true;
  variation.friction = off(Input::friction);
  variation.pressure = off(Input::pressure);
  variation.drag = 1 + off(Input::drag);
  variation.tension = 1 + off(Input::tension);
  variation.caliper = 1 + off(Input::caliper);
  variation.ambient = off(Input::ambient);
  variation.cooling = 1 + off(Input::cooling);
  return variation;
}

SampledJob sample_job(const Demand& demand, const Candidate& candidate, const Site& site, int pairs,
                      const Sampling& sampling) {
  const auto bands = input_bands(candidate, site);
  const auto points = numerics::sensitivity_points(sampling.base, input_count, sampling.seed);
  const std::size_t count = points.size() / input_count;
  const DiscOverRoll disc = candidate.cooling->over(demand, site.ambient);
  Pass pass;
  SampledJob job;
  job.failing.reserve(count);
  std::vector<double> margins;
  margins.reserve(count);
  for (std::size_t i = 0; i < count; ++i) {
    const Variation variation = variation_at(&points[i * input_count], bands);
    pass_over(demand, disc, candidate, site, variation, pass);
    const Survey found = survey(demand, disc, pass, candidate, Where::left_out);
    const Summary summary = summarize(demand, found, candidate, site, pairs, variation);
    job.failing.push_back(summary.failing);
    margins.push_back(std::min(summary.margin, enough));
  }
  Likelihood& likelihood = job.likelihood;
  likelihood.samples = static_cast<int>(count);
  likelihood.probability = share_without(job.failing);
  likelihood.middle_margin = quantile(margins, 0.5);
  likelihood.low_margin = quantile(margins, 0.05);
  likelihood.limits = chances_of(job.failing);
  likelihood.drivers = drivers_of(margins, sampling.base);
  return job;
}

MixLikelihood mix_of(const std::vector<SampledJob>& jobs, const std::vector<bool>& counted,
                     const std::vector<InputBand>& bands, const Sampling& sampling) {
  // Of the design only A and B are points of their own.
  std::vector<std::uint32_t> any(2 * sampling.base, 0);
  for (std::size_t j = 0; j < jobs.size(); ++j)
    for (std::size_t i = 0; counted[j] && i < any.size(); ++i) any[i] |= jobs[j].failing[i];
  const bool none = std::none_of(counted.begin(), counted.end(), [](bool count) { return count; });
  return {static_cast<int>(any.size()), none ? 0 : share_without(any), bands};
}

}  // namespace holdback::sizing
