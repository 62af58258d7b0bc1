#include "holdback/sizing/worked.hpp"

#include <algorithm>
#include <stdexcept>

#include "holdback/sizing/worked_parts.hpp"

namespace holdback::sizing {

namespace {

template <class Thing>
const Thing& named(const std::vector<Thing>& things, const std::string& name, const char* what) {
  const auto at = std::find_if(things.begin(), things.end(), [&](const Thing& thing) { return thing.name == name; });
  if (at == things.end()) throw std::invalid_argument(std::string("no ") + what + " of this name: " + name);
  return *at;
}

}  // namespace

WorkedJob worked_job(const Stand& stand, const JobFit& job, const Fit& fit) {
  const Brake& brake = named(stand.brakes, fit.brake, "brake");
  const Grade& grade = named(brake.grades, fit.grade, "grade");
  const Candidate candidate = candidate_of(brake, grade, fit.brakes, site_of(stand));
  const WorkedCase worked(stand, named(stand.jobs, job.job, "job"), job, candidate);
  WorkedSteps steps;
  for (const auto topic : {add_roll, add_target, add_window, add_torques, add_heat, add_brake, add_pressures, add_stops,
                           add_wear, add_shaft, add_margins})
    topic(steps, worked);
  return {job.job, steps.take()};
}

}  // namespace holdback::sizing
