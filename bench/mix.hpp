// The large mix of the benchmarks: jobs and brakes of example 02, varied so that no two are alike.
#pragma once

#include <cmath>
#include <string>
#include <vector>

#include "holdback/sizing/site.hpp"
#include "stand_text.hpp"

namespace bench {

/// A value that runs evenly through 0 … 1 as i grows, without repeating.
inline double spread(std::size_t i) {
  const double turns = 0.6180339887498949 * static_cast<double>(i);
  return turns - std::floor(turns);
}

inline std::size_t fits_of(const holdback::Stand& stand) {
  std::size_t count = 0;
  for (const holdback::Brake& brake : stand.brakes)
    count += static_cast<std::size_t>(brake.most_brakes) * brake.grades.size();
  return count;
}

inline holdback::Stand large_stand(std::size_t job_count, std::size_t fit_count) {
  holdback::Stand stand = stand_of("02-film-laminator.toml");
  const std::vector<holdback::Job> jobs = stand.jobs;
  const std::vector<holdback::Brake> brakes = stand.brakes;
  stand.jobs.clear();
  for (std::size_t i = 0; i < job_count; ++i) {
    holdback::Job job = jobs[i % jobs.size()];
    job.name += " " + std::to_string(i);
    job.speed *= 0.7 + 0.3 * spread(i);
    if (job.tension) *job.tension *= 0.8 + 0.4 * spread(i + 7);
    stand.jobs.push_back(job);
  }
  stand.brakes.clear();
  while (fits_of(stand) < fit_count) {
    holdback::Brake brake = brakes[stand.brakes.size() % brakes.size()];
    brake.name += " " + std::to_string(stand.brakes.size());
    brake.piston_area *= 0.6 + 0.8 * spread(stand.brakes.size());
    stand.brakes.push_back(brake);
  }
  return stand;
}

}  // namespace bench
