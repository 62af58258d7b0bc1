// The unwind shaft under a job: its beam, its whirl, its bearings over the roll, and the grip on the core.
#pragma once

#include <vector>

#include "holdback/physics/shaft.hpp"
#include "holdback/results/shaft.hpp"
#include "holdback/sizing/demand.hpp"

namespace holdback::sizing {

/// The shaft of the site, which must have one, with the roll of this job.
ShaftFacts shaft_facts(const Job& job, const Demand& demand, const Site& site);

/// The harder loaded bearing over a roll, at even steps of radius from core to full.
struct BearingCourse {
  std::vector<physics::BearingDuty> duties{};
  double load{};   // [N] equivalent
  double speed{};  // [rad/s] mean over time
};
BearingCourse bearing_course(const Job& job, const Demand& demand, const Shaft& shaft);

}  // namespace holdback::sizing
